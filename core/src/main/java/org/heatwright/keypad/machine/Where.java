package org.heatwright.keypad.machine;

/** What a keypad is doing, which decides what its keys mean. The set of kinds is closed. */
public sealed interface Where {

  /**
   * It shows the kiln's temperature.
   *
   * @param message what it shows instead until the next key; may be empty
   */
  record Idle(String message) implements Where {}

  /**
   * A slot is being chosen.
   *
   * @param then what for
   * @param number the slot number shown
   * @param typed digits typed so far
   */
  record Choosing(Then then, int number, String typed) implements Where {}

  /** What a slot is chosen for. */
  enum Then {
    KEYING,
    REVIEW,
    START
  }

  /**
   * A value of a program.
   *
   * @param place index in the keypad's places
   * @param text what it shows
   * @param typed digits typed so far
   * @param open whether keys change it; in a list one must open it first
   */
  record Value(int place, String text, String typed, boolean open) implements Where {}

  /**
   * A value in the review.
   *
   * @param item 0-based, in display order
   */
  record Review(int item) implements Where {}

  /** A program runs. */
  record Running() implements Where {}
}
