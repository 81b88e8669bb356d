package org.heatwright.inspect;

import org.heatwright.schedule.Ramp;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/** How findings and reasons write numbers: at most one decimal above 1, with the unit. */
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

  /** "12 K" or "22 °F": a difference in whole degrees, rounded up, where more is the worse. */
  public static String differenceUp(double kelvins, TemperatureUnit unit) {
    return difference(Math.ceil(unit.value(TemperatureChange.ofKelvins(kelvins)) - 1e-6), unit);
  }

  /** The same rounded down, where less is the worse: a margin. */
  public static String differenceDown(double kelvins, TemperatureUnit unit) {
    return difference(Math.floor(unit.value(TemperatureChange.ofKelvins(kelvins)) + 1e-6), unit);
  }

  private static String difference(double whole, TemperatureUnit unit) {
    return "%.0f %s".formatted(whole, unit.differenceSymbol());
  }

  /** At most one decimal, three below 1, so that a slow rate does not read as none. */
  public static String number(double value) {
    double parts = Math.abs(value) < 1 ? 1000 : 10;
    double rounded = Math.rint(value * parts) / parts;
    return rounded == Math.rint(rounded)
        ? Long.toString(Math.round(rounded))
        : Double.toString(rounded);
  }
}
