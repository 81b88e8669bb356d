package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.app.files.Firing;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.learn.DatedFiring;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;

/**
 * Logs with what ran and when, as the command line gives them.
 *
 * @param logs as read
 * @param firings one a log, in their order
 * @param dates one a log, where it is known
 * @param notes what is odd or not told, one sentence each
 */
record Watched(
    List<LogFile.Log> logs,
    List<LoggedFiring> firings,
    List<Optional<LocalDate>> dates,
    List<String> notes) {

  /**
   * Reads them.
   *
   * @param schedules one a log
   * @param days what was so on the day, one a log or none at all
   * @param dates typed, one a log or none at all; a log's own date goes first
   */
  static Watched read(
      Kiln kiln, List<Path> logs, List<Path> schedules, List<Path> days, List<String> dates) {
    requireOneEach("--schedule", logs.size(), schedules.size());
    if (!days.isEmpty()) {
      requireOneEach("--firing", logs.size(), days.size());
    }
    if (!dates.isEmpty()) {
      requireOneEach("--date", logs.size(), dates.size());
    }
    ZoneId zone = kiln.timeZone().orElse(ZoneOffset.UTC);
    Watched watched =
        new Watched(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
    List<LogFile.Log> read = new ArrayList<>();
    for (int i = 0; i < logs.size(); i++) {
      String name = logs.get(i).toString();
      LogFile.Log log = Input.log(logs.get(i));
      requireAnother(name, log, i, logs, read);
      read.add(log);
      log.remarks().forEach(remark -> watched.notes.add(name + ": " + remark));
      Firing firing = days.isEmpty() ? Firing.usual() : Input.firing(days.get(i));
      if (firing.load().isEmpty()) {
        watched.notes.add(name + ": no load is stated; taken as an empty kiln.");
      }
      Optional<LocalDate> typed =
          dates.isEmpty() ? Optional.empty() : Optional.of(date(dates.get(i)));
      Optional<LocalDate> own = log.date(zone);
      if (own.isPresent() && typed.isPresent() && !own.equals(typed)) {
        throw InputException.in(
            name,
            "its rows are of %s, but --date says %s; leave --date out, or correct it."
                .formatted(own.get(), typed.get()));
      }
      watched.dates.add(own.or(() -> typed));
      LogAlignment aligned =
          LogAlignment.of(
              kiln,
              WatchedFiring.opened(
                  new LoggedFiring(
                      name,
                      Input.schedule(schedules.get(i)),
                      firing.conditions(),
                      firing.load().orElse(Charge.empty()),
                      WatchedFiring.readings(log)),
                  log));
      aligned.told().forEach(sentence -> watched.notes.add(name + ": " + sentence));
      watched.logs.add(log.startingAt(aligned.startSeconds()));
      watched.firings.add(aligned.firing());
    }
    return watched;
  }

  /** One firing that counts twice would make a kiln look surer than it is. */
  private static void requireAnother(
      String name, LogFile.Log log, int number, List<Path> logs, List<LogFile.Log> before) {
    for (int i = 0; i < number; i++) {
      if (before.get(i).isSameAs(log)) {
        throw InputException.in(
            "--log",
            "%s and %s are the same log; expected each firing once.".formatted(logs.get(i), name));
      }
    }
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw InputException.in(
          "--date", "\"%s\" is no date; expected one such as 2026-05-01.".formatted(text));
    }
  }

  private static void requireOneEach(String option, int logs, int given) {
    if (given != logs) {
      throw InputException.in(
          option,
          "given %d times for %d logs; expected one a log, in the order of the logs."
              .formatted(given, logs));
    }
  }

  /** Every log's firing with its date; what has none counts as after all else. */
  List<DatedFiring> dated(Kiln kiln) {
    LocalDate latest =
        Stream.concat(
                dates.stream().flatMap(Optional::stream),
                kiln.history().stream().map(LifeEvent::date))
            .max(LocalDate::compareTo)
            .orElse(LocalDate.EPOCH);
    List<DatedFiring> dated = new ArrayList<>();
    for (int i = 0; i < firings.size(); i++) {
      dated.add(new DatedFiring(dates.get(i).orElse(latest), firings.get(i)));
    }
    return dated;
  }

  /**
   * When the programs started by the kiln's clock, by the log's name, where a log has clock times.
   */
  Map<String, ZonedDateTime> started(Kiln kiln) {
    ZoneId zone = kiln.timeZone().orElse(ZoneOffset.UTC);
    Map<String, ZonedDateTime> all = new HashMap<>();
    for (int i = 0; i < logs.size(); i++) {
      LogFile.Log log = logs.get(i);
      String name = firings.get(i).name();
      log.localStart().ifPresent(start -> all.put(name, start.atZone(zone)));
      log.start()
          .filter(start -> kiln.timeZone().isPresent())
          .ifPresent(start -> all.put(name, start.atZone(zone)));
    }
    return all;
  }

  /** Names of the logs without a date. */
  List<String> undated() {
    List<String> names = new ArrayList<>();
    for (int i = 0; i < firings.size(); i++) {
      if (dates.get(i).isEmpty()) {
        names.add(firings.get(i).name());
      }
    }
    return names;
  }
}
