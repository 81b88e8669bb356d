package org.heatwright.learn;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

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

  /** Times, s from the program's start; a copy. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** Readings, °C; a copy. */
  public double[] celsius() {
    return celsius.clone();
  }

  public double lastSecond() {
    return seconds[seconds.length - 1];
  }

  /** The usual time between two readings (a median), s; 0 of a single one. */
  double usualStepSeconds() {
    double[] steps = new double[Math.max(1, seconds.length - 1)];
    for (int i = 1; i < seconds.length; i++) {
      steps[i - 1] = seconds[i] - seconds[i - 1];
    }
    return median(steps);
  }

  /** Rate of the display about a row, K/s, never below zero. */
  double rate(int row) {
    int before = Math.max(0, row - 1);
    int after = Math.min(seconds.length - 1, row + 1);
    double between = seconds[after] - seconds[before];
    return between > 0 ? Math.abs(celsius[after] - celsius[before]) / between : 0;
  }

  /** Whether the times look written by hand, to the minute: not evenly apart as a logger's are. */
  boolean toTheMinute() {
    boolean even = true;
    for (int i = 0; i < seconds.length; i++) {
      double minute = 60 * Math.rint(seconds[i] / 60);
      if (Math.abs(seconds[i] - minute) > 1e-6) {
        return false;
      }
      even = even && (i < 2 || seconds[i] - seconds[i - 1] == seconds[1] - seconds[0]);
    }
    return !even && seconds.length < MOST_BY_HAND;
  }

  private static final int MOST_BY_HAND = 60;

  /** The readings before a time; at least the first. */
  public Readings before(double second) {
    int n = 1;
    while (n < seconds.length && seconds[n] < second) {
      n++;
    }
    return rows(0, n);
  }

  /** The readings from a time on; empty if there are none. */
  Optional<Readings> from(double second) {
    int first = firstFrom(second);
    return first < seconds.length ? Optional.of(rows(first, seconds.length)) : Optional.empty();
  }

  /** The first reading at a time or later; their number if there is none. */
  int firstFrom(double second) {
    int found = Arrays.binarySearch(seconds, second);
    return found < 0 ? -found - 1 : found;
  }

  private Readings rows(int from, int to) {
    return new Readings(
        Arrays.copyOfRange(seconds, from, to),
        Arrays.copyOfRange(celsius, from, to),
        Arrays.copyOfRange(watts, from, to));
  }

  /** The readings that are not in a stretch of time; the first is always kept. */
  Readings without(double fromSecond, double toSecond) {
    int[] kept =
        IntStream.range(0, seconds.length)
            .filter(i -> i == 0 || seconds[i] < fromSecond || seconds[i] > toSecond)
            .toArray();
    return new Readings(
        IntStream.of(kept).mapToDouble(i -> seconds[i]).toArray(),
        IntStream.of(kept).mapToDouble(i -> celsius[i]).toArray(),
        IntStream.of(kept).mapToDouble(i -> watts[i]).toArray());
  }

  /** The same readings with every time later by {@code later} s. */
  public Readings shifted(double later) {
    return new Readings(
        Arrays.stream(seconds).map(second -> second + later).toArray(), celsius, watts);
  }

  /** The same readings, those from a time on later by {@code later} s. */
  Readings shiftedFrom(double second, double later) {
    return of(
        Arrays.stream(seconds).map(s -> s < second ? s : s + later).toArray(), celsius, watts);
  }

  /**
   * The readings without those that lie far from a line through their neighbours: slips of a
   * logger, single or a few in a row. Where rows are too few or too far apart to tell, all stay.
   */
  Readings withoutSlips() {
    return withoutSlips(second -> false);
  }

  /**
   * The same where some readings are known to be none.
   *
   * @param sure of a second
   */
  Readings withoutSlips(DoublePredicate sure) {
    int n = seconds.length;
    int[] kept =
        IntStream.range(0, n)
            .filter(
                i -> {
                  int from = Math.max(0, Math.min(n - NEIGHBOURS, i - NEIGHBOURS / 2));
                  int to = Math.min(n, from + NEIGHBOURS);
                  return to - from < NEIGHBOURS
                      || sure.test(seconds[i])
                      || seconds[to - 1] - seconds[from] > NEIGHBOUR_SECONDS
                      || fits(i, from, to);
                })
            .toArray();
    return kept.length == n
        ? this
        : new Readings(
            IntStream.of(kept).mapToDouble(i -> seconds[i]).toArray(),
            IntStream.of(kept).mapToDouble(i -> celsius[i]).toArray(),
            IntStream.of(kept).mapToDouble(i -> watts[i]).toArray());
  }

  /** Whether a reading is near the line of medians (Theil 1950, Sen 1968, from memory). */
  private boolean fits(int row, int from, int to) {
    int n = to - from;
    double[] slopes = new double[n * (n - 1) / 2];
    int k = 0;
    for (int i = from; i < to; i++) {
      for (int j = i + 1; j < to; j++) {
        slopes[k++] = (celsius[j] - celsius[i]) / (seconds[j] - seconds[i]);
      }
    }
    double slope = median(slopes);
    double[] level = new double[n];
    for (int i = 0; i < n; i++) {
      level[i] = celsius[from + i] - slope * (seconds[from + i] - seconds[row]);
    }
    double middle = median(level);
    double[] away = Arrays.stream(level).map(l -> Math.abs(l - middle)).toArray();
    return Math.abs(celsius[row] - middle) <= SLIP_KELVINS + SLIP_SPREADS * median(away);
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  private static final int NEIGHBOURS = 11;

  /** Over more than this a display is no line, s. */
  private static final double NEIGHBOUR_SECONDS = 900;

  private static final double SLIP_SPREADS = 6;

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
    return averaged(spanSecondsAt, second -> false);
  }

  /**
   * The same where some readings are known to be no slips.
   *
   * @param sure of a second
   */
  Readings averaged(DoubleUnaryOperator spanSecondsAt, DoublePredicate sure) {
    double[] t = new double[seconds.length];
    double[] c = new double[seconds.length];
    double[] w = new double[seconds.length];
    int n = 0;
    int i = 0;
    while (i < seconds.length) {
      double spanSeconds = spanSecondsAt.applyAsDouble(seconds[i]);
      double end = (Math.floor(seconds[i] / spanSeconds) + 1) * spanSeconds;
      int from = i;
      while (i < seconds.length && (i == from || seconds[i] < end)) {
        i++;
      }
      double[] limits = believable(from, i);
      double sumSeconds = 0;
      double sumCelsius = 0;
      double sumWatts = 0;
      int count = 0;
      int powers = 0;
      for (int r = from; r < i; r++) {
        if ((celsius[r] >= limits[0] && celsius[r] <= limits[1]) || sure.test(seconds[r])) {
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
