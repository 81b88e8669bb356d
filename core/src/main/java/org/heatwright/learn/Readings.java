package org.heatwright.learn;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Display readings over time, with the power where a meter told it; gaps allowed. Immutable;
 * read-outs are copies or single values.
 *
 * <p>Times rise strictly and count from the program's start; readings are finite, in °C.
 */
public final class Readings {

  private final double[] seconds;
  private final double[] celsius;
  private final double[] watts;

  private Readings(double[] seconds, double[] celsius, double[] watts) {
    this.seconds = seconds;
    this.celsius = celsius;
    this.watts = watts;
  }

  /**
   * Readings without power.
   *
   * @throws IllegalArgumentException if the columns differ in length, are empty, do not rise or
   *     hold something that is not a number
   */
  public static Readings of(double[] seconds, double[] celsius) {
    double[] unknown = new double[seconds.length];
    Arrays.fill(unknown, Double.NaN);
    return of(seconds, celsius, unknown);
  }

  /**
   * @param watts power at each reading, W; not a number where it is not known
   * @throws IllegalArgumentException if the columns differ in length, are empty, do not rise or
   *     hold a time or temperature that is not a number
   */
  public static Readings of(double[] seconds, double[] celsius, double[] watts) {
    if (seconds.length != celsius.length || seconds.length != watts.length || seconds.length == 0) {
      throw new IllegalArgumentException(
          "Readings need as many temperatures (%d) and powers (%d) as times (%d), one at least."
              .formatted(celsius.length, watts.length, seconds.length));
    }
    for (int i = 0; i < seconds.length; i++) {
      if (!Double.isFinite(seconds[i])
          || !Double.isFinite(celsius[i])
          || (i > 0 && !(seconds[i] > seconds[i - 1]))) {
        throw new IllegalArgumentException(
            "Reading %d (%s s, %s °C) must be finite and later than the one before."
                .formatted(i + 1, seconds[i], celsius[i]));
      }
    }
    return new Readings(seconds.clone(), celsius.clone(), watts.clone());
  }

  public int size() {
    return seconds.length;
  }

  public double second(int index) {
    return seconds[index];
  }

  public double celsius(int index) {
    return celsius[index];
  }

  /** Power, W; not a number where it is not known. */
  public double watts(int index) {
    return watts[index];
  }

  public double lastSecond() {
    return seconds[seconds.length - 1];
  }

  /** The readings before a time; at least the first. */
  public Readings before(double second) {
    int n = 1;
    while (n < seconds.length && seconds[n] < second) {
      n++;
    }
    return new Readings(
        Arrays.copyOf(seconds, n), Arrays.copyOf(celsius, n), Arrays.copyOf(watts, n));
  }

  /** The same readings with every time later by {@code later} s. */
  public Readings shifted(double later) {
    return new Readings(
        Arrays.stream(seconds).map(second -> second + later).toArray(), celsius, watts);
  }

  /**
   * Means over equal spans, each at the middle of its readings: noise and the swing of a switch
   * shrink, and no reading counts for more because the logger was quick. A span without readings is
   * left out, and so is a single reading that lies far from the rest of its span.
   *
   * @param spanSeconds s, above zero
   */
  public Readings averaged(double spanSeconds) {
    return averaged(second -> spanSeconds);
  }

  /** The same with spans whose length, s, depends on the second they begin at. */
  Readings averaged(DoubleUnaryOperator spanSecondsAt) {
    double[] t = new double[seconds.length];
    double[] c = new double[seconds.length];
    double[] w = new double[seconds.length];
    int n = 0;
    int i = 0;
    while (i < seconds.length) {
      double spanSeconds = spanSecondsAt.applyAsDouble(seconds[i]);
      double end = (Math.floor(seconds[i] / spanSeconds) + 1) * spanSeconds;
      int from = i;
      while (i < seconds.length && seconds[i] < end) {
        i++;
      }
      double[] limits = believable(from, i);
      double sumSeconds = 0;
      double sumCelsius = 0;
      double sumWatts = 0;
      int count = 0;
      int powers = 0;
      for (int r = from; r < i; r++) {
        if (celsius[r] >= limits[0] && celsius[r] <= limits[1]) {
          sumSeconds += seconds[r];
          sumCelsius += celsius[r];
          count++;
        }
        if (!Double.isNaN(watts[r])) {
          sumWatts += watts[r];
          powers++;
        }
      }
      t[n] = sumSeconds / count;
      c[n] = sumCelsius / count;
      w[n] = powers > 0 ? sumWatts / powers : Double.NaN;
      n++;
    }
    return new Readings(Arrays.copyOf(t, n), Arrays.copyOf(c, n), Arrays.copyOf(w, n));
  }

  /** Below and above what a reading among its neighbours is a slip of the logger, °C. */
  private double[] believable(int from, int to) {
    if (to - from < FEWEST_NEIGHBOURS) {
      return new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY};
    }
    double[] sorted = Arrays.copyOfRange(celsius, from, to);
    Arrays.sort(sorted);
    double low = sorted[sorted.length / 4];
    double high = sorted[sorted.length - 1 - sorted.length / 4];
    double reach = SLIP_KELVINS + 3 * (high - low);
    return new double[] {low - reach, high + reach};
  }

  private static final int FEWEST_NEIGHBOURS = 5;

  /** A reading that far beyond three spreads of the middle half is a slip, K. Our estimate. */
  private static final double SLIP_KELVINS = 20;
}
