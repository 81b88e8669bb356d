package org.heatwright.work.enamel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.learn.DoorSession;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;

/**
 * A logged firing with the openings of the door that its log tells or shows, for learning: an
 * opening is then neither a fault nor the kiln's own loss.
 *
 * <p>What the log says of a door is believed. Read off the display alone, openings count as such
 * only where there are {@link #FEWEST_READ} or more of them, each a fall of {@link
 * #LEAST_READ_KELVINS} that is steeper than a kiln cools with its elements off, or than its switch
 * makes it swing: one alone may as well be a tip that slipped or a relay that stuck.
 */
public final class LoggedOpenings {

  /** Fewer openings than this are not read off a display. Our choice. */
  public static final int FEWEST_READ = 3;

  /** A smaller fall is not read as an opening, K. Our estimate. */
  static final double LEAST_READ_KELVINS = 20;

  /** In the middle, the openings of a session make the display fall by more than a switch, K. */
  static final double MIDDLE_READ_KELVINS = 30;

  /** So fast falls no display of a kiln whose door is shut, K/s. Our estimate. */
  static final double LEAST_READ_KELVINS_PER_SECOND = 0.6;

  /** And not so many times as fast as it usually does in the same log. Our estimate. */
  static final double STEEPER_FACTOR = 5;

  /** A display that falls for less than this share of the time does not swing. Our estimate. */
  private static final double HARDLY_SHARE = 0.2;

  // The swing of a switch repeats itself at one heat: openings are so many times as steep and deep
  // as it is in the middle, and by so much steeper than the steepest swing. Our estimates.
  private static final double SWING_FACTOR = 1.5;
  private static final double SWING_STEP_FACTOR = 1.2;
  private static final int FEWEST_SWINGS = 3;
  private static final double LEVEL_KELVINS = 80;

  /** The rate of a fall is looked at over so long at least, s. */
  private static final double RATE_SECONDS = 10;

  private static final double SHORTEST_SECONDS = 5;

  private LoggedOpenings() {}

  /**
   * The firing with its openings.
   *
   * @param firing as logged
   * @param setpoint the setpoint at each reading, °C, or NaN where there is none
   * @param events what happened at each reading, or empty
   */
  public static LoggedFiring in(
      LoggedFiring firing, double[] setpoint, List<Optional<String>> events) {
    Readings readings = firing.readings();
    double[] seconds = readings.seconds();
    double[] celsius = readings.celsius();
    List<DoorDips.Dip> dips = DoorDips.everywhere(seconds, celsius, setpoint, events).dips();
    if (dips.stream().noneMatch(DoorDips.Dip::told)) {
      dips = steep(dips, seconds, celsius);
      if (dips.size() < FEWEST_READ || middleFall(dips) < MIDDLE_READ_KELVINS) {
        return firing;
      }
    }
    if (dips.isEmpty()) {
      return firing;
    }
    boolean named = dips.stream().anyMatch(dip -> !dip.what().isEmpty());
    List<DoorSession.Opening> openings = new ArrayList<>();
    for (int i = 0; i < dips.size(); i++) {
      DoorDips.Dip dip = dips.get(i);
      int shut = Arrays.binarySearch(seconds, dip.shutSeconds());
      boolean in =
          named
              ? !dip.what().startsWith(LoggedPieces.NOTHING_GOES_IN)
              // The last piece comes out, too; a door opened once or twice was looked into.
              : dips.size() >= FEWEST_READ && i + 1 < dips.size();
      openings.add(
          new DoorSession.Opening(
              dip.openSeconds(),
              Math.max(SHORTEST_SECONDS, dip.shutSeconds() - dip.openSeconds()),
              shut >= 0 && events.get(shut).filter(DoorDips::shuts).isPresent(),
              in,
              Math.max(0, dip.fallKelvins())));
    }
    return firing.with(new DoorSession(openings));
  }

  /** The dips that fall as only an open door lets them, from where they begin to. */
  private static List<DoorDips.Dip> steep(
      List<DoorDips.Dip> dips, double[] seconds, double[] celsius) {
    double surely =
        Math.max(
            LEAST_READ_KELVINS_PER_SECOND,
            STEEPER_FACTOR * usualKelvinsPerSecond(seconds, celsius));
    List<DoorDips.Dip> steep = new ArrayList<>();
    List<List<DoorDips.Dip>> levels = levels(dips);
    double[] apart = levels.stream().mapToDouble(l -> apart(l, seconds, celsius)).toArray();
    for (List<DoorDips.Dip> level : levels) {
      // What parts them at one heat does so where it is colder, too: a switch swings less there.
      double least =
          IntStream.range(0, apart.length)
              .filter(i -> beforeCelsius(levels.get(i)) >= beforeCelsius(level) - LEVEL_KELVINS)
              .mapToDouble(i -> apart[i])
              .reduce(surely, Math::min);
      for (DoorDips.Dip dip : level) {
        begins(dip, least, seconds, celsius).ifPresent(steep::add);
      }
    }
    return steep;
  }

