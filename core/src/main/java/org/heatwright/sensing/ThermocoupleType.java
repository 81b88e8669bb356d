package org.heatwright.sensing;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.units.Temperature;

/**
 * The letter-designated thermocouples with their ITS-90 reference functions, both ways. The emf of
 * a couple is what its hot and its cold junction make together, {@code E(hot) - E(cold)}: degrees
 * must never be added for the cold junction, only emf.
 *
 * <p>Source: NIST Monograph 175 (1993). A real couple follows its function within its {@link
 * ToleranceClass} when new, and worse when used.
 */
public enum ThermocoupleType {
  B(PrintedCoefficients.typeB(), OptionalDouble.of(250.0)),
  E(PrintedCoefficients.typeE(), OptionalDouble.empty()),
  J(PrintedCoefficients.typeJ(), OptionalDouble.empty()),
  K(PrintedCoefficients.typeK(), OptionalDouble.empty()),
  N(PrintedCoefficients.typeN(), OptionalDouble.empty()),
  R(PrintedCoefficients.typeR(), OptionalDouble.empty()),
  S(PrintedCoefficients.typeS(), OptionalDouble.empty()),
  T(PrintedCoefficients.typeT(), OptionalDouble.empty());

  private static final Temperature ICE = Temperature.ofCelsius(0.0);

  private final ReferenceFunction function;
  private final double lowestReadableCelsius;

  /**
   * @param lowestReadable where the inverse begins, °C, if not at the function's own low end: type
   *     B's curve falls before it rises, and is too flat below
   */
  ThermocoupleType(ReferenceFunction function, OptionalDouble lowestReadable) {
    this.function = function;
    this.lowestReadableCelsius = lowestReadable.orElse(function.lowestCelsius());
  }

  /** The type a letter names, in either case. */
  public static Optional<ThermocoupleType> ofLetter(String letter) {
    for (ThermocoupleType type : values()) {
      if (type.name().equals(letter.toUpperCase(Locale.ROOT))) {
        return Optional.of(type);
      }
    }
    return Optional.empty();
  }

  /** The low end of the reference function. */
  public Temperature lowest() {
    return Temperature.ofCelsius(function.lowestCelsius());
  }

  /** The high end of the reference function. */
  public Temperature highest() {
    return Temperature.ofCelsius(function.highestCelsius());
  }

  /** The lowest temperature that an emf can be turned into. */
  public Temperature lowestReadable() {
    return Temperature.ofCelsius(lowestReadableCelsius);
  }

  /**
   * The emf with the cold junction at 0 °C, as the published tables print it.
   *
   * @return mV
   * @throws OutsideRangeException outside {@link #lowest} to {@link #highest}
   */
  public double millivolts(Temperature junction) {
    return function.millivolts(requireReached(junction, "its junction"));
  }

  /**
   * What a meter at the terminals finds.
   *
   * @param coldJunction the temperature of the terminals
   * @return mV
   * @throws OutsideRangeException where the function does not reach one of the two
   */
  public double millivolts(Temperature junction, Temperature coldJunction) {
    return millivolts(junction) - coldJunctionMillivolts(coldJunction);
  }

  /**
   * The temperature of the junction when the cold junction is at 0 °C, to 1e-6 K.
   *
   * @param millivolts mV
   * @throws OutsideRangeException where no temperature of this type gives that emf; for type B
   *     below 0.291 mV, where its curve is flat and turns
   */
  public Temperature temperature(double millivolts) {
    return temperature(millivolts, ICE);
  }

  /**
   * The temperature of the junction, compensated for the cold junction in emf.
   *
   * @param millivolts mV at the terminals
   * @param coldJunction the temperature of the terminals
   * @throws OutsideRangeException as {@link #temperature(double)}, or where the function does not
   *     reach the cold junction
   */
  public Temperature temperature(double millivolts, Temperature coldJunction) {
    double total = millivolts + coldJunctionMillivolts(coldJunction);
    return read(total).orElseThrow(() -> new OutsideRangeException(unreadable(total)));
  }

  /** As {@link #temperature(double)}, empty where there is none. */
  Optional<Temperature> read(double millivolts) {
    OptionalDouble celsius = function.celsius(millivolts, lowestReadableCelsius);
    return celsius.isPresent()
        ? Optional.of(Temperature.ofCelsius(celsius.getAsDouble()))
        : Optional.empty();
  }

  boolean reaches(Temperature temperature) {
    return function.reaches(temperature.celsius());
  }

  /**
   * How much emf one more kelvin gives; at a join of two ranges that of the range below it.
   *
   * @return mV/K
   * @throws OutsideRangeException outside {@link #lowest} to {@link #highest}
   */
  public double millivoltsPerKelvin(Temperature junction) {
    return function.millivoltsPerKelvin(requireReached(junction, "its junction"));
  }

  private double coldJunctionMillivolts(Temperature coldJunction) {
    return function.millivolts(requireReached(coldJunction, "its cold junction"));
  }

  private double requireReached(Temperature temperature, String what) {
    if (!reaches(temperature)) {
      throw new OutsideRangeException(
          "Type %s is defined from %s to %s, and %s is at %s."
              .formatted(
                  name(),
                  Words.celsius(lowest()),
                  Words.celsius(highest()),
                  what,
                  Words.celsius(temperature)));
    }
    return temperature.celsius();
  }

  private String unreadable(double millivolts) {
    if (!Double.isFinite(millivolts)) {
      return "The emf must be a number of millivolts.";
    }
    double least = function.millivolts(lowestReadableCelsius);
    String why =
        lowestReadableCelsius > function.lowestCelsius() && millivolts < least
            ? ", its curve being flat and turning below"
            : "";
    return "Type %s can be read from %s (%s) to %s (%s)%s; %s, the cold junction's share included, is outside."
        .formatted(
            name(),
            Words.millivolts(least),
            Words.celsius(lowestReadable()),
            Words.millivolts(function.millivolts(function.highestCelsius())),
            Words.celsius(highest()),
            why,
            Words.millivolts(millivolts));
  }
}
