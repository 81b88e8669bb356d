package org.heatwright.units;

import java.util.Optional;

/**
 * The unit a person types and a display shows. Values convert there and back without loss for any
 * number of up to six decimals: {@code value(temperature(x)) == x}.
 */
public enum TemperatureUnit {
  CELSIUS("C", 1.0, 0.0),
  FAHRENHEIT("F", 1.8, 32.0);

  /** A typed number has at most six decimals; conversion noise is far below that. */
  private static final double TYPED_DECIMALS = 1e6;

  private final String letter;
  private final double degreesPerKelvin;
  private final double zeroCelsiusReads;

  TemperatureUnit(String letter, double degreesPerKelvin, double zeroCelsiusReads) {
    this.letter = letter;
    this.degreesPerKelvin = degreesPerKelvin;
    this.zeroCelsiusReads = zeroCelsiusReads;
  }

  /** "C" or "F", as files write it. */
  public String letter() {
    return letter;
  }

  /** "°C" or "°F". */
  public String symbol() {
    return "°" + letter;
  }

  /** "K" or "°F", as differences are written. */
  public String differenceSymbol() {
    return this == CELSIUS ? "K" : symbol();
  }

  /** The unit a file names, if it is one of ours ("C", "F", in either case). */
  public static Optional<TemperatureUnit> ofLetter(String letter) {
    for (TemperatureUnit unit : values()) {
      if (unit.letter.equalsIgnoreCase(letter)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  public TemperatureUnit other() {
    return this == CELSIUS ? FAHRENHEIT : CELSIUS;
  }

  /** The temperature that reads {@code value} in this unit. */
  public Temperature temperature(double value) {
    return new Temperature((value - zeroCelsiusReads) / degreesPerKelvin);
  }

  /** What a thermometer of this unit reads, in degrees of this unit. */
  public double value(Temperature temperature) {
    return asTyped(temperature.celsius() * degreesPerKelvin + zeroCelsiusReads);
  }

  /** A difference of {@code degrees} of this unit. */
  public TemperatureChange change(double degrees) {
    return new TemperatureChange(degrees / degreesPerKelvin);
  }

  /** A difference in degrees of this unit. */
  public double value(TemperatureChange change) {
    return asTyped(change.kelvins() * degreesPerKelvin);
  }

  /** A rate of {@code degreesPerHour} degrees of this unit an hour. */
  public HeatingRate rate(double degreesPerHour) {
    return new HeatingRate(degreesPerHour / degreesPerKelvin);
  }

  /** A rate in degrees of this unit an hour. */
  public double value(HeatingRate rate) {
    return asTyped(rate.kelvinsPerHour() * degreesPerKelvin);
  }

  private static double asTyped(double value) {
    return Math.rint(value * TYPED_DECIMALS) / TYPED_DECIMALS + 0.0;
  }
}
