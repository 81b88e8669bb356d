package org.heatwright.kiln;

import org.heatwright.numerics.NormalSteps;

/**
 * A sheathed thermocouple conducts along its stem to the cold outside, so that its tip, and with it
 * the display, stays some kelvins below the chamber in which it hangs: {@code g (T - T_room) / (h +
 * 4 eps sigma T³)} with a conductance {@code g} of 0.4 to 5 W/(m² K) of the tip's surface
 * (estimate: a 3 to 6 mm sheath that dips in by 30 to 60 mm through walls that are hot or not; a
 * fin, from memory: Incropera and others, Fundamentals of Heat and Mass Transfer, section 3.6).
 *
 * <p>The kiln's equations do without it: the controller keeps the display where it should be, and
 * what that hides of the chamber goes into what is learned. Work inside feels the chamber.
 *
 * @param wattsPerSquareMetreKelvin conductance, W/(m² K) of the tip's surface, not negative
 */
public record StemLoss(double wattsPerSquareMetreKelvin) {

  private static final double MEDIAN = 1.4; // source: estimate
  private static final double SPREAD = 0.75; // source: estimate

  /** One of a row of draws; the first is the median. */
  public static StemLoss draw(int index) {
    return new StemLoss(MEDIAN * Math.exp(SPREAD * NormalSteps.score(index, NormalSteps.GOLDEN)));
  }

  /** By how much the chamber is above what a display says, K. */
  public double kelvins(double displayCelsius, double roomCelsius) {
    return wattsPerSquareMetreKelvin
        * (displayCelsius - roomCelsius)
        / (KilnNetwork.SENSOR_CONVECTION
            + KilnNetwork.SENSOR_EMISSIVITY * HeatTransfer.emissionSlope(displayCelsius));
  }
}
