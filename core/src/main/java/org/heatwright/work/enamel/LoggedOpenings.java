package org.heatwright.work.enamel;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.forecast.SessionPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.learn.DoorSession;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;

/**
 * A logged firing with the openings of the door that its log tells or shows, for learning: an
 * opening is then neither a fault nor the kiln's own loss.
 *
 * <p>What the log says of a door is believed. Read off the display alone, openings count as such
 * only where there are {@link SessionPieces#FEWEST_OPENINGS} or more of them, each a fall of {@link
 * #LEAST_READ_KELVINS} that is steeper than a kiln cools with its elements off, or than its switch
 * makes it swing: one alone may as well be a tip that slipped or a relay that stuck.
 */
public final class LoggedOpenings {

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
      List<Disturbance> doors = SessionPieces.openings(firing.conditions().disturbances());
      if (doors.size() >= SessionPieces.FEWEST_OPENINGS) {
        return firing.with(stated(doors, readings));
      }
      dips = steep(dips, seconds, celsius);
      if (dips.size() < SessionPieces.FEWEST_OPENINGS
          || SwitchSwing.middleFall(dips) < MIDDLE_READ_KELVINS) {
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
              : dips.size() >= SessionPieces.FEWEST_OPENINGS && i + 1 < dips.size();
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

  /** The openings that the day states, with how far the log's display fell at each. */
  private static DoorSession stated(List<Disturbance> doors, Readings readings) {
    List<DoorSession.Opening> openings = new ArrayList<>();
    for (int i = 0; i < doors.size(); i++) {
      Disturbance door = doors.get(i);
      openings.add(
          new DoorSession.Opening(
              door.atSeconds(),
              door.lengthSeconds(),
              true,
              i + 1 < doors.size(),
              fall(readings, door)));
    }
    return new DoorSession(openings);
  }

  private static double fall(Readings readings, Disturbance door) {
    double before = Double.NaN;
    double lowest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < readings.size(); i++) {
      if (readings.second(i) <= door.atSeconds()) {
        before = readings.celsius(i);
      } else if (readings.second(i)
          <= door.atSeconds() + door.lengthSeconds() + DoorDips.FALL_WITHIN_SECONDS) {
        lowest = Math.min(lowest, readings.celsius(i));
      }
    }
    return before > lowest && Double.isFinite(lowest) ? before - lowest : 0;
  }

  /** The dips that fall as only an open door lets them, from where they begin to. */
  private static List<DoorDips.Dip> steep(
      List<DoorDips.Dip> dips, double[] seconds, double[] celsius) {
    double surely =
        Math.max(
            LEAST_READ_KELVINS_PER_SECOND,
            STEEPER_FACTOR * usualKelvinsPerSecond(seconds, celsius));
    double[] least = SwitchSwing.least(dips, seconds, celsius);
    List<DoorDips.Dip> steep = new ArrayList<>();
    for (int i = 0; i < dips.size(); i++) {
      begins(dips.get(i), Math.min(surely, least[i]), seconds, celsius).ifPresent(steep::add);
    }
    return steep;
  }

  /** A dip from where it falls so fast, if it does and far enough. */
  private static Optional<DoorDips.Dip> begins(
      DoorDips.Dip dip, double least, double[] seconds, double[] celsius) {
    int to = SwitchSwing.row(seconds, dip.shutSeconds());
    for (int i = SwitchSwing.row(seconds, dip.openSeconds()); i < to; i++) {
      if (SwitchSwing.kelvinsPerSecond(seconds, celsius, i) >= least) {
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

  /**
   * How fast the display usually falls where it does, while hot: noise, or a switch that is off.
   * Zero where it hardly ever falls.
   */
  private static double usualKelvinsPerSecond(double[] seconds, double[] celsius) {
    double[] rates =
        IntStream.range(0, seconds.length - 1)
            .filter(i -> celsius[i] >= DoorDips.LEAST_WORKING_CELSIUS)
            .mapToDouble(i -> SwitchSwing.kelvinsPerSecond(seconds, celsius, i))
            .toArray();
    double[] falling = Arrays.stream(rates).filter(rate -> rate > 0).sorted().toArray();
    return falling.length < HARDLY_SHARE * rates.length || falling.length == 0
        ? 0
        : falling[falling.length / 2];
  }
}
