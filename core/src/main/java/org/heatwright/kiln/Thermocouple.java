package org.heatwright.kiln;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.sensing.ToleranceClass;
import org.heatwright.units.TemperatureChange;

/**
 * The sensor that the display shows.
 *
 * @param type letter of the thermocouple type, e.g. 'K'
 * @param sheathMetres outer diameter of the sheath, m
 * @param offset what the display shows above the truth, as far as known
 * @param toleranceClass tolerance class it was bought in, where known
 */
public record Thermocouple(
    char type,
    double sheathMetres,
    TemperatureChange offset,
    Optional<ToleranceClass> toleranceClass) {
  public Thermocouple {
    Objects.requireNonNull(offset, "offset");
    Objects.requireNonNull(toleranceClass, "toleranceClass");
    if ("BEJKNRST".indexOf(type) < 0) {
      throw new IllegalArgumentException(
          "The thermocouple type '%s' must be one of B, E, J, K, N, R, S, T.".formatted(type));
    }
    if (!(sheathMetres > 0 && sheathMetres < 0.05)) {
      throw new IllegalArgumentException(
          "The thermocouple sheath (%s m) must be above zero and below 0.05 m."
              .formatted(sheathMetres));
    }
  }

  /** A thermocouple of a class that nobody knows. */
  public Thermocouple(char type, double sheathMetres, TemperatureChange offset) {
    this(type, sheathMetres, offset, Optional.empty());
  }
}
