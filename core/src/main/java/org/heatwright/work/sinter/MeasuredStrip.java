package org.heatwright.work.sinter;

import java.util.Objects;

/**
 * A strip or a piece that was measured before and after a firing.
 *
 * @param beforeMetres length when it was bone dry, m, 2 mm to 0.5 m
 * @param afterMetres the same length after the firing, m, shorter, at least half
 * @param heat the firing, in the piece
 */
public record MeasuredStrip(double beforeMetres, double afterMetres, SinterHeat heat) {

  public MeasuredStrip {
    Objects.requireNonNull(heat, "heat");
    requireLengths(beforeMetres, afterMetres);
  }

  static void requireLengths(double beforeMetres, double afterMetres) {
    if (!(beforeMetres >= 0.002 && beforeMetres <= 0.5)) {
      throw new IllegalArgumentException(
          "The length before the firing (%s mm) must be 2 to 500 mm."
              .formatted(beforeMetres * 1000));
    }
    if (!(afterMetres >= 0.5 * beforeMetres && afterMetres <= beforeMetres)) {
      throw new IllegalArgumentException(
          "The length after the firing (%s mm) must be half to all of the length before (%s mm)."
              .formatted(afterMetres * 1000, beforeMetres * 1000));
    }
  }

  /** Linear, of the dry length. */
  public double linearShare() {
    return 1 - afterMetres / beforeMetres;
  }
}
