package org.heatwright.forecast;

import java.util.concurrent.atomic.AtomicInteger;

/** Counts what is done of one part of an ensemble, whichever thread does it. */
final class EnsembleCount {

  private final EnsembleProgress told;
  private final EnsembleProgress.Part part;
  private final int of;
  private final AtomicInteger done = new AtomicInteger();

  EnsembleCount(EnsembleProgress told, EnsembleProgress.Part part, int of) {
    this.told = told;
    this.part = part;
    this.of = of;
  }

  /** The same, counted once it is there. */
  <T> T one(T made) {
    told.done(part, done.incrementAndGet(), of);
    return made;
  }
}
