package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.SeenDisplay;

/**
 * What the display of an on-off kiln says while its switch swings it: means over several whole
 * swings. When a switch turns is soon chance, so a simulated swing is at another place than the
 * log's after a few of them, and means over less would be fitted to where it happens to be. The
 * weights of a mean fall off to both sides, so that of the swing itself a hundredth is left where
 * the simulated one is a little longer or shorter.
 */
final class SwingMeans {

  /** So many swings to either side. */
  private static final int SWINGS = 3;

  /** With fewer to either side than this there is no mean. */
  private static final int FEWEST = 2;

  /** A longer one is no swing of a switch, s. Our estimate. */
  static final double LONGEST_SECONDS = 1800;

  /** What happened to the kiln still shows so long after it, s. Our estimate. */
  private static final double AFTER_SECONDS = 300;

  /** A mean is taken over no more readings than this. */
  private static final int MOST_READINGS = 80;

  private final List<double[]> stretches;
  private final List<Mean> means;
  private final double[] lowest;

  private SwingMeans(List<double[]> stretches, List<Mean> means, double[] lowest) {
    this.stretches = stretches;
    this.means = means;
    this.lowest = lowest;
  }

  /** When the display began to rise, each time, s. */
  double[] lowestSeconds() {
    return lowest;
  }

  /**
   * One mean.
   *
   * @param second the middle of it, s
   * @param fromSecond where it begins, s
   * @param toSecond where it ends, s
   * @param seconds its readings
   * @param weight of each; their sum is one
   * @param celsius what the display said in the mean
   * @param watts what the meter said, plainly; not a number where none did
   */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  record Mean(
      double second,
      double fromSecond,
      double toSecond,
      double[] seconds,
      double[] weight,
      double celsius,
      double watts) {

    /** From its first reading to its last, s. */
    double lengthSeconds() {
      return toSecond - fromSecond;
    }

    /**
     * The same mean of a simulated display, °C.
     *
     * @param clock when it was where the log was, s
     */
    double of(FiringRun run, DoubleUnaryOperator clock) {
      double sum = 0;
      for (int i = 0; i < seconds.length; i++) {
        sum += weight[i] * run.readingCelsiusAt(clock.applyAsDouble(seconds[i]));
      }
      return sum;
    }
  }

  /** The means of a firing; none where its display does not swing. */
  static SwingMeans of(LoggedFiring firing) {
    List<double[]> stretches = new ArrayList<>();
    List<Mean> means = new ArrayList<>();
    SeenDisplay display = new SeenDisplay(firing.readings().seconds(), firing.readings().celsius());
    double[] all = display.lowestSeconds();
    double[] highest = display.highestSeconds();
    for (double[] lowest : stretches(firing, all)) {
      int swings = lowest.length - 1;
      int side = Math.min(SWINGS, swings / 2);
      if (side < FEWEST) {
        continue;
      }
      stretches.add(new double[] {before(highest, lowest[0]), lowest[swings]});
      int first = side + (swings - 2 * side) % side / 2;
      boolean metered = true;
      for (int middle = first; middle + side <= swings; middle += side) {
        means.add(
            mean(
                firing.readings(),
                lowest[middle - side],
                lowest[middle],
                lowest[middle + side],
                metered));
        metered = !metered;
      }
    }
    return new SwingMeans(stretches, means, all);
  }

  /** No means. */
  static SwingMeans none() {
    return new SwingMeans(List.of(), List.of(), new double[0]);
  }

  List<Mean> means() {
    return means;
  }

  /** The mean with its middle at a second, if there is one. */
  Optional<Mean> about(double second) {
    for (Mean mean : means) {
      if (mean.second() == second) {
        return Optional.of(mean);
      }
    }
    return Optional.empty();
  }

  /** Whether a reading is in them and nowhere else. */
  boolean covers(double second) {
    return stretches.stream().anyMatch(s -> second >= s[0] && second < s[1]);
  }

  /**
   * From where on a reading before the first swing tells when the switch turned, and no more of the
   * kiln: half of the way down to it.
   */
  private static double before(double[] highest, double lowest) {
    double last = lowest;
    for (double one : highest) {
      if (one < lowest) {
        last = one;
      }
    }
    return (last + lowest) / 2;
  }

  /** Where swings begin, one after the other, each with the end of the last. */
  private static List<double[]> stretches(LoggedFiring firing, double[] lowest) {
    List<double[]> all = new ArrayList<>();
    // The first rise is no swing: where it begins is known.
    int from = 1;
    for (int i = 1; i < lowest.length; i++) {
      boolean last = i + 1 == lowest.length;
      if (last
          || lowest[i + 1] - lowest[i] > LONGEST_SECONDS
          || disturbed(firing, lowest[i], lowest[i + 1])) {
        all.add(Arrays.copyOfRange(lowest, from, i + 1));
        from = i + 1;
      }
    }
    return all;
  }

  private static boolean disturbed(LoggedFiring firing, double from, double to) {
    for (Disturbance event : firing.happenings()) {
      if (event.atSeconds() < to
          && event.atSeconds() + event.lengthSeconds() + AFTER_SECONDS > from) {
        return true;
      }
    }
    return IntStream.range(0, firing.readings().size())
        .mapToDouble(firing.readings()::second)
        .filter(second -> second >= from && second <= to)
        .anyMatch(firing.session()::touches);
  }

  private static Mean mean(
      Readings readings, double from, double middle, double to, boolean metered) {
    int first = readings.firstFrom(from);
    int after = readings.firstFrom(to);
    int step = Math.max(1, (after - first) / MOST_READINGS);
    int n = (after - first + step - 1) / step;
    double[] seconds = new double[n];
    double[] weight = new double[n];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double second = readings.second(first + i * step);
      seconds[i] = second;
      weight[i] =
          second < middle ? (second - from) / (middle - from) : (to - second) / (to - middle);
      sum += weight[i];
    }
    double celsius = 0;
    for (int i = 0; i < n; i++) {
      weight[i] /= sum;
      celsius += weight[i] * readings.celsius(first + i * step);
    }
    double watts =
        metered
            ? IntStream.range(first, after)
                .mapToDouble(readings::watts)
                .filter(Double::isFinite)
                .average()
                .orElse(Double.NaN)
            : Double.NaN;
    return new Mean(middle, from, to, seconds, weight, celsius, watts);
  }
}
