package org.heatwright.keypad.machine;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.keypad.Gesture;
import org.heatwright.units.TemperatureUnit;

/**
 * Everything a keypad remembers.
 *
 * @param where what it is doing
 * @param slot the slot that was chosen last, 1-based
 * @param slots what was written to each slot; one that is not named holds nothing
 * @param draft the program being keyed, with what was accepted so far
 * @param saved whether the draft has just been written
 * @param unit the unit in force
 * @param begun presses of a gesture that is not finished
 */
public record MachineState(
    Where where,
    int slot,
    Map<Integer, Contents> slots,
    Optional<Contents> draft,
    boolean saved,
    TemperatureUnit unit,
    List<Gesture.Press> begun) {

  public MachineState {
    Objects.requireNonNull(where, "where");
    slots = Map.copyOf(slots);
    Objects.requireNonNull(draft, "draft");
    Objects.requireNonNull(unit, "unit");
    begun = List.copyOf(begun);
  }

  MachineState at(Where where) {
    return new MachineState(where, slot, slots, draft, saved, unit, List.of());
  }

  MachineState withSlot(int slot) {
    return new MachineState(where, slot, slots, draft, saved, unit, List.of());
  }

  MachineState withDraft(Optional<Contents> draft) {
    return new MachineState(where, slot, slots, draft, false, unit, List.of());
  }

  /** With a slot written. */
  MachineState stored(Contents contents) {
    Map<Integer, Contents> more = new HashMap<>(slots);
    more.put(slot, contents);
    return new MachineState(where, slot, more, draft, saved, unit, List.of());
  }

  MachineState savedNow() {
    return new MachineState(where, slot, slots, draft, true, unit, List.of());
  }

  MachineState withUnit(TemperatureUnit unit) {
    return new MachineState(where, slot, slots, draft, saved, unit, List.of());
  }

  MachineState begun(List<Gesture.Press> presses) {
    return new MachineState(where, slot, slots, draft, saved, unit, presses);
  }
}
