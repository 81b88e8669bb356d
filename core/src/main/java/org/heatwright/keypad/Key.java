package org.heatwright.keypad;

import java.util.Locale;
import java.util.Optional;

/** Keys by our own generic names; a keypad's description says which of them it has. */
public enum Key {
  UP,
  DOWN,
  /** Takes the value and goes to the next prompt. */
  NEXT,
  BACK,
  CONFIRM,
  CLEAR,
  /** Opens or leaves programming. */
  PROGRAM,
  START,
  STOP,
  /** The ten keys 0 to 9. */
  DIGITS,
  /** The decimal point among the digits. */
  POINT,
  /** The sign among the digits. */
  MINUS,
  /** The knob, turned. */
  TURN,
  /** The knob, pushed. */
  PUSH;

  /** "up", "program": as files and sheets write it. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Optional<Key> ofWord(String word) {
    for (Key key : values()) {
      if (key.word().equals(word.strip())) {
        return Optional.of(key);
      }
    }
    return Optional.empty();
  }
}
