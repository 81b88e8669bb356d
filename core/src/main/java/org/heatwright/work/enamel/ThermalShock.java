package org.heatwright.work.enamel;

/** What a sudden change of temperature does to a brittle thing. */
public final class ThermalShock {

  private ThermalShock() {}

  /**
   * The sudden change of its surface that brings glass to its strength, {@code σ(1-ν)/(E α)}, K:
   * the severe case, as under water. In air a thin piece stands many times more.
   *
   * @param strengthPascals tensile strength, Pa
   * @see "memory: Kingery, Factors affecting thermal stress resistance of ceramic materials, J. Am.
   *     Ceram. Soc. 1955"
   */
  static double severeKelvins(double strengthPascals, Layer glass) {
    return strengthPascals / (glass.platePascals() * glass.perKelvin());
  }

  /** The same for an enamel of usual strength, however thick, K. */
  public static double severeKelvins(EnamelGlass enamel) {
    double anyMetres = 0.001;
    return severeKelvins(EnamelFit.STRENGTH_PASCALS.median(), enamel.layer(anyMetres));
  }
}
