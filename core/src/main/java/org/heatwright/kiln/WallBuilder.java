package org.heatwright.kiln;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.heatwright.material.HeatCurve;
import org.heatwright.material.HeatCurves;

/**
 * Turns the layers of a kiln's faces into bodies of cells. Faces with the same layers become one
 * body.
 *
 * <p>A small box with thick walls loses far more than its inner area over the thickness: edges and
 * corners conduct too. The area of a wall therefore grows linearly with depth, so that the wall
 * conducts as the shape factor of the box says, {@code S = A/L + 0.54 edges + 0.15 corners L}
 * (memory: Langmuir 1913, as in Incropera and others, Fundamentals of Heat and Mass Transfer, table
 * 4.1; stated there for thin walls, so an estimate where the wall is thicker than a fifth of the
 * chamber).
 */
final class WallBuilder {

  private final Kiln kiln;
  private final Grid grid;
  private final HeatCurves curves;

  /**
   * How fine the walls are cut.
   *
   * @param firstMetres thickness of the cell on the hot face, m
   * @param growth each next cell is that much thicker, above 1, up to {@value #MOST_OF_FIRST} times
   *     the first: what lies deep conducts through the same wall
   */
  record Grid(double firstMetres, double growth) {
    static final double MOST_OF_FIRST = 12;

    /** As {@link FiringSimulation.Accuracy#USUAL} has it. */
    static final Grid USUAL = new Grid(0.0006, 1.35);

    double mostMetres() {
      return MOST_OF_FIRST * firstMetres;
    }
  }

  WallBuilder(Kiln kiln, Grid grid, HeatCurves curves) {
    this.kiln = kiln;
    this.grid = grid;
    this.curves = curves;
  }

  List<ThermalBody> build(double conductivityFactor, double capacityFactor) {
    Map<List<Layer>, Double> areas = new LinkedHashMap<>();
    Map<List<Layer>, String> names = new LinkedHashMap<>();
    for (Face face : Face.values()) {
      double area = kiln.innerSquareMetres(face);
      if (area > 0) {
        areas.merge(kiln.layers(face), area, Double::sum);
        names.merge(
            kiln.layers(face),
            face.name().toLowerCase(java.util.Locale.ROOT),
            (a, b) -> a + " and " + b);
      }
    }
    List<ThermalBody> bodies = new ArrayList<>();
    areas.forEach(
        (layers, area) ->
            bodies.add(
                wall(
                    names.getOrDefault(layers, "wall"),
                    layers,
                    area,
                    conductivityFactor,
                    capacityFactor)));
    return bodies;
  }

  private ThermalBody wall(
      String name,
      List<Layer> layers,
      double faceArea,
      double conductivityFactor,
      double capacityFactor) {
    double thickness = layers.stream().mapToDouble(Layer::thicknessMetres).sum();
    double growthPerMetre = areaGrowthPerMetre(areaRatio(kiln.chamber(), thickness), thickness);
    ThermalBody.Builder builder = ThermalBody.builder(name, faceArea, KilnNetwork.WALL_EMISSIVITY);
    double depth = 0;
    double wanted = grid.firstMetres();
    for (int l = 0; l < layers.size(); l++) {
      Layer layer = layers.get(l);
      HeatCurve curve = curves.of(layer.material());
      List<Double> cells = cut(layer.thicknessMetres(), wanted, grid.growth(), grid.mostMetres());
      if (l == layers.size() - 1) {
        splitLast(cells);
      }
      for (double cell : cells) {
        double middle = faceArea * (1 + growthPerMetre * (depth + cell / 2));
        double inner = faceArea * (1 + growthPerMetre * (depth + cell));
        builder.cell(curve, conductivityFactor, capacityFactor, cell, middle * cell, inner);
        depth += cell;
      }
      if (l + 1 < layers.size()) {
        builder.joint(layer.contactSquareMetreKelvinPerWatt());
      }
      wanted = cells.get(cells.size() - 1);
    }
    return builder.shell(faceArea * (1 + growthPerMetre * thickness));
  }

  /** A thin cell for the shell, whose node sits on its outside. */
  private static void splitLast(List<Double> cells) {
    int last = cells.size() - 1;
    double thin = SHELL_CELL_SHARE * cells.get(last);
    cells.set(last, cells.get(last) - thin);
    cells.add(thin);
  }

  private static final double SHELL_CELL_SHARE = 0.1;

  /**
   * Cells that grow from about {@code first} to {@code most}, filling {@code thickness} exactly.
   */
  static List<Double> cut(double thickness, double first, double growth, double most) {
    int count = 1;
    double sum = first;
    double cell = first;
    while (sum < thickness * (1 - 1e-9)) {
      cell = Math.min(most, cell * growth);
      sum += cell;
      count++;
    }
    // One cell fewer where that is nearer.
    if (count > 1 && thickness - (sum - cell) < sum - thickness) {
      count--;
      sum -= cell;
    }
    double scale = thickness / sum;
    List<Double> cells = new ArrayList<>();
    cell = first * scale;
    for (int i = 0; i < count; i++) {
      cells.add(cell);
      cell = Math.min(most * scale, cell * growth);
    }
    return cells;
  }

  /** Conducting area of a chamber's wall of that thickness over its inner area. */
  static double areaRatio(Chamber chamber, double thickness) {
    double inner = 2 * chamber.floorSquareMetres() + chamber.uprightSquareMetres();
    double upright = chamber.uprightSquareMetres();
    if (chamber instanceof Chamber.Drum drum) {
      double relative = 2 * thickness / drum.diameterMetres();
      upright *= relative / Math.log1p(relative);
    }
    double conducting =
        2 * chamber.floorSquareMetres()
            + upright
            + thickness * (0.54 * chamber.edgeMetres() + 0.15 * chamber.corners() * thickness);
    return conducting / inner;
  }

  /** The growth b for which an area 1 + b x conducts over [0, L] like a constant area of ratio. */
  static double areaGrowthPerMetre(double ratio, double thickness) {
    if (ratio <= 1) {
      return 0;
    }
    double low = 0;
    double high = 1;
    while (conductingRatio(high, thickness) < ratio) {
      high *= 2;
    }
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (conductingRatio(middle, thickness) < ratio) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private static double conductingRatio(double growth, double thickness) {
    double x = growth * thickness;
    return x == 0 ? 1 : x / Math.log1p(x);
  }
}
