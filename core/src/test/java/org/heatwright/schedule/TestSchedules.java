package org.heatwright.schedule;

import java.time.Duration;
import java.util.List;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** Schedules that several tests fire. */
public final class TestSchedules {

  private TestSchedules() {}

  /** A ramp in K/h (0: as fast as it goes), a target in °C and a hold. */
  public static Segment segment(double rate, double target, int minutes) {
    return new Segment(
        rate == 0 ? Ramp.fastest() : Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        Temperature.ofCelsius(target),
        Duration.ofMinutes(minutes));
  }

  /** In °C, by the name "burnout". */
  public static Schedule of(Segment... segments) {
    return Schedule.of("burnout", TemperatureUnit.CELSIUS, List.of(segments));
  }

  /** A burnout that small moulds stand and large ones do not dry in. */
  public static Schedule burnout() {
    return of(
        segment(120, 150, 120),
        segment(120, 370, 120),
        segment(180, 730, 180),
        segment(200, 500, 120));
  }
}
