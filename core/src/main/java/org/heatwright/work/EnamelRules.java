package org.heatwright.work;

import java.time.Duration;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.FixedPoints;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.work.EnamelWork.Hardness;
import org.heatwright.work.EnamelWork.Metal;
import org.heatwright.work.enamel.EnamelMetals;

/** Rules of practice for enamelling, in words in {@code docs/models/enamel.md}. */
final class EnamelRules {

  /** At which Copper and silver in contact melt. */
  static final double COPPER_SILVER_EUTECTIC_CELSIUS = 779;

  /** How long the display must stand at the working temperature before the walls have followed. */
  static final Duration SETTLE = Duration.ofMinutes(20);

  /** Most small enamelling kilns are hot after so long at full power. {@code estimate:} */
  static final Duration WARM_UP = Duration.ofHours(1);

  /** One loaded studio kiln needed about so long after the door was shut. */
  static final Duration RECOVERY = Duration.ofMinutes(5);

  /** Usual time in the kiln of the reference piece, s: 1 mm copper with 0.5 mm of enamel. */
  static final double REFERENCE_LEAST_SECONDS = 90;

  static final double REFERENCE_MOST_SECONDS = 180;

  private static final double ENAMEL_KILOGRAMS_PER_SQUARE_METRE = 1.2;

  static final Origin HARDNESS_TESTS =
      Origin.read("tests of hard and soft enamels in a guild of enamellers' journal");

  /** Woven mesh of 1.6 mm wire at 6 mm, kg/m²: by its geometry; what is used is our estimate. */
  private static final double MESH_KILOGRAMS_PER_SQUARE_METRE = 5.3;

  /** The mesh is longer than the piece by so much, m. Estimate. */
  private static final double MESH_BEYOND_METRES = 0.02;

  /** A trivet of the piece's length, kg/m: 30 g for one of 50 mm. Estimate. */
  private static final double TRIVET_KILOGRAMS_PER_METRE = 0.6;

  private EnamelRules() {}

  /** Trivet and mesh that go in and out with a piece, kg. Estimate. */
  static double trivetKilograms(double pieceMetres) {
    double side = pieceMetres + MESH_BEYOND_METRES;
    return MESH_KILOGRAMS_PER_SQUARE_METRE * side * side + TRIVET_KILOGRAMS_PER_METRE * pieceMetres;
  }

  /**
   * Limits of a metal that carries enamel.
   *
   * @param densityKilogramsPerCubicMetre kg/m³
   * @param usualMost the hottest we plan
   * @param usualMostOrigin where that comes from
   * @param caution beyond it we warn
   * @param cautionBecause what would happen
   * @param cautionOrigin where that comes from
   * @param firm never beyond
   * @param firmBecause what would happen
   * @param firmOrigin where that comes from
   */
  record MetalLimits(
      double densityKilogramsPerCubicMetre,
      Temperature usualMost,
      Origin usualMostOrigin,
      Temperature caution,
      String cautionBecause,
      Origin cautionOrigin,
      Temperature firm,
      String firmBecause,
      Origin firmOrigin) {}

  static MetalLimits limits(Metal metal) {
    return switch (metal) {
      case COPPER ->
          new MetalLimits(
              8960,
              Temperature.ofCelsius(930),
              HARDNESS_TESTS,
              Temperature.ofCelsius(1000),
              "the enamel burns out before the piece is seen",
              Origin.read("bench-forum thread on firing high and quick, 950 to 1000 °C"),
              Temperature.ofCelsius(1040),
              "copper melts at 1085 °C, and a kiln's display may be 45 K out",
              Origin.read(FixedPoints.ORIGIN.text() + "; the margin is our estimate"));
      case FINE_SILVER ->
          new MetalLimits(
              10490,
              Temperature.ofCelsius(790),
              Origin.practice(),
              Temperature.ofCelsius(800),
              "silver softens and sags, and where it touches copper it melts from 779 °C",
              Origin.read("an enameller's page on materials, silver 700 to 800 °C"),
              Temperature.ofCelsius(930),
              "fine silver melts at 962 °C, and a kiln's display may be 30 K out",
              Origin.read(FixedPoints.ORIGIN.text() + "; the margin is our estimate"));
      case STERLING_925 ->
          new MetalLimits(
              10360,
              Temperature.ofCelsius(760),
              Origin.estimate("under the cap for sterling"),
              Temperature.ofCelsius(770),
              "sterling begins to melt somewhere between 779 and 802 °C, by source, and the display"
                  + " may be out",
              Origin.estimate("soft cap below the copper-silver eutectic"),
              Temperature.ofCelsius(788),
              "sterling begins to melt",
              Origin.read(
                  "a metals data page: solidus 788 °C, the lowest of three published values"));
      case GOLD_22K,
          GOLD_18K,
          GOLD_18K_YELLOW,
          GOLD_18K_RED,
          GOLD_18K_WHITE,
          GOLD_14K,
          GOLD_14K_YELLOW,
          GOLD_14K_RED,
          GOLD_14K_WHITE ->
          gold(metal);
      case STEEL ->
          new MetalLimits(
              7850,
              Temperature.ofCelsius(900),
              HARDNESS_TESTS,
              Temperature.ofCelsius(900),
              "the enamel burns out on steel",
              Origin.estimate("above the 840 to 900 °C of hard enamels in a guild's tests"),
              Temperature.ofCelsius(1000),
              "the enamel boils off the steel",
              Origin.estimate("well above any enamelling temperature of practice"));
    };
  }

