package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.keypad.keying.KeyText;
import org.heatwright.keypad.keying.Rehearsal;

/**
 * What {@code rehearse --json} prints.
 *
 * @param firstWrong 1-based number of the first wrong key, if there is one
 * @param holdsPlan whether the slot holds the plan at the end
 */
public record RehearseJson(
    String schedule,
    String keypad,
    int slot,
    List<KeyJson> keys,
    Optional<Integer> firstWrong,
    boolean holdsPlan) {

  /**
   * One key.
   *
   * @param key as {@link KeyText} writes it
   * @param label the display's mark of the place; may be empty
   * @param value what the display shows then; empty while it shows the kiln's temperature
   * @param words our words for where it stands
   * @param does whether the key did anything
   * @param wrong why it was wrong, if it was
   */
  public record KeyJson(
      String key, String label, String value, String words, boolean does, Optional<String> wrong) {}

  /** The record of a rehearsal. */
  public static RehearseJson of(String schedule, String keypad, int slot, Rehearsal.Course course) {
    return new RehearseJson(
        schedule,
        keypad,
        slot,
        course.played().stream()
            .map(
                p ->
                    new KeyJson(
                        KeyText.write(p.instruction()),
                        p.display().label(),
                        p.display().value(),
                        p.display().words(),
                        p.does(),
                        p.wrong()))
            .toList(),
        course.firstWrong().isPresent()
            ? Optional.of(course.firstWrong().getAsInt() + 1)
            : Optional.empty(),
        course.done());
  }
}
