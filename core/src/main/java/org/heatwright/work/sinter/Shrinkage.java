package org.heatwright.work.sinter;

/** From the dry piece to the fired one, linear and the same in all directions. */
public final class Shrinkage {

  private Shrinkage() {}

  /**
   * {@code (1 - s)^3 = (1 - w) rho_g / rho_f}.
   *
   * @param greenKilogramsPerCubicMetre density of the dry piece, kg/m³
   * @param lostShare share of its mass that burns away, 0 to 0.6
   * @param firedKilogramsPerCubicMetre density of the fired piece, kg/m³
   * @return linear shrinkage as a share of the dry length; below zero where it swells
   */
  public static double ofDensities(
      double greenKilogramsPerCubicMetre, double lostShare, double firedKilogramsPerCubicMetre) {
    if (!(greenKilogramsPerCubicMetre > 0)
        || !(firedKilogramsPerCubicMetre > 0)
        || !(lostShare >= 0 && lostShare <= 0.6)) {
      throw new IllegalArgumentException(
          "Densities (%s and %s kg/m³) must be above zero and the loss of mass (%s) 0 to 0.6."
              .formatted(greenKilogramsPerCubicMetre, firedKilogramsPerCubicMetre, lostShare));
    }
    return 1
        - Math.cbrt((1 - lostShare) * greenKilogramsPerCubicMetre / firedKilogramsPerCubicMetre);
  }

  /**
   * {@code s = 1 - (D0/D)^(1/3)}.
   *
   * @param greenShare metal in the dry piece by volume, D0
   * @param densityShare after the firing, D
   */
  public static double ofShares(double greenShare, double densityShare) {
    return 1 - Math.cbrt(greenShare / densityShare);
  }

  /**
   * D0 of a piece that had density D after it had shrunk by s: {@code D0 = D (1 - s)^3}.
   *
   * @param linearShare s, 0 to 0.5
   */
  public static double greenShare(double densityShare, double linearShare) {
    return densityShare * Math.pow(1 - linearShare, 3);
  }

  /** Size to make for a wanted size: {@code before = after/(1 - s)}, in any unit of length. */
  public static double beforeMetres(double afterMetres, double linearShare) {
    return afterMetres / (1 - linearShare);
  }
}
