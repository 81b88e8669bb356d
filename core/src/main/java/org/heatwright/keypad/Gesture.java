package org.heatwright.keypad;

import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * Keys pressed one after the other; may be empty where nothing needs pressing.
 *
 * @param presses in order
 */
public record Gesture(List<Press> presses) {

  public Gesture {
    presses = List.copyOf(presses);
  }

  public static Gesture of(Key... keys) {
    return new Gesture(
        java.util.Arrays.stream(keys).map(k -> new Press(k, 0)).collect(Collectors.toList()));
  }

  public static Gesture holding(Key key, double holdSeconds) {
    return new Gesture(List.of(new Press(key, holdSeconds)));
  }

  public boolean isEmpty() {
    return presses.isEmpty();
  }

  /** Whether one of the two is the other, or its beginning. */
  boolean beginsAlike(Gesture other) {
    int common = Math.min(presses.size(), other.presses.size());
    for (int i = 0; i < common; i++) {
      if (!presses.get(i).isLike(other.presses.get(i))) {
        return false;
      }
    }
    return true;
  }

  /** "press program, then hold next 3 s". */
  public String words() {
    return presses.stream().map(Press::words).collect(Collectors.joining(", then "));
  }

  /**
   * One press.
   *
   * @param key which
   * @param holdSeconds how long it must be held down, s, zero for a tap
   */
  public record Press(Key key, double holdSeconds) {

    public Press {
      Objects.requireNonNull(key, "key");
      if (!(holdSeconds >= 0 && holdSeconds <= 60)) {
        throw new IllegalArgumentException(
            "The key '%s' cannot be held %s s: 0 to 60 s.".formatted(key.word(), holdSeconds));
      }
    }

    /** Whether the two are the same but for how long a key is held. */
    public boolean isLike(Press other) {
      return key == other.key && (holdSeconds > 0) == (other.holdSeconds > 0);
    }

    public String words() {
      if (key == Key.TURN) {
        return "turn the knob";
      }
      String what = key == Key.PUSH ? "the knob" : key.word();
      String verb = key == Key.PUSH ? "push " : "press ";
      return holdSeconds == 0
          ? verb + what
          : (key == Key.PUSH ? "push and hold " : "hold ")
              + what
              + " "
              + Words.number(holdSeconds)
              + " s";
    }
  }
}
