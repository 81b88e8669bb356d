package org.heatwright.units;

/**
 * A point on the temperature scale, never a difference (see {@link TemperatureChange}). Stored in
 * degrees Celsius, so that a keypad value of 750 °C survives unrounded. Immutable.
 *
 * @param celsius degrees Celsius (ITS-90), finite, at or above absolute zero
 */
public record Temperature(double celsius) implements Comparable<Temperature> {

  /** Absolute zero in degrees Celsius, exact by definition. */
  public static final double ABSOLUTE_ZERO_CELSIUS = -273.15;

  public Temperature {
    // Negated so that NaN fails too: NaN < lo and NaN > hi are both false.
    if (!(celsius >= ABSOLUTE_ZERO_CELSIUS && celsius < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "The temperature (%s °C) must be finite and not below %s °C."
              .formatted(celsius, ABSOLUTE_ZERO_CELSIUS));
    }
    celsius += 0.0; // -0.0 becomes 0.0, so equal readings are equal records
  }

  public static Temperature ofCelsius(double celsius) {
    return new Temperature(celsius);
  }

  public static Temperature ofFahrenheit(double fahrenheit) {
    return TemperatureUnit.FAHRENHEIT.temperature(fahrenheit);
  }

  /**
   * @return degrees Fahrenheit, °F, unrounded
   */
  public double fahrenheit() {
    return celsius * 1.8 + 32.0;
  }

  /**
   * @return thermodynamic temperature, K
   */
  public double kelvin() {
    return celsius - ABSOLUTE_ZERO_CELSIUS;
  }

  public TemperatureChange minus(Temperature other) {
    return new TemperatureChange(celsius - other.celsius);
  }

  public Temperature plus(TemperatureChange change) {
    return new Temperature(celsius + change.kelvins());
  }

  @Override
  public int compareTo(Temperature other) {
    return Double.compare(celsius, other.celsius);
  }
}
