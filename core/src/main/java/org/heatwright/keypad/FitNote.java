package org.heatwright.keypad;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * A difference between what was asked and what the keypad can express, in plain words.
 *
 * @param kind what sort
 * @param segment 1-based, if it is about one
 * @param message one or two sentences with the values and their units
 */
public record FitNote(Kind kind, OptionalInt segment, String message) {

  public FitNote {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(segment, "segment");
    Objects.requireNonNull(message, "message");
  }

  /** What sort of difference. */
  public enum Kind {
    /** Rounded toward safe: slower, never hotter, longer. */
    ROUNDED,
    /** Brought inside the keypad's range, toward safe. */
    LIMITED,
    /** Shown in the other unit than the schedule's. */
    CONVERTED,
    /** Something to set or know before keying; no value differs. */
    TOLD,
    /** Cannot be expressed: the program must not be keyed. */
    REFUSED
  }
}
