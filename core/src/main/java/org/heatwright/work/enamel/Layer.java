package org.heatwright.work.enamel;

/**
 * One layer of a laminate.
 *
 * @param thicknessMetres m, above zero
 * @param youngPascals Young's modulus, Pa, above zero
 * @param poissonRatio Poisson's ratio, 0 to below 0.5
 * @param perKelvin linear expansion, 1/K
 */
public record Layer(
    double thicknessMetres, double youngPascals, double poissonRatio, double perKelvin) {

  public Layer {
    if (!(thicknessMetres > 0 && thicknessMetres < 1)
        || !(youngPascals > 0 && youngPascals < Double.POSITIVE_INFINITY)
        || !(poissonRatio >= 0 && poissonRatio < 0.5)
        || !Double.isFinite(perKelvin)) {
      throw new IllegalArgumentException(
          ("The layer (%s m, %s Pa, Poisson's ratio %s, %s 1/K) needs a thickness of 0 to 1 m, a"
                  + " modulus above zero and a ratio of 0 to 0.5.")
              .formatted(thicknessMetres, youngPascals, poissonRatio, perKelvin));
    }
  }

  /** E/(1 - ν): the modulus of a plate that is strained alike in both directions, Pa. */
  public double platePascals() {
    return youngPascals / (1 - poissonRatio);
  }

  public Layer withThickness(double metres) {
    return new Layer(metres, youngPascals, poissonRatio, perKelvin);
  }

  public Layer withExpansion(double newPerKelvin) {
    return new Layer(thicknessMetres, youngPascals, poissonRatio, newPerKelvin);
  }
}
