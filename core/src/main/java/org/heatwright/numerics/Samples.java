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
}
