package org.heatwright.work.enamel;

import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;

/**
 * Any number of bonded elastic layers that change temperature alike: the plate's curvature and the
 * stresses in every layer, from balance of force and of moment. The first layer is on top; a
 * positive curvature bends the ends up, towards the first layer. Immutable.
 *
 * <p>Elastic: a metal that yields relaxes, so the stresses are an upper bound.
 */
public final class Laminate {

  private final List<Layer> layers;
  private final double changeKelvins;
  private final double[] topMetres;
  private final double strainAtTop;
  private final double curvaturePerMetre;

  private Laminate(List<Layer> layers, double changeKelvins) {
    this.layers = List.copyOf(layers);
    this.changeKelvins = changeKelvins;
    topMetres = new double[layers.size() + 1];
    double a = 0;
    double b = 0;
    double d = 0;
    double force = 0;
    double moment = 0;
    for (int i = 0; i < layers.size(); i++) {
      Layer layer = layers.get(i);
      double z0 = topMetres[i];
      double z1 = z0 + layer.thicknessMetres();
      topMetres[i + 1] = z1;
      double e = layer.platePascals();
      double zeroth = e * (z1 - z0);
      double first = e * (z1 * z1 - z0 * z0) / 2;
      a += zeroth;
      b += first;
      d += e * (z1 * z1 * z1 - z0 * z0 * z0) / 3;
      force += zeroth * layer.perKelvin() * changeKelvins;
      moment += first * layer.perKelvin() * changeKelvins;
    }
    double determinant = a * d - b * b;
    strainAtTop = (force * d - moment * b) / determinant;
    curvaturePerMetre = (a * moment - b * force) / determinant;
  }

  /**
   * The laminate at another temperature than the one it has no stress at.
   *
   * @param layers from the top down, not empty
   * @param changeKelvins from the stress-free temperature, negative for cooling, K
   */
  public static Laminate of(List<Layer> layers, double changeKelvins) {
    return new Laminate(layers, changeKelvins);
  }

  /** 1/m; positive: the ends bend up, the first layer is on the hollow side. */
  public double curvaturePerMetre() {
    return curvaturePerMetre;
  }

  /** How far the middle stands off the edge, m, for a small bow; the sign of the curvature. */
  public double bowMetres(double acrossMetres) {
    return acrossMetres * acrossMetres * curvaturePerMetre / 8;
  }

  /** Stress at the upper face of a layer, 0-based, tension positive, Pa. */
  public double upperPascals(int layer) {
    return stress(layer, topMetres[layer]);
  }

  /** Stress at the lower face of a layer, Pa. */
  public double lowerPascals(int layer) {
    return stress(layer, topMetres[layer + 1]);
  }

  /** Mean stress of a layer, Pa. */
  public double meanPascals(int layer) {
    return (upperPascals(layer) + lowerPascals(layer)) / 2;
  }

  /** Elastic energy that a square metre of a layer holds, J/m². */
  public double joulesPerSquareMetre(int layer) {
    double upper = upperPascals(layer);
    double lower = lowerPascals(layer);
    return layers.get(layer).thicknessMetres()
        * (upper * upper + upper * lower + lower * lower)
        / 3
        / layers.get(layer).platePascals();
  }

  private double stress(int layer, double z) {
    Layer of = layers.get(layer);
    return of.platePascals()
        * (strainAtTop + z * curvaturePerMetre - of.perKelvin() * changeKelvins);
  }

  /**
   * How thick the counter-enamel must be for a flat piece.
   *
   * @param enamel what is on top
   * @param metal between
   * @param counter the enamel below; its thickness does not matter
   * @param changeKelvins from set to room, negative
   * @param mostMetres no thicker, m
   * @return m; empty if no thickness up to that balances it
   */
  public static OptionalDouble balancingMetres(
      Layer enamel, Layer metal, Layer counter, double changeKelvins, double mostMetres) {
    double metalMetres = metal.thicknessMetres();
    double e1 = enamel.platePascals() * enamel.thicknessMetres();
    double e2 = metal.platePascals() * metalMetres;
    double free1 = enamel.perKelvin() * changeKelvins;
    double free3 = counter.perKelvin() * changeKelvins;
    double stiffness = e1 + e2;
    double pull = e1 * free1 + e2 * metal.perKelvin() * changeKelvins;
    // Flat: both coats turn alike about the metal's middle, which is quadratic in the thickness.
    double lever = e1 * (metalMetres + enamel.thicknessMetres());
    double a = counter.platePascals() * (pull - free3 * stiffness);
    double b = a * metalMetres - lever * counter.platePascals() * (free3 - free1);
    double c = -lever * (pull - free1 * stiffness);
    double root = b * b - 4 * a * c;
    if (root < 0 || a == 0) {
      return OptionalDouble.empty();
    }
    double q = -(b + Math.copySign(Math.sqrt(root), b)) / 2;
    return DoubleStream.of(q / a, c / q).filter(metres -> metres > 0 && metres <= mostMetres).min();
  }
}
