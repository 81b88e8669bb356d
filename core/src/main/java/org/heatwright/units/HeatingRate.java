package org.heatwright.units;

import java.time.Duration;

/**
 * How fast a setpoint moves, always positive: up or down follows from the target. A rate is a
 * difference over a time, so it is scaled between units and never offset. Immutable.
 *
 * @param kelvinsPerHour K/h, finite, above zero
 */
public record HeatingRate(double kelvinsPerHour) implements Comparable<HeatingRate> {

  public HeatingRate {
    if (!(kelvinsPerHour > 0 && kelvinsPerHour < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "The rate (%s K/h) must be finite and above zero.".formatted(kelvinsPerHour));
    }
  }

  public static HeatingRate ofKelvinsPerHour(double kelvinsPerHour) {
    return new HeatingRate(kelvinsPerHour);
  }

  /**
   * @param change the way to go; its sign is ignored
   * @return the time this rate takes for it, to the millisecond
   */
  public Duration timeFor(TemperatureChange change) {
    return Duration.ofMillis(Math.round(Math.abs(change.kelvins()) / kelvinsPerHour * 3_600_000.0));
  }

  @Override
  public int compareTo(HeatingRate other) {
    return Double.compare(kelvinsPerHour, other.kelvinsPerHour);
  }
}
