package org.heatwright.mould;

import java.util.List;
import org.heatwright.material.Material;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;

/**
 * Set gypsum-bonded investment as a material that dries: free water boils off, the dihydrate gives
 * up its water in two steps. Composition and water arithmetic of the default mix (40 cristobalite,
 * 30 quartz, 30 hemihydrate by mass).
 *
 * <p>Limits: the water leaves where it boils (no transport of vapour through the mould); a mould
 * that stood for days has lost water that this does not know of; powders differ in conductivity by
 * tens of percent.
 */
public final class GypsumInvestment {

  // Grain densities and molar masses. Source: read, CRC tables as carried by open libraries, and a
  // salt database for the hemihydrate.
  static final double SHARE_CRISTOBALITE = 0.40; // source: estimate
  static final double SHARE_QUARTZ = 0.30; // source: estimate
  private static final double SHARE_HEMIHYDRATE = 0.30; // source: estimate
  private static final double CRISTOBALITE_KG_M3 = 2334;
  private static final double QUARTZ_KG_M3 = 2648;
  private static final double HEMIHYDRATE_KG_M3 = 2640;
  private static final double WATER_MOLAR = 18.01528;
  private static final double HEMIHYDRATE_MOLAR = 145.149;
  private static final double DIHYDRATE_MOLAR = 172.172;
  private static final double WATER_KG_M3 = 1000;

  /** Heat to boil water, J/kg at 100 °C. Source: memory, IAPWS steam tables. */
  static final double EVAPORATION = 2.257e6;

  static final double WATER_CAPACITY = 4186;

  /** Heat of the two dehydration steps, J per kg of dihydrate. Source: read, NBS table values. */
  private static final double FIRST_STEP = 482.95e3;

  private static final double SECOND_STEP = 126.14e3;

  /** Free water boils over this range, °C: 100 °C smeared so that a solver can follow it. */
  static final double BOILS_FROM = 95;

  static final double BOILS_TO = 105;

  /** The dihydrate becomes hemihydrate from {@link #BOILS_TO} to here, °C. Estimate. */
  static final double FIRST_STEP_TO = 150;

  /** The hemihydrate becomes anhydrite from {@link #FIRST_STEP_TO} to here, °C. Estimate. */
  static final double SECOND_STEP_TO = 220;

  private GypsumInvestment() {}

  /** Litres of slurry a kilogram of powder makes, that is, 1e-3 m³/kg. */
  public static double cubicMetresPerPowder(double waterPowder) {
    double powder =
        SHARE_CRISTOBALITE / CRISTOBALITE_KG_M3
            + SHARE_QUARTZ / QUARTZ_KG_M3
            + SHARE_HEMIHYDRATE / HEMIHYDRATE_KG_M3;
    return powder + waterPowder / WATER_KG_M3;
  }

  /** Water bound in setting, kg per kg of powder. */
  static double boundWaterPerPowder() {
    return SHARE_HEMIHYDRATE * 1.5 * WATER_MOLAR / HEMIHYDRATE_MOLAR;
  }

  /** Water left free after setting, kg per kg of powder. */
  static double freeWaterPerPowder(double waterPowder) {
    return Math.max(0, waterPowder - boundWaterPerPowder());
  }

  /** Density after firing, kg/m³. */
  public static double firedDensity(double waterPowder) {
    double lost = SHARE_HEMIHYDRATE * 0.5 * WATER_MOLAR / HEMIHYDRATE_MOLAR;
    return (1 - lost) / cubicMetresPerPowder(waterPowder);
  }

  /** Free water in a set mould, kg/m³. */
  public static double freeWaterDensity(double waterPowder) {
    return freeWaterPerPowder(waterPowder) / cubicMetresPerPowder(waterPowder);
  }

  /** Water that the set binder holds and gives up in its two steps, kg/m³. */
  static double boundWaterDensity(double waterPowder) {
    double perPowder = SHARE_HEMIHYDRATE * 2 * WATER_MOLAR / HEMIHYDRATE_MOLAR;
    return perPowder / cubicMetresPerPowder(waterPowder);
  }

  /**
   * The material, per kilogram of what is left after firing.
   *
   * @param waterPowder kg of water to a kg of powder
   * @param wetShare share of the free water still there at the start, 0 to 1
   */
  public static Material material(double waterPowder, double wetShare) {
    double fired = firedDensity(waterPowder);
    double freePerFired = freeWaterDensity(waterPowder) * wetShare / fired;
    double dihydratePerFired =
        SHARE_HEMIHYDRATE
            * DIHYDRATE_MOLAR
            / HEMIHYDRATE_MOLAR
            / cubicMetresPerPowder(waterPowder)
            / fired;
    // Below boiling the water's own heat capacity adds to the solid's.
    double wet = freePerFired * WATER_CAPACITY;
    LinearTable capacity =
        LinearTable.points(
            25,
            741.0 + wet,
            95,
            842.0 + wet,
            110,
            858.0,
            200,
            970.7,
            300,
            1006.9,
            400,
            1072.9,
            500,
            1129.2,
            600,
            1128.6,
            700,
            1167.9,
            750,
            1186.7);
    LinearTable conductivity =
        LinearTable.points(95, 0.45 + 0.35 * wetShare, 110, 0.45, 600, 0.45, 750, 0.50);
    LatentHeat first =
        new LatentHeat(BOILS_TO, FIRST_STEP_TO, dihydratePerFired * FIRST_STEP, true);
    LatentHeat second =
        new LatentHeat(FIRST_STEP_TO, SECOND_STEP_TO, dihydratePerFired * SECOND_STEP, true);
    List<LatentHeat> latent =
        freePerFired > 0
            ? List.of(
                new LatentHeat(BOILS_FROM, BOILS_TO, freePerFired * EVAPORATION, true),
                first,
                second)
            : List.of(first, second);
    return new Material(
        "gypsum-bonded investment",
        fired,
        conductivity,
        capacity,
        latent,
        Origin.estimate(
            "heat capacity from tabulated minerals, conductivity 0.45 W/(m K) within 0.35 to 0.65"));
  }
}
