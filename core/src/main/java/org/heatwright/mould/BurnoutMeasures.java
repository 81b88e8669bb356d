package org.heatwright.mould;

import org.heatwright.material.HeatWork;
import org.heatwright.units.Temperature;

/**
 * What a firing did to a mould, in the numbers a caster judges by. All but the first are of the
 * investment, without its ring.
 *
 * @param boilBeginsSeconds when the core begins to boil, s; infinite if it never does
 * @param boilEndsSeconds when the core has left the boiling point, s; infinite if it never does
 * @param drySeconds when the last free water has gone, s; infinite if it never has
 * @param steamKilogramsPerSecond the most steam that leaves at a time, of one mould, kg/s
 * @param steamSeconds when that is, s
 * @param meltedSeconds when the whole of the inside is above {@link #MELTED_CELSIUS}, s; infinite
 *     if it never is
 * @param burnSeconds what the coldest place got as burning of carbon, in seconds at {@link
 *     #BURN_REFERENCE}
 * @param coldestPeakCelsius the hottest that the coldest place gets, °C
 * @param hottestPeakCelsius the hottest that any place gets, °C
 * @param boilingKelvins the most between two places while one of them passes 95 to 110 °C, K
 * @param cristobaliteKelvins the most between two places while one of them passes 200 to 280 °C, K
 * @param quartzKelvins the most between two places while one of them passes 560 to 590 °C, K
 * @param tensionPascals the most tension that unevenness alone makes in the coldest place while no
 *     silica turns, by {@link ThermalStress#INVESTMENT}, Pa
 */
public record BurnoutMeasures(
    double boilBeginsSeconds,
    double boilEndsSeconds,
    double drySeconds,
    double steamKilogramsPerSecond,
    double steamSeconds,
    double meltedSeconds,
    double burnSeconds,
    double coldestPeakCelsius,
    double hottestPeakCelsius,
    double boilingKelvins,
    double cristobaliteKelvins,
    double quartzKelvins,
    double tensionPascals) {

  /** Carbon burns in air from about 600 °C. Source: read, an abstract on gypsum and carbon. */
  public static final Temperature BURN_REFERENCE = Temperature.ofCelsius(650);

  /**
   * How the burning of carbon quickens with temperature, J/mol. Source: estimate; from memory, 120
   * to 180 kJ/mol are reported for carbons in air.
   */
  public static final double BURN_ACTIVATION = 150e3;

  /** Below this nothing of the carbon burns to speak of, °C. Source: estimate. */
  private static final double BURN_FROM_CELSIUS = 500;

  /** Free water boils from here on in a mould, °C. */
  public static final double BOILING_CELSIUS = GypsumInvestment.BOILS_FROM;

  /** Pattern wax has run where it is so hot, °C. Source: common practice, no source. */
  public static final double MELTED_CELSIUS = 80;

  private static final double BOILED_CELSIUS = 110;

  /** Reads the measures off a firing. */
  public static BurnoutMeasures of(MouldFiring firing) {
    HeatWork burning = HeatWork.of(BURN_ACTIVATION, BURN_REFERENCE);
    double boils = Double.POSITIVE_INFINITY;
    double boiled = Double.POSITIVE_INFINITY;
    double melted = Double.POSITIVE_INFINITY;
    double steam = 0;
    double steamAt = 0;
    double burn = 0;
    double coldestPeak = Double.NEGATIVE_INFINITY;
    double hottestPeak = Double.NEGATIVE_INFINITY;
    double boiling = 0;
    double cristobalite = 0;
    double quartz = 0;
    double belowMean = 0;
    for (int i = 0; i < firing.rows(); i++) {
      double cold = firing.coldestCelsius(i);
      double hot = firing.hottestCelsius(i);
      double core = firing.centreCelsius(i);
      double second = firing.second(i);
      if (core >= BOILING_CELSIUS && Double.isInfinite(boils)) {
        boils = second;
      }
      if (core >= BOILED_CELSIUS && Double.isInfinite(boiled)) {
        boiled = second;
      }
      if (cold >= MELTED_CELSIUS && Double.isInfinite(melted)) {
        melted = second;
      }
      if (firing.steamKilogramsPerSecond(i) > steam) {
        steam = firing.steamKilogramsPerSecond(i);
        steamAt = second;
      }
      coldestPeak = Math.max(coldestPeak, cold);
      hottestPeak = Math.max(hottestPeak, hot);
      boiling = Math.max(boiling, unevenness(firing, i, BOILING_CELSIUS, BOILED_CELSIUS));
      double turningFirst = unevenness(firing, i, 200, 280);
      double turningLast = unevenness(firing, i, 560, 590);
      cristobalite = Math.max(cristobalite, turningFirst);
      quartz = Math.max(quartz, turningLast);
      if (turningFirst == 0 && turningLast == 0) {
        belowMean = Math.max(belowMean, firing.meanCelsius(i) - cold);
      }
      if (i > 0 && cold >= BURN_FROM_CELSIUS) {
        double mean = (cold + firing.coldestCelsius(i - 1)) / 2;
        burn +=
            (second - firing.second(i - 1)) * burning.worthOfSecondAt(Temperature.ofCelsius(mean));
      }
    }
    return new BurnoutMeasures(
        boils,
        boiled,
        firing.drySeconds(),
        steam,
        steamAt,
        melted,
        burn,
        coldestPeak,
        hottestPeak,
        boiling,
        cristobalite,
        quartz,
        ThermalStress.INVESTMENT.tensionPascals(belowMean));
  }

  /**
   * The difference between hottest and coldest place while one of them passes a range, K: at a row,
   * or on the way to it where the whole range lies between two rows; 0 outside of the range.
   */
  private static double unevenness(
      MouldFiring firing, int row, double fromCelsius, double toCelsius) {
    double hot = firing.hottestCelsius(row);
    double cold = firing.coldestCelsius(row);
    if (hot >= fromCelsius && cold <= toCelsius) {
      return hot - cold;
    }
    if (row == 0) {
      return 0;
    }
    double hotBefore = firing.hottestCelsius(row - 1);
    double coldBefore = firing.coldestCelsius(row - 1);
    boolean passed =
        (hotBefore < fromCelsius && cold > toCelsius)
            || (coldBefore > toCelsius && hot < fromCelsius);
    return passed ? (hot - cold + hotBefore - coldBefore) / 2 : 0;
  }
}
