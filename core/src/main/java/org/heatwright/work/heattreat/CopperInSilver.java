package org.heatwright.work.heattreat;

import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * How much copper solid silver holds in solution: {@code ln w = a - b/T}, the straight line through
 * two published points. They lie only 47 K apart, so the line is good between them and a guess far
 * below: at 650 °C it may be a fifth too high.
 */
public final class CopperInSilver {

  /** Where silver takes up most copper, with silver and copper both beside melt. */
  public static final Temperature EUTECTIC = Temperature.ofCelsius(779.1);

  /** Mass share of copper in silver there. */
  public static final double SHARE_AT_EUTECTIC = 0.0827;

  /** Where sterling's copper has just gone into solution. */
  public static final Temperature STERLING_SOLVUS = Temperature.ofCelsius(732);

  /** Mass share of copper in sterling silver, by definition. */
  public static final double SHARE_IN_STERLING = 0.075;

  /** Where the two points come from. */
  public static final Origin ORIGIN =
      Origin.read(
          "a metallurgy institute's silver-copper page, 8.27 % at 779.1 °C, and a bench forum on the"
              + " diagram, 7.5 % at about 732 °C; the line between and below them is ours");

  private static final double SLOPE_KELVINS =
      Math.log(SHARE_AT_EUTECTIC / SHARE_IN_STERLING)
          / (1 / STERLING_SOLVUS.kelvin() - 1 / EUTECTIC.kelvin());

  private CopperInSilver() {}

  /**
   * The most copper that silver holds in solution, as a share of the mass.
   *
   * @param temperature above absolute zero and not above the eutectic
   * @throws IllegalArgumentException above the eutectic, where metal melts
   */
  public static double solubleShare(Temperature temperature) {
    if (!(temperature.kelvin() > 0) || temperature.compareTo(EUTECTIC) > 0) {
      throw new IllegalArgumentException(
          "The solubility line ends at %s °C, where metal melts; %s °C was asked."
              .formatted(EUTECTIC.celsius(), temperature.celsius()));
    }
    return SHARE_AT_EUTECTIC
        * Math.exp(SLOPE_KELVINS * (1 / EUTECTIC.kelvin() - 1 / temperature.kelvin()));
  }

  /** The share of sterling's own copper that can be in solution, 0 to 1. */
  public static double dissolvedShareOfSterling(Temperature temperature) {
    return temperature.compareTo(STERLING_SOLVUS) >= 0
        ? 1
        : Math.min(1, solubleShare(temperature) / SHARE_IN_STERLING);
  }
}
