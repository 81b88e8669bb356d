package org.heatwright.app.files;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.units.TemperatureUnit;

/**
 * A number as a person types it: decimal digits, a sign, a point or comma, an exponent. Nothing
 * else is one: to Java {@code 302F} is 302, and a person means degrees Fahrenheit by it.
 *
 * @param value the number
 * @param unit the letter behind it, where there is one
 */
public record TypedNumber(double value, Optional<TemperatureUnit> unit) {

  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(?:[0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE][-+]?[0-9]+)?");

  private static final Pattern WITH_UNIT =
      Pattern.compile("(" + NUMBER.pattern() + ")\\s*\u00b0?\\s*([CFcf]?)");

  /** The bare number; empty if that is not what was typed, or if it is out of all range. */
  public static OptionalDouble bare(String text) {
    String stripped = text.strip();
    if (!NUMBER.matcher(stripped).matches()) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(stripped.replace(',', '.'));
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** The number, maybe with °, C or F behind it; empty if that is not what was typed. */
  public static Optional<TypedNumber> of(String text) {
    Matcher matcher = WITH_UNIT.matcher(text.strip());
    if (!matcher.matches()) {
      return Optional.empty();
    }
    OptionalDouble number = bare(matcher.group(1));
    return number.isEmpty()
        ? Optional.empty()
        : Optional.of(
            new TypedNumber(
                number.getAsDouble(),
                TemperatureUnit.ofLetter(matcher.group(2).toUpperCase(Locale.ROOT))));
  }

  /**
   * A temperature; by its own letter if it has one.
   *
   * @param otherwise the unit of a number without a letter
   * @return °C, not below absolute zero; empty if that is not what was typed
   */
  public static OptionalDouble celsius(String text, TemperatureUnit otherwise) {
    Optional<TypedNumber> typed = of(text);
    try {
      return typed.isEmpty()
          ? OptionalDouble.empty()
          : OptionalDouble.of(
              typed.get().unit().orElse(otherwise).temperature(typed.get().value()).celsius());
    } catch (IllegalArgumentException impossible) { // below absolute zero
      return OptionalDouble.empty();
    }
  }
}
