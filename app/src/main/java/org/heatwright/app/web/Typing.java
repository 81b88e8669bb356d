package org.heatwright.app.web;

import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;
import org.heatwright.forecast.EnsembleProgress;

/**
 * Who types faster than ensembles are worked out wants the last one alone: an ensemble for a value
 * that has been typed over since ends early. Safe for use from several threads.
 */
final class Typing {

  /** Pages that are open at once, about. */
  private static final int PAGES_KEPT = 32;

  private final Lately<String, AtomicLong> newest = new Lately<>(PAGES_KEPT);

  /**
   * A value was typed on a page.
   *
   * @param page which one: a word of its own
   * @param number of the value, larger for a later one
   * @return throws {@link CancellationException} once a later one has been typed there
   */
  EnsembleProgress typed(String page, long number) {
    AtomicLong last = newest.of(page, p -> new AtomicLong());
    last.accumulateAndGet(number, Math::max);
    return (part, done, of) -> {
      if (last.get() > number) {
        throw new CancellationException("Another value has been typed since.");
      }
    };
  }
}
