package org.heatwright.keypad.keying;

import java.util.List;

/**
 * One prompt of a keying sheet.
 *
 * @param number 1-based
 * @param kind what sort of step
 * @param prompt what it is about: "segment 2 target"
 * @param showsBefore what the display shows before
 * @param press what to press, in words: {@code make} and then {@code go}
 * @param showsAfter what it must show: for a value before {@code go} leads on, else after it
 * @param meaning of the value, in words
 * @param make the keys that make the value; empty if there is none or it stands there already
 * @param go the keys that take it and lead on; empty if nothing is pressed
 */
public record KeyingStep(
    int number,
    Kind kind,
    String prompt,
    String showsBefore,
    String press,
    String showsAfter,
    String meaning,
    List<Instruction> make,
    List<Instruction> go) {

  public KeyingStep {
    make = List.copyOf(make);
    go = List.copyOf(go);
  }

  /** What sort of step. */
  public enum Kind {
    /** Nothing is keyed: look, compare, or know. */
    LOOK,
    /** A value is made and taken, or taken as it stands. */
    VALUE,
    /** Keys that lead somewhere: open, save, leave, review. */
    LEAD
  }
}
