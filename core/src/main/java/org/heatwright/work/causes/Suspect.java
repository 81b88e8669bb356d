package org.heatwright.work.causes;

import java.util.Objects;

/**
 * A cause of one fault, before anything is known of the firing.
 *
 * @param cause what
 * @param startFactor how usual it is behind this fault, natural logarithm of odds: {@code
 *     estimate:}
 */
public record Suspect(Cause cause, double startFactor) {
  public Suspect {
    Objects.requireNonNull(cause, "cause");
    if (!(Math.abs(startFactor) < 5)) {
      throw new IllegalArgumentException("A start (%s) is a moderate one.".formatted(startFactor));
    }
  }
}
