package org.heatwright.learn;

import java.util.Objects;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.schedule.Schedule;

/**
 * A firing that was watched: by a logger, or by a person with a clock.
 *
 * @param name what to call it when something is told about it
 * @param schedule what ran
 * @param conditions what was so on that day
 * @param charge what stood in the kiln
 * @param readings what the display showed
 * @param clockSeconds how far the clock of the readings may be off the program's, one standard
 *     deviation, s
 */
public record LoggedFiring(
    String name,
    Schedule schedule,
    FiringConditions conditions,
    Charge charge,
    Readings readings,
    double clockSeconds) {

  /**
   * A person starts a logger and a program a few breaths apart, standard deviation, s. Estimate.
   */
  private static final double USUAL_CLOCK_SECONDS = 20;

  /** A firing whose readings count from the program's start, as well as a person can do it. */
  public LoggedFiring(
      String name,
      Schedule schedule,
      FiringConditions conditions,
      Charge charge,
      Readings readings) {
    this(name, schedule, conditions, charge, readings, USUAL_CLOCK_SECONDS);
  }

  public LoggedFiring {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(readings, "readings");
  }

  /** The same firing with other readings. */
  LoggedFiring with(Readings other) {
    return new LoggedFiring(name, schedule, conditions, charge, other, clockSeconds);
  }

  /** The same firing on another day. */
  LoggedFiring with(FiringConditions day) {
    return new LoggedFiring(name, schedule, day, charge, readings, clockSeconds);
  }

  /** The same firing with another trust in its clock. */
  LoggedFiring clockWithin(double seconds) {
    return new LoggedFiring(name, schedule, conditions, charge, readings, seconds);
  }
}
