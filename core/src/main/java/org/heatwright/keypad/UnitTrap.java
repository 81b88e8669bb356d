package org.heatwright.keypad;

import java.util.List;

/**
 * Numbers that the keypad would take just as well if the other unit were in force or meant: nothing
 * on the display would look wrong, and the kiln would go somewhere else.
 *
 * @param targets one for each segment, in order
 * @param needsUnitCheck whether the unit in force must be settled before the program can count as
 *     proven: the keypad can be in either unit and would take at least one target in both
 */
public record UnitTrap(List<Target> targets, boolean needsUnitCheck) {

  public UnitTrap {
    targets = List.copyOf(targets);
  }

  /**
   * @param segment 1-based
   * @param digits the number
   * @param accepted whether the keypad would take it in the wrong unit
   * @param meaning what would happen, in words
   */
  public record Target(int segment, String digits, boolean accepted, String meaning) {}
}
