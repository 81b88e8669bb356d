package org.heatwright.forecast;

import java.util.concurrent.atomic.AtomicInteger;

/**
 * Is told how far an ensemble is, from several threads at once. What it throws ends the ensemble
 * and comes out of the call that runs it.
 */
@FunctionalInterface
public interface EnsembleProgress {

  /** What is being worked through. */
  enum Part {
    /** Kilns that are drawn from what is believed of this one. */
    KILNS,
    /** Moulds, each in some of these kilns. */
    MOULDS,
    /** Pieces, each in some of these kilns. */
    PIECES
  }

  /** Nobody wants to know. */
  EnsembleProgress UNTOLD = (part, done, of) -> {};

  /**
   * One more is done.
   *
   * @param part of what
   * @param done so many, from 1; several threads may tell their numbers out of order
   * @param of so many in all
   */
  void done(Part part, int done, int of);

  /** Counts what is done of one part, whichever thread does it. */
  final class Count {

    private final EnsembleProgress told;
    private final Part part;
    private final int of;
    private final AtomicInteger done = new AtomicInteger();

    Count(EnsembleProgress told, Part part, int of) {
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
}
