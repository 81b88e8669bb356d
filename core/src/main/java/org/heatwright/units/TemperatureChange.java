package org.heatwright.units;

/**
 * A difference between two temperatures; may be negative. Immutable.
 *
 * @param kelvins K, finite
 */
public record TemperatureChange(double kelvins) implements Comparable<TemperatureChange> {

  public TemperatureChange {
    if (!Double.isFinite(kelvins)) {
      throw new IllegalArgumentException(
          "The temperature change (%s K) must be finite.".formatted(kelvins));
    }
    kelvins += 0.0;
  }

  public static TemperatureChange ofKelvins(double kelvins) {
    return new TemperatureChange(kelvins);
  }

  @Override
  public int compareTo(TemperatureChange other) {
    return Double.compare(kelvins, other.kelvins);
  }
}
