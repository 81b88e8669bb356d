package org.heatwright.forecast;

import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Clock times in words: always with weekday and date, to the minute. */
public final class ClockWords {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.UK);

  private ClockWords() {}

  /** "08:40", the minute begun. */
  public static String time(ZonedDateTime time) {
    return TIME.format(time);
  }

  /** "Thursday 3 December". */
  public static String day(ZonedDateTime time) {
    return DAY.format(time);
  }

  /** "08:40 Thursday 3 December". */
  public static String moment(ZonedDateTime time) {
    return time(time) + " " + day(time);
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
