package org.heatwright.numerics;

import java.util.Arrays;

/** A curve given by samples: straight lines between them, constant outside. */
public final class Samples {

  private Samples() {}

  /**
   * The curve at a place.
   *
   * @param x where it was sampled, rising, at least one
   * @param y what it was there, as many
   * @param at where
   */
  public static double linear(double[] x, double[] y, double at) {
    int last = x.length - 1;
    if (at <= x[0]) {
      return y[0];
    }
    if (at >= x[last]) {
      return y[last];
    }
    int found = Arrays.binarySearch(x, at);
    int i = found >= 0 ? found : -found - 2;
    return y[i] + (at - x[i]) / (x[i + 1] - x[i]) * (y[i + 1] - y[i]);
  }

  /**
   * Quantile of a sample: linear between order statistics, which sit at (i - 0.5)/n.
   *
   * @param sorted rising, at least one; may end in infinite values
   * @param probability 0 to 1
   */
  public static double quantile(double[] sorted, double probability) {
    double position = Math.max(0, Math.min(sorted.length - 1, probability * sorted.length - 0.5));
    int below = (int) position;
    if (below >= sorted.length - 1 || sorted[below] == sorted[below + 1]) {
      return sorted[below];
    }
    double share = position - below;
    return share == 0 ? sorted[below] : sorted[below] + share * (sorted[below + 1] - sorted[below]);
  }
}
