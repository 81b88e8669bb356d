package org.heatwright.work.casting;

import java.util.Objects;
import org.heatwright.mould.Mould;

/**
 * Equal moulds to be filled with slurry.
 *
 * @param mould size and number
 * @param patternCubicMetres volume of the pattern with its sprue in one mould, m³, zero or more,
 *     less than the mould
 */
public record MouldFill(Mould mould, double patternCubicMetres) {

  public MouldFill {
    Objects.requireNonNull(mould, "mould");
    if (!(patternCubicMetres >= 0 && patternCubicMetres < mould.investmentCubicMetres())) {
      throw new IllegalArgumentException(
          "The pattern (%.4g cm³) must be smaller than its mould (%.4g cm³)."
              .formatted(patternCubicMetres * 1e6, mould.investmentCubicMetres() * 1e6));
    }
  }

  /**
   * Slurry for all of them, m³.
   *
   * @param wasteShare what stays in the bowl, as a share of the mould's whole volume
   */
  double slurryCubicMetres(double wasteShare) {
    return mould.count() * (mould.investmentCubicMetres() * (1 + wasteShare) - patternCubicMetres);
  }
}
