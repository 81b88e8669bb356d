package org.heatwright.app.cli;

import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.forecast.ClockWords;
import org.heatwright.learn.Readings;
import org.heatwright.units.TemperatureUnit;

/** What a person read off the display while a firing ran, and what it means. */
final class Seen {

  private static final String OPTION = "--seen";

  /** Nothing that a kiln's display shows lies outside of these, °C; our estimate. */
  private static final double COLDEST_CELSIUS = -75;

  private static final double HOTTEST_CELSIUS = 2200;

  /** A kiln's clock may be ahead of this machine's by so much; our estimate. */
  private static final Duration CLOCKS_DIFFER = Duration.ofMinutes(2);

  private static final Duration LONGEST = Duration.ofHours(1000).minusSeconds(1);

  private Seen() {}

  /**
   * Nothing was seen later than that.
   *
   * @param began when the program's first segment began; a firing that is to begin later is a
   *     rehearsal, and its readings are, too
   */
  static ZonedDateTime latest(ZonedDateTime began, ZonedDateTime now) {
    return began.isAfter(now) ? began.plus(LONGEST) : now.plus(CLOCKS_DIFFER);
  }

  /** The part of {@code 21:40=312} before the sign; empty where it is no reading. */
  static Optional<String> time(String text) {
    String[] parts = text.split("=", -1);
    return parts.length == 2 ? Optional.of(parts[0].strip()) : Optional.empty();
  }

  /**
   * Reads {@code 21:40=312} and the like.
   *
   * @param texts one a reading, in any order
   * @param unit of the display
   * @param start when the program's first segment began
   * @param now nothing was seen later
   * @param clock turns the part before the sign into an instant
   */
  static Readings parse(
      List<String> texts,
      TemperatureUnit unit,
      Optional<ZonedDateTime> start,
      ZonedDateTime now,
      Function<String, ZonedDateTime> clock) {
    ZonedDateTime began =
        start.orElseThrow(
            () ->
                InputException.in(
                    OPTION, "needs --start: when the first segment began, e.g. --start 18:40."));
    List<double[]> rows =
        texts.stream()
            .map(text -> reading(text, unit, began, now, clock))
            .sorted(java.util.Comparator.comparingDouble(row -> row[0]))
            .toList();
    for (int i = 1; i < rows.size(); i++) {
      if (rows.get(i)[0] == rows.get(i - 1)[0]) {
        throw InputException.in(OPTION, "gives two readings for one time; keep one of the two.");
      }
    }
    return Readings.of(
        rows.stream().mapToDouble(row -> row[0]).toArray(),
        rows.stream().mapToDouble(row -> row[1]).toArray());
  }

  private static double[] reading(
      String text,
      TemperatureUnit unit,
      ZonedDateTime began,
      ZonedDateTime now,
      Function<String, ZonedDateTime> clock) {
    String[] parts = text.split("=", -1);
    if (parts.length != 2) {
      throw wrong(text);
    }
    // A letter behind the number goes before the display's unit.
    double celsius = TypedNumber.celsius(parts[1], unit).orElseThrow(() -> wrong(text));
    if (!(celsius > COLDEST_CELSIUS && celsius < HOTTEST_CELSIUS)) {
      throw wrong(text);
    }
    ZonedDateTime at = clock.apply(parts[0].strip());
    if (!began.isAfter(now) && at.isAfter(latest(began, now))) {
      throw InputException.in(
          OPTION,
          "\"%s\" would be at %s, which is still to come; expected a time from the start (%s) to now (%s)."
              .formatted(
                  text,
                  ClockWords.moment(at),
                  ClockWords.moment(began),
                  ClockWords.moment(now.withZoneSameInstant(began.getZone()))));
    }
    Duration after = Duration.between(began, at);
    if (after.isNegative() || after.compareTo(LONGEST) > 0) {
      throw InputException.in(
          OPTION, "\"%s\" is before the start; expected a time after it.".formatted(text));
    }
    return new double[] {after.toMillis() / 1000.0, celsius};
  }

  private static InputException wrong(String text) {
    return InputException.in(
        OPTION,
        "\"%s\" is not a reading; expected a time and what the display said, e.g. 21:40=312."
            .formatted(text));
  }
}
