package org.heatwright.keypad.machine;

import java.util.Objects;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;

/** One thing that a person does with one key. The set of kinds is closed. */
public sealed interface KeyAction {

  /** As a press of a key, for comparing with gestures. */
  Gesture.Press press();

  /** A key pressed and let go at once. */
  record Tap(Key key) implements KeyAction {

    public Tap {
      Objects.requireNonNull(key, "key");
    }

    @Override
    public Gesture.Press press() {
      return new Gesture.Press(key, 0);
    }
  }

  /**
   * A key kept down.
   *
   * @param key which
   * @param seconds how long, s, above zero; at most 60
   */
  record Hold(Key key, double seconds) implements KeyAction {

    public Hold {
      Objects.requireNonNull(key, "key");
      if (!(seconds > 0 && seconds <= 60)) {
        throw new IllegalArgumentException(
            "A key is held for more than 0 and at most 60 s, not %s.".formatted(seconds));
      }
    }

    @Override
    public Gesture.Press press() {
      return new Gesture.Press(key, seconds);
    }
  }

  /**
   * A digit key.
   *
   * @param digit 0 to 9
   */
  record Digit(int digit) implements KeyAction {

    public Digit {
      if (digit < 0 || digit > 9) {
        throw new IllegalArgumentException("A digit is 0 to 9, not %d.".formatted(digit));
      }
    }

    @Override
    public Gesture.Press press() {
      return new Gesture.Press(Key.DIGITS, 0);
    }
  }

  /**
   * The knob turned.
   *
   * @param clicks to the right; to the left if negative
   * @param spun whether fast, so that a click moves the description's fast steps
   */
  record Turn(int clicks, boolean spun) implements KeyAction {

    @Override
    public Gesture.Press press() {
      return new Gesture.Press(Key.TURN, 0);
    }
  }
}
