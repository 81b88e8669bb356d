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
 */
public record LoggedFiring(
    String name, Schedule schedule, FiringConditions conditions, Charge charge, Readings readings) {

  public LoggedFiring {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(readings, "readings");
  }
}
