package org.heatwright.work.enamel;

import java.util.Objects;
import org.heatwright.material.Origin;

/**
 * A metal that carries enamel.
 *
 * @param name in words
 * @param densityKilogramsPerCubicMetre kg/m³
 * @param capacityJoulesPerKilogramKelvin one number for 20 to 800 °C, J/(kg K)
 * @param near20PerKelvin linear expansion near 20 °C, 1/K
 * @param perKelvin mean linear expansion from 20 to 500 °C, 1/K: what an enamel that sets at some
 *     500 °C feels
 * @param youngPascals Young's modulus, cold, Pa
 * @param poissonRatio Poisson's ratio
 * @param solidusCelsius where it begins to melt: the lowest published value, °C
 * @param yieldPascals where it yields once it is annealed, Pa
 * @param expansionOrigin where the expansions come from
 * @param elasticOrigin where the elastic numbers come from
 * @param solidusOrigin where the solidus comes from
 */
public record EnamelMetal(
    String name,
    double densityKilogramsPerCubicMetre,
    double capacityJoulesPerKilogramKelvin,
    double near20PerKelvin,
    Range perKelvin,
    double youngPascals,
    double poissonRatio,
    double solidusCelsius,
    Range yieldPascals,
    Origin expansionOrigin,
    Origin elasticOrigin,
    Origin solidusOrigin) {

  public EnamelMetal {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(perKelvin, "perKelvin");
    Objects.requireNonNull(yieldPascals, "yieldPascals");
    Objects.requireNonNull(expansionOrigin, "expansionOrigin");
    Objects.requireNonNull(elasticOrigin, "elasticOrigin");
    Objects.requireNonNull(solidusOrigin, "solidusOrigin");
  }

  /** A layer of it. */
  public Layer layer(double thicknessMetres) {
    return new Layer(thicknessMetres, youngPascals, poissonRatio, perKelvin.median());
  }

  /** Heat that a square metre takes up, J/(m² K). */
  public double joulesPerSquareMetreKelvin(double thicknessMetres) {
    return densityKilogramsPerCubicMetre * capacityJoulesPerKilogramKelvin * thicknessMetres;
  }
}
