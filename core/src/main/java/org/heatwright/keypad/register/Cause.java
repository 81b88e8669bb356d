package org.heatwright.keypad.register;

/** What ends a proof. The list is closed: what is not on it leaves a proof as it was. */
public enum Cause {
  /** Keys pressed in passing can change any value, so keying two values ends the whole proof. */
  KEYED("it was keyed again"),
  EDITED("it was edited at the keypad"),
  /** A later read-back of the slot did not show the program. */
  READ_DIFFERENT("a later read-back showed something else"),
  UNIT_SWITCHED("the unit was switched"),
  /** Unless this keypad is told to keep its programs. */
  POWER_CUT("the power was cut"),
  FIRED_BY_OTHER("somebody else fired the kiln"),
  /**
   * Only of a program with a start delay: some keypads count the stored delay down or drop it.
   * Common practice, no source.
   */
  RAN("it was run, and what that leaves of a start delay is not known"),
  RESET("the keypad was replaced or reset"),
  /** The proof rests on which values a review shows. */
  DESCRIBED_ANEW("the keypad was described anew"),
  AGE("it is too old"),
  CLOCK("its date lies in the future: look at this computer's clock");

  private final String words;

  Cause(String words) {
    this.words = words;
  }

  /** A clause: "the power was cut". */
  public String words() {
    return words;
  }
}
