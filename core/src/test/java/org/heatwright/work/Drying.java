package org.heatwright.work;

import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;

/**
 * How long the water of a gypsum-bonded mould takes to go, by a drying front that moves inward at
 * 100 °C while the surface is held hotter.
 *
 * <p>Quasi-steady: the heat stored in the dry shell is neglected, so is the heat that enters
 * through the ends, and conductivity is one number. Good to a factor of about 1.5 either way; it
 * answers whether a hold dries a mould through, not when to the minute.
 */
public final class Drying {

  /** W/(m K), fired gypsum-bonded investment. {@code estimate:} range 0.35 to 0.65. */
  static final double SHELL_WATTS_PER_METRE_KELVIN = 0.45;

  /**
   * Film between a chamber at drying temperature and a mould, W/(m² K): convection 8, radiation
   * with emissivity 0.85 near 125 °C 12. {@code estimate:}
   */
  static final double FILM_WATTS_PER_SQUARE_METRE_KELVIN = 20;

  /** J/kg at 100 °C. {@code memory:} IAPWS steam tables. */
  static final double EVAPORATION_JOULES_PER_KILOGRAM = 2.257e6;

  /** °C; water boils here at sea level. */
  static final double BOILING_CELSIUS = 100;

  // A usual powder, by mass: 40 % cristobalite, 30 % quartz, 30 % hemihydrate (estimate). Grain
  // densities, kg/m³, read: CRC Handbook solid densities and a salt data page.
  private static final double HEMIHYDRATE_SHARE = 0.30;
  private static final double POWDER_CUBIC_METRES_PER_KILOGRAM =
      0.40 / 2334 + 0.30 / 2648 + HEMIHYDRATE_SHARE / 2640;
  // Molar masses, g/mol: 1.5 water taken up for each hemihydrate.
  private static final double SETTING_WATER_PER_KILOGRAM_POWDER =
      HEMIHYDRATE_SHARE * 1.5 * 18.01528 / 145.149;

  private Drying() {}

  /**
   * Water that is not bound in the set gypsum, kg to a cubic metre of set investment.
   *
   * @param waterPowder kg of water to a kg of powder
   */
  public static double freeWaterKilogramsPerCubicMetre(double waterPowder) {
    double slurryCubicMetresPerKilogramPowder =
        POWDER_CUBIC_METRES_PER_KILOGRAM + waterPowder / 1000;
    return (waterPowder - SETTING_WATER_PER_KILOGRAM_POWDER) / slurryCubicMetresPerKilogramPowder;
  }

  /** Free water in one mould, kg. */
  public static double freeWaterKilograms(Mould mould, Investment investment) {
    return mould.investmentCubicMetres()
        * freeWaterKilogramsPerCubicMetre(investment.waterPowder());
  }

  /** Seconds until one mould is dry to its axis in a chamber at the given temperature. */
  static double throughSeconds(Mould mould, Investment investment, double chamberCelsius) {
    return throughSeconds(
        mould.investmentDiameterMetres() / 2,
        freeWaterKilogramsPerCubicMetre(investment.waterPowder()) * EVAPORATION_JOULES_PER_KILOGRAM,
        SHELL_WATTS_PER_METRE_KELVIN,
        FILM_WATTS_PER_SQUARE_METRE_KELVIN,
        chamberCelsius - BOILING_CELSIUS);
  }

  /**
   * Drying time of a long cylinder, {@code L a²/(4 k ΔT) + L a/(2 h ΔT)}.
   *
   * @param radiusMetres a, m
   * @param latentJoulesPerCubicMetre L, J/m³
   * @param wattsPerMetreKelvin k of the dry shell, W/(m K)
   * @param filmWattsPerSquareMetreKelvin h outside, W/(m² K); infinite for a surface held at
   *     temperature
   * @param kelvinsAboveBoiling ΔT, K, above zero
   * @return s
   */
  static double throughSeconds(
      double radiusMetres,
      double latentJoulesPerCubicMetre,
      double wattsPerMetreKelvin,
      double filmWattsPerSquareMetreKelvin,
      double kelvinsAboveBoiling) {
    return latentJoulesPerCubicMetre
        * radiusMetres
        / kelvinsAboveBoiling
        * (radiusMetres / (4 * wattsPerMetreKelvin) + 1 / (2 * filmWattsPerSquareMetreKelvin));
  }

  /**
   * Share of the drying time (surface held at temperature) after which the front has come in to a
   * share of the radius: {@code 1 - x² + 2 x² ln x}.
   *
   * @param radiusShare x, in (0, 1]
   */
  static double shareOfTimeUntil(double radiusShare) {
    double square = radiusShare * radiusShare;
    return 1 - square + 2 * square * Math.log(radiusShare);
  }
}
