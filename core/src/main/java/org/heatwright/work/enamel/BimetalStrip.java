package org.heatwright.work.enamel;

/**
 * Two bonded layers that change temperature: curvature and stresses of the elastic strip, or plate,
 * by Timoshenko's formulas. Real metal yields, so the stresses are an upper bound.
 *
 * <p>Layer 1 is the one that is called first. The curvature is positive where layer 2 grows more
 * than layer 1, which puts layer 1 on the inner side.
 *
 * @param curvaturePerMetre 1/m
 * @param forceNewtonsPerMetre pull of layer 1 and push of layer 2 for each metre of width, N/m
 * @param firstFacePascals stress of layer 1 at its free face, tension positive, Pa
 * @param firstInterfacePascals stress of layer 1 where they meet, Pa
 * @param secondInterfacePascals stress of layer 2 where they meet, Pa
 * @param secondFacePascals stress of layer 2 at its free face, Pa
 * @see "memory: Timoshenko, Analysis of Bi-Metal Thermostats, J. Opt. Soc. Am. 1925"
 */
public record BimetalStrip(
    double curvaturePerMetre,
    double forceNewtonsPerMetre,
    double firstFacePascals,
    double firstInterfacePascals,
    double secondInterfacePascals,
    double secondFacePascals) {

  /** A narrow strip: Young's moduli. */
  public static BimetalStrip strip(Layer first, Layer second, double changeKelvins) {
    return of(first, first.youngPascals(), second, second.youngPascals(), changeKelvins);
  }

  /** A plate: E/(1 - ν). */
  public static BimetalStrip plate(Layer first, Layer second, double changeKelvins) {
    return of(first, first.platePascals(), second, second.platePascals(), changeKelvins);
  }

  private static BimetalStrip of(Layer first, double e1, Layer second, double e2, double change) {
    double a1 = first.thicknessMetres();
    double a2 = second.thicknessMetres();
    double h = a1 + a2;
    double m = a1 / a2;
    double n = e1 / e2;
    double curvature =
        6
            * (second.perKelvin() - first.perKelvin())
            * change
            * (1 + m)
            * (1 + m)
            / (h * (3 * (1 + m) * (1 + m) + (1 + m * n) * (m * m + 1 / (m * n))));
    double rigidity = (e1 * a1 * a1 * a1 + e2 * a2 * a2 * a2) / 12;
    double force = 2 * rigidity * curvature / h;
    double bend1 = e1 * a1 * curvature / 2;
    double bend2 = e2 * a2 * curvature / 2;
    return new BimetalStrip(
        curvature,
        force,
        force / a1 - bend1,
        force / a1 + bend1,
        -force / a2 - bend2,
        -force / a2 + bend2);
  }

  /** How far the middle of a round or square piece stands off its edge, m, for a small bow. */
  public double bowMetres(double acrossMetres) {
    return acrossMetres * acrossMetres * curvaturePerMetre / 8;
  }
}
