package org.heatwright.kiln;

import java.util.Objects;
import org.heatwright.material.Material;

/**
 * One layer of a wall.
 *
 * @param material what it is made of
 * @param thicknessMetres m, above zero, below 0.5
 * @param contactSquareMetreKelvinPerWatt resistance of the joint to the next layer outward, m² K/W,
 *     zero or more: an air gap of a millimetre is about 0.02 (estimate)
 */
public record Layer(
    Material material, double thicknessMetres, double contactSquareMetreKelvinPerWatt) {

  /** A layer that touches the next one all over. */
  public Layer(Material material, double thicknessMetres) {
    this(material, thicknessMetres, 0);
  }

  public Layer {
    Objects.requireNonNull(material, "material");
    if (!(thicknessMetres > 0 && thicknessMetres < 0.5)) {
      throw new IllegalArgumentException(
          "The thickness of a layer of %s (%s m) must be above zero and below 0.5 m."
              .formatted(material.name(), thicknessMetres));
    }
    if (!(contactSquareMetreKelvinPerWatt >= 0 && contactSquareMetreKelvinPerWatt < 10)) {
      throw new IllegalArgumentException(
          "The joint behind %s (%s m² K/W) must be zero or more and below 10."
              .formatted(material.name(), contactSquareMetreKelvinPerWatt));
    }
  }
}
