package org.heatwright.keypad;

import java.util.List;
import java.util.Objects;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;

/**
 * A schedule as one keypad can express it.
 *
 * @param requested what was asked
 * @param expressible what the keypad will run; where it does not fit, as near as it comes
 * @param unit the unit that must be in force while keying and firing
 * @param values in the order they are keyed; empty if it does not fit
 * @param notes every difference, and why
 * @param checkFigures of the expressible schedule
 * @param fits false if something was refused
 */
public record FittedProgram(
    Schedule requested,
    Schedule expressible,
    TemperatureUnit unit,
    List<KeyedValue> values,
    List<FitNote> notes,
    CheckFigures checkFigures,
    boolean fits) {

  public FittedProgram {
    Objects.requireNonNull(requested, "requested");
    Objects.requireNonNull(expressible, "expressible");
    Objects.requireNonNull(unit, "unit");
    values = List.copyOf(values);
    notes = List.copyOf(notes);
    Objects.requireNonNull(checkFigures, "checkFigures");
  }

  /** Why it was refused, in order; empty if it fits. */
  public List<FitNote> refusals() {
    return notes.stream().filter(n -> n.kind() == FitNote.Kind.REFUSED).toList();
  }

  /**
   * @throws IllegalArgumentException with the first refusal, if something was refused
   */
  public void requireFits() {
    if (!fits) {
      throw new IllegalArgumentException(
          "The program does not fit this keypad: " + refusals().get(0).message());
    }
  }
}
