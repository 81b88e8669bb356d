package org.heatwright.mould;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.material.Material;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;

/**
 * Set phosphate-bonded investment as a material that dries: silica with a binder of magnesium
 * ammonium phosphate, mixed with water or with a special liquid that is counted as water.
 * Everything about it is our estimate, wide; a maker's sheet or a log of a mould's core comes
 * first.
 *
 * <p>Limits: vapour and ammonia leave where they are set free; powders differ by half in
 * conductivity.
 */
final class PhosphateInvestment {

  static final double SHARE_CRISTOBALITE = 0.4; // of the fired mould; source: estimate
  static final double SHARE_QUARTZ = 0.4; // of the fired mould; source: estimate

  private static final double GRAIN_KG_M3 = 2600;
  private static final double LOSS_SHARE = 0.06;

  /** Share of the liquid that stays free in a set mould. Source: estimate. */
  private static final double FREE_SHARE = 0.6;

  /** Heat that drives the bound water and ammonia out, J/kg. Source: estimate. */
  private static final double BOUND_HEAT = 2.6e6;

  private static final double LIQUID_KG_M3 = 1000;

  /** The binder gives up its water and ammonia up to here, °C. Source: estimate. */
  static final double BOUND_TO = 250;

  private PhosphateInvestment() {}

  private static double cubicMetresPerPowder(double liquidPowder) {
    return 1 / GRAIN_KG_M3 + liquidPowder / LIQUID_KG_M3;
  }

  private static double firedDensity(double liquidPowder) {
    return (1 - LOSS_SHARE) / cubicMetresPerPowder(liquidPowder);
  }

  /** Free water in a set mould, kg/m³. */
  static double freeWaterDensity(double liquidPowder) {
    return FREE_SHARE * liquidPowder / cubicMetresPerPowder(liquidPowder);
  }

  /** Water and ammonia that the binder holds, kg/m³. */
  static double boundWaterDensity(double liquidPowder) {
    return (1 - FREE_SHARE) * liquidPowder / cubicMetresPerPowder(liquidPowder);
  }

  /**
   * The material, per kilogram of what is left after firing.
   *
   * @param liquidPowder kg of liquid to a kg of powder
   * @param wetShare share of the free water still there at the start, 0 to 1
   */
  static Material material(double liquidPowder, double wetShare) {
    double fired = firedDensity(liquidPowder);
    double free = freeWaterDensity(liquidPowder) * wetShare / fired;
    double bound = boundWaterDensity(liquidPowder) / fired;
    List<LatentHeat> latent = new ArrayList<>();
    if (free > 0) {
      latent.add(
          new LatentHeat(
              GypsumInvestment.BOILS_FROM,
              GypsumInvestment.BOILS_TO,
              free * GypsumInvestment.EVAPORATION,
              true));
    }
    latent.add(new LatentHeat(GypsumInvestment.BOILS_TO, BOUND_TO, bound * BOUND_HEAT, true));
    return material(free * GypsumInvestment.WATER_CAPACITY, 0.8 + 0.4 * wetShare, latent, fired);
  }

  /** The same after its burnout: nothing left that dries. */
  static Material fired(double liquidPowder) {
    return material(0, 0.8, List.of(), firedDensity(liquidPowder));
  }

  private static Material material(
      double waterCapacity, double coldConductivity, List<LatentHeat> latent, double density) {
    return new Material(
        "phosphate-bonded investment",
        density,
        LinearTable.points(95, coldConductivity, 110, 0.8, 600, 0.8, 1000, 0.95),
        LinearTable.points(
            25,
            745 + waterCapacity,
            95,
            840 + waterCapacity,
            110,
            855,
            227,
            950,
            400,
            1075,
            700,
            1165,
            1000,
            1200),
        latent,
        Origin.estimate("phosphate-bonded, conductivity 0.8 W/(m K) within 0.5 to 1.2"));
  }
}
