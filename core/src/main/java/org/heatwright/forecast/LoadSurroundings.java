package org.heatwright.forecast;

import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.HeatTransfer;
import org.heatwright.mould.Surroundings;
import org.hipparchus.special.Erf;

/**
 * What surrounds the load in a simulated kiln whose display is right.
 *
 * <p>A sheathed thermocouple conducts along its stem to the cold outside, so that its tip, and with
 * it the display, stays some kelvins below the chamber in which it hangs: {@code g (T - T_room) /
 * (h + 4 eps sigma T³)} with a conductance {@code g} of 1 to 4 W/(m² K) of the tip's surface
 * (estimate: a 3 to 6 mm sheath that dips in by 30 to 60 mm; a fin, from memory: Incropera and
 * others, Fundamentals of Heat and Mass Transfer, section 3.6). The controller keeps the display at
 * the setpoint, and the load feels the chamber.
 */
final class LoadSurroundings {

  /** Conductance of the stem, W/(m² K) of the tip's surface: median and spread. Estimate. */
  private static final double STEM = 2;

  private static final double STEM_SPREAD = 0.45;

  /** Convection to a thin rod, W/(m² K), and its emissivity. Source: estimate. */
  private static final double SENSOR_CONVECTION = 15;

  private static final double SENSOR_EMISSIVITY = 0.8;

  /** Surroundings are sampled every so often, s, and kept where they bend by this, K. */
  private static final double SAMPLE_SECONDS = 60;

  private static final double BEND_KELVINS = 0.4;

  private LoadSurroundings() {}

  /** The conductance of draw {@code index} of {@code count}: its quantiles, in mixed order. */
  static double stem(int index, int count) {
    if (count == 1) {
      return STEM;
    }
    int mixed = (int) ((index * 7L + 3) % count);
    double score = Math.sqrt(2) * Erf.erfInv(2 * (mixed + 0.5) / count - 1);
    return STEM * Math.exp(STEM_SPREAD * score);
  }

  /** By how much the chamber is above what a display says, K. */
  static double stemKelvins(double stem, double displayCelsius, double roomCelsius) {
    return stem
        * (displayCelsius - roomCelsius)
        / (SENSOR_CONVECTION + SENSOR_EMISSIVITY * HeatTransfer.emissionSlope(displayCelsius));
  }

  /** About the load of a run, from its start to {@code untilSecond}. */
  static Surroundings of(FiringRun run, double stem, double roomCelsius, double untilSecond) {
    return Surroundings.sampled(
            untilSecond,
            SAMPLE_SECONDS,
            second ->
                run.airCelsiusAt(second)
                    + stemKelvins(stem, run.readingCelsiusAt(second), roomCelsius),
            second ->
                run.radiantCelsiusAt(second)
                    + stemKelvins(stem, run.readingCelsiusAt(second), roomCelsius))
        .thinned(BEND_KELVINS);
  }
}
