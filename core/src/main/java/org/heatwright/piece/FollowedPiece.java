package org.heatwright.piece;

import java.util.List;
import java.util.Objects;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.numerics.NormalSteps;

/**
 * Work that stands in the kiln from the start of the program and whose own temperature is followed.
 *
 * @param name what it is, short, for curves and tables: "glass", "carbon box"
 * @param count how many alike, 1 to 500
 * @param frontSquareMetres area of one front face, m², above zero
 * @param slab what one is
 * @param places where its temperature is told, at least one; the first one is judged
 */
public record FollowedPiece(
    String name, int count, double frontSquareMetres, Slab slab, List<Place> places) {

  /** How well a piece sees the chamber: standard deviation of a logarithm. Our estimate. */
  private static final double RADIATION_SPREAD = 0.12;

  /**
   * A place in a slab.
   *
   * @param name for curves and tables: "middle", "surface"
   * @param depthMetres from the front face, m, zero or more
   */
  public record Place(String name, double depthMetres) {
    public Place {
      Objects.requireNonNull(name, "name");
      if (!(depthMetres >= 0)) {
        throw new IllegalArgumentException(
            "The place '%s' (%s mm) must not lie in front of the face."
                .formatted(name, depthMetres * 1000));
      }
    }
  }

  public FollowedPiece {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(slab, "slab");
    places = List.copyOf(places);
    if (count < 1 || count > 500) {
      throw new IllegalArgumentException(
          "The count of the piece '%s' (%d) must be 1 to 500.".formatted(name, count));
    }
    if (!(frontSquareMetres > 0 && Double.isFinite(frontSquareMetres))) {
      throw new IllegalArgumentException(
          "The front of the piece '%s' (%s m²) must be above zero."
              .formatted(name, frontSquareMetres));
    }
    if (places.isEmpty()) {
      throw new IllegalArgumentException(
          "The piece '%s' needs at least one place to follow.".formatted(name));
    }
    double thick = slab.thicknessMetres();
    for (Place place : places) {
      if (place.depthMetres() > thick * (1 + 1e-9)) {
        throw new IllegalArgumentException(
            "The place '%s' of the piece '%s' (%s mm deep) lies behind its back (%s mm)."
                .formatted(place.name(), name, place.depthMetres() * 1000, thick * 1000));
      }
    }
  }

  /** The place that is judged. */
  public Place judged() {
    return places.get(0);
  }

  /** Name of a curve: "glass middle". */
  public String curve(Place place) {
    return name + " " + place.name();
  }

  /**
   * One of its kind, as one draw of a forecast has it.
   *
   * @param draw the kiln of the draw
   * @param index of the draw: conductivity, and how well the piece sees the chamber, go with it;
   *     the first is the median
   */
  public Slab drawn(KilnParameters draw, int index) {
    return slab.varied(
        NormalSteps.score(index, NormalSteps.GOLDEN),
        Math.exp(RADIATION_SPREAD * NormalSteps.score(index, NormalSteps.ROOT_TWO)),
        draw.convectionFactor(),
        draw.loadHeatFactor());
  }
}
