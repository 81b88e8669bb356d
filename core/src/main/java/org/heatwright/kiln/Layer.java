package org.heatwright.kiln;

import java.util.Objects;
import org.heatwright.material.Material;

/**
 * One layer of a wall.
 *
 * @param material what it is made of
 * @param thicknessMetres m, above zero, below 0.5
 */
public record Layer(Material material, double thicknessMetres) {
  public Layer {
    Objects.requireNonNull(material, "material");
    if (!(thicknessMetres > 0 && thicknessMetres < 0.5)) {
      throw new IllegalArgumentException(
          "The thickness of a layer of %s (%s m) must be above zero and below 0.5 m."
              .formatted(material.name(), thicknessMetres));
    }
  }
}
