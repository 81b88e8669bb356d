package org.heatwright.mould;

import java.util.Optional;

/**
 * One or several equal moulds: upright cylinders of investment, in a steel ring or none.
 *
 * @param count how many, 1 to 200
 * @param diameterMetres outside the steel, m, 0.01 to 0.5
 * @param heightMetres m, 0.01 to 0.6
 * @param wallMetres thickness of the steel ring, m; 0 means no ring
 */
public record Mould(int count, double diameterMetres, double heightMetres, double wallMetres) {

  public Mould {
    if (count < 1 || count > 200) {
      throw new IllegalArgumentException(
          "The number of moulds (%d) must be 1 to 200.".formatted(count));
    }
    if (!(diameterMetres >= 0.01 && diameterMetres <= 0.5)
        || !(heightMetres >= 0.01 && heightMetres <= 0.6)
        || !(wallMetres >= 0 && wallMetres < diameterMetres / 4)) {
      throw new IllegalArgumentException(
          "The mould (%s mm across, %s mm high, wall %s mm) must be 10 to 500 mm across, 10 to"
                  .formatted(diameterMetres * 1000, heightMetres * 1000, wallMetres * 1000)
              + " 600 mm high, with a wall under a quarter of its diameter.");
    }
  }

  /** Diameter of the investment inside the ring, m. */
  public double investmentDiameterMetres() {
    return diameterMetres - 2 * wallMetres;
  }

  /** Volume of the investment of one mould, m³. */
  public double investmentCubicMetres() {
    double d = investmentDiameterMetres();
    return Math.PI / 4 * d * d * heightMetres;
  }

  /** The mould in its ring, if it has one, for the solver. */
  public BodyShape shape(BodyShape.Bottom bottom) {
    return new BodyShape(
        diameterMetres,
        heightMetres,
        bottom,
        Optional.empty(),
        wallMetres > 0
            ? Optional.of(new BodyShape.Ring(wallMetres, MouldLoad.STEEL))
            : Optional.empty());
  }
}
