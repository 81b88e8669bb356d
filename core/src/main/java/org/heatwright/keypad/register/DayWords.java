package org.heatwright.keypad.register;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Days in words, with the year: a register hangs for long. */
public final class DayWords {

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.UK);

  private DayWords() {}

  /** "3 Dec 2026". */
  public static String day(Instant at, ZoneId zone) {
    return day(at.atZone(zone).toLocalDate());
  }

  public static String day(LocalDate day) {
    return DAY.format(day);
  }

  /** "today", "3 days ago". */
  public static String age(Instant at, Instant now, ZoneId zone) {
    long days =
        ChronoUnit.DAYS.between(at.atZone(zone).toLocalDate(), now.atZone(zone).toLocalDate());
    return days <= 0 ? "today" : days == 1 ? "yesterday" : days + " days ago";
  }
}
