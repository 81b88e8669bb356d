package org.heatwright.app.api;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The book of firings. */
record BookJson(List<EntryJson> firings) {

  /**
   * One firing.
   *
   * @param state planned, running or done
   * @param press when start was to be pressed, ISO 8601; likewise {@code pressed}, when it was
   * @param outcome code of what was found, e.g. "good"
   */
  record EntryJson(
      String id,
      String job,
      String kind,
      String kiln,
      String keypad,
      int slot,
      String state,
      String press,
      Optional<String> pressed,
      Optional<String> outcome) {}

  /**
   * One firing with its schedules and what was told of it.
   *
   * @param planned schedule to key
   * @param keyed what the slot held, where that is known
   */
  record FiringJson(
      EntryJson firing, String planned, Optional<String> keyed, List<ToldJson> told) {}

  /**
   * Something that happened.
   *
   * @param kind pressed, keyed, shown, note, result, out or photo
   * @param at ISO 8601
   * @param celsius what the display said
   */
  record ToldJson(String kind, String at, OptionalDouble celsius, String text) {}

  /**
   * What the display says.
   *
   * @param at when, ISO 8601; left out: now
   */
  record ShownJson(double celsius, Optional<String> at) implements Asked {}
}
