package org.heatwright.work.glass;

import org.heatwright.work.glass.Glass.Elastic;

/**
 * Two glasses fused together whose expansions differ: from where the stiffer one sets they shrink
 * by different lengths.
 *
 * @param jointPascals stress beside the joint of two equal sheets, free to bow or held flat:
 *     pressure in the one that shrinks less, tension in the other; a small inlay may put twice that
 *     into the sheet around it, Pa
 * @param facePascals tension at the outer face of the one that shrinks less, if it may bow, Pa
 * @param bowPerMetre curvature of a strip of the two, 1/m
 * @see "memory: Timoshenko, Analysis of Bi-Metal Thermostats, J. Optical Society of America 1925,
 *     equal moduli and thicknesses"
 */
public record Compatibility(double jointPascals, double facePascals, double bowPerMetre) {

  /** From here on a trade's test strip shows it clearly. Our estimate, Pa. */
  public static final double DOUBTFUL_PASCALS = 1.5e6;

  /** From here on, with the small flaws of any edge, it may crack one day. Our estimate, Pa. */
  public static final double BAD_PASCALS = 4e6;

  /**
   * @param glass modulus and Poisson's ratio of both
   * @param differencePerKelvin difference of the expansions, 1/K, its sign ignored
   * @param setKelvins from the set point down to room temperature, K
   * @param sheetMetres thickness of each of the two sheets, m
   */
  public static Compatibility of(
      Elastic glass, double differencePerKelvin, double setKelvins, double sheetMetres) {
    double strain = Math.abs(differencePerKelvin) * setKelvins;
    double modulus = glass.youngPascals() / (1 - glass.poissonRatio());
    double bow = 1.5 * strain / (2 * sheetMetres);
    // Force E a strain/8 a width of the strip, and bending of 3/8 E strain on either side of it.
    return new Compatibility(modulus * strain / 2, modulus * strain / 4, bow);
  }

  /** How far the middle of a strip stands off a straight edge, m. */
  public double bowMetres(double lengthMetres) {
    return bowPerMetre * lengthMetres * lengthMetres / 8;
  }
}
