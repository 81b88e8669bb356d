package org.heatwright.work;

import java.time.Duration;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** Numbers that are easy to key and to remember: tens of degrees, quarters of an hour. */
final class RoundNumbers {

  private static final double DEGREES = 10;
  private static final double MINUTES = 15;

  /** Keeps 729.9999999 from becoming 720. */
  private static final double NOISE = 1e-6;

  private RoundNumbers() {}

  static Temperature lower(Temperature a, Temperature b) {
    return a.compareTo(b) <= 0 ? a : b;
  }

  /** The nearest round temperature that is not above the limit. */
  static Temperature target(Temperature wanted, Temperature limit, TemperatureUnit unit) {
    double nearest = Math.rint(unit.value(wanted) / DEGREES) * DEGREES;
    double highest = Math.floor(unit.value(limit) / DEGREES + NOISE) * DEGREES;
    return unit.temperature(Math.min(nearest, highest));
  }

  /** The next slower round rate; below ten degrees an hour the rate itself. */
  static HeatingRate rate(HeatingRate wanted, TemperatureUnit unit) {
    double slower = Math.floor(unit.value(wanted) / DEGREES + NOISE) * DEGREES;
    return slower > 0 ? unit.rate(slower) : wanted;
  }

  static Duration nearestQuarter(double hours) {
    return Duration.ofMinutes(Math.round(Math.rint(hours * 60 / MINUTES) * MINUTES));
  }

  static Duration quarterUp(double hours) {
    return Duration.ofMinutes(Math.round(Math.ceil(hours * 60 / MINUTES - NOISE) * MINUTES));
  }
}
