package org.heatwright.kiln;

import java.time.LocalDate;
import java.util.Objects;

/**
 * What logs have taught about a kiln.
 *
 * @param date when it was learned
 * @param firings from how many firings, 1 or more
 * @param engine version of the model it belongs to
 * @param beliefs the fit
 */
public record Learned(LocalDate date, int firings, String engine, KilnBeliefs beliefs) {

  /** Version of the kiln model: what was learned with another one does not fit this one. */
  public static final String ENGINE = "kiln-4";

  public Learned {
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(engine, "engine");
    Objects.requireNonNull(beliefs, "beliefs");
    if (firings < 1) {
      throw new IllegalArgumentException(
          "What was learned came from %d firings, but it takes one at least.".formatted(firings));
    }
  }
}
