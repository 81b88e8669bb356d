package org.heatwright.app.report;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.ClockWords;
import org.heatwright.schedule.HourMinute;

/**
 * Says when something is: by the clock, with weekday and date, if the start is known, else as time
 * after the start. Minutes are the finest step: a moment goes to the nearest, a deadline down, a
 * band opens outward. An hour that the clock shows twice says which one is meant.
 *
 * @param start when the program's first segment begins, where known
 */
public record WhenWords(Optional<ZonedDateTime> start) {

  private static final double MINUTE_SECONDS = 60;
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
  private static final DateTimeFormatter LONG_DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.UK);
  private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEE", Locale.UK);

  /** "Thu 3 Dec 08:31", or "+12:01 h". */
  public String full(double seconds) {
    return at(seconds)
        .map(when -> day(when) + " " + ClockWords.time(when))
        .orElse(elapsed(seconds));
  }

  /** "Thu 3 Dec", or empty without a start. */
  public String day(double seconds) {
    return at(seconds).map(WhenWords::day).orElse("");
  }

  /** "08:31", or "+12:01 h". The day must stand beside it. */
  public String clock(double seconds) {
    return at(seconds).map(ClockWords::time).orElse(elapsed(seconds));
  }

  /**
   * "23:40 to Fri 00:20": opened outward to whole minutes; an end that is not on the median's day
   * has its weekday.
   */
  public String band(Band seconds) {
    Optional<LocalDate> day = at(seconds.median()).map(ZonedDateTime::toLocalDate);
    double low = minuteBefore(seconds.low());
    double high = minuteAfter(seconds.high());
    return bound(low, day) + " to " + bound(high, day);
  }

  /** How far into its minute a moment is, s. */
  private double sinceMinute(double seconds) {
    double startSeconds = start.map(s -> s.getSecond() + s.getNano() / 1e9).orElse(0.0);
    double whole = Math.rint((startSeconds + seconds) * 1000) / 1000;
    return whole - Math.floor(whole / MINUTE_SECONDS) * MINUTE_SECONDS;
  }

  /** The whole minute that is not later, s: by when a deadline is told. */
  public double minuteBefore(double seconds) {
    return seconds - sinceMinute(seconds);
  }

  /** The whole minute that is not sooner, s. */
  public double minuteAfter(double seconds) {
    double past = sinceMinute(seconds);
    return past == 0 ? seconds : seconds + MINUTE_SECONDS - past;
  }

  private String bound(double seconds, Optional<LocalDate> day) {
    Optional<ZonedDateTime> when = at(seconds);
    String weekday = when.map(w -> WEEKDAY.format(w) + " ").orElse("");
    return when.map(ZonedDateTime::toLocalDate).equals(day)
        ? clock(seconds)
        : weekday + clock(seconds);
  }

  /** The moment, to the nearest minute. */
  public Optional<ZonedDateTime> at(double seconds) {
    return start.map(
        s ->
            s.plus(Math.round(seconds * 1000), ChronoUnit.MILLIS)
                .plusSeconds(30)
                .truncatedTo(ChronoUnit.MINUTES));
  }

  /** The instant itself, unrounded. */
  public Optional<Instant> instant(double seconds) {
    return start.map(s -> s.toInstant().plusMillis(Math.round(seconds * 1000)));
  }

  /** "Thursday 3 December 2026". */
  public static String longDay(ZonedDateTime when) {
    return LONG_DAY.format(when);
  }

  /** "+12:01 h", after the start. */
  public static String elapsed(double seconds) {
    return "+" + HourMinute.format(Duration.ofMillis(Math.round(seconds * 1000))) + " h";
  }

  private static String day(ZonedDateTime when) {
    return DAY.format(when);
  }
}
