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
import java.util.function.BiFunction;
import org.heatwright.app.files.InputException;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.forecast.StartPlanner.LocalChoice;

/**
 * Times as people type them on the command line.
 *
 * @param local as typed; a time of day with its day
 * @param zone whose clock shows it
 * @param instants at which it does and that can be meant: none in an hour that is missing, two in
 *     one that comes twice
 */
record When(LocalDateTime local, ZoneId zone, List<ZonedDateTime> instants) {

  /** "9:10" and "09:10". */
  private static final DateTimeFormatter TIME_OF_DAY =
      DateTimeFormatter.ofPattern("H:mm", Locale.ROOT);

  /** As {@link #absolute} reads it. */
  private static final DateTimeFormatter WITH_OFFSET =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mmxxx", Locale.ROOT);

  /**
   * The instant that {@code text} means: "now", a local time of the kiln's zone ("10:00" is the
   * next one, "2026-12-03T10:00"), or a time with its own offset. What is missing or comes twice is
   * resolved, and a note says how.
   */
  static LocalChoice parse(
      String option, String text, Optional<ZoneId> zone, String kilnFile, ZonedDateTime now) {
    Optional<ZonedDateTime> sure = sure(text, zone, now);
    if (sure.isPresent()) {
      return new LocalChoice(sure.get(), List.of());
    }
    When when = next(option, text, zone, kilnFile, now);
    if (when.instants.size() == 1) {
      return new LocalChoice(when.instants.get(0), List.of());
    }
    LocalChoice choice = StartPlanner.atLocal(when.local, when.zone);
    return when.instants.isEmpty()
        ? choice
        : new LocalChoice(
            choice.time(),
            List.of(
                "%s For the second write %s."
                    .formatted(
                        String.join(" ", choice.notes()),
                        WITH_OFFSET.format(when.instants.get(1)))));
  }

  /**
   * The same for what has been: a time of day is the last one. Where that hour came twice it is the
   * second, unless that is still to come, and a note says how to mean the first.
   *
   * @param until nothing later can be meant
   * @param now what "now" means
   */
  static LocalChoice last(
      String option,
      String text,
      Optional<ZoneId> zone,
      String kilnFile,
      ZonedDateTime until,
      ZonedDateTime now) {
    if (sure(text, zone, now).isPresent() || dated(text).isPresent()) {
      return parse(option, text, zone, kilnFile, now);
    }
    When when =
        local(
            option,
            text,
            zone,
            kilnFile,
            (time, there) -> last(time, until.withZoneSameInstant(there)));
    if (when.instants.isEmpty()) {
      return StartPlanner.atLocal(when.local, when.zone);
    }
    ZonedDateTime meant = when.instants.get(when.instants.size() - 1);
    return new LocalChoice(
        meant,
        when.instants.size() == 1
            ? List.of()
            : List.of(
                "%s. Taken as the second (UTC%s). For the first write %s."
                    .formatted(
                        StartPlanner.odd(when.local, when.zone),
                        ClockWords.offset(meant),
                        WITH_OFFSET.format(when.instants.get(0)))));
  }

  /**
   * The same for what was seen or is asked about, where a wrong hour would not be noticed: what is
   * missing is refused, and so is what comes twice unless only one of the two can be meant.
   *
   * @param from nothing earlier can be meant; a time of day is the next one after it
   * @param until nothing later can be meant
   * @param now what "now" means
   */
  static ZonedDateTime exactly(
      String option,
      String text,
      Optional<ZoneId> zone,
      String kilnFile,
      ZonedDateTime from,
      ZonedDateTime until,
      ZonedDateTime now) {
    Optional<ZonedDateTime> sure = sure(text, zone, now);
    if (sure.isPresent()) {
      return sure.get();
    }
    When when = next(option, text, zone, kilnFile, from);
    if (when.instants.isEmpty()) {
      throw InputException.in(
          option,
          "%s; expected a time that the clock has shown."
              .formatted(StartPlanner.odd(when.local, when.zone)));
    }
    if (when.instants.size() == 1) {
      return when.instants.get(0);
    }
    List<ZonedDateTime> meant =
        when.instants.stream().filter(at -> !at.isBefore(from) && !at.isAfter(until)).toList();
    if (meant.size() == 1) {
      return meant.get(0);
    }
    throw InputException.in(
        option,
        "%s; expected %s for the first or %s for the second."
            .formatted(
                StartPlanner.odd(when.local, when.zone),
                WITH_OFFSET.format(when.instants.get(0)),
                WITH_OFFSET.format(when.instants.get(1))));
  }

