package org.heatwright.work;

import java.time.Duration;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.work.EnamelWork.Hardness;
import org.heatwright.work.EnamelWork.Metal;

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

  private EnamelRules() {}

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
              "copper melts at 1085 °C, and a kiln's display may be 45 °C out",
              Origin.memory("ITS-90 fixed points; the margin is our estimate"));
      case FINE_SILVER ->
          new MetalLimits(
              10490,
              Temperature.ofCelsius(790),
              Origin.practice(),
              Temperature.ofCelsius(800),
              "silver softens and sags, and where it touches copper it melts from 779 °C",
              Origin.read("an enameller's page on materials, silver 700 to 800 °C"),
              Temperature.ofCelsius(930),
              "fine silver melts at 962 °C, and a kiln's display may be 30 °C out",
              Origin.memory("ITS-90 fixed points; the margin is our estimate"));
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
      case GOLD_18K ->
          new MetalLimits(
              15450,
              Temperature.ofCelsius(800),
              Origin.practice(),
              Temperature.ofCelsius(820),
              "some 18 k alloys begin to melt not far above: ask the supplier for the solidus",
              Origin.practice(),
              Temperature.ofCelsius(840),
              "red 18 k gold may begin to melt",
              Origin.estimate("60 K under the lowest bench value for 18 k, 902 °C"));
      case STEEL ->
          new MetalLimits(
              7850,
              Temperature.ofCelsius(900),
              HARDNESS_TESTS,
              Temperature.ofCelsius(900),
              "the enamel burns out on steel",
              HARDNESS_TESTS,
              Temperature.ofCelsius(1000),
              "the enamel boils off the steel",
              Origin.estimate("well above any enamelling temperature of practice"));
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
