package org.heatwright.mould;

import static java.util.Map.entry;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.material.Material;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;
import org.heatwright.units.Temperature;

/** Bodies with answers known from elsewhere; the answers lie in the resources, by name. */
final class Bodies {

  /** A body, its surroundings and how long. */
  record Case(Body body, LinearTable surroundings, double endSeconds) {}

  /** Dries between 95 and 115 °C; the example of the file format. */
  private static final Material DRYING =
      material(
          1200,
          LinearTable.points(20, 0.6, 800, 0.4),
          LinearTable.points(20, 900, 800, 1100),
          new LatentHeat(95, 115, 400_000, true));

  /** Water and two steps of dehydration, close together. */
  private static final Material SETTING =
      material(
          1230,
          LinearTable.points(20, 0.8, 95, 0.8, 110, 0.45, 600, 0.45, 750, 0.5),
          LinearTable.points(20, 1900, 95, 2000, 110, 860, 300, 1007, 500, 1129, 750, 1187),
          new LatentHeat(95, 105, 632_000, true),
          new LatentHeat(105, 150, 140_000, true),
          new LatentHeat(150, 220, 36_500, true));

  private static final Material TWO_STEPS =
      material(
          1230,
          LinearTable.points(20, 0.55, 600, 0.45, 750, 0.5),
          LinearTable.points(20, 900, 300, 1007, 500, 1129, 750, 1187),
          new LatentHeat(100, 130, 200_000, true),
          new LatentHeat(130, 190, 60_000, true));

  private static final Material INVERTING =
      material(
          1230,
          LinearTable.points(20, 0.45, 600, 0.45, 750, 0.5),
          LinearTable.points(20, 760, 300, 1007, 500, 1129, 750, 1187),
          new LatentHeat(220, 270, 8_000, false),
          new LatentHeat(565, 580, 4_000, false));

  static final Map<String, Case> ALL =
      Map.ofEntries(
          entry(
              "a",
              new Case(
                  body(
                      BodyShape.cylinder(0.080, 0.110, BodyShape.Bottom.EXPOSED),
                      material(1250, LinearTable.constant(0.5), LinearTable.constant(1000)),
                      0,
                      25,
                      20),
                  LinearTable.points(0, 500, 1, 500),
                  14_400)),
          entry(
              "b",
              new Case(
                  body(
                      BodyShape.cylinder(0.090, 0.120, BodyShape.Bottom.EXPOSED),
                      material(1200, LinearTable.constant(0.45), LinearTable.constant(1050)),
                      0.85,
                      9,
                      20),
                  LinearTable.points(0, 260, 1800, 260, 7200, 640, 16_200, 640),
                  16_200)),
          entry(
              "c",
              new Case(
                  body(
                      BodyShape.cylinder(0.100, 0.130, BodyShape.Bottom.EXPOSED),
                      material(
                          1180,
                          LinearTable.points(20, 0.62, 150, 0.48, 400, 0.36, 750, 0.43),
                          LinearTable.points(20, 860, 200, 980, 500, 1090, 800, 1150)),
                      0.88,
                      8,
                      22),
                  LinearTable.points(
                      0, 22, 3540, 230, 7140, 230, 13_080, 660, 18_480, 660, 21_300, 520, 24_900,
                      520),
                  24_900)),
          entry(
              "drying",
              new Case(
                  body(
                      BodyShape.cylinder(0.075, 0.100, BodyShape.Bottom.EXPOSED),
                      DRYING,
                      0.9,
                      8,
                      20),
                  LinearTable.points(0, 20, 1800, 300, 14_400, 300),
                  14_400)),
          entry(
              "two-steps",
              new Case(
                  body(
                      BodyShape.cylinder(0.090, 0.120, BodyShape.Bottom.EXPOSED),
                      TWO_STEPS,
                      0.85,
                      8,
                      20),
                  LinearTable.points(0, 20, 3600, 180, 10_800, 180, 21_600, 500, 28_800, 500),
                  28_800)),
          entry(
              "burnout",
              new Case(
                  body(
                      BodyShape.cylinder(0.090, 0.120, BodyShape.Bottom.EXPOSED),
                      SETTING,
                      0.85,
                      8,
                      20),
                  LinearTable.points(
                      0, 20, 3600, 150, 10_800, 150, 21_600, 730, 32_400, 730, 36_000, 500, 43_200,
                      500),
                  43_200)),
          entry(
              "insulated",
              new Case(
                  body(
                      BodyShape.cylinder(0.090, 0.120, BodyShape.Bottom.INSULATED),
                      DRYING,
                      0.85,
                      8,
                      20),
                  LinearTable.points(0, 20, 3600, 180, 10_800, 180, 21_600, 600, 32_400, 600),
                  32_400)),
          entry(
              "cavity",
              new Case(
                  body(
                      new BodyShape(
                          0.090,
                          0.120,
                          BodyShape.Bottom.INSULATED,
                          Optional.of(new BodyShape.Cavity(0.016, 0.050)),
                          Optional.empty()),
                      DRYING,
                      0.85,
                      8,
                      20),
                  LinearTable.points(0, 20, 3600, 200, 10_800, 200, 18_000, 600, 28_800, 600),
                  28_800)),
          entry(
              "inversions",
              new Case(
                  body(
                      BodyShape.cylinder(0.080, 0.110, BodyShape.Bottom.EXPOSED),
                      INVERTING,
                      0.85,
                      8,
                      20),
                  LinearTable.points(0, 20, 7200, 700, 12_600, 700, 18_000, 150, 21_600, 150),
                  21_600)));

  private Bodies() {}

  static Body body(
      BodyShape shape, Material material, double emissivity, double convection, double start) {
    return new Body(shape, material, emissivity, convection, Temperature.ofCelsius(start));
  }

  static Material material(
      double density, LinearTable conductivity, LinearTable capacity, LatentHeat... latent) {
    return new Material(
        "test", density, conductivity, capacity, List.of(latent), Origin.own("test"));
  }
}
