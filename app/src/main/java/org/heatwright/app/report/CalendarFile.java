package org.heatwright.app.report;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.heatwright.forecast.Band;

/**
 * Writes iCalendar text. Times are UTC, so that no reader needs our zone.
 *
 * <p>Source, from memory: RFC 5545, sections 3.1 (folding), 3.3.6 (duration), 3.3.11 (escaping),
 * 3.6.1 (event), 3.6.6 (alarm); the output is checked by an independent parser.
 */
public final class CalendarFile {

  private static final String END_OF_LINE = "\r\n";
  private static final int MOST_OCTETS = 75;
  private static final Duration ACT_LENGTH = Duration.ofMinutes(15);
  private static final Duration LEAST_WARNING = Duration.ofMinutes(10);
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private CalendarFile() {}

  /**
   * @param uid stable, so that a second file replaces the first one's event
   * @param summary the line a calendar shows
   * @param description more words
   * @param start when it begins
   * @param end when it ends, not before the start
   * @param alarm how long before the start the calendar rings, zero or more; empty: it does not
   */
  public record Event(
      String uid,
      String summary,
      String description,
      Instant start,
      Instant end,
      Optional<Duration> alarm) {
    public Event {
      if (uid.isBlank() || end.isBefore(start) || alarm.filter(Duration::isNegative).isPresent()) {
        throw new IllegalArgumentException(
            "The event '%s' (uid '%s', %s to %s, alarm %s) needs a uid, must not end before it starts and rings at its start or before."
                .formatted(summary, uid, start, end, alarm));
      }
    }
  }

  /**
   * The start, ready and act-now events of a card; none if the card has no start. An act-now event
   * rings early enough for the early end of its band; a deadline stands there. Where the program
   * may never end, every event says so, and none has an end that rests on its end.
   *
   * @param card what happens when
   * @param uidRoot stable for this firing, e.g. "harbour-burnout-1@heatwright"
   */
  public static List<Event> events(Card card, String uidRoot) {
    WhenWords when = new WhenWords(card.timing().start());
    String firing = card.header().job() + ", kiln " + card.header().kiln();
    List<Event> events = new ArrayList<>();
    card.timing()
        .start()
        .map(start -> start(card, start.toInstant(), uid(uidRoot, "start"), firing))
        .ifPresent(events::add);
    card.timing()
        .ready()
        .flatMap(r -> ready(card, r, when, uidRoot, firing))
        .ifPresent(events::add);
    int number = 0;
    for (Card.Act act : card.moments()) {
      if (!act.actNow()) {
        continue;
      }
      number++;
      String uid = uid(uidRoot, "act-" + number);
      when.at(act.atSeconds(when))
          .map(at -> act(card, act, at.toInstant(), when, uid, firing))
          .ifPresent(events::add);
    }
    return events;
  }

  private static Event start(Card card, Instant at, String uid, String firing) {
    String what =
        card.timing().delayed() ? "Act now: see that the program starts" : "Act now: press start";
    return new Event(
        uid,
        what,
        firing + ". " + known(card),
        at,
        at.plus(ACT_LENGTH),
        Optional.of(LEAST_WARNING));
  }

  private static Optional<Event> ready(
      Card card, Card.Ready ready, WhenWords when, String uidRoot, String firing) {
    Ending ending = card.timing().ending();
    double from = ready.fromSeconds().median();
    Optional<Card.Keeping> kept = card.timing().keeping();
    double until =
        ending.hasMedian() && kept.filter(k -> k == Card.Keeping.COLD).isEmpty()
            ? ready.untilSeconds().map(when::minuteBefore).orElse(ending.seconds().median())
            : from + ACT_LENGTH.toSeconds();
    return when.at(from)
        .map(
            start ->
                new Event(
                    uid(uidRoot, "ready"),
                    ready.what() + ": " + firing,
                    "Predicted ready from %s (%s), %s. %s"
                        .formatted(
                            when.full(from),
                            band(ending, ready.fromSeconds(), when),
                            ready
                                .untilSeconds()
                                .map(seconds -> "until " + when.full(when.minuteBefore(seconds)))
                                .map(end -> ending.isTold() ? end : end + " at the earliest")
                                .orElseGet(() -> kept.orElseThrow().words()),
                            known(card)),
                    start.toInstant(),
                    when.at(Math.max(from, until)).map(ZonedDateTime::toInstant).orElseThrow(),
                    Optional.empty()));
  }

