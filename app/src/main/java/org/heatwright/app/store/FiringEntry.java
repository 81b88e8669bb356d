package org.heatwright.app.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A firing in the book of records, with the texts it was planned from and what happened in it.
 *
 * @param id UUID as text
 * @param job what people call it: the work's name on the shelf
 * @param kind of work, as files name it, e.g. "enamel"
 * @param kiln name on the shelf; likewise {@code keypad}
 * @param slot program slot
 * @param plan address of the plan, without what stands before the question mark
 * @param work the work's file as it was; likewise {@code kilnText}, {@code keypadText}
 * @param planned the schedule to key, with its delay: a schedule file
 * @param press when start was to be pressed
 * @param made when it was put into the book
 * @param told what happened, in the order it was told, without what was taken back
 * @param removed when it was put away, where it was
 */
public record FiringEntry(
    String id,
    String job,
    String kind,
    String kiln,
    String keypad,
    int slot,
    String plan,
    String work,
    String kilnText,
    String keypadText,
    String planned,
    Instant press,
    Instant made,
    List<Told> told,
    Optional<Instant> removed) {

  public FiringEntry {
    told = List.copyOf(told);
  }

  FiringEntry with(List<Told> lines) {
    return new FiringEntry(
        id,
        job,
        kind,
        kiln,
        keypad,
        slot,
        plan,
        work,
        kilnText,
        keypadText,
        planned,
        press,
        made,
        lines,
        removed);
  }

  /**
   * Something that happened in a firing.
   *
   * @param id UUID as text
   * @param kind what, one word
   * @param at when
   * @param celsius what the display said, °C, where that is what happened
   * @param text in words or as a file, by its kind; may be empty
   */
  public record Told(String id, String kind, Instant at, OptionalDouble celsius, String text) {}

  /** A picture of it. */
  public record Photo(String mediaType, byte[] picture) {
    public Photo {
      picture = picture.clone();
    }

    @Override
    public byte[] picture() {
      return picture.clone();
    }
  }
}
