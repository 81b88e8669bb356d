package org.heatwright.keypad.register;

/**
 * Something to know before a slot is keyed.
 *
 * @param message one or two sentences
 */
public record SlotWarning(Level level, String message) {

  /** How heavy it is. */
  public enum Level {
    /** Do not overwrite: somebody needs what is there. */
    STOP,
    /** What is there may be needed, or cannot be made again from here. */
    WARN,
    NOTE
  }
}
