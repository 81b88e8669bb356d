package org.heatwright.app.files;

import java.util.OptionalInt;

/**
 * Something a person handed in is wrong. The message is one plain sentence for that person: file,
 * line, field, what was found, what was expected.
 */
public final class InputException extends RuntimeException {

  private static final long serialVersionUID = 1L;

  private final String fileName;
  private final int lineOrZero;

  private InputException(String fileName, int lineOrZero, String sentence) {
    super(
        lineOrZero > 0
            ? "%s, line %d: %s".formatted(fileName, lineOrZero, sentence)
            : "%s: %s".formatted(fileName, sentence));
    this.fileName = fileName;
    this.lineOrZero = lineOrZero;
  }

  /** Wrong at a line, 1-based. */
  public static InputException at(String fileName, int line, String sentence) {
    return new InputException(fileName, line, sentence);
  }

  /** Wrong as a whole. */
  public static InputException in(String fileName, String sentence) {
    return new InputException(fileName, 0, sentence);
  }

  public String fileName() {
    return fileName;
  }

  /** The line, 1-based, where one is to blame. */
  public OptionalInt line() {
    return lineOrZero > 0 ? OptionalInt.of(lineOrZero) : OptionalInt.empty();
  }
}
