package org.heatwright.schedule;

import java.time.Duration;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Durations as files and people write them: {@code h:mm}, where the hours may exceed 24. */
public final class HourMinute {

  private static final Pattern TEXT = Pattern.compile("(\\d{1,5}):([0-5]\\d)");

  private HourMinute() {}

  /** The duration that {@code text} ("0:45", "27:30") means, or empty if it is not h:mm. */
  public static Optional<Duration> parse(String text) {
    Matcher matcher = TEXT.matcher(text.strip());
    return matcher.matches()
        ? Optional.of(
            Duration.ofHours(Long.parseLong(matcher.group(1)))
                .plusMinutes(Long.parseLong(matcher.group(2))))
        : Optional.empty();
  }

  /** {@code h:mm}, rounded to the nearest minute. */
  public static String format(Duration duration) {
    long minutes = Math.floorDiv(duration.getSeconds() + 30, 60);
    return "%d:%02d".formatted(minutes / 60, minutes % 60);
  }

  /** "2 h 30 min", "45 min", "3 h", "0 min": rounded to the nearest minute. */
  public static String words(Duration duration) {
    long minutes = Math.floorDiv(duration.getSeconds() + 30, 60);
    long hours = minutes / 60;
    long rest = minutes % 60;
    if (hours == 0) {
      return rest + " min";
    }
    return rest == 0 ? hours + " h" : hours + " h " + rest + " min";
  }

  static void requireWholeMinutes(String what, Duration duration) {
    if (duration.isNegative() || !duration.equals(Duration.ofMinutes(duration.toMinutes()))) {
      throw new IllegalArgumentException(
          "The %s (%s) must be a whole number of minutes, zero or more.".formatted(what, duration));
    }
  }
}
