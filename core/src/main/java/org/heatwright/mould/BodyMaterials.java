package org.heatwright.mould;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.material.KnownMaterial;
import org.heatwright.material.Material;
import org.heatwright.material.Material.LatentHeat;
import org.heatwright.material.SolidMaterials;
import org.heatwright.numerics.LinearTable;

/**
 * The materials a body may be made of, by name: mould investments and the solids of {@link
 * SolidMaterials}. The number in an investment's name is grams of water (or special liquid) to 100
 * g of powder. {@code -fired} is the same mould after its burnout: no water left, inversions still
 * there.
 *
 * <p>Inversions of silica (reversible): cristobalite 220 to 275 °C, quartz 565 to 580 °C. Sources:
 * memory, Robie, Hemingway and Fisher, USGS Bulletin 1452 (heats); the ranges are our estimate.
 */
public final class BodyMaterials {

  // Per kg of the mineral. Source: memory, Robie, Hemingway and Fisher, USGS Bulletin 1452, 1978.
  private static final double CRISTOBALITE_INVERSION = 21_500;
  private static final double QUARTZ_INVERSION = 12_000;

  /**
   * Heat capacity of the fired default mix whose cristobalite inverts as a heat of its own: the
   * JANAF table in place of the fit that smears the inversion (46 J/(kg K) less at 227 °C). J/(kg
   * K). Source: read, JANAF 1998 and Perry's table of Kelley's fits in an open library.
   */
  private static final LinearTable FIRED_CAPACITY =
      LinearTable.points(
          25, 739, 110, 847, 127, 866, 200, 933, 227, 956, 300, 1011, 400, 1076, 500, 1132, 600,
          1131, 700, 1172, 750, 1190);

  private static final List<KnownMaterial> ALL = all();

  private BodyMaterials() {}

  private static List<KnownMaterial> all() {
    List<KnownMaterial> all = new ArrayList<>();
    for (int water : new int[] {36, 38, 40, 42}) {
      all.add(known(gypsum("gypsum-investment-" + water, water / 100.0, true), 730));
      all.add(known(gypsum("gypsum-investment-" + water + "-fired", water / 100.0, false), 730));
    }
    for (int water : new int[] {16, 20, 24}) {
      all.add(known(phosphate("phosphate-investment-" + water, water / 100.0, true), 1000));
      all.add(
          known(phosphate("phosphate-investment-" + water + "-fired", water / 100.0, false), 1000));
    }
    all.addAll(SolidMaterials.known());
    return List.copyOf(all);
  }

  private static KnownMaterial known(Material material, double to) {
    boolean gypsum = material.name().startsWith("gypsum");
    return new KnownMaterial(material, 20, to, gypsum ? 0.2 : 0.3, gypsum ? 0.08 : 0.15);
  }

  public static List<KnownMaterial> known() {
    return ALL;
  }

  /** The names, moulds first. */
  public static List<String> names() {
    return ALL.stream().map(KnownMaterial::name).toList();
  }

  public static Optional<KnownMaterial> named(String name) {
    return ALL.stream().filter(material -> material.name().equals(name)).findFirst();
  }

  /** Gypsum-bonded as the kiln's load has it, with the inversions of its silica as heats. */
  private static Material gypsum(String name, double waterPowder, boolean wet) {
    Material plain = GypsumInvestment.material(waterPowder, wet ? 1 : 0);
    double lost =
        1
            - GypsumInvestment.firedDensity(waterPowder)
                * GypsumInvestment.cubicMetresPerPowder(waterPowder);
    double cristobalite = GypsumInvestment.SHARE_CRISTOBALITE / (1 - lost);
    double quartz = GypsumInvestment.SHARE_QUARTZ / (1 - lost);
    List<LatentHeat> latent =
        Stream.concat(
                wet ? plain.latentHeats().stream() : Stream.empty(),
                inversions(cristobalite, quartz).stream())
            .toList();
    return new Material(
        name,
        plain.densityKilogramsPerCubicMetre(),
        plain.conductivityWattsPerMetreKelvin(),
        wet ? capacity(plain) : FIRED_CAPACITY,
        latent,
        plain.origin());
  }

  private static List<LatentHeat> inversions(double cristobalite, double quartz) {
    return List.of(
        new LatentHeat(220, 275, cristobalite * CRISTOBALITE_INVERSION, false),
        new LatentHeat(565, 580, quartz * QUARTZ_INVERSION, false));
  }

  /** Below boiling the water's own heat capacity adds to the solid's. */
  private static LinearTable capacity(Material plain) {
    double wet = plain.heatCapacityJoulesPerKilogramKelvin().at(25) - 741.0;
    return LinearTable.points(
        25, 739 + wet, 95, 829 + wet, 110, 847, 127, 866, 200, 933, 227, 956, 300, 1011, 400, 1076,
        500, 1132, 600, 1131, 700, 1172, 750, 1190);
  }

  /** Phosphate-bonded as the kiln's load has it, with the inversions of its silica as heats. */
  private static Material phosphate(String name, double liquidPowder, boolean wet) {
    Material plain =
        wet
            ? PhosphateInvestment.material(liquidPowder, 1)
            : PhosphateInvestment.fired(liquidPowder);
    List<LatentHeat> latent =
        Stream.concat(
                plain.latentHeats().stream(),
                inversions(PhosphateInvestment.SHARE_CRISTOBALITE, PhosphateInvestment.SHARE_QUARTZ)
                    .stream())
            .toList();
    return new Material(
        name,
        plain.densityKilogramsPerCubicMetre(),
        plain.conductivityWattsPerMetreKelvin(),
        plain.heatCapacityJoulesPerKilogramKelvin(),
        latent,
        plain.origin());
  }
}
