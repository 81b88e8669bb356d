package org.heatwright.numerics;

import java.util.Arrays;
import java.util.List;

/**
 * A function given by points: linear between them, constant outside. Immutable.
 *
 * <p>{@link #integral} is exact for that function (piecewise quadratic).
 */
public final class LinearTable {

  private final double[] x;
  private final double[] y;
  private final double[] slope;
  private final double[] integralAtPoint;

  private LinearTable(double[] x, double[] y) {
    int n = x.length;
    if (n == 0 || y.length != n) {
      throw new IllegalArgumentException(
          "The table (%d arguments, %d values) needs at least one point and as many values as"
                  .formatted(n, y.length)
              + " arguments.");
    }
    for (int i = 0; i < n; i++) {
      if (!Double.isFinite(x[i]) || !Double.isFinite(y[i]) || (i > 0 && !(x[i] > x[i - 1]))) {
        throw new IllegalArgumentException(
            "Point %d (%s, %s) of the table must be finite and right of the point before it."
                .formatted(i + 1, x[i], y[i]));
      }
    }
    this.x = x;
    this.y = y;
    this.slope = new double[n];
    this.integralAtPoint = new double[n];
    for (int i = 0; i + 1 < n; i++) {
      slope[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
      integralAtPoint[i + 1] = integralAtPoint[i] + 0.5 * (y[i] + y[i + 1]) * (x[i + 1] - x[i]);
    }
  }

  /** The table through the points {@code (x[i], y[i])}; arguments must rise. */
  public static LinearTable of(double[] x, double[] y) {
    return new LinearTable(x.clone(), y.clone());
  }

  /** The same value everywhere. */
  public static LinearTable constant(double value) {
    return new LinearTable(new double[] {0.0}, new double[] {value});
  }

  /** The table through alternating arguments and values: {@code points(20, 0.6, 800, 0.4)}. */
  public static LinearTable points(double... xyPairs) {
    if (xyPairs.length % 2 != 0) {
      throw new IllegalArgumentException(
          "Points come in pairs, but %d numbers were given.".formatted(xyPairs.length));
    }
    double[] x = new double[xyPairs.length / 2];
    double[] y = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      x[i] = xyPairs[2 * i];
      y[i] = xyPairs[2 * i + 1];
    }
    return new LinearTable(x, y);
  }

  public double at(double argument) {
    int last = x.length - 1;
    if (argument <= x[0]) {
      return y[0];
    }
    if (argument >= x[last]) {
      return y[last];
    }
    int i = intervalOf(argument);
    return y[i] + slope[i] * (argument - x[i]);
  }

  /** The integral from the first point to {@code argument} (negative to its left). */
  public double integral(double argument) {
    int last = x.length - 1;
    if (argument <= x[0]) {
      return y[0] * (argument - x[0]);
    }
    if (argument >= x[last]) {
      return integralAtPoint[last] + y[last] * (argument - x[last]);
    }
    int i = intervalOf(argument);
    double d = argument - x[i];
    return integralAtPoint[i] + d * (y[i] + 0.5 * slope[i] * d);
  }

  /** The same table with every value multiplied. */
  public LinearTable scaled(double factor) {
    double[] scaled = y.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= factor;
    }
    return new LinearTable(x, scaled);
  }

  public double smallest() {
    return Arrays.stream(y).min().orElseThrow();
  }

  public double largest() {
    return Arrays.stream(y).max().orElseThrow();
  }

  /** The points as {@code [argument, value]} pairs. */
  public List<double[]> asPoints() {
    return java.util.stream.IntStream.range(0, x.length)
        .mapToObj(i -> new double[] {x[i], y[i]})
        .toList();
  }

  private int intervalOf(double argument) {
    // Few points: a linear scan beats a binary search.
    int i = 0;
    while (argument >= x[i + 1]) {
      i++;
    }
    return i;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LinearTable table
        && Arrays.equals(x, table.x)
        && Arrays.equals(y, table.y);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(x) + Arrays.hashCode(y);
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder("[");
    for (int i = 0; i < x.length; i++) {
      text.append(i == 0 ? "" : ", ")
          .append("(")
          .append(x[i])
          .append(", ")
          .append(y[i])
          .append(")");
    }
    return text.append("]").toString();
  }
}
