package org.heatwright.mould;

import java.util.Optional;
import org.heatwright.material.Material;

/**
 * A solid of revolution: an upright cylinder, maybe with a central cavity from the top (sprue and
 * pattern tree), maybe in a ring of another material.
 *
 * @param diameterMetres outside the ring, m, 0.005 to 1
 * @param heightMetres m, 0.005 to 1
 * @param bottom whether the bottom takes up heat
 * @param cavity the hole from the top, if there is one
 * @param ring the outer layer, if there is one; as high as the body
 */
public record BodyShape(
    double diameterMetres,
    double heightMetres,
    Bottom bottom,
    Optional<Cavity> cavity,
    Optional<Ring> ring) {

  private static final double SMALLEST_METRES = 0.005;
  private static final double LARGEST_METRES = 1;

  public BodyShape {
    if (!(diameterMetres >= SMALLEST_METRES && diameterMetres <= LARGEST_METRES)
        || !(heightMetres >= SMALLEST_METRES && heightMetres <= LARGEST_METRES)) {
      throw new IllegalArgumentException(
          "The body (%s mm across, %s mm high) must be 5 to 1000 mm in both."
              .formatted(diameterMetres * 1000, heightMetres * 1000));
    }
    double inside = diameterMetres - 2 * ring.map(Ring::thicknessMetres).orElse(0.0);
    if (!(inside >= diameterMetres / 2)) {
      throw new IllegalArgumentException(
          "The ring (%s mm) must leave at least half of the diameter (%s mm) inside."
              .formatted(
                  ring.map(Ring::thicknessMetres).orElse(0.0) * 1000, diameterMetres * 1000));
    }
    double widest = 0.9 * inside;
    if (cavity.isPresent() && !(cavity.get().diameterMetres() <= widest)) {
      throw new IllegalArgumentException(
          "The cavity (%s mm across) must leave a wall: at most %s mm of %s mm."
              .formatted(
                  cavity.get().diameterMetres() * 1000, Math.floor(widest * 1000), inside * 1000));
    }
    if (cavity.isPresent() && !(cavity.get().depthMetres() <= heightMetres)) {
      throw new IllegalArgumentException(
          "The cavity (%s mm deep) cannot be deeper than the body (%s mm high)."
              .formatted(cavity.get().depthMetres() * 1000, heightMetres * 1000));
    }
  }

  /** A plain cylinder. */
  public static BodyShape cylinder(double diameterMetres, double heightMetres, Bottom bottom) {
    return new BodyShape(diameterMetres, heightMetres, bottom, Optional.empty(), Optional.empty());
  }

  /** What the bottom does. */
  public enum Bottom {
    /** It sees the surroundings like the side and the top. */
    EXPOSED,
    /** No heat passes. */
    INSULATED
  }

  /**
   * A round hole on the axis, open at the top. Its walls see the surroundings like any other face.
   *
   * @param diameterMetres m, above zero, at most nine tenths of the body inside its ring
   * @param depthMetres m, above zero, at most the height
   */
  public record Cavity(double diameterMetres, double depthMetres) {
    public Cavity {
      if (!(diameterMetres > 0) || !(depthMetres > 0)) {
        throw new IllegalArgumentException(
            "The cavity (%s mm across, %s mm deep) must be above zero in both."
                .formatted(diameterMetres * 1000, depthMetres * 1000));
      }
    }
  }

  /**
   * An outer layer in perfect contact with what it holds.
   *
   * @param thicknessMetres m, above zero
   * @param material what it is made of; its temperature hardly changes across it
   */
  public record Ring(double thicknessMetres, Material material) {
    public Ring {
      if (!(thicknessMetres > 0)) {
        throw new IllegalArgumentException(
            "The ring (%s mm) must be thicker than nothing.".formatted(thicknessMetres * 1000));
      }
    }
  }
}
