package org.heatwright.piece;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Material;

/**
 * Layers that conduct in one direction, from the front face to the back: a sheet of glass on a
 * shelf, enamelled metal on a trivet, a piece in the middle of a box of carbon. Immutable.
 *
 * @param layers from front to back, at least one
 * @param front the face that sees the chamber
 * @param back the other face; empty where no heat passes: on an insulating shelf, or in the middle
 *     of something that is heated alike from both sides
 */
public record Slab(List<Layer> layers, Face front, Optional<Face> back) {

  public Slab {
    layers = List.copyOf(layers);
    Objects.requireNonNull(front, "front");
    Objects.requireNonNull(back, "back");
    if (layers.isEmpty()) {
      throw new IllegalArgumentException("A slab needs at least one layer.");
    }
  }

  /** One layer whose two faces see the chamber alike. */
  public static Slab free(Material material, double thicknessMetres, Face face) {
    return new Slab(List.of(new Layer(material, thicknessMetres)), face, Optional.of(face));
  }

  /** One layer that is heated from the front alone. */
  public static Slab lying(Material material, double thicknessMetres, Face front) {
    return new Slab(List.of(new Layer(material, thicknessMetres)), front, Optional.empty());
  }

  /**
   * A layer in perfect contact with its neighbours.
   *
   * @param material what it is made of
   * @param thicknessMetres m, above zero, up to 1
   * @param conductivitySpreadShare how uncertain its conductivity is: standard deviation of its
   *     logarithm, 0 to 1
   */
  public record Layer(Material material, double thicknessMetres, double conductivitySpreadShare) {

    /** Usual for a material of a handbook. Our estimate. */
    private static final double USUAL_SPREAD = 0.1;

    public Layer {
      Objects.requireNonNull(material, "material");
      if (!(thicknessMetres > 0 && thicknessMetres <= 1)) {
        throw new IllegalArgumentException(
            "The layer of %s (%s mm) must be above 0 and up to 1000 mm thick."
                .formatted(material.name(), thicknessMetres * 1000));
      }
      if (!(conductivitySpreadShare >= 0 && conductivitySpreadShare <= 1)) {
        throw new IllegalArgumentException(
            "The spread of the conductivity of %s (%s) must be 0 to 1."
                .formatted(material.name(), conductivitySpreadShare));
      }
    }

    /** A layer whose conductivity is known as well as handbooks know it. */
    public Layer(Material material, double thicknessMetres) {
      this(material, thicknessMetres, USUAL_SPREAD);
    }
  }

  /**
   * A face towards gas and walls.
   *
   * @param emissivity of the face times its view of the chamber, 0 to 1
   * @param filmWattsPerSquareMetreKelvin film coefficient, W/(m² K), zero or more
   */
  public record Face(double emissivity, double filmWattsPerSquareMetreKelvin) {
    public Face {
      if (!(emissivity >= 0 && emissivity <= 1)) {
        throw new IllegalArgumentException(
            "The emissivity (%s) must be 0 to 1.".formatted(emissivity));
      }
      if (!(filmWattsPerSquareMetreKelvin >= 0 && Double.isFinite(filmWattsPerSquareMetreKelvin))) {
        throw new IllegalArgumentException(
            "The film coefficient (%s W/(m² K)) must be finite and not below zero."
                .formatted(filmWattsPerSquareMetreKelvin));
      }
    }

    /** The same with both multiplied; an emissivity stays at most 1. */
    public Face scaled(double radiationFactor, double filmFactor) {
      return new Face(
          Math.min(1, emissivity * radiationFactor), filmWattsPerSquareMetreKelvin * filmFactor);
    }
  }

  /** From face to face, m. */
  public double thicknessMetres() {
    return layers.stream().mapToDouble(Layer::thicknessMetres).sum();
  }

  /** Heat to warm a square metre by a kelvin at a temperature, without latent heats, J/(m² K). */
  public double joulesPerSquareMetreKelvin(double celsius) {
    return layers.stream()
        .mapToDouble(
            layer ->
                layer.material().densityKilogramsPerCubicMetre()
                    * layer.material().heatCapacityJoulesPerKilogramKelvin().at(celsius)
                    * layer.thicknessMetres())
        .sum();
  }

  /**
   * The same with every conductivity moved by so many of its spreads, and faces scaled.
   *
   * @param scores how many standard deviations
   * @param radiationFactor multiplies emissivities
   * @param filmFactor multiplies film coefficients
   * @param heatFactor multiplies heat contents
   */
  public Slab varied(double scores, double radiationFactor, double filmFactor, double heatFactor) {
    return new Slab(
        layers.stream()
            .map(
                layer ->
                    new Layer(
                        layer
                            .material()
                            .scaled(Math.exp(scores * layer.conductivitySpreadShare()), heatFactor),
                        layer.thicknessMetres(),
                        layer.conductivitySpreadShare()))
            .toList(),
        front.scaled(radiationFactor, filmFactor),
        back.map(face -> face.scaled(radiationFactor, filmFactor)));
  }
}
