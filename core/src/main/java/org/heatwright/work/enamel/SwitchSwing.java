package org.heatwright.work.enamel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.heatwright.forecast.SessionPieces;

/**
 * Parts the openings of a door from the swing of a switch, which repeats itself at one heat:
 * openings are far steeper and deeper.
 */
final class SwitchSwing {

  // Openings are so many times as steep and deep as the swing is in the middle, and by so much
  // steeper than the steepest swing. Our estimates.
  private static final double FACTOR = 1.5;
  private static final double STEP_FACTOR = 1.2;
  private static final int FEWEST_SWINGS = 3;
  private static final double LEVEL_KELVINS = 80;

  /** The rate of a fall is looked at over so long at least, s. */
  private static final double RATE_SECONDS = 10;

  private SwitchSwing() {}

  /**
   * How steep each dip must be to be an opening, K/s; infinite where dips of its heat, and of
   * colder ones, are of one kind.
   *
   * @param dips in order
   * @param seconds rising, s
   * @param celsius the reading at each
   */
  static double[] least(List<DoorDips.Dip> dips, double[] seconds, double[] celsius) {
    List<List<DoorDips.Dip>> levels = levels(dips);
    double[] apart = levels.stream().mapToDouble(l -> apart(l, seconds, celsius)).toArray();
    return levels.stream()
        .flatMapToDouble(
            level -> {
              // What parts them at one heat does so where it is colder, too: a switch swings less.
              double least =
                  IntStream.range(0, apart.length)
                      .filter(
                          i -> beforeCelsius(levels.get(i)) >= beforeCelsius(level) - LEVEL_KELVINS)
                      .mapToDouble(i -> apart[i])
                      .min()
                      .orElse(Double.POSITIVE_INFINITY);
              return level.stream().mapToDouble(dip -> least);
            })
        .toArray();
  }

  /** Dips one after the other from about the same heat. */
  private static List<List<DoorDips.Dip>> levels(List<DoorDips.Dip> dips) {
    List<List<DoorDips.Dip>> levels = new ArrayList<>();
    for (DoorDips.Dip dip : dips) {
      if (levels.isEmpty()
          || Math.abs(beforeCelsius(levels.get(levels.size() - 1)) - dip.beforeCelsius())
              > LEVEL_KELVINS) {
        levels.add(new ArrayList<>());
      }
      levels.get(levels.size() - 1).add(dip);
    }
    return levels;
  }

  private static double beforeCelsius(List<DoorDips.Dip> level) {
    return level.get(0).beforeCelsius();
  }

  /**
   * The lowest clear step in how steep the dips are above which they are far steeper and deeper
   * than the swing, K/s; infinite where the dips are of one kind.
   */
  private static double apart(List<DoorDips.Dip> dips, double[] seconds, double[] celsius) {
    int n = dips.size();
    if (n < SessionPieces.FEWEST_OPENINGS + FEWEST_SWINGS) {
      return Double.POSITIVE_INFINITY;
    }
    List<Steep> sorted =
        dips.stream()
            .map(dip -> new Steep(dip, steepest(dip, seconds, celsius)))
            .sorted(Comparator.comparingDouble(Steep::kelvinsPerSecond))
            .toList();
    List<DoorDips.Dip> inOrder = sorted.stream().map(Steep::dip).toList();
    for (int i = FEWEST_SWINGS; i <= n - SessionPieces.FEWEST_OPENINGS; i++) {
      double above = sorted.get(i).kelvinsPerSecond();
      double below = sorted.get(i - 1).kelvinsPerSecond();
      double swing = sorted.get(i / 2).kelvinsPerSecond();
      boolean deeper =
          middleFall(inOrder.subList(i, n)) >= FACTOR * middleFall(inOrder.subList(0, i));
      if (above >= STEP_FACTOR * below && above >= FACTOR * swing && deeper) {
        return Math.sqrt(above * below);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** A dip and how steep it is at its steepest. */
  private record Steep(DoorDips.Dip dip, double kelvinsPerSecond) {}

  /** How far the middle one of them falls, K. */
  static double middleFall(List<DoorDips.Dip> dips) {
    double[] falls = dips.stream().mapToDouble(DoorDips.Dip::fallKelvins).sorted().toArray();
    return falls[falls.length / 2];
  }

  /** How fast a dip falls at its steepest, K/s. */
  static double steepest(DoorDips.Dip dip, double[] seconds, double[] celsius) {
    return IntStream.range(row(seconds, dip.openSeconds()), row(seconds, dip.shutSeconds()))
        .mapToDouble(i -> kelvinsPerSecond(seconds, celsius, i))
        .max()
        .orElse(0);
  }

  /** The fall from a row on, over ten seconds at least, K/s. */
  static double kelvinsPerSecond(double[] seconds, double[] celsius, int row) {
    int to = row + 1;
    while (to + 1 < seconds.length && seconds[to] - seconds[row] < RATE_SECONDS) {
      to++;
    }
    return (celsius[row] - celsius[to]) / (seconds[to] - seconds[row]);
  }

  /** The row of a time, or the first one behind it. */
  static int row(double[] seconds, double second) {
    int found = Arrays.binarySearch(seconds, second);
    return Math.min(seconds.length - 1, found < 0 ? -found - 1 : found);
  }
}
