package org.heatwright.app.report;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Writes iCalendar text. Times are UTC, so that no reader needs our zone.
 *
 * <p>Source: RFC 5545, sections 3.1 (folding), 3.3.11 (escaping), 3.6.1 (event), 3.6.6 (alarm).
 */
public final class CalendarFile {

  private CalendarFile() {}

  /**
   * @param uid stable, so that a second file replaces the first one's event
   * @param summary the line a calendar shows
   * @param description more words
   * @param start when it begins
   * @param end when it ends, not before the start
   * @param alarm words the calendar should ring with at the start; empty: silent
   */
  public record Event(
      String uid,
      String summary,
      String description,
      Instant start,
      Instant end,
      Optional<String> alarm) {
    public Event {
      if (uid.isBlank() || end.isBefore(start)) {
        throw new IllegalArgumentException(
            "The event '%s' (uid '%s', %s to %s) needs a uid and must not end before it starts."
                .formatted(summary, uid, start, end));
      }
    }
  }

  /**
   * The ready and act-now events of a card; none if the card has no start.
   *
   * @param card what happens when
   * @param uidRoot stable for this firing, e.g. "harbour-burnout-1@heatwright"
   */
  public static List<Event> events(Card card, String uidRoot) {
    throw new IllegalStateException("The calendar file has not landed yet.");
  }

  /**
   * @param stamp when this text is made
   * @return iCalendar text with CRLF ends of line
   */
  public static String write(List<Event> events, Instant stamp) {
    throw new IllegalStateException("The calendar file has not landed yet.");
  }
}
