package org.heatwright.inspect;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.forecast.Forecast;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;

/**
 * A schedule and what is known about where it will run. The more is known, the more is checked.
 *
 * @param schedule what is to be fired
 * @param kiln the kiln, if known
 * @param keypad the keypad, if known
 * @param demands what the work asks, if known
 * @param forecast a forecast of this schedule in this kiln, if made
 */
public record Inspection(
    Schedule schedule,
    Optional<Kiln> kiln,
    Optional<Keypad> keypad,
    Optional<Demands> demands,
    Optional<Forecast> forecast) {

  public Inspection {
    Objects.requireNonNull(schedule, "schedule");
    Objects.requireNonNull(kiln, "kiln");
    Objects.requireNonNull(keypad, "keypad");
    Objects.requireNonNull(demands, "demands");
    Objects.requireNonNull(forecast, "forecast");
    forecast.ifPresent(
        f -> {
          if (f.segments().size() != schedule.segments().size()) {
            throw new IllegalArgumentException(
                "The forecast (%d segments) is not one of this schedule (%d segments)."
                    .formatted(f.segments().size(), schedule.segments().size()));
          }
        });
  }

  /** The schedule alone. */
  public static Inspection of(Schedule schedule) {
    return new Inspection(
        schedule, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  public Inspection in(Kiln newKiln) {
    return new Inspection(schedule, Optional.of(newKiln), keypad, demands, forecast);
  }

  public Inspection on(Keypad newKeypad) {
    return new Inspection(schedule, kiln, Optional.of(newKeypad), demands, forecast);
  }

  public Inspection forWork(Demands newDemands) {
    return new Inspection(schedule, kiln, keypad, Optional.of(newDemands), forecast);
  }

  public Inspection with(Forecast newForecast) {
    return new Inspection(schedule, kiln, keypad, demands, Optional.of(newForecast));
  }
}
