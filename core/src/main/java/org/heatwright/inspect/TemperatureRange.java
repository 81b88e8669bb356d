package org.heatwright.inspect;

import org.heatwright.units.Temperature;

/**
 * Temperatures from one to another, both included.
 *
 * @param from the lower end
 * @param to the upper end, not below the lower
 */
public record TemperatureRange(Temperature from, Temperature to) {

  public TemperatureRange {
    if (from.compareTo(to) > 0) {
      throw new IllegalArgumentException(
          "The range (%s to %s °C) must not fall.".formatted(from.celsius(), to.celsius()));
    }
  }

  public static TemperatureRange ofCelsius(double fromCelsius, double toCelsius) {
    return new TemperatureRange(
        Temperature.ofCelsius(fromCelsius), Temperature.ofCelsius(toCelsius));
  }

  public boolean contains(Temperature temperature) {
    return from.compareTo(temperature) <= 0 && temperature.compareTo(to) <= 0;
  }

  /** How much of the way between two temperatures lies in this range, K, zero or more. */
  public double kelvinsOfWay(Temperature one, Temperature other) {
    double low = Math.max(from.celsius(), Math.min(one.celsius(), other.celsius()));
    double high = Math.min(to.celsius(), Math.max(one.celsius(), other.celsius()));
    return Math.max(0, high - low);
  }
}
