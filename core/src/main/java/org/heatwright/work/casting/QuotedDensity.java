package org.heatwright.work.casting;

import java.util.Objects;
import org.heatwright.material.Origin;

/**
 * One source's density of a metal at room temperature.
 *
 * @param how in a few words, e.g. "bench table" or "computed, volumes added: Au 583 Ag 104 Cu 313"
 * @param kilogramsPerCubicMetre 500 to 25 000
 * @param origin where it comes from
 */
public record QuotedDensity(String how, double kilogramsPerCubicMetre, Origin origin) {

  public QuotedDensity {
    Objects.requireNonNull(how, "how");
    Objects.requireNonNull(origin, "origin");
    if (!(kilogramsPerCubicMetre >= 500 && kilogramsPerCubicMetre <= 25_000)) {
      throw new IllegalArgumentException(
          "The density (%s g/cm³) must be 0.5 to 25 g/cm³."
              .formatted(kilogramsPerCubicMetre / 1000));
    }
  }

  /** The person's own value. */
  public static QuotedDensity own(double kilogramsPerCubicMetre) {
    return new QuotedDensity("your own value", kilogramsPerCubicMetre, Origin.own(""));
  }
}
