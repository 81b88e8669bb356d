package org.heatwright.mould;

import java.util.List;
import org.heatwright.kiln.Load;
import org.heatwright.kiln.ThermalBody;
import org.heatwright.material.HeatCurve;
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
  private static final double FIRST_BEER = 2.404825557695773; // first zero of J0
  private static final double EMISSIVITY = 0.85; // source: estimate

  /** Share of its surroundings that a mould among others sees. Source: estimate. */
  private static final double VIEW = 0.8;

  /** Share of the bottom that stands free of the shelf. Source: estimate. */
  private static final double BOTTOM_FREE = 0.5;

  /** Ring of stainless steel. Source: read, DIN EN 12524 design values. */
  private static final Material STEEL =
      new Material(
          "stainless steel",
          7900,
          LinearTable.constant(17),
          LinearTable.constant(460),
          List.of(),
          Origin.read("DIN EN 12524 design values, as carried by an open library"));

  @Override
  public ThermalBody body(double conductivityFactor, double heatFactor) {
    Material material = GypsumInvestment.material(investment.waterPowder(), wetShare());
    double radius = moulds.investmentDiameterMetres() / 2;
    double height = moulds.heightMetres();
    double ends = 1 + BOTTOM_FREE;
    double surface = 2 * Math.PI * radius * height + ends * Math.PI * radius * radius;
    return path(
        "mould",
        moulds.count(),
        HeatCurve.of(material),
        radius,
        height,
        surface,
        moulds.wallMetres(),
        conductivityFactor,
        heatFactor);
  }

  /** Share of the free water left when the firing starts: open moulds dry slowly on the bench. */
  private double wetShare() {
    // Our estimate: a third of the water goes in a day.
    return Math.exp(-investment.pouredHoursBefore() / 60);
  }

  static ThermalBody path(
      String name,
      int count,
      HeatCurve curve,
      double radius,
      double height,
      double surface,
      double ringMetres,
      double conductivityFactor,
      double heatFactor) {
    double volume = Math.PI * radius * radius * height;
    double ratio = Math.PI * radius / (FIRST_BEER * height);
    double depth = radius / Math.sqrt(1 + ratio * ratio);
    double power = Math.max(0, surface * depth / volume - 1);
    ThermalBody.Builder builder = ThermalBody.builder(name, count * surface, EMISSIVITY * VIEW);
    if (ringMetres > 0) {
      builder.cell(
          HeatCurve.of(STEEL), 1, 1, ringMetres, count * surface * ringMetres, count * surface);
    }
    // Equal cells, but the first is halved because its node sits on the surface.
    double cell = depth / (CELLS - 0.5);
    double x = 0;
    for (int i = 0; i < CELLS; i++) {
      double thickness = i == 0 && ringMetres == 0 ? cell / 2 : cell;
      if (i == 0 && ringMetres > 0) {
        cell = depth / CELLS;
        thickness = cell;
      }
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
}
