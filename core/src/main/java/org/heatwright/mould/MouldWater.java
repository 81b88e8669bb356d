package org.heatwright.mould;

/**
 * The water of a set mould and where it leaves: free water as it boils, what the binder holds in
 * steps of {@link GypsumInvestment} or {@link PhosphateInvestment}.
 */
final class MouldWater {

  private final double freeKilogramsPerCubicMetre;
  private final double boundKilogramsPerCubicMetre;
  private final boolean phosphate;

  private MouldWater(double free, double bound, boolean phosphate) {
    freeKilogramsPerCubicMetre = free;
    boundKilogramsPerCubicMetre = bound;
    this.phosphate = phosphate;
  }

  /** The water at the start of a firing; {@code factor} multiplies it. */
  static MouldWater of(Investment investment, double factor) {
    double ratio = investment.waterPowder();
    boolean phosphate = investment.isPhosphateBonded();
    double free =
        phosphate
            ? PhosphateInvestment.freeWaterDensity(ratio)
            : GypsumInvestment.freeWaterDensity(ratio);
    double bound =
        phosphate
            ? PhosphateInvestment.boundWaterDensity(ratio)
            : GypsumInvestment.boundWaterDensity(ratio);
    return new MouldWater(
        factor * free * MouldLoad.wetShare(investment), factor * bound, phosphate);
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
    return freeKilogramsPerCubicMetre * freeShare(peakCelsius)
        + boundKilogramsPerCubicMetre * (1 - boundGone(peakCelsius));
  }

  private double boundGone(double peakCelsius) {
    double from = GypsumInvestment.BOILS_TO;
    if (phosphate) {
      return part(peakCelsius, from, PhosphateInvestment.BOUND_TO);
    }
    double first = GypsumInvestment.FIRST_STEP_TO;
    // Three of four parts of the bound water leave in the first step.
    return 0.75 * part(peakCelsius, from, first)
        + 0.25 * part(peakCelsius, first, GypsumInvestment.SECOND_STEP_TO);
  }

  private static double part(double celsius, double from, double to) {
    return Math.max(0, Math.min(1, (celsius - from) / (to - from)));
  }
}
