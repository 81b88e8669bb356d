package org.heatwright.mould;

/**
 * Elastic stress in a free body that is unevenly hot: what is cooler than the body's mean is pulled
 * by {@code E alpha (mean - T)/(1 - nu)}. Exact for the stress along a long cylinder and in a
 * plate, and for both components at a surface (memory: Timoshenko and Goodier, Theory of
 * Elasticity, thermal stress).
 *
 * <p>Limits: no creep, no cracks, and no sudden growth of silica, which pulls ten times as hard
 * while it turns.
 *
 * @param youngPascals Young's modulus, Pa
 * @param expansionPerKelvin linear expansion, 1/K
 * @param poissonRatio Poisson's ratio
 */
public record ThermalStress(double youngPascals, double expansionPerKelvin, double poissonRatio) {

  /**
   * Investment away from its inversions: 2 to 6 GPa, 5 to 20e-6 1/K. Source: estimate. Its
   * strength, 0.3 to 2 MPa by estimate, is too little known to judge by: schedules are compared
   * with each other.
   */
  public static final ThermalStress INVESTMENT = new ThermalStress(4e9, 12e-6, 0.2);

  public ThermalStress {
    if (!(youngPascals > 0)
        || !(expansionPerKelvin > 0)
        || !(poissonRatio >= 0 && poissonRatio < 0.5)) {
      throw new IllegalArgumentException(
          "Young's modulus (%s Pa) and expansion (%s 1/K) must be above zero, Poisson's ratio (%s) 0 to under 0.5."
              .formatted(youngPascals, expansionPerKelvin, poissonRatio));
    }
  }

  /**
   * Tension of a place, Pa; below zero is pressure.
   *
   * @param belowMeanKelvins by how much it is cooler than the mean of the body, K
   */
  public double tensionPascals(double belowMeanKelvins) {
    return youngPascals * expansionPerKelvin * belowMeanKelvins / (1 - poissonRatio);
  }
}
