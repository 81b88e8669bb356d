package org.heatwright.work.enamel;

import java.util.List;
import org.heatwright.material.FixedPoints;
import org.heatwright.material.KaratGolds;
import org.heatwright.material.Origin;

/**
 * The metals that carry enamel. Alloys of one name differ: the supplier's solidus goes first, see
 * {@link #firmCelsius}.
 */
public final class EnamelMetals {

  private static final Origin HANDBOOK_EXPANSION =
      Origin.memory(
          "Touloukian, Thermophysical Properties of Matter vol. 12, 1975, mean 20 to 500 °C; near"
              + " 20 °C read: a table of the elements");
  private static final Origin ALLOY_EXPANSION =
      Origin.estimate("between gold, silver and copper by their shares");
  private static final Origin HANDBOOK_ELASTIC =
      Origin.memory("ASM Handbook vol. 2, nonferrous alloys; vol. 1 for steel");
  private static final Origin ALLOY_ELASTIC =
      Origin.estimate("between gold, silver and copper by their shares");
  private static final Origin BENCH_TABLE =
      Origin.read(
          KaratGolds.ORIGIN.text()
              + ", single melting points; the alloys melt over 20 to 60 K, so the solidus may lie lower"
              + " by as much");

  /** A supplier's solidus is kept off by so much: display error and hot spots, K. Estimate. */
  public static final double SUPPLIER_MARGIN_KELVINS = 40;

  private static final Range YIELDS_EARLY = Range.of(30e6, 50e6, 70e6);

  public static final EnamelMetal COPPER =
      new EnamelMetal(
          "copper",
          8960,
          420,
          16.5e-6,
          Range.of(17.3e-6, 17.9e-6, 18.4e-6),
          117e9,
          0.34,
          FixedPoints.COPPER_CELSIUS,
          YIELDS_EARLY,
          HANDBOOK_EXPANSION,
          HANDBOOK_ELASTIC,
          FixedPoints.ORIGIN);

  public static final EnamelMetal FINE_SILVER =
      new EnamelMetal(
          "fine silver",
          10490,
          255,
          18.9e-6,
          Range.of(20.0e-6, 20.5e-6, 21.0e-6),
          76e9,
          0.37,
          FixedPoints.SILVER_CELSIUS,
          YIELDS_EARLY,
          HANDBOOK_EXPANSION,
          HANDBOOK_ELASTIC,
          FixedPoints.ORIGIN);

  /** Published solidi run from 788 (read) over 796 (phase diagram, read) to 802 °C (memory). */
  public static final EnamelMetal STERLING =
      new EnamelMetal(
          "sterling silver",
          10360,
          260,
          19e-6,
          Range.of(19.4e-6, 20.2e-6, 20.9e-6),
          75e9,
          0.37,
          788,
          Range.of(50e6, 70e6, 120e6),
          Origin.estimate("fine silver with 7.5 % copper; near 20 °C read: a metals data page"),
          HANDBOOK_ELASTIC,
          Origin.read("a metals data page: solidus 788 °C, the lowest of three published values"));

  public static final EnamelMetal GOLD_22K =
      gold("22 k gold", 17_700, 14.8e-6, 15.6e-6, KaratGolds.ANY_22K_CELSIUS);

  /** 18 k of any colour: the lowest of the bench table's. */
  public static final EnamelMetal GOLD_18K =
      gold("18 k gold", 15_450, 15.3e-6, 16.4e-6, KaratGolds.RED_18K_CELSIUS);

  public static final EnamelMetal GOLD_18K_YELLOW =
      gold("18 k yellow gold", 15_580, 15.3e-6, 16.4e-6, KaratGolds.YELLOW_18K_CELSIUS);
  public static final EnamelMetal GOLD_18K_RED =
      gold("18 k red gold", 15_180, 15.2e-6, 16.3e-6, KaratGolds.RED_18K_CELSIUS);
  public static final EnamelMetal GOLD_18K_WHITE =
      gold("18 k white gold", 14_640, 14.8e-6, 15.8e-6, KaratGolds.WHITE_18K_CELSIUS);

  /** 14 k of any colour: the lowest of the bench table's. */
  public static final EnamelMetal GOLD_14K =
      gold("14 k gold", 13_070, 15.8e-6, 17.0e-6, KaratGolds.YELLOW_14K_CELSIUS);

  public static final EnamelMetal GOLD_14K_YELLOW =
      gold("14 k yellow gold", 13_070, 15.8e-6, 17.0e-6, KaratGolds.YELLOW_14K_CELSIUS);
  public static final EnamelMetal GOLD_14K_RED =
      gold("14 k red gold", 13_260, 15.7e-6, 16.9e-6, KaratGolds.RED_14K_CELSIUS);
  public static final EnamelMetal GOLD_14K_WHITE =
      gold("14 k white gold", 12_610, 15.0e-6, 16.2e-6, KaratGolds.WHITE_14K_CELSIUS);

  public static final EnamelMetal STEEL =
      new EnamelMetal(
          "steel",
          7850,
          600,
          11.8e-6,
          Range.of(13.2e-6, 13.8e-6, 14.3e-6),
          205e9,
          0.29,
          1470,
          Range.of(120e6, 170e6, 220e6),
          HANDBOOK_EXPANSION,
          HANDBOOK_ELASTIC,
          Origin.memory("iron-carbon diagram, solidus of 0.1 % carbon steel, rounded down"));

  private static final List<EnamelMetal> ALL =
      List.of(
          COPPER,
          FINE_SILVER,
          STERLING,
          GOLD_22K,
          GOLD_18K,
          GOLD_18K_YELLOW,
          GOLD_18K_RED,
          GOLD_18K_WHITE,
          GOLD_14K,
          GOLD_14K_YELLOW,
          GOLD_14K_RED,
          GOLD_14K_WHITE,
          STEEL);

  private EnamelMetals() {}

  public static List<EnamelMetal> all() {
    return ALL;
  }

  /**
   * No hotter than this for a supplier's solidus.
   *
   * @param solidusCelsius by the supplier, °C
   */
  public static double firmCelsius(double solidusCelsius) {
    return solidusCelsius - SUPPLIER_MARGIN_KELVINS;
  }

  private static EnamelMetal gold(
      String name, double density, double near20, double mean, double meltsCelsius) {
    return new EnamelMetal(
        name,
        density,
        name.startsWith("14") ? 190 : name.startsWith("22") ? 150 : 165,
        near20,
        Range.about(mean, 0.05),
        name.startsWith("22") ? 82e9 : 92e9,
        0.40,
        meltsCelsius,
        Range.of(60e6, 150e6, 300e6),
        ALLOY_EXPANSION,
        ALLOY_ELASTIC,
        name.startsWith("22")
            ? Origin.estimate("well under what is told of 22 k: ask the supplier")
            : BENCH_TABLE);
  }
}
