package org.heatwright.app.web;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.heatwright.app.store.FiringLog;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;

/**
 * Logs whose clock was put right lately. Safe for use from several threads; two that ask for the
 * same one at once may both work.
 */
final class Alignments {

  private static final int KEPT = 48;

  private record Asked(Kiln kiln, String csv, String schedule, String firing) {}

  private final Map<Asked, LogAlignment> kept =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, LogAlignment> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * @param kiln with what is believed of it
   * @param log as it is kept
   * @param firing what the log says
   */
  LogAlignment of(Kiln kiln, FiringLog log, Supplier<LoggedFiring> firing) {
    Asked asked = new Asked(kiln, log.csv(), log.schedule(), log.firing());
    synchronized (kept) {
      LogAlignment known = kept.get(asked);
      // What it is called is not part of it.
      if (known != null && known.firing().name().equals(log.id())) {
        return known;
      }
    }
    LogAlignment made = LogAlignment.of(kiln, firing.get());
    synchronized (kept) {
      kept.put(asked, made);
    }
    return made;
  }
}
