package org.heatwright.app.cli;

import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.forecast.StartPlanner.LocalChoice;

/** Times as people type them on the command line. */
final class When {

  /** "9:10" and "09:10". */
  private static final DateTimeFormatter TIME_OF_DAY =
      DateTimeFormatter.ofPattern("H:mm", Locale.ROOT);

  private When() {}

  /**
   * The instant that {@code text} means: "now", a local time of the kiln's zone ("10:00" is the
   * next one, "2026-12-03T10:00"), or a time with its own offset.
   */
  static LocalChoice parse(
      String option, String text, Optional<ZoneId> zone, String kilnFile, ZonedDateTime now) {
    ZonedDateTime there = zone.map(now::withZoneSameInstant).orElse(now);
    if (text.equals("now")) {
      return new LocalChoice(there, List.of());
    }
    Optional<ZonedDateTime> absolute = absolute(text);
    if (absolute.isPresent()) {
      return new LocalChoice(
          absolute.get().withZoneSameInstant(zone.orElse(absolute.get().getZone())), List.of());
    }
    LocalDateTime local = local(option, text, there);
    return StartPlanner.atLocal(
        local,
        zone.orElseThrow(
            () ->
                InputException.in(
                    kilnFile,
                    "time-zone is missing, and %s %s needs it; expected a line such as"
                            .formatted(option, text)
                        + " time-zone: Europe/Lisbon.")));
  }

  private static Optional<ZonedDateTime> absolute(String text) {
    try {
      return Optional.of(OffsetDateTime.parse(text).toZonedDateTime());
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private static LocalDateTime local(String option, String text, ZonedDateTime now) {
    try {
      return LocalDateTime.parse(text.replace(' ', 'T'));
    } catch (DateTimeParseException notADateTime) {
      // a time of day is tried below
    }
    try {
      LocalDateTime today = now.toLocalDate().atTime(LocalTime.parse(text, TIME_OF_DAY));
      return today.isAfter(now.toLocalDateTime()) ? today : today.plusDays(1);
    } catch (DateTimeParseException e) {
      throw InputException.in(
          option,
          "\"%s\" is not a time; expected 2026-12-03T10:00, 10:00 for the next one, or now."
              .formatted(text));
    }
  }
}
