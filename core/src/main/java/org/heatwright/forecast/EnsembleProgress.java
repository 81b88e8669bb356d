package org.heatwright.forecast;

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
}
