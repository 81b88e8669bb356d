package org.heatwright.material;

import java.util.List;
import java.util.Optional;
import org.heatwright.numerics.LinearTable;

/**
 * The wall materials a kiln file may name. Numbers in a name are the brick group, or the density in
 * kg/m³. Bricks of one group differ by a quarter in conductivity between makers (our estimate), so
 * these are starting points, not a maker's data sheet.
 *
 * <p>Conductivities over the mean temperature in °C are W/(m K), heat capacities J/(kg K).
 *
 * <p>Sources: <i>Bricks</i>, VDI Heat Atlas, 2nd ed. 2010, refractories, read as printed in the
 * open {@code ht} library (400 to 1200 °C; which class is which brick group is our mapping).
 * <i>Fibre</i>, MaCFP materials database, ceramic fibre, read (260 to 1093 °C; heat capacity 27 to
 * 1327 °C). What is not from there says so beside it.
 */
public final class WallMaterials {

  private static final String VDI =
      "VDI Heat Atlas 2010, light bricks, as printed in the ht library";
  private static final String MACFP = "MaCFP materials database, ceramic fibre";

  /** Alumino-silicate fibre, printed at 27, 227, 527, 627 and 1327 °C. */
  private static final LinearTable FIBRE_HEAT_CAPACITY =
      LinearTable.points(27, 765, 227, 1021, 527, 1213, 627, 1171, 1327, 1283);

  /**
   * Vacuum-formed board of 240 to 256 kg/m³, printed at 260, 538, 816 and 1093 °C; 0.034 near room
   * temperature.
   */
  private static final LinearTable BOARD_CONDUCTIVITY =
      LinearTable.points(20, 0.034, 260, 0.058, 538, 0.085, 816, 0.126, 1093, 0.183);

  private static final List<Material> ALL =
      List.of(
          material(
              "insulating-brick-20",
              460,
              LinearTable.points(0, 0.09, 1000, 0.18),
              LinearTable.points(20, 780, 400, 942, 800, 1002, 1200, 1033),
              Origin.estimate("a little lighter than insulating-brick-23")),
          material(
              "insulating-brick-23",
              490,
              // 0.10 + 1.0e-4 T fits the print exactly and carries it on below 400 °C.
              LinearTable.points(0, 0.10, 400, 0.14, 600, 0.16, 800, 0.18, 1000, 0.20, 1200, 0.22),
              LinearTable.points(20, 780, 400, 942, 800, 1002, 1200, 1033),
              Origin.read(VDI + ", class 1260 °C; below 400 °C our estimate")),
          material(
              "insulating-brick-26",
              790,
              LinearTable.points(0, 0.23, 400, 0.27, 600, 0.30, 800, 0.32, 1000, 0.34, 1200, 0.36),
              LinearTable.points(20, 780, 400, 954, 800, 1018, 1200, 1050),
              Origin.read(VDI + ", class 1400 °C; below 400 °C our estimate")),
          material(
              "insulating-brick-28",
              890,
              LinearTable.points(0, 0.26, 400, 0.32, 600, 0.35, 800, 0.38, 1000, 0.41, 1200, 0.43),
              LinearTable.points(20, 780, 400, 979, 800, 1054, 1200, 1096),
              Origin.read(VDI + ", class 1540 °C; below 400 °C our estimate")),
          material(
              "dense-firebrick",
              2100,
              LinearTable.points(20, 1.2, 1000, 1.4),
              LinearTable.points(20, 840, 1000, 1100),
              Origin.estimate("usual for fireclay brick")),
          material(
              "fibre-blanket-64",
              64,
              LinearTable.points(20, 0.035, 260, 0.079, 538, 0.182, 816, 0.349, 1093, 0.518),
              FIBRE_HEAT_CAPACITY,
              Origin.estimate(
                  "from fibre-blanket-128: what radiation carries goes with one over density")),
          material(
              "fibre-blanket-96",
              96,
              LinearTable.points(20, 0.035, 260, 0.066, 538, 0.141, 816, 0.256, 1093, 0.373),
              FIBRE_HEAT_CAPACITY,
              Origin.estimate(
                  "from fibre-blanket-128: what radiation carries goes with one over density")),
          material(
              "fibre-blanket-128",
              128,
              // Carried on below 260 °C with the first slope, down to 0.035 at 144 °C.
              LinearTable.points(
                  260 - 0.025 / (0.06 / 278), 0.035, 260, 0.06, 538, 0.12, 816, 0.21, 1093, 0.30),
              FIBRE_HEAT_CAPACITY,
              Origin.read(MACFP + ", blanket 128 kg/m³; below 260 °C our estimate")),
          material(
              "fibre-board-280",
              280,
              BOARD_CONDUCTIVITY,
              FIBRE_HEAT_CAPACITY,
              Origin.estimate("conductivity of a board of 240 to 256 kg/m³ (" + MACFP + ")")),
          material(
              "vacuum-formed-fibre-220",
              220,
              BOARD_CONDUCTIVITY,
              FIBRE_HEAT_CAPACITY,
              Origin.read(MACFP + ", vacuum-formed board 240 to 256 kg/m³, taken for 220")),
          material(
              "vermiculite-board",
              450,
              LinearTable.points(20, 0.12, 400, 0.16, 800, 0.21),
              LinearTable.points(20, 850, 800, 1050),
              Origin.estimate("usual for pressed vermiculite of that density")),
          material(
              "calcium-silicate-board",
              250,
              LinearTable.points(20, 0.055, 200, 0.065, 400, 0.085, 600, 0.11, 800, 0.14),
              LinearTable.points(20, 840, 800, 1050),
              Origin.estimate("usual for lightweight board of that density")));

  private WallMaterials() {}

  /** The material of that name, if there is one. */
  public static Optional<Material> named(String name) {
    return ALL.stream().filter(material -> material.name().equals(name)).findFirst();
  }

  public static List<Material> all() {
    return ALL;
  }

  /** The names, in the order a person would look for them. */
  public static List<String> names() {
    return ALL.stream().map(Material::name).toList();
  }

  private static Material material(
      String name,
      double densityKilogramsPerCubicMetre,
      LinearTable conductivityWattsPerMetreKelvin,
      LinearTable heatCapacityJoulesPerKilogramKelvin,
      Origin origin) {
    return new Material(
        name,
        densityKilogramsPerCubicMetre,
        conductivityWattsPerMetreKelvin,
        heatCapacityJoulesPerKilogramKelvin,
        List.of(),
        origin);
  }
}