  /** Gold: 60 K and what rounds it under the lowest value that is told of such an alloy. */
  private static MetalLimits gold(Metal metal) {
    double melts = metal.physical().solidusCelsius();
    double firm = 5 * Math.floor((melts - 60) / 5);
    return new MetalLimits(
        metal.physical().densityKilogramsPerCubicMetre(),
        Temperature.ofCelsius(Math.min(firm - 40, 830)),
        Origin.practice(),
        Temperature.ofCelsius(firm - 20),
        "some %s alloys begin to melt not far above: ask the supplier for the solidus"
            .formatted(metal.words().substring(0, 4)),
        Origin.practice(),
        Temperature.ofCelsius(firm),
        metal.words() + " may begin to melt",
        Origin.estimate("60 K under the lowest value told of it, %.0f °C".formatted(melts)));
  }

  /**
   * Limits where the supplier tells the solidus, which goes before what is told of such alloys: the
   * solidus itself for sterling, {@link EnamelMetals#SUPPLIER_MARGIN_KELVINS} under it else.
   */
  static MetalLimits limits(Metal metal, Optional<Temperature> solidus) {
    MetalLimits usual = limits(metal);
    if (solidus.isEmpty()) {
      return usual;
    }
    double told = solidus.get().celsius();
    double firm = metal == Metal.STERLING_925 ? told : EnamelMetals.firmCelsius(told);
    double caution = metal == Metal.STERLING_925 ? firm - 18 : firm - 20;
    // A supplier who is generous makes no metal of practice hotter than practice.
    boolean pure = metal == Metal.COPPER || metal == Metal.FINE_SILVER || metal == Metal.STEEL;
    double least = pure ? Math.min(firm, usual.firm().celsius()) : firm;
    return new MetalLimits(
        usual.densityKilogramsPerCubicMetre(),
        Temperature.ofCelsius(
            Math.min(metal.gold() ? 830 : usual.usualMost().celsius(), caution - 10)),
        Origin.own("supplier's solidus"),
        Temperature.ofCelsius(pure ? Math.min(caution, usual.caution().celsius()) : caution),
        usual.cautionBecause(),
        Origin.own("supplier's solidus"),
        Temperature.ofCelsius(least),
        "the supplier's solidus is %.0f °C".formatted(told),
        Origin.own("supplier's solidus"));
  }

  /** A piece this long cools more slowly than is good in the open. Estimate. */
  static final double LARGE_PIECE_METRES = 0.08;

  /** How many firings a piece usually stands. {@code estimate:} */
  static int firingsBudget(Metal metal) {
    return switch (metal) {
      case STERLING_925 -> 9;
      case COPPER -> 12;
      case STEEL -> 8;
      default -> 15;
    };
  }

  /** Chamber temperatures of practice by hardness. */
  static TemperatureRange range(Hardness hardness) {
    return switch (hardness) {
      case SOFT -> TemperatureRange.ofCelsius(750, 800);
      case MEDIUM -> TemperatureRange.ofCelsius(800, 840);
      case HARD -> TemperatureRange.ofCelsius(840, 900);
    };
  }

  /** What we plan by hardness, before the metal has its say. */
  static Temperature usual(Hardness hardness) {
    return switch (hardness) {
      case SOFT -> Temperature.ofCelsius(780);
      case MEDIUM -> Temperature.ofCelsius(820);
      case HARD -> Temperature.ofCelsius(860);
    };
  }

  /**
   * How many times longer than the reference piece a piece needs: by mass of metal and enamel for
   * each area, at one setting.
   */
  static double timeFactor(Metal metal, double sheetMetres) {
    double reference = 8960 * 0.001 + ENAMEL_KILOGRAMS_PER_SQUARE_METRE;
    return (limits(metal).densityKilogramsPerCubicMetre() * sheetMetres
            + ENAMEL_KILOGRAMS_PER_SQUARE_METRE)
        / reference;
  }
}
