package org.heatwright.app.web;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.DatedFiring;
import org.heatwright.learn.KilnHealth;

/**
 * Health that was worked out lately, or is being worked out: many logs take longer than a page may.
 * Safe for use from several threads; the same question is worked out once.
 */
final class Healths {

  private static final int KEPT = 8;

  private record Question(Kiln nameplate, List<String> logs) {}

  private final Map<Question, CompletableFuture<KilnHealth>> kept =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(
            Map.Entry<Question, CompletableFuture<KilnHealth>> eldest) {
          return size() > KEPT;
        }
      };

  /**
   * The answer, or nothing if it takes longer than that; it goes on being worked out then.
   *
   * @param nameplate the kiln without what was learned
   * @param logs ids of the firings; the same ones are the same firings
   */
  Optional<KilnHealth> within(
      Kiln nameplate, List<String> logs, List<DatedFiring> firings, Duration patience) {
    CompletableFuture<KilnHealth> answer;
    synchronized (kept) {
      answer =
          kept.computeIfAbsent(
              new Question(nameplate, logs),
              asked ->
                  CompletableFuture.supplyAsync(() -> KilnHealth.of(asked.nameplate(), firings)));
    }
    return Awaited.within(answer, patience);
  }
}
