package org.heatwright.keypad.keying;

import java.util.HashMap;
import java.util.Map;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Place;
import org.heatwright.keypad.Scale;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.units.TemperatureUnit;

/**
 * A hand at one keypad: the quickest ways to the values of each of its scales, worked out once and
 * used for as many programs as one likes. Used by one thread.
 */
final class Hand {

  private final KeypadMachine machine;
  private final KeyingTimes times;
  private final Map<TemperatureUnit, Map<KeyedValue.Kind, Moves>> moves = new HashMap<>();
  private final Moves slots;

  Hand(KeypadMachine machine, KeyingTimes times) {
    this.machine = machine;
    this.times = times;
    this.slots =
        new Moves(machine.keypad().entry(), Scale.numbers(machine.keypad().slots()), times);
  }

  KeypadMachine machine() {
    return machine;
  }

  KeyingTimes times() {
    return times;
  }

  /** Between everything that a place can read. */
  Moves at(Place place, TemperatureUnit unit) {
    return moves
        .computeIfAbsent(unit, u -> new HashMap<>())
        .computeIfAbsent(
            place.kind(),
            k -> new Moves(machine.keypad().entry(), machine.scale(place, unit), times));
  }

  /** Between the numbers of slots. */
  Moves atSlots() {
    return slots;
  }
}
