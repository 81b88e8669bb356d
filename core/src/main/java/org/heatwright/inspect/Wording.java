package org.heatwright.inspect;

import org.heatwright.schedule.Ramp;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** How findings and reasons write numbers: at most one decimal, with the unit. */
public final class Wording {

  private Wording() {}

  /** "732.2 °C", "500 °C". */
  public static String of(Temperature temperature, TemperatureUnit unit) {
    return number(unit.value(temperature)) + " " + unit.symbol();
  }

  /** "120 °C/h". */
  public static String of(HeatingRate rate, TemperatureUnit unit) {
    return number(unit.value(rate)) + " " + unit.symbol() + "/h";
  }

  /** "120 °C/h" or "fastest". */
  public static String of(Ramp ramp, TemperatureUnit unit) {
    return ramp.rate().map(r -> of(r, unit)).orElse("fastest");
  }

  /** At most one decimal, none if it is zero. */
  public static String number(double value) {
    double tenths = Math.rint(value * 10) / 10;
    return tenths == Math.rint(tenths)
        ? Long.toString(Math.round(tenths))
        : Double.toString(tenths);
  }
}
