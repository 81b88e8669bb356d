package org.heatwright.kiln;

import java.util.stream.IntStream;

/**
 * What the display of an on-off kiln said in a firing, without noise where it hardly moves, and
 * where it turned. Worked out once; any number of simulations may follow it ({@link
 * FiringSimulation#follow}). Immutable. The constants are our estimates, tried on kilns simulated
 * apart.
 */
public final class SeenDisplay {

  /** A smaller change of direction is noise. */
  private static final double TURN_KELVINS = 3;

  // A stretch longer than this, s, and than so many usual steps has no readings.
  private static final double GAP_SECONDS = 90;
  private static final double GAP_STEPS = 5;

  // So far to either side it is averaged, s, where it moves by no more than so many kelvins.
  private static final double ABOUT_SECONDS = 25;
  private static final double SLOW_KELVINS = 5;

  /** Rows, s from the program's start; not to be written to, like all that follows. */
  final double[] seconds;

  /** What it said, °C. */
  final double[] celsius;

  /** 1 where it begins to fall, -1 where it begins to rise, else 0. */
  final int[] turns;

  /** Where it turns: when it has gone back by {@link #TURN_KELVINS}, s. */
  final double[] back;

  /** The rows after which there is none for long. */
  final int[] gaps;

  /**
   * @param seconds s from the program's start, rising, one at least; straight lines between
   * @param celsius what the display said
   */
  public SeenDisplay(double[] seconds, double[] celsius) {
    this.seconds = seconds.clone();
    this.celsius = smoothed(seconds, celsius);
    this.turns = new int[seconds.length];
    this.back = new double[seconds.length];
    double[] steps =
        IntStream.range(1, seconds.length)
            .mapToDouble(i -> seconds[i] - seconds[i - 1])
            .sorted()
            .toArray();
    double least = shortestGapSeconds(steps.length == 0 ? 0 : steps[steps.length / 2]);
    this.gaps =
        IntStream.range(0, steps.length).filter(i -> seconds[i + 1] - seconds[i] > least).toArray();
    turn();
  }

  /**
   * A step longer than this is a gap of the log, s.
   *
   * @param usualStepSeconds of the log, s
   */
  public static double shortestGapSeconds(double usualStepSeconds) {
    return Math.max(GAP_SECONDS, GAP_STEPS * usualStepSeconds);
  }

  /** When it began to rise, each after it had fallen or stood, s. */
  public double[] lowestSeconds() {
    return turned(-1);
  }

  /** When it began to fall, each after it had risen or stood, s. */
  public double[] highestSeconds() {
    return turned(1);
  }

  private double[] turned(int way) {
    return IntStream.range(0, seconds.length)
        .filter(i -> turns[i] == way)
        .mapToDouble(i -> seconds[i])
        .toArray();
  }

  /** Where it hardly moves, noise and rounding are taken off: a controller sees finer. */
  private static double[] smoothed(double[] seconds, double[] celsius) {
    double[] all = celsius.clone();
    int from = 0;
    int to = 0;
    for (int i = 0; i < all.length; i++) {
      while (seconds[from] < seconds[i] - ABOUT_SECONDS) {
        from++;
      }
      while (to < all.length && seconds[to] <= seconds[i] + ABOUT_SECONDS) {
        to++;
      }
      int side = Math.min(i - from, to - 1 - i);
      double least = celsius[i];
      double most = celsius[i];
      double sum = 0;
      for (int k = i - side; k <= i + side; k++) {
        least = Math.min(least, celsius[k]);
        most = Math.max(most, celsius[k]);
        sum += celsius[k];
      }
      if (most - least <= SLOW_KELVINS) {
        all[i] = sum / (2 * side + 1);
      }
    }
    return all;
  }

  /** Finds where it turns. */
  private void turn() {
    int highest = 0;
    int lowest = 0;
    int way = 0;
    for (int i = 1; i < celsius.length; i++) {
      highest = celsius[i] >= celsius[highest] ? i : highest;
      lowest = celsius[i] <= celsius[lowest] ? i : lowest;
      if (way >= 0 && celsius[i] < celsius[highest] - TURN_KELVINS) {
        turns[highest] = 1;
        back[highest] = passing(i, celsius[highest] - TURN_KELVINS);
        way = -1;
        lowest = i;
      } else if (way <= 0 && celsius[i] > celsius[lowest] + TURN_KELVINS) {
        turns[lowest] = -1;
        back[lowest] = passing(i, celsius[lowest] + TURN_KELVINS);
        way = 1;
        highest = i;
      }
    }
  }

  /** When it passes a level just before a row, s. */
  private double passing(int row, double level) {
    double share = (level - celsius[row - 1]) / (celsius[row] - celsius[row - 1]);
    return seconds[row - 1] + share * (seconds[row] - seconds[row - 1]);
  }
}
