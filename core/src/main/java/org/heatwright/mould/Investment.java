package org.heatwright.mould;

import java.util.Objects;

/**
 * The mould material as mixed.
 *
 * @param binder what binds it
 * @param waterPowder kg of water (or special liquid) to a kg of powder, 0.2 to 0.8;
 *     phosphate-bonded 0.1 to 0.4
 * @param pouredHoursBefore hours between pouring and the start of the firing, zero or more
 */
public record Investment(Binder binder, double waterPowder, double pouredHoursBefore) {

  /** What binds the silica. */
  public enum Binder {
    GYPSUM,
    PHOSPHATE,
    UNKNOWN
  }

  public Investment {
    Objects.requireNonNull(binder, "binder");
    boolean phosphate = binder == Binder.PHOSPHATE;
    if (!(waterPowder >= (phosphate ? 0.1 : 0.2) && waterPowder <= (phosphate ? 0.4 : 0.8))) {
      throw new IllegalArgumentException(
          phosphate
              ? "The liquid to powder ratio (%s) of a phosphate-bonded mould must be 0.1 to 0.4; 0.20 means 20 g to 100 g."
                  .formatted(waterPowder)
              : "The water to powder ratio (%s) must be 0.2 to 0.8; 0.40 means 40 g to 100 g."
                  .formatted(waterPowder));
    }
    if (!(pouredHoursBefore >= 0)) {
      throw new IllegalArgumentException(
          "The hours since pouring (%s) must not be negative.".formatted(pouredHoursBefore));
    }
  }

  public boolean isPhosphateBonded() {
    return binder == Binder.PHOSPHATE;
  }

  /** Gypsum-bonded, poured two hours before: the usual case. */
  public static Investment gypsum(double waterPowder) {
    return new Investment(Binder.GYPSUM, waterPowder, 2);
  }
}
