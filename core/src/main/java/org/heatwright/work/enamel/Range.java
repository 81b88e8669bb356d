package org.heatwright.work.enamel;

import java.util.Arrays;
import java.util.random.RandomGenerator;
import org.heatwright.numerics.NormalSteps;
import org.heatwright.numerics.Samples;

/**
 * A number that is known only within a range: usual value and the two ends that hold nine times in
 * ten. The unit is its owner's.
 *
 * @param low 5th percentile
 * @param median usual value
 * @param high 95th percentile
 */
public record Range(double low, double median, double high) {

  /** Standard deviations from the median to the 95th percentile of a normal distribution. */
  public static final double DEVIATIONS = NormalSteps.NINE_IN_TEN;

  public Range {
    if (!(low <= median && median <= high)) {
      throw new IllegalArgumentException(
          "The range (%s, %s, %s) must not fall.".formatted(low, median, high));
    }
  }

  public static Range of(double low, double median, double high) {
    return new Range(low, median, high);
  }

  public static Range exactly(double value) {
    return new Range(value, value, value);
  }

  /** A value with so much to either side, as a share of it. */
  public static Range about(double value, double share) {
    double off = Math.abs(value) * share;
    return new Range(value - off, value, value + off);
  }

  /**
   * The range of a sample, which may hold infinite values; its ends the 5th and 95th percentiles.
   */
  public static Range ofSample(double[] sample) {
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    return new Range(
        Samples.quantile(sorted, 0.05),
        Samples.quantile(sorted, 0.5),
        Samples.quantile(sorted, 0.95));
  }

  /**
   * The value at so many standard deviations: two half normals that meet at the median, cut at two
   * and a half.
   */
  public double at(double deviations) {
    double cut = Math.max(-2.5, Math.min(2.5, deviations)) / DEVIATIONS;
    return cut < 0 ? median + cut * (median - low) : median + cut * (high - median);
  }

  double drawn(RandomGenerator random) {
    return at(random.nextGaussian());
  }
}
