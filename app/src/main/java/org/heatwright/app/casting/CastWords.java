package org.heatwright.app.casting;

import org.heatwright.app.files.YamlText;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.CastingClock;
import org.heatwright.work.casting.Remark;
import org.heatwright.work.casting.Spread;

/** Numbers of the casting bench, for people. */
public final class CastWords {

  private CastWords() {}

  /** Grams of kilograms: "59.98 g", "581 g", "1250 g". */
  public static String grams(double kilograms) {
    return figure(kilograms * 1000) + " g";
  }

  /** "59.98 g (57 to 73.3)", or without the range where there is none. */
  public static String grams(Spread kilograms) {
    Spread g = kilograms.times(1000);
    return g.low() == g.high()
        ? figure(g.usual()) + " g"
        : "%s g (%s to %s)".formatted(figure(g.usual()), figure(g.low()), figure(g.high()));
  }

  /** About four figures, no more than two decimals. */
  public static String figure(double value) {
    return rounded(value, value < 100 ? 100 : value < 1000 ? 10 : 1);
  }

  /** To so many parts of one. */
  static String rounded(double value, double perUnit) {
    return YamlText.number(Math.rint(value * perUnit) / perUnit);
  }

  public static String degrees(Temperature temperature, TemperatureUnit unit) {
    return "%.0f %s".formatted(unit.value(temperature), unit.symbol());
  }

  public static String degrees(Temperature from, Temperature to, TemperatureUnit unit) {
    return from.equals(to)
        ? degrees(from, unit)
        : "%.0f to %.0f %s".formatted(unit.value(from), unit.value(to), unit.symbol());
  }

  /** A difference in degrees of the unit, without its sign. */
  static double difference(double kelvins, TemperatureUnit unit) {
    return unit.value(TemperatureChange.ofKelvins(kelvins));
  }

  /** "10 to 15 s", "8 to 10 min", "1 to 2 h". */
  public static String minutes(Spread minutes) {
    if (minutes.high() < 1) {
      return "%.0f to %.0f s".formatted(minutes.low() * 60, minutes.high() * 60);
    }
    if (minutes.high() >= 60) {
      return "%s to %s h"
          .formatted(rounded(minutes.low() / 60, 10), rounded(minutes.high() / 60, 10));
    }
    return "%s to %s min"
        .formatted(YamlText.number(minutes.low()), YamlText.number(minutes.high()));
  }

  /** What a clock is about, and from where its time is. */
  static String about(CastingClock clock) {
    return said("%s. %s".formatted(clock.what(), clock.advice()), clock.origin());
  }

  public static String words(Remark remark) {
    return said(remark.message(), remark.origin());
  }

  /** Words with the place they come from. */
  static String said(String words, Origin origin) {
    return "%s (%s)".formatted(words, origin.words());
  }
}
