package org.heatwright.app.describe;

import java.util.List;
import java.util.Optional;

/**
 * One question about a keypad.
 *
 * @param id by which its answer is kept, e.g. "rate-range"
 * @param about the part of the keypad, e.g. "The rate"
 * @param ask what to answer
 * @param why what it matters for
 * @param look what to try at the controller; may be empty
 * @param kind one choice, several, or a text
 * @param options the choices; empty for a text
 * @param example an answer that would be right; may be empty
 * @param unknown what stays unsure if nobody knows; empty where an answer is needed
 */
public record Question(
    String id,
    String about,
    String ask,
    String why,
    String look,
    Kind kind,
    List<Option> options,
    String example,
    Optional<String> unknown) {

  public Question {
    options = List.copyOf(options);
  }

  /** How it is answered. */
  public enum Kind {
    ONE,
    SEVERAL,
    TEXT
  }

  /**
   * A choice.
   *
   * @param word the answer
   * @param meaning in a few words; may be empty
   */
  public record Option(String word, String meaning) {}
}
