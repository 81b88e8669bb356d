package org.heatwright.keypad.register;

import java.time.Instant;
import java.util.Objects;

/**
 * What ended a proof, and when.
 *
 * @param at when it was told; of an age, when it was reached
 */
public record Ending(Cause cause, Instant at) {

  public Ending {
    Objects.requireNonNull(cause, "cause");
    Objects.requireNonNull(at, "at");
  }
}
