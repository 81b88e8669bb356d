package org.heatwright.kiln;

/**
 * The elements as the nameplate has them.
 *
 * @param ratedWatts W at the rated voltage, above zero
 * @param ratedVolts V, above zero
 * @param supplyVolts V at the kiln's socket, above zero
 */
public record HeatingElement(double ratedWatts, double ratedVolts, double supplyVolts) {
  public HeatingElement {
    if (!(ratedWatts > 0 && ratedWatts < 50_000)
        || !(ratedVolts > 0 && ratedVolts < 1000)
        || !(supplyVolts > 0 && supplyVolts < 1000)) {
      throw new IllegalArgumentException(
          "The element (%s W at %s V, supplied with %s V) needs values above zero and in the range"
                  .formatted(ratedWatts, ratedVolts, supplyVolts)
              + " of a small kiln (under 50 kW, under 1000 V).");
    }
  }

  /** Power at the given voltage, W: it goes with the square, the resistance being the same. */
  public double wattsAt(double volts) {
    double ratio = volts / ratedVolts;
    return ratedWatts * ratio * ratio;
  }

  public double suppliedWatts() {
    return wattsAt(supplyVolts);
  }

  /** Current at full power, A. */
  public double suppliedAmperes() {
    return suppliedWatts() / supplyVolts;
  }
}
