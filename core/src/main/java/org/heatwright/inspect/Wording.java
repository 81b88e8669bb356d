package org.heatwright.inspect;

import java.util.Locale;
import java.util.regex.Pattern;
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

  /** "732 °C": to the degree, as a display tells it. */
  public static String whole(double celsius, TemperatureUnit unit) {
    return "%.0f %s".formatted(unit.value(Temperature.ofCelsius(celsius)), unit.symbol());
  }

  /** With a capital at its head. */
  public static String capital(String words) {
    return words.isEmpty()
        ? words
        : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
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

  /**
   * One of our sentences, written in °C, °C/h and K, with its numbers in another unit, whole: "from
   * 600 to 650 °C, 50 °C/h, within 20 K" becomes "from 1112 to 1202 °F, 90 °F/h, within 36 °F".
   * What is in °F already stays.
   */
  public static String in(String text, TemperatureUnit unit) {
    return unit == TemperatureUnit.CELSIUS
        ? text
        : IN_CELSIUS
            .matcher(text)
            .replaceAll(found -> inFahrenheit(found.group(1), found.group(2)));
  }

  /** Several numbers may share one unit: "350 to 450 °C", "315 and 480 °C". */
  private static final Pattern IN_CELSIUS =
      Pattern.compile(
          "(?<![\\d.-])(-?\\d+(?:\\.\\d+)?(?:(?: to| and| or) -?\\d+(?:\\.\\d+)?)*) (°C/h|°C(?!/)|K)(?![\\w(])");

  private static final Pattern NUMBER = Pattern.compile("-?\\d+(?:\\.\\d+)?");

  private static String inFahrenheit(String numbers, String symbol) {
    TemperatureUnit unit = TemperatureUnit.FAHRENHEIT;
    String told =
        NUMBER
            .matcher(numbers)
            .replaceAll(
                found -> {
                  double value = Double.parseDouble(found.group());
                  return switch (symbol) {
                    case "°C/h" -> whole(unit.value(HeatingRate.ofKelvinsPerHour(value)));
                    case "K" -> whole(unit.value(TemperatureChange.ofKelvins(value)));
                    default -> whole(unit.value(Temperature.ofCelsius(value)));
                  };
                });
    return told + " " + (symbol.equals("°C/h") ? unit.symbol() + "/h" : unit.symbol());
  }

  private static String whole(double value) {
    return String.valueOf(Math.round(value));
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
