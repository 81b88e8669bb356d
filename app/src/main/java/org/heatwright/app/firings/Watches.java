package org.heatwright.app.firings;

import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What was worked out lately of firings: a page that looks again asks for the same. Safe for use
 * from several threads; two that ask for the same at once may both work.
 */
public final class Watches {

  private static final int KEPT = 24;

  private final ZoneId zone;
  private final Map<FiringRecord, Watch> kept =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<FiringRecord, Watch> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * @param zone of kilns that name none
   */
  public Watches(ZoneId zone) {
    this.zone = zone;
  }

  /** See {@link Watch#of}. */
  public Watch of(FiringRecord firing) {
    synchronized (kept) {
      Watch known = kept.get(firing);
      if (known != null) {
        return known;
      }
    }
    Watch made = Watch.of(firing, zone);
    synchronized (kept) {
      kept.put(firing, made);
    }
    return made;
  }
}
