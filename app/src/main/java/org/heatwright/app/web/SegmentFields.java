package org.heatwright.app.web;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.ProgramLimits;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/** A schedule's values as text in form fields, and back. */
final class SegmentFields {

  static final String FASTEST = "fastest";
  private static final BigDecimal MOST_RATE = BigDecimal.valueOf(10_000);

  private static final Pattern HOURS =
      Pattern.compile("(\\d{1,4})\\s*h\\s*(?:(\\d{1,2})\\s*(?:min|m)?)?", Pattern.CASE_INSENSITIVE);
  private static final Pattern MINUTES =
      Pattern.compile("(\\d{1,5})\\s*(?:min|m)", Pattern.CASE_INSENSITIVE);

  private SegmentFields() {}

  static String rate(Segment segment, TemperatureUnit unit) {
    return segment.ramp().rate().map(r -> number(unit.value(r))).orElse(FASTEST);
  }

  static String target(Segment segment, TemperatureUnit unit) {
    return number(unit.value(segment.target()));
  }

  static String hold(Segment segment) {
    return HourMinute.format(segment.hold());
  }

  /** At most two decimals, none that says nothing. */
  static String number(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /**
   * A schedule with what was typed put into it.
   *
   * @param schedule where a typed text is wrong, the composed value stands
   * @param errors field name to one sentence
   * @param kept the edits that differ from the composed values
   */
  record Edited(Schedule schedule, Map<String, String> errors, Map<String, String> kept) {}

  static Edited apply(Map<String, String> typed, Schedule composed) {
    TemperatureUnit unit = composed.unit();
    Map<String, String> errors = new LinkedHashMap<>();
    Map<String, String> kept = new LinkedHashMap<>();
    List<Segment> segments = new ArrayList<>();
    int number = 0;
    for (Segment segment : composed.segments()) {
      number++;
      Segment edited = segment;
      String rate = edit(typed, "rate" + number, rate(segment, unit), kept);
      String target = edit(typed, "target" + number, target(segment, unit), kept);
      String hold = edit(typed, "hold" + number, hold(segment), kept);
      if (!rate.isEmpty()) {
        Optional<Ramp> ramp = parseRate(rate, unit);
        if (ramp.isEmpty()) {
          errors.put("rate" + number, rateError(rate, unit));
        }
        edited = edited.withRamp(ramp.orElse(segment.ramp()));
      }
      if (!target.isEmpty()) {
        Optional<BigDecimal> degrees = parseNumber(target).filter(d -> inRange(d, unit));
        if (degrees.isEmpty()) {
          errors.put("target" + number, targetError(target, unit));
        }
        edited =
            edited.withTarget(
                degrees.map(d -> unit.temperature(d.doubleValue())).orElse(segment.target()));
      }
      if (!hold.isEmpty()) {
        Optional<Duration> length = parseHold(hold);
        if (length.isEmpty()) {
          errors.put("hold" + number, holdError(hold));
        }
        edited = edited.withHold(length.orElse(segment.hold()));
      }
      segments.add(edited);
    }
    Optional<ProgramLimits.Beyond> beyond =
        kept.isEmpty() ? Optional.empty() : ProgramLimits.beyond(segments);
    if (beyond.isPresent()) {
      String field = blamed(kept, beyond.get().segment());
      errors.putIfAbsent(
          field,
          "With this (%s) the program comes to %s; expected %s."
              .formatted(
                  quoted(kept.getOrDefault(field, "")),
                  beyond.get().what(),
                  beyond.get().expected()));
      return new Edited(composed, errors, kept);
    }
    return new Edited(composed.withSegments(segments), errors, kept);
  }

  /** The edit of the segment that passes a limit, else the last one before it, else any. */
  private static String blamed(Map<String, String> kept, int segment) {
    for (int number = segment; number > 0; number--) {
      for (String name : List.of("hold", "rate", "target")) {
        if (kept.containsKey(name + number)) {
          return name + number;
        }
      }
    }
    return kept.keySet().iterator().next();
  }

  /** What was typed into a field, or empty where it is missing or as composed. */
  private static String edit(
      Map<String, String> typed, String name, String composed, Map<String, String> kept) {
    String value = typed.getOrDefault(name, composed);
    if (value.equals(composed)) {
      return "";
    }
    kept.put(name, value);
    return value.isEmpty() ? " " : value; // an emptied field is an error, not "as composed"
  }

  private static Optional<Ramp> parseRate(String text, TemperatureUnit unit) {
    if (text.toLowerCase(Locale.ROOT).equals(FASTEST)) {
      return Optional.of(Ramp.fastest());
    }
    return parseNumber(text)
        .filter(r -> r.signum() > 0 && r.compareTo(MOST_RATE) <= 0)
        .map(r -> Ramp.at(unit.rate(r.doubleValue())));
  }

  /** "1:30", and as a phone's keyboard has it: "1h30", "1 h 30 min", "90 min", "2h". */
  static Optional<Duration> parseHold(String text) {
    Matcher hours = HOURS.matcher(text.strip());
    if (hours.matches()) {
      long minutes = hours.group(2) == null ? 0 : Long.parseLong(hours.group(2));
      return minutes < 60
          ? Optional.of(Duration.ofHours(Long.parseLong(hours.group(1))).plusMinutes(minutes))
          : Optional.empty();
    }
    Matcher minutes = MINUTES.matcher(text.strip());
    return minutes.matches()
        ? Optional.of(Duration.ofMinutes(Long.parseLong(minutes.group(1))))
        : HourMinute.parse(text);
  }

  private static Optional<BigDecimal> parseNumber(String text) {
    return text.matches("\\d{1,6}([.,]\\d{1,2})?")
        ? Optional.of(new BigDecimal(text.replace(',', '.')))
        : Optional.empty();
  }

  private static boolean inRange(BigDecimal degrees, TemperatureUnit unit) {
    double celsius = unit.temperature(degrees.doubleValue()).celsius();
    return celsius >= 0 && celsius <= 2000;
  }

  private static String rateError(String typed, TemperatureUnit unit) {
    return "A rate (%s) is a number of %s an hour, above 0 to 10000 with at most two decimals, or the word %s."
        .formatted(quoted(typed), unit.symbol(), FASTEST);
  }

  private static String targetError(String typed, TemperatureUnit unit) {
    return "A target (%s) is a number in %s, %s."
        .formatted(
            quoted(typed),
            unit.symbol(),
            unit == TemperatureUnit.CELSIUS ? "0 to 2000" : "32 to 3632");
  }

  private static String holdError(String typed) {
    if (typed.matches("\\d{1,3}")) {
      int number = Integer.parseInt(typed);
      return "A hold (%s) could be minutes or hours: write %s or %s."
          .formatted(
              quoted(typed),
              HourMinute.format(Duration.ofMinutes(number)),
              HourMinute.format(Duration.ofHours(number)));
    }
    return "A hold (%s) is hours and minutes, the minutes 00 to 59, such as 2:30."
        .formatted(quoted(typed));
  }

  private static String quoted(String typed) {
    return typed.isBlank() ? "empty now" : "“" + typed + "”";
  }
}
