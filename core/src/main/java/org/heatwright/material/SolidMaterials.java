package org.heatwright.material;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.numerics.LinearTable;

/**
 * Solids that stand in a kiln or hold a mould: metals, glass, pattern wax and resin, and the wall
 * materials. None of them melts here but the wax; metals are for their solid range.
 *
 * <p>Metals and plate glass: from memory, Incropera and DeWitt, Fundamentals of Heat and Mass
 * Transfer, appendix A (tables at 300, 400, 600, 800 and 1000 K); not looked up again.
 */
public final class SolidMaterials {

  private static final String INCROPERA =
      "Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, appendix A";
  private static final double[] KELVIN = {300, 400, 600, 800, 1000};

  private static final List<KnownMaterial> ALL = all();

  private SolidMaterials() {}

  private static List<KnownMaterial> all() {
    List<KnownMaterial> all = new ArrayList<>();
    all.add(
        metal(
            "stainless-steel",
            7900,
            0.08,
            new double[] {14.9, 16.6, 19.8, 22.6, 25.4},
            new double[] {477, 515, 557, 582, 611}));
    all.add(
        metal(
            "mild-steel",
            7832,
            0.08,
            new double[] {63.9, 58.7, 48.8, 39.2, 31.3},
            new double[] {434, 487, 559, 685, 1168}));
    all.add(
        metal(
            "copper",
            8933,
            0.03,
            new double[] {401, 393, 379, 366, 352},
            new double[] {385, 397, 417, 433, 451}));
    all.add(
        metal(
            "silver",
            10_500,
            0.03,
            new double[] {429, 425, 412, 396, 379},
            new double[] {235, 239, 250, 262, 277}));
    all.add(
        metal(
            "gold",
            19_300,
            0.03,
            new double[] {317, 311, 298, 284, 270},
            new double[] {129, 131, 135, 140, 145}));
    all.add(
        metal(
            "platinum",
            21_450,
            0.05,
            new double[] {71.6, 71.8, 73.2, 75.6, 78.7},
            new double[] {133, 136, 141, 146, 152}));
    all.add(
        known(
            20,
            700,
            0.15,
            0.05,
            "sterling-silver",
            10_357,
            LinearTable.points(20, 360, 700, 340),
            LinearTable.points(20, 245, 700, 285),
            List.of(),
            Origin.estimate("between silver and copper; density by adding volumes")));
    all.add(
        known(
            20,
            330,
            0.10,
            0.05,
            "brass",
            8530,
            LinearTable.points(27, 110, 127, 137, 327, 149),
            LinearTable.points(27, 380, 127, 395, 327, 425),
            List.of(),
            Origin.memory(INCROPERA + ", 70 copper 30 zinc")));
    all.add(
        known(
            20,
            700,
            0.20,
            0.05,
            "tin-bronze",
            8759,
            LinearTable.points(20, 50, 700, 90),
            LinearTable.points(20, 377, 700, 440),
            List.of(),
            Origin.estimate("90 copper 10 tin; density by adding volumes")));
    all.add(
        known(
            20,
            500,
            0.15,
            0.05,
            "soda-lime-glass",
            2500,
            LinearTable.points(20, 1.0, 500, 1.4),
            LinearTable.points(27, 750, 500, 1130),
            List.of(),
            Origin.memory(INCROPERA + ", plate glass at 27 °C; above it our estimate")));
    all.add(
        known(
            20,
            200,
            0.25,
            0.20,
            "pattern-wax",
            950,
            LinearTable.constant(0.25),
            LinearTable.points(20, 2100, 57, 2900, 200, 2400),
            List.of(new LatentHeat(57, 74, 150_000, false)),
            Origin.estimate(
                "melts between 57 and 74 °C as a maker's sheet says; burning is not here")));
    all.add(
        known(
            20,
            250,
            0.25,
            0.15,
            "casting-resin",
            1150,
            LinearTable.constant(0.2),
            LinearTable.points(20, 1400, 250, 2000),
            List.of(),
            Origin.estimate("a cured acrylate; it does not melt, and burning is not here")));
    for (Material wall : WallMaterials.all()) {
      boolean read = wall.origin().kind() == Origin.Kind.READ;
      all.add(new KnownMaterial(wall, 20, 1100, read ? 0.15 : 0.25, read ? 0.05 : 0.10));
    }
    return List.copyOf(all);
  }

  public static List<KnownMaterial> known() {
    return ALL;
  }

  private static KnownMaterial metal(
      String name, double density, double share, double[] conductivity, double[] capacity) {
    double[] celsius = new double[KELVIN.length];
    for (int i = 0; i < celsius.length; i++) {
      celsius[i] = KELVIN[i] - 273.15;
    }
    return known(
        20,
        727,
        share,
        0.03,
        name,
        density,
        LinearTable.of(celsius, conductivity),
        LinearTable.of(celsius, capacity),
        List.of(),
        Origin.memory(INCROPERA));
  }

  private static KnownMaterial known(
      double from,
      double to,
      double conductivityShare,
      double heatShare,
      String name,
      double density,
      LinearTable conductivity,
      LinearTable capacity,
      List<LatentHeat> latent,
      Origin origin) {
    return new KnownMaterial(
        new Material(name, density, conductivity, capacity, latent, origin),
        from,
        to,
        conductivityShare,
        heatShare);
  }
}
