package org.heatwright.app.logs;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** What names of columns say, in the trade's usual words of some languages. Source: practice. */
final class Names {

  private static final Pattern TIME =
      words(
          "time|timestamp|date|day|datum|data|fecha|zeit|uhrzeit|heure|temps|hora|elapsed|clock|seconds|secs?|minutes|mins?|hours|hrs?|t");
  private static final Pattern SETPOINT =
      words(
          "sp|sv|set|setpoint|set-point|target|soll|sollwert|solltemperatur|consigne|program|programmed|wanted");
  private static final Pattern POWER =
      words("power|watts?|kw|w|leistung|puissance|potencia|duty|output|out|op|heat|heating");
  private static final Pattern AMBIENT =
      words("ambient|room|cold|junction|cj|cjc|internal|case|board|battery|humidity|rh");
  private static final Pattern WORK = words("work|piece|part|mould|mold|ware|object");
  private static final Pattern EVENT =
      words("event|events|note|notes|remark|remarks|comment|comments|alarm");
  private static final Pattern TEMPERATURE =
      words(
          "temp|temps|temperature|temperatur|température|temperatura|pv|actual|measured|ist|istwert|isttemperatur|mesure|chamber|kiln|oven|furnace|ofen|four|horno|reading|display|shown|tc|thermocouple|probe|t1|tc1|temp1|ch1|channel|value");
  private static final Pattern CHAMBER =
      words(
          "pv|actual|measured|ist|istwert|isttemperatur|chamber|kiln|oven|furnace|ofen|display|shown");

  private static final Pattern CELSIUS =
      Pattern.compile("°\\s?c\\b|℃|\\bdeg\\.?\\s?c\\b|celsius|[(\\[/ ]c[)\\]]?$|\\bc$");
  private static final Pattern FAHRENHEIT =
      Pattern.compile("°\\s?f\\b|℉|\\bdeg\\.?\\s?f\\b|fahrenheit|[(\\[/ ]f[)\\]]?$|\\bf$");
  private static final Pattern KELVIN = Pattern.compile("kelvin|[(\\[/ ]k[)\\]]?$|\\bk$");

  private Names() {}

  private static Pattern words(String words) {
    return Pattern.compile("(?<![\\p{L}\\d])(" + words + ")(?![\\p{L}\\d])");
  }

  /** In small letters, its words apart. */
  static String plain(String name) {
    return name.replaceAll("(?<=\\p{Ll})(?=\\p{Lu})", " ")
        .replace('_', ' ')
        .replace('º', '°')
        .toLowerCase(Locale.ROOT)
        .strip();
  }

  /** Without a unit in brackets. */
  private static String bare(String name) {
    return plain(name).replaceAll("[(\\[].*?[)\\]]", " ").strip();
  }

  static boolean isTime(String name) {
    return TIME.matcher(bare(name)).find() && !TEMPERATURE.matcher(bare(name)).find();
  }

  static boolean isSetpoint(String name) {
    return SETPOINT.matcher(bare(name)).find() && !isAmbient(name);
  }

  static boolean isPower(String name) {
    return POWER.matcher(bare(name)).find() || powerUnit(name).isPresent();
  }

  static boolean isAmbient(String name) {
    return AMBIENT.matcher(bare(name)).find();
  }

  static boolean isWork(String name) {
    return WORK.matcher(bare(name)).find();
  }

  static boolean isEvent(String name) {
    return EVENT.matcher(bare(name)).find();
  }

  static boolean isTemperature(String name) {
    return !isAmbient(name)
        && (TEMPERATURE.matcher(bare(name)).find() || temperatureUnit(name).isPresent());
  }

  /** Of several temperatures, that of the chamber. */
  static boolean isChamber(String name) {
    return CHAMBER.matcher(bare(name)).find();
  }

  static Optional<String> temperatureUnit(String name) {
    String plain = plain(name);
    if (FAHRENHEIT.matcher(plain).find()) {
      return Optional.of("fahrenheit");
    }
    if (CELSIUS.matcher(plain).find()) {
      return Optional.of("celsius");
    }
    return KELVIN.matcher(plain).find() ? Optional.of("kelvin") : Optional.empty();
  }

  static Optional<String> powerUnit(String name) {
    String plain = plain(name);
    if (plain.contains("%") || plain.contains("percent")) {
      return Optional.of("percent");
    }
    if (words("kw|kilowatts?").matcher(plain).find()) {
      return Optional.of("kw");
    }
    return words("w|watts?").matcher(plain).find() ? Optional.of("w") : Optional.empty();
  }

  /** The unit of numbers that tell a time. */
  static Optional<TimeForm> timeUnit(String name) {
    String plain = plain(name);
    if (words("ms|millis|milliseconds").matcher(plain).find()) {
      return Optional.of(TimeForm.EPOCH_MILLIS);
    }
    if (words("s|secs?|seconds|sek|sekunden|secondes|segundos").matcher(plain).find()) {
      return Optional.of(TimeForm.SECONDS);
    }
    if (words("min|mins|minutes?|minuten|minutos").matcher(plain).find()) {
      return Optional.of(TimeForm.MINUTES);
    }
    return words("h|hrs?|hours?|std|stunden|heures|horas").matcher(plain).find()
        ? Optional.of(TimeForm.HOURS)
        : Optional.empty();
  }
}
