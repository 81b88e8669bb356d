package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The rows of a log in the order in which they happened. A file keeps that order, unless rows were
 * mixed up in it: where its times go back and then count on over times that were there already, a
 * clock was put back or a logger began again at zero; else a row stands in the wrong place.
 */
public final class RowOrder {

  /** A stretch shorter than this is rows in the wrong place, not a clock. */
  private static final int FEWEST_ROWS = 3;

  /** A clock is put back or starts again a few times at most. */
  private static final int MOST_STRETCHES = 6;

  /** As much of a stretch must lie over earlier times as this, s, to be told from mixed-up rows. */
  private static final double OVERLAP_SECONDS = 60;

  /**
   * Where a clock went back.
   *
   * @param row the first row after it, counted in the file from 0
   * @param fromSeconds the time of the row before, s
   * @param toSeconds the time of that row, s
   */
  public record Setback(int row, double fromSeconds, double toSeconds) {}

  private final int[] rows;
  private final double[] seconds;
  private final List<Setback> setbacks;
  private final int misplaced;

  private RowOrder(int[] rows, double[] seconds, List<Setback> setbacks, int misplaced) {
    this.rows = rows;
    this.seconds = seconds;
    this.setbacks = List.copyOf(setbacks);
    this.misplaced = misplaced;
  }

  /**
   * Orders rows.
   *
   * @param fileSeconds their times as the file has them, s, one at least
   */
  public static RowOrder of(double[] fileSeconds) {
    double[] seconds = fileSeconds.clone();
    List<Setback> setbacks = new ArrayList<>();
    int[] begins = stretches(fileSeconds);
    if (begins.length > 1
        && begins.length <= MOST_STRETCHES
        && clockWentBack(fileSeconds, begins)) {
      double step = usualStep(fileSeconds);
      double later = 0;
      for (int s = 1; s < begins.length; s++) {
        int row = begins[s];
        setbacks.add(new Setback(row, fileSeconds[row - 1], fileSeconds[row]));
        later += fileSeconds[row - 1] + step - fileSeconds[row];
        int end = s + 1 < begins.length ? begins[s + 1] : seconds.length;
        for (int i = row; i < end; i++) {
          seconds[i] += later;
        }
      }
    }
    int misplaced = -1;
    for (int i = 1; i < seconds.length && misplaced < 0; i++) {
      misplaced = seconds[i] < seconds[i - 1] ? i : -1;
    }
    Integer[] sorted = IntStream.range(0, seconds.length).boxed().toArray(Integer[]::new);
    Arrays.sort(sorted, Comparator.comparingDouble(i -> seconds[i]));
    int[] rows = new int[seconds.length];
    double[] rising = new double[seconds.length];
    int n = 0;
    for (int row : sorted) {
      if (n == 0 || seconds[row] > rising[n - 1]) {
        rows[n] = row;
        rising[n] = seconds[row];
        n++;
      }
    }
    return new RowOrder(Arrays.copyOf(rows, n), Arrays.copyOf(rising, n), setbacks, misplaced);
  }

  /** Where the times begin to rise anew. */
  private static int[] stretches(double[] seconds) {
    return IntStream.range(0, seconds.length)
        .filter(i -> i == 0 || seconds[i] < seconds[i - 1])
        .toArray();
  }

  private static boolean clockWentBack(double[] seconds, int[] begins) {
    for (int s = 0; s < begins.length; s++) {
      int end = s + 1 < begins.length ? begins[s + 1] : seconds.length;
      if (end - begins[s] < FEWEST_ROWS) {
        return false;
      }
      if (s > 0) {
        // what this stretch and the one before have in common
        double from = Math.max(seconds[begins[s]], seconds[begins[s - 1]]);
        double to = Math.min(seconds[end - 1], seconds[begins[s] - 1]);
        if (to - from < OVERLAP_SECONDS) {
          return false;
        }
      }
    }
    return true;
  }

  private static double usualStep(double[] seconds) {
    double[] steps =
        IntStream.range(1, seconds.length)
            .mapToDouble(i -> seconds[i] - seconds[i - 1])
            .filter(step -> step > 0)
            .sorted()
            .toArray();
    return steps[steps.length / 2];
  }

  /** Rows of the file, counted from 0, as they happened; those of a time already there are out. */
  public int[] rows() {
    return rows.clone();
  }

  /** Their times, s, rising; after a clock went back they count on from the row before. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** Where the clock went back. */
  public List<Setback> setbacks() {
    return setbacks;
  }

  /** The first row that stands in the wrong place; -1 if there is none. */
  public int misplaced() {
    return misplaced;
  }
}
