package org.heatwright.forecast;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/**
 * Clock times in words, to the minute: the one place where a local time is written for people. In
 * an hour that the clock shows twice a time says which one it is of, "01:30 (2nd)".
 */
public final class ClockWords {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.UK);
  private static final DateTimeFormatter SHORT_DAY =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
  private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xxx", Locale.ROOT);

  private ClockWords() {}

  /** "08:40", the minute begun. */
  public static String time(ZonedDateTime time) {
    return TIME.format(time) + which(time);
  }

  /** " (1st)" or " (2nd)" in an hour that comes twice; else empty. */
  private static String which(ZonedDateTime time) {
    boolean twice = time.getZone().getRules().getValidOffsets(time.toLocalDateTime()).size() == 2;
    if (!twice) {
      return "";
    }
    return time.equals(time.withEarlierOffsetAtOverlap()) ? " (1st)" : " (2nd)";
  }

  /** "Thursday 3 December". */
  public static String day(ZonedDateTime time) {
    return DAY.format(time);
  }

  /** "08:40 Thursday 3 December". */
  public static String moment(ZonedDateTime time) {
    return time(time) + " " + day(time);
  }

  /** "Thu 3 Dec, 08:40": as pages have it. */
  public static String stamp(ZonedDateTime time) {
    return SHORT_DAY.format(time) + ", " + time(time);
  }

  /** "+01:00": how far the local time is ahead of UTC. */
  public static String offset(ZonedDateTime time) {
    return OFFSET.format(time);
  }

  /**
   * "08:40 to 09:05 Thursday 3 December", opened outward to whole minutes; one time where the two
   * are the same.
   */
  public static String window(ZonedDateTime from, ZonedDateTime until) {
    ZonedDateTime last = roundedUp(until);
    if (from.truncatedTo(ChronoUnit.MINUTES).isEqual(last)) {
      return moment(last);
    }
    return from.toLocalDate().equals(last.toLocalDate())
        ? time(from) + " to " + moment(last)
        : moment(from) + " to " + moment(last);
  }

  /** The next whole minute, or the time itself if it is one. */
  public static ZonedDateTime roundedUp(ZonedDateTime time) {
    ZonedDateTime minute = time.truncatedTo(ChronoUnit.MINUTES);
    return minute.isEqual(time) ? minute : minute.plusMinutes(1);
  }
}