  /** "11:20 to 11:50, nine in ten", or the early end alone where there may be no late one. */
  private static String band(Ending ending, Band seconds, WhenWords when) {
    return ending.isTold()
        ? when.band(seconds) + ", nine in ten"
        : when.full(when.minuteBefore(seconds.low())) + " at the earliest";
  }

  /** What stands in every event. */
  private static String known(Card card) {
    return Stream.concat(
            card.timing().ending().warning().stream(), Stream.of(Card.NEVER_STARTS_HEAT))
        .collect(Collectors.joining(" "));
  }

  private static Event act(
      Card card, Card.Act act, Instant at, WhenWords when, String uid, String firing) {
    Ending ending = card.timing().ending();
    Duration early = Duration.ofSeconds((long) (act.atSeconds(when) - act.seconds().low()));
    return new Event(
        uid,
        "Act now: " + act.what(),
        "%s. %s %s%s. %s"
            .formatted(
                firing,
                act.deadline() ? "By" : "Predicted",
                act.at(when),
                act.deadline() && !ending.isTold()
                    ? ""
                    : " (%s)".formatted(band(ending, act.seconds(), when)),
                known(card)),
        at,
        at.plus(ACT_LENGTH),
        Optional.of(early.compareTo(LEAST_WARNING) > 0 ? early : LEAST_WARNING));
  }

  private static String uid(String root, String suffix) {
    int host = root.indexOf('@');
    return host < 0
        ? root + "-" + suffix
        : root.substring(0, host) + "-" + suffix + root.substring(host);
  }

  /**
   * @param stamp when this text is made
   * @return iCalendar text with CRLF ends of line
   */
  public static String write(List<Event> events, Instant stamp) {
    StringBuilder text = new StringBuilder();
    line(text, "BEGIN:VCALENDAR");
    line(text, "VERSION:2.0");
    line(text, "PRODID:-//Heatwright//Firing card//EN");
    for (Event event : events) {
      line(text, "BEGIN:VEVENT");
      line(text, "UID:" + escaped(event.uid()));
      line(text, "DTSTAMP:" + UTC.format(stamp));
      line(text, "DTSTART:" + UTC.format(event.start()));
      line(text, "DTEND:" + UTC.format(event.end()));
      line(text, "SUMMARY:" + escaped(event.summary()));
      line(text, "DESCRIPTION:" + escaped(event.description()));
      event.alarm().ifPresent(before -> alarm(text, event.summary(), before));
      line(text, "END:VEVENT");
    }
    line(text, "END:VCALENDAR");
    return text.toString();
  }

  private static void alarm(StringBuilder text, String words, Duration before) {
    line(text, "BEGIN:VALARM");
    line(text, "ACTION:DISPLAY");
    line(text, "DESCRIPTION:" + escaped(words));
    line(text, "TRIGGER;RELATED=START:-PT" + before.toMinutes() + "M");
    line(text, "END:VALARM");
  }

  private static String escaped(String value) {
    StringBuilder out = new StringBuilder(value.length());
    for (String line : value.split("\\R", -1)) {
      if (out.length() > 0) {
        out.append("\\n");
      }
      line.chars()
          .filter(c -> c >= ' ' && c != 0x7f)
          .forEach(
              c -> {
                if (c == '\\' || c == ';' || c == ',') {
                  out.append('\\');
                }
                out.append((char) c);
              });
    }
    return out.toString();
  }

  /** Folds after at most 75 octets, never inside a character. */
  private static void line(StringBuilder text, String content) {
    int octets = 0;
    for (int i = 0; i < content.length(); ) {
      int next = content.offsetByCodePoints(i, 1);
      String character = content.substring(i, next);
      int size = character.getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > MOST_OCTETS) {
        text.append(END_OF_LINE).append(' ');
        octets = 1;
      }
      text.append(character);
      octets += size;
      i = next;
    }
    text.append(END_OF_LINE);
  }
}
