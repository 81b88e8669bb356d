package org.heatwright.piece;

import java.util.List;
import org.heatwright.kiln.Load;
import org.heatwright.kiln.ThermalBody;
import org.heatwright.material.HeatCurve;
import org.heatwright.material.HeatCurves;

/**
 * Slabs in a kiln as its network sees them: one path from the faces inward, with all of their heat.
 *
 * <p>A slab with two faces is taken as two halves back to back, each with the front's layers; where
 * the halves differ, the heat of the path is scaled so that the whole fits. What the piece itself
 * does is solved with its real faces ({@link SlabHistory}); here only what it takes from the
 * chamber counts.
 *
 * @param piece what stands there
 */
public record SlabLoad(FollowedPiece piece) implements Load {

  /** Where heat contents of the halves are compared, °C. */
  private static final double COMPARED_CELSIUS = 400;

  /** A face must see something, for the network. */
  private static final double LEAST_EMISSIVITY = 0.02;

  private static final int MOST_CELLS = 8;

  @Override
  public ThermalBody body(HeatCurves curves, double conductivityFactor, double heatFactor) {
    Slab slab = piece.slab();
    boolean both = slab.back().isPresent();
    double area = piece.count() * piece.frontSquareMetres() * (both ? 2 : 1);
    double emissivity =
        (slab.front().emissivity()
                + slab.back().map(Slab.Face::emissivity).orElse(slab.front().emissivity()))
            / 2;
    double depth = slab.thicknessMetres() / (both ? 2 : 1);
    Slab.Layer[] path = path(slab.layers(), depth);
    double heat = 0;
    for (Slab.Layer layer : path) {
      heat +=
          layer.material().densityKilogramsPerCubicMetre()
              * layer.material().heatCapacityJoulesPerKilogramKelvin().at(COMPARED_CELSIUS)
              * layer.thicknessMetres();
    }
    double scale =
        slab.joulesPerSquareMetreKelvin(COMPARED_CELSIUS) / (both ? 2 : 1) / heat * heatFactor;
    ThermalBody.Builder builder =
        ThermalBody.builder(piece.name(), area, Math.max(LEAST_EMISSIVITY, emissivity));
    boolean first = true;
    for (Slab.Layer layer : path) {
      HeatCurve curve = curves.of(layer.material());
      double resistance =
          layer.thicknessMetres()
              / layer.material().conductivityWattsPerMetreKelvin().at(COMPARED_CELSIUS);
      int cells = SlabHistory.cells(resistance, MOST_CELLS);
      // Equal cells, but the one whose node sits on the face is a half.
      double cell = layer.thicknessMetres() / (first && cells > 1 ? cells - 0.5 : cells);
      for (int i = 0; i < cells; i++) {
        double thickness = first && cells > 1 ? cell / 2 : cell;
        first = false;
        builder.cell(curve, conductivityFactor, scale, thickness, area * thickness, area);
      }
    }
    return builder.core();
  }

  /** The layers down to a depth. */
  private static Slab.Layer[] path(List<Slab.Layer> layers, double depth) {
    java.util.ArrayList<Slab.Layer> path = new java.util.ArrayList<>();
    double left = depth;
    for (Slab.Layer layer : layers) {
      double thickness = Math.min(left, layer.thicknessMetres());
      if (thickness > 1e-9) {
        path.add(new Slab.Layer(layer.material(), thickness, layer.conductivitySpreadShare()));
      }
      left -= thickness;
    }
    return path.toArray(Slab.Layer[]::new);
  }
}
