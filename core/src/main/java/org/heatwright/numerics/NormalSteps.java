package org.heatwright.numerics;

import org.hipparchus.special.Erf;

/**
 * Steps through the quantiles of a normal distribution so that few draws already spread over all of
 * it: an additive recurrence (memory: Niederreiter, Random Number Generation and Quasi-Monte Carlo
 * Methods, 1992). The first is the median.
 */
public final class NormalSteps {

  /** Two quantities that take these two steps do not follow one another. */
  public static final double GOLDEN = (Math.sqrt(5) - 1) / 2;

  public static final double ROOT_TWO = Math.sqrt(2) - 1;

  /**
   * From the middle of a normal distribution to its 95th percentile, standard deviations: nine in
   * ten lie within so many to either side.
   */
  public static final double NINE_IN_TEN = 1.6448536269514722;

  private NormalSteps() {}

  /**
   * A standard normal score.
   *
   * @param index zero or more
   * @param step irrational, between 0 and 1
   */
  public static double score(int index, double step) {
    double quantile = (0.5 + step * index) % 1;
    return Math.sqrt(2) * Erf.erfInv(2 * quantile - 1);
  }
}
