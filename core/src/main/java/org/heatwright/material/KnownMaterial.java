package org.heatwright.material;

import java.util.Objects;

/**
 * A material of the library with how far it may be trusted.
 *
 * @param material its tables; outside them they stay constant
 * @param fromCelsius it is meant from here, °C
 * @param toCelsius to here, °C
 * @param conductivityShare conductivity may be off by this share either way, one standard deviation
 *     (our estimate)
 * @param heatShare heat capacity and latent heats may be off by this share (our estimate)
 */
public record KnownMaterial(
    Material material,
    double fromCelsius,
    double toCelsius,
    double conductivityShare,
    double heatShare) {

  public KnownMaterial {
    Objects.requireNonNull(material, "material");
    if (!(toCelsius > fromCelsius) || !(conductivityShare > 0) || !(heatShare > 0)) {
      throw new IllegalArgumentException(
          "The material '%s' needs a range (%s to %s °C) and uncertainties above zero."
              .formatted(material.name(), fromCelsius, toCelsius));
    }
  }

  public String name() {
    return material.name();
  }
}
