package org.heatwright.work.casting;

/**
 * Metal for a cast: {@code m = m_pattern rho_metal / rho_pattern (1 + sprues) (1 + button)}.
 *
 * @param castKilograms casting with its sprues
 * @param buttonKilograms what is poured beyond, and stays in the button
 * @param totalKilograms to melt: the low and the high end take every low or high end together
 */
public record MetalNeed(Spread castKilograms, Spread buttonKilograms, Spread totalKilograms) {

  /** The most that a bench melts, and far beyond: guards against a slip of the unit, kg. */
  private static final double MOST_KILOGRAMS = 100;

  /**
   * Metal for a pattern that was weighed.
   *
   * @param patternKilograms mass of the pattern, above zero
   * @param patternKilogramsPerCubicMetre density of its material
   * @param metalKilogramsPerCubicMetre density of the metal
   * @param spruesShare what sprues add to what was weighed; zero if they were weighed too
   * @param buttonShare what the button adds
   */
  public static MetalNeed ofPattern(
      double patternKilograms,
      Spread patternKilogramsPerCubicMetre,
      Spread metalKilogramsPerCubicMetre,
      Spread spruesShare,
      Spread buttonShare) {
    requireAbove(patternKilograms * 1000, "The pattern's mass", "g");
    return ofVolume(
        Spread.exactly(patternKilograms).over(patternKilogramsPerCubicMetre),
        metalKilogramsPerCubicMetre,
        spruesShare,
        buttonShare);
  }

  /** Metal for a known volume, m³, e.g. of a drawing; the other arguments as for a pattern. */
  public static MetalNeed ofVolume(
      double cubicMetres,
      Spread metalKilogramsPerCubicMetre,
      Spread spruesShare,
      Spread buttonShare) {
    requireAbove(cubicMetres * 1e6, "The volume", "cm³");
    return ofVolume(
        Spread.exactly(cubicMetres), metalKilogramsPerCubicMetre, spruesShare, buttonShare);
  }

  private static MetalNeed ofVolume(
      Spread cubicMetres, Spread metalDensity, Spread spruesShare, Spread buttonShare) {
    Spread cast = cubicMetres.times(metalDensity).times(spruesShare.plus(Spread.exactly(1)));
    Spread button = cast.times(buttonShare);
    Spread total = cast.plus(button);
    if (total.usual() > MOST_KILOGRAMS) {
      throw new IllegalArgumentException(
          "That makes %s kg of metal, more than this is for (%s kg); was a unit mistaken?"
              .formatted(Math.round(total.usual()), Math.round(MOST_KILOGRAMS)));
    }
    return new MetalNeed(cast, button, total);
  }

  private static void requireAbove(double value, String what, String unit) {
    if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "%s (%s %s) must be above zero.".formatted(what, value, unit));
    }
  }
}
