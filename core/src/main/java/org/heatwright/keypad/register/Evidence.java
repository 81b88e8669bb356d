package org.heatwright.keypad.register;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackReport;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.schedule.Schedule;

/**
 * One read-back as it happened: what was planned, what the display showed. It is kept in place of
 * its outcome, and judged afresh whenever it is looked at.
 *
 * @param planned what should be in the slot, as the keypad expresses it; must fit the keypad
 * @param keypad the keypad as it was described then
 * @param slot the slot it was keyed into
 * @param shown what the review showed; a keypad with one slot need not show which
 * @param unitCheck a cold kiln's reading against a thermometer, if it was made
 */
public record Evidence(
    Schedule planned, Keypad keypad, int slot, Shown shown, Optional<UnitCheck.Result> unitCheck) {

  public Evidence {
    Objects.requireNonNull(planned, "planned");
    Objects.requireNonNull(keypad, "keypad");
    Objects.requireNonNull(unitCheck, "unitCheck");
    if (slot < 1 || slot > keypad.slots()) {
      throw new IllegalArgumentException(
          "There is no slot %d: the keypad has slots 1 to %d.".formatted(slot, keypad.slots()));
    }
    if (keypad.slots() == 1 && shown.slot().isEmpty()) {
      shown = new Shown(OptionalInt.of(1), shown.unit(), shown.values());
    }
  }

  /** The program that the keypad should hold. */
  public FittedProgram program() {
    return KeypadFit.fit(planned, keypad);
  }

  /** Whether it was this slot whose review was open. */
  public boolean ofItsSlot() {
    return shown.slot().isPresent() && shown.slot().getAsInt() == slot;
  }

  /**
   * The comparison.
   *
   * @throws IllegalArgumentException if the program does not fit the keypad
   */
  public ReadbackReport report() {
    return Readback.compare(program(), keypad, shown, OptionalInt.of(slot), unitCheck);
  }
}
