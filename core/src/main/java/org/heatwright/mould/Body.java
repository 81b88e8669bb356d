package org.heatwright.mould;

import java.util.Objects;
import org.heatwright.material.Material;
import org.heatwright.units.Temperature;

/**
 * A solid of revolution in surroundings that change.
 *
 * @param shape its shape
 * @param material what it is made of (inside the ring, if it has one)
 * @param emissivity of every face that sees the surroundings, times its view of them, 0 to 1
 * @param convectionWattsPerSquareMetreKelvin film coefficient of every such face, W/(m² K), zero or
 *     more
 * @param start its temperature at the start, the same all through
 */
public record Body(
    BodyShape shape,
    Material material,
    double emissivity,
    double convectionWattsPerSquareMetreKelvin,
    Temperature start) {

  public Body {
    Objects.requireNonNull(shape, "shape");
    Objects.requireNonNull(material, "material");
    Objects.requireNonNull(start, "start");
    if (!(emissivity >= 0 && emissivity <= 1)) {
      throw new IllegalArgumentException(
          "The emissivity (%s) must be 0 to 1.".formatted(emissivity));
    }
    if (!(convectionWattsPerSquareMetreKelvin >= 0
        && convectionWattsPerSquareMetreKelvin < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "The film coefficient (%s W/(m² K)) must be finite and not below zero."
              .formatted(convectionWattsPerSquareMetreKelvin));
    }
  }
}