  /** "now", or a time with its own offset. */
  private static Optional<ZonedDateTime> sure(
      String text, Optional<ZoneId> zone, ZonedDateTime now) {
    if (text.equals("now")) {
      return Optional.of(zone.map(now::withZoneSameInstant).orElse(now));
    }
    return absolute(text).map(at -> at.withZoneSameInstant(zone.orElse(at.getZone())));
  }

  private static Optional<ZonedDateTime> absolute(String text) {
    try {
      return Optional.of(OffsetDateTime.parse(text).toZonedDateTime());
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  /**
   * A local time.
   *
   * @param of turns a time of day into the one that is meant
   */
  private static When local(
      String option,
      String text,
      Optional<ZoneId> zone,
      String kilnFile,
      BiFunction<LocalTime, ZoneId, When> of) {
    Optional<LocalDateTime> dated = dated(text);
    Optional<LocalTime> timeOfDay =
        dated.isPresent() ? Optional.empty() : Optional.of(timeOfDay(option, text));
    ZoneId there =
        zone.orElseThrow(
            () ->
                InputException.in(
                    kilnFile,
                    "time-zone is missing, and %s %s needs it; expected a line such as"
                            .formatted(option, text)
                        + " time-zone: Europe/Lisbon."));
    return dated
        .map(local -> new When(local, there, StartPlanner.instants(local, there)))
        .orElseGet(() -> of.apply(timeOfDay.orElseThrow(), there));
  }

  /** The last one that is not after {@code latest}. */
  private static When last(LocalTime time, ZonedDateTime latest) {
    LocalDateTime local = StartPlanner.lastShown(latest.toLocalDate().atTime(time), latest);
    List<ZonedDateTime> all = StartPlanner.instants(local, latest.getZone());
    return new When(
        local, latest.getZone(), all.stream().filter(at -> !at.isAfter(latest)).toList());
  }

  /** A local time; a time of day is the next one after {@code after}. */
  private static When next(
      String option, String text, Optional<ZoneId> zone, String kilnFile, ZonedDateTime after) {
    return local(
        option,
        text,
        zone,
        kilnFile,
        (time, there) -> next(time, after.withZoneSameInstant(there)));
  }

  /** The next one after {@code after}. */
  private static When next(LocalTime time, ZonedDateTime after) {
    LocalDateTime today = after.toLocalDate().atTime(time);
    When when = new When(today, after.getZone(), StartPlanner.instants(today, after.getZone()));
    if (when.instants.isEmpty() && StartPlanner.change(today, when.zone).isAfter(after)) {
      return when;
    }
    List<ZonedDateTime> toCome =
        when.instants.stream().filter(instant -> instant.isAfter(after)).toList();
    LocalDateTime tomorrow = today.plusDays(1);
    return toCome.isEmpty()
        ? new When(tomorrow, when.zone, StartPlanner.instants(tomorrow, when.zone))
        : new When(today, when.zone, toCome);
  }

  private static Optional<LocalDateTime> dated(String text) {
    try {
      return Optional.of(LocalDateTime.parse(text.replace(' ', 'T')));
    } catch (DateTimeParseException e) {
      return Optional.empty();
    }
  }

  private static LocalTime timeOfDay(String option, String text) {
    try {
      return LocalTime.parse(text, TIME_OF_DAY);
    } catch (DateTimeParseException e) {
      throw InputException.in(
          option,
          "\"%s\" is not a time; expected 2026-12-03T10:00, 10:00 for the next one, or now."
              .formatted(text));
    }
  }
}
