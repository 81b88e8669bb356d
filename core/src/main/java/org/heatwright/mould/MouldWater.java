package org.heatwright.mould;

/**
 * The water of a set gypsum-bonded mould and where it leaves: free water as it boils, bound water
 * in the two steps of {@link GypsumInvestment}.
 */
final class MouldWater {

  private final double freeKilogramsPerCubicMetre;
  private final double boundKilogramsPerCubicMetre;

  private MouldWater(double freeKilogramsPerCubicMetre, double boundKilogramsPerCubicMetre) {
    this.freeKilogramsPerCubicMetre = freeKilogramsPerCubicMetre;
    this.boundKilogramsPerCubicMetre = boundKilogramsPerCubicMetre;
  }

  /** The water at the start of a firing; {@code factor} multiplies it. */
  static MouldWater of(Investment investment, double factor) {
    double free =
        GypsumInvestment.freeWaterDensity(investment.waterPowder())
            * MouldLoad.wetShare(investment);
    return new MouldWater(
        factor * free, factor * GypsumInvestment.boundWaterDensity(investment.waterPowder()));
  }

  /** Free water at the start, kg/m³. */
  double freeAtStart() {
    return freeKilogramsPerCubicMetre;
  }

  /** Share of the free water left where it was never hotter than that, 0 to 1. */
  double freeShare(double peakCelsius) {
    return 1 - part(peakCelsius, GypsumInvestment.BOILS_FROM, GypsumInvestment.BOILS_TO);
  }

  /** All water left where it was never hotter than that, kg/m³. */
  double left(double peakCelsius) {
    // Three of four parts of the bound water leave in the first step.
    double bound =
        0.75 * part(peakCelsius, GypsumInvestment.BOILS_TO, GypsumInvestment.FIRST_STEP_TO)
            + 0.25
                * part(
                    peakCelsius, GypsumInvestment.FIRST_STEP_TO, GypsumInvestment.SECOND_STEP_TO);
    return freeKilogramsPerCubicMetre * freeShare(peakCelsius)
        + boundKilogramsPerCubicMetre * (1 - bound);
  }

  private static double part(double celsius, double from, double to) {
    return Math.max(0, Math.min(1, (celsius - from) / (to - from)));
  }
}
