package org.heatwright.mould;

import java.util.List;
import org.heatwright.kiln.Load;
import org.heatwright.kiln.ThermalBody;
import org.heatwright.material.HeatCurve;
import org.heatwright.material.HeatCurves;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;

/**
 * Equal moulds in a kiln, simulated along one path from surface to core.
 *
 * <p>A short cylinder heats through its ends too. The path is therefore that of a body with the
 * same volume and the same slowest decay as the cylinder: its half-thickness is the radius of the
 * long cylinder that decays equally fast, and its area shrinks inward as a power of the depth so
 * that area and volume fit. Checked against the exact finite cylinder in the tests; the
 * two-dimensional solver of a later version replaces it.
 *
 * @param moulds the moulds
 * @param investment the mix
 */
public record MouldLoad(Mould moulds, Investment investment) implements Load {

  private static final int CELLS = 12;
  private static final double FIRST_ZERO_CYLINDER = 2.404825557695773; // of J0

  /** Of investment and oxidised steel at furnace temperature. Source: estimate. */
  static final double EMISSIVITY = 0.85;

  /** Share of its surroundings that a mould among others sees. Source: estimate. */
  static final double VIEW = 0.8;

  /** Share of the bottom that stands free of the shelf. Source: estimate. */
  private static final double BOTTOM_FREE = 0.5;

  /** Ring of stainless steel. Source: read, DIN EN 12524 design values. */
  static final Material STEEL =
      new Material(
          "stainless steel",
          7900,
          LinearTable.constant(17),
          LinearTable.constant(460),
          List.of(),
          Origin.read("DIN EN 12524 design values, as carried by an open library"));

  /** The mix as it is when the firing starts. */
  static Material material(Investment investment) {
    double wet = wetShare(investment);
    return investment.isPhosphateBonded()
        ? PhosphateInvestment.material(investment.waterPowder(), wet)
        : GypsumInvestment.material(investment.waterPowder(), wet);
  }

  @Override
  public ThermalBody body(HeatCurves curves, double conductivityFactor, double heatFactor) {
    Material material = material(investment);
    double radius = moulds.investmentDiameterMetres() / 2;
    double height = moulds.heightMetres();
    double ends = 1 + BOTTOM_FREE;
    double surface = 2 * Math.PI * radius * height + ends * Math.PI * radius * radius;
    return shortCylinders(
        "mould",
        moulds.count(),
        curves,
        material,
        radius,
        height,
        surface,
        moulds.wallMetres(),
        conductivityFactor,
        heatFactor);
  }

  /** Share of the free water left when the firing starts: open moulds dry slowly on the bench. */
  static double wetShare(Investment investment) {
    // Our estimate: a third of the water goes in a day.
    return Math.exp(-investment.pouredHoursBefore() / 60);
  }

  /**
   * Equal short cylinders as one body.
   *
   * @param name what they are
   * @param count how many
   * @param curves where heat curves come from
   * @param material what they are made of
   * @param radius m, inside the ring
   * @param height m
   * @param surface area of one that takes up heat, m²
   * @param ringMetres thickness of a steel ring around each, m; 0: none
   * @param conductivityFactor multiplies the material's conductivity
   * @param heatFactor multiplies the material's heat content
   */
  public static ThermalBody shortCylinders(
      String name,
      int count,
      HeatCurves curves,
      Material material,
      double radius,
      double height,
      double surface,
      double ringMetres,
      double conductivityFactor,
      double heatFactor) {
    double volume = Math.PI * radius * radius * height;
    double surfacePerVolume = surface / volume;
    double decayPerMetre = Math.hypot(FIRST_ZERO_CYLINDER / radius, Math.PI / height);
    double depth = depth(surfacePerVolume, decayPerMetre);
    double power = surfacePerVolume * depth - 1;
    HeatCurve curve = curves.of(material);
    ThermalBody.Builder builder = ThermalBody.builder(name, count * surface, EMISSIVITY * VIEW);
    if (ringMetres > 0) {
      builder.cell(
          curves.of(STEEL), 1, 1, ringMetres, count * surface * ringMetres, count * surface);
    }
    // Equal cells, but one whose node sits on the surface is a half.
    boolean bare = ringMetres == 0;
    double cell = depth / (bare ? CELLS - 0.5 : CELLS);
    double x = 0;
    for (int i = 0; i < CELLS; i++) {
      double thickness = i == 0 && bare ? cell / 2 : cell;
      double next = i == CELLS - 1 ? depth : x + thickness;
      double outer = Math.pow(Math.max(0, 1 - x / depth), power + 1);
      double inner = Math.pow(Math.max(0, 1 - next / depth), power + 1);
      builder.cell(
          curve,
          conductivityFactor,
          heatFactor,
          thickness,
          count * volume * (outer - inner),
          count * surface * Math.pow(Math.max(0, 1 - next / depth), power));
      x = next;
    }
    return builder.core();
  }

  /**
   * Depth of a body whose area falls with the power {@code p = depth surface/volume - 1} of what is
   * left of the depth, and which decays as slowly as the short cylinder does.
   */
  private static double depth(double surfacePerVolume, double decayPerMetre) {
    double low = 1 / surfacePerVolume; // a slab, power 0
    double high = 20 * low;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (firstZero(surfacePerVolume * middle - 1) > decayPerMetre * middle) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /**
   * First eigenvalue of a body whose area falls with a power of the radius: exact for the slab (0),
   * the cylinder (1) and the sphere (2), a parabola through them elsewhere.
   */
  private static double firstZero(double power) {
    double slab = Math.PI / 2;
    double second = (Math.PI - 2 * FIRST_ZERO_CYLINDER + slab) / 2;
    return slab + power * (FIRST_ZERO_CYLINDER - slab - second + second * power);
  }
}