  /** A dip from where it falls so fast, if it does and far enough. */
  private static Optional<DoorDips.Dip> begins(
      DoorDips.Dip dip, double least, double[] seconds, double[] celsius) {
    int to = at(seconds, dip.shutSeconds());
    for (int i = at(seconds, dip.openSeconds()); i < to; i++) {
      if (kelvinsPerSecond(seconds, celsius, i) >= least) {
        return celsius[i] - dip.lowCelsius() < LEAST_READ_KELVINS
                || dip.shutSeconds() - seconds[i] > DoorDips.FALL_WITHIN_SECONDS
            ? Optional.empty()
            : Optional.of(
                new DoorDips.Dip(
                    seconds[i],
                    dip.shutSeconds(),
                    dip.levelCelsius(),
                    celsius[i],
                    dip.lowCelsius(),
                    dip.backSeconds(),
                    false,
                    ""));
      }
    }
    return Optional.empty();
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
   * What parts the openings from the swing of a switch, which repeats itself: the lowest clear step
   * in how steep the dips are above which they are far steeper and deeper than the swing.
   *
   * @return K/s; infinite where the dips are of one kind
   */
  private static double apart(List<DoorDips.Dip> dips, double[] seconds, double[] celsius) {
    int n = dips.size();
    if (n < FEWEST_READ + FEWEST_SWINGS) {
      return Double.POSITIVE_INFINITY;
    }
    List<Steep> sorted =
        dips.stream()
            .map(dip -> new Steep(dip, steepest(dip, seconds, celsius)))
            .sorted(Comparator.comparingDouble(Steep::kelvinsPerSecond))
            .toList();
    List<DoorDips.Dip> inOrder = sorted.stream().map(Steep::dip).toList();
    for (int i = FEWEST_SWINGS; i <= n - FEWEST_READ; i++) {
      double above = sorted.get(i).kelvinsPerSecond();
      double below = sorted.get(i - 1).kelvinsPerSecond();
      double swing = sorted.get(i / 2).kelvinsPerSecond();
      boolean deeper =
          middleFall(inOrder.subList(i, n)) >= SWING_FACTOR * middleFall(inOrder.subList(0, i));
      if (above >= SWING_STEP_FACTOR * below && above >= SWING_FACTOR * swing && deeper) {
        return Math.sqrt(above * below);
      }
    }
    return Double.POSITIVE_INFINITY;
  }

  /** A dip and how steep it is at its steepest. */
  private record Steep(DoorDips.Dip dip, double kelvinsPerSecond) {}

  private static double middleFall(List<DoorDips.Dip> dips) {
    double[] falls = dips.stream().mapToDouble(DoorDips.Dip::fallKelvins).sorted().toArray();
    return falls[falls.length / 2];
  }

  private static double steepest(DoorDips.Dip dip, double[] seconds, double[] celsius) {
    return IntStream.range(at(seconds, dip.openSeconds()), at(seconds, dip.shutSeconds()))
        .mapToDouble(i -> kelvinsPerSecond(seconds, celsius, i))
        .max()
        .orElse(0);
  }

  /**
   * How fast the display usually falls where it does, while hot: noise, or a switch that is off.
   * Zero where it hardly ever falls.
   */
  private static double usualKelvinsPerSecond(double[] seconds, double[] celsius) {
    double[] rates =
        IntStream.range(0, seconds.length - 1)
            .filter(i -> celsius[i] >= DoorDips.LEAST_WORKING_CELSIUS)
            .mapToDouble(i -> kelvinsPerSecond(seconds, celsius, i))
            .toArray();
    double[] falling = Arrays.stream(rates).filter(rate -> rate > 0).sorted().toArray();
    return falling.length < HARDLY_SHARE * rates.length || falling.length == 0
        ? 0
        : falling[falling.length / 2];
  }

  /** The fall from a row on, over {@link #RATE_SECONDS} at least, K/s. */
  private static double kelvinsPerSecond(double[] seconds, double[] celsius, int row) {
    int to = row + 1;
    while (to + 1 < seconds.length && seconds[to] - seconds[row] < RATE_SECONDS) {
      to++;
    }
    return (celsius[row] - celsius[to]) / (seconds[to] - seconds[row]);
  }

  private static int at(double[] seconds, double second) {
    int found = Arrays.binarySearch(seconds, second);
    return Math.min(seconds.length - 1, found < 0 ? -found - 1 : found);
  }
}
