package org.heatwright.work.sinter;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * A median between a 5th and a 95th percentile, in the unit of the field that holds it.
 *
 * @param low 5th percentile
 * @param median 50th percentile
 * @param high 95th percentile
 */
public record Likely(double low, double median, double high) {

  public Likely {
    if (!(low <= median && median <= high)) {
      throw new IllegalArgumentException(
          "The values (%s, %s, %s) must not fall.".formatted(low, median, high));
    }
  }

  /** Of a sample that is not empty, all alike in weight; percentiles linear between. */
  public static Likely of(double[] sample) {
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    return new Likely(quantile(sorted, 0.05), quantile(sorted, 0.5), quantile(sorted, 0.95));
  }

  /** A value without spread. */
  public static Likely exactly(double value) {
    return new Likely(value, value, value);
  }

  /** The same through a rising function. */
  public Likely map(DoubleUnaryOperator rising) {
    return new Likely(
        rising.applyAsDouble(low), rising.applyAsDouble(median), rising.applyAsDouble(high));
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }

  /** From the 5th to the 95th percentile. */
  double spread() {
    return high - low;
  }

  private static double quantile(double[] sorted, double probability) {
    double position = probability * sorted.length - 0.5;
    int below = (int) Math.floor(Math.max(0, Math.min(position, sorted.length - 1.0)));
    int above = Math.min(below + 1, sorted.length - 1);
    double share = Math.max(0, Math.min(1, position - below));
    return sorted[below] + share * (sorted[above] - sorted[below]);
  }
}
