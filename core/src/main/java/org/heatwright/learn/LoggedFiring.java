package org.heatwright.learn;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * A firing that was watched: by a logger, or by a person with a clock.
 *
 * @param name what to call it when something is told about it
 * @param schedule what ran
 * @param conditions what was so on that day
 * @param charge what stood in the kiln
 * @param readings what the display showed
 * @param session openings of the door that the log tells or shows
 * @param clockSeconds how far the clock of the readings may be off the program's, one standard
 *     deviation of what is usual, s
 */
public record LoggedFiring(
    String name,
    Schedule schedule,
    FiringConditions conditions,
    Charge charge,
    Readings readings,
    DoorSession session,
    double clockSeconds) {

  /** A logger and a program are started within a breath, standard deviation, s. Estimate. */
  private static final double USUAL_CLOCK_SECONDS = 1;

  /** The same of a person who writes down minutes. Estimate. */
  private static final double MINUTE_CLOCK_SECONDS = 20;

  /** When an on-off kiln first switches on after its program began: seconds, mostly. Estimate. */
  private static final double SWITCHED_CLOCK_SECONDS = 10;

  /**
   * What is far beyond a breath is rare and not out of the question: at three scores the clock is
   * off by half a minute, at five by more than two. Estimate.
   */
  private static final double FAR_CLOCK_SECONDS = 1;

  /** A firing whose readings count from the program's start, as well as a person can do it. */
  public LoggedFiring(
      String name,
      Schedule schedule,
      FiringConditions conditions,
      Charge charge,
      Readings readings) {
    this(
        name,
        schedule,
        conditions,
        charge,
        readings,
        DoorSession.NONE,
        readings.toTheMinute() ? MINUTE_CLOCK_SECONDS : USUAL_CLOCK_SECONDS);
  }

  public LoggedFiring {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(readings, "readings");
  }

  /** The same firing under another name. */
  public LoggedFiring named(String other) {
    return new LoggedFiring(other, schedule, conditions, charge, readings, session, clockSeconds);
  }

  /** The same firing with openings of the door that its log tells or shows. */
  public LoggedFiring with(DoorSession openings) {
    return new LoggedFiring(name, schedule, conditions, charge, readings, openings, clockSeconds);
  }

  /** The same firing with other readings. */
  LoggedFiring with(Readings other) {
    return new LoggedFiring(name, schedule, conditions, charge, other, session, clockSeconds);
  }

  /** The same firing on another day. */
  LoggedFiring with(FiringConditions day) {
    return new LoggedFiring(name, schedule, day, charge, readings, session, clockSeconds);
  }

  /** The same firing with another trust in its clock. */
  LoggedFiring clockWithin(double seconds) {
    return new LoggedFiring(name, schedule, conditions, charge, readings, session, seconds);
  }

  /**
   * The same firing in a kiln: an on-off one may switch on some time after its program began, which
   * is to a fit as if the log's clock were off.
   */
  LoggedFiring in(Kiln kiln) {
    return kiln.control().kind() == Control.Kind.ON_OFF
        ? clockWithin(Math.max(SWITCHED_CLOCK_SECONDS, clockSeconds))
        : this;
  }

  /** A display that moves by less tells nothing of its kiln, K. Our estimate. */
  private static final double LEAST_MOVED_KELVINS = 40;

  private static final int FEWEST_READINGS = 3;

  /**
   * Why its log teaches nothing of a kiln, as the rest of a sentence: too few readings, or a
   * display that stands still. Empty where it may teach.
   */
  public Optional<String> silent() {
    int count = readings.size();
    if (count < FEWEST_READINGS) {
      return Optional.of(
          "it has %d %s; a log teaches with %d or more."
              .formatted(count, count == 1 ? "reading" : "readings", FEWEST_READINGS));
    }
    double low = Arrays.stream(readings.celsius()).min().orElseThrow();
    double high = Arrays.stream(readings.celsius()).max().orElseThrow();
    if (high - low < LEAST_MOVED_KELVINS) {
      TemperatureUnit unit = schedule.unit();
      return Optional.of(
          "its display stays between %.0f and %.0f %s; a log teaches where the kiln heats or cools."
              .formatted(
                  unit.value(Temperature.ofCelsius(low)),
                  unit.value(Temperature.ofCelsius(high)),
                  unit.symbol()));
    }
    return Optional.empty();
  }

  /** How far the program's clock is ahead of the readings' at a score of it, s. */
  double clockAheadSeconds(double score) {
    double far = clockSeconds < MINUTE_CLOCK_SECONDS ? FAR_CLOCK_SECONDS : 0;
    return clockSeconds * score + far * score * score * score;
  }

  /**
   * The day with the openings that the log tells or shows and with the cold pieces that went in:
   * pieces of a usual heat, and openings of a likely length where the log does not tell it.
   */
  public FiringConditions asItWas() {
    return Evidence.opened(this, conditions, 0, 0);
  }

  /** Everything that is known to have happened to the kiln. */
  List<Disturbance> happenings() {
    return conditions.with(session.more(conditions, 1), conditions.pieces()).disturbances();
  }

  /** Readings without slips of the logger; where the door was opened there are none. */
  Readings slipless() {
    return session.isEmpty() ? readings.withoutSlips() : readings.withoutSlips(session::touches);
  }
}
