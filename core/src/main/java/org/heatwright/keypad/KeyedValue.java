package org.heatwright.keypad;

import java.util.Locale;
import java.util.Objects;

/**
 * One value to key.
 *
 * @param segment 1-based; 0 for the whole program (unit, delay, number of segments)
 * @param kind which field
 * @param digits as the display must show it
 * @param meaning in words: "2 h 30 min", "full power up"
 */
public record KeyedValue(int segment, Kind kind, String digits, String meaning) {

  public KeyedValue {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(digits, "digits");
    Objects.requireNonNull(meaning, "meaning");
    if (segment < 0) {
      throw new IllegalArgumentException(
          "The segment (%d) must not be negative.".formatted(segment));
    }
  }

  /** "segment 2 target", "start delay". */
  public String place() {
    return place(segment, kind);
  }

  /** Our words for a place. */
  public static String place(int segment, Kind kind) {
    return switch (kind) {
      case DELAY -> "start delay";
      case UNIT -> "unit";
      case END -> segment == 0 ? "number of segments" : "segment " + segment + " (unused)";
      default -> "segment " + segment + " " + kind.word();
    };
  }

  /** The fields of a program. */
  public enum Kind {
    RATE,
    /** The time to get to the target, on keypads that take it instead of a rate. */
    TIME,
    TARGET,
    HOLD,
    /** How long the controller waits before the first segment. */
    DELAY,
    /** The unit of the whole program, on keypads that ask it in the program. */
    UNIT,
    /** What says that the program is over. */
    END;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
