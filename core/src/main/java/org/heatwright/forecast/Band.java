package org.heatwright.forecast;

import java.util.Arrays;
import java.util.Optional;
import org.heatwright.numerics.Samples;

/**
 * A median between a 5th and a 95th percentile: nine times in ten the truth should lie inside.
 *
 * @param low 5th percentile
 * @param median 50th percentile
 * @param high 95th percentile
 */
public record Band(double low, double median, double high) {

  public Band {
    if (!(low <= median && median <= high)) {
      throw new IllegalArgumentException(
          "The band (%s, %s, %s) must not fall.".formatted(low, median, high));
    }
  }

  /** A value without spread. */
  public static Band exactly(double value) {
    return new Band(value, value, value);
  }

  /**
   * The band of a sample, linear between order statistics. One more of the same kind, as the truth
   * is meant to be, lies below the i-th of n with probability i/(n + 1), whatever their
   * distribution (Wilks 1941, from memory).
   */
  public static Band of(double[] sample) {
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    return new Band(below(sorted, 0.05), Samples.quantile(sorted, 0.5), below(sorted, 0.95));
  }

  /** Where one more lies below with a probability; the first or last of a small sample. */
  private static double below(double[] sorted, double probability) {
    int n = sorted.length;
    double sample = (probability * (n + 1) - 0.5) / n;
    return Samples.quantile(sorted, Math.max(0, Math.min(1, sample)));
  }

  /** The band of a sample; empty where one of it is not finite or there is none. */
  public static Optional<Band> ofFinite(double[] sample) {
    return sample.length > 0 && Arrays.stream(sample).allMatch(Double::isFinite)
        ? Optional.of(of(sample))
        : Optional.empty();
  }

  /**
   * The band of when something comes that may not come.
   *
   * @param sample one a case, at least one; infinite where it does not come: later than any that
   *     does
   * @return empty where more than about one of twenty do not come, so that nothing can be said of
   *     the latest
   */
  public static Optional<Band> ofComing(double[] sample) {
    double[] sorted = sample.clone();
    Arrays.sort(sorted);
    return Double.isFinite(below(sorted, 0.95)) ? Optional.of(of(sample)) : Optional.empty();
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }

  public Band plus(double shift) {
    return new Band(low + shift, median + shift, high + shift);
  }
}
