package org.heatwright.work.heattreat;

import org.heatwright.material.FixedPoints;
import org.heatwright.material.KaratGolds;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * Where a metal begins to melt.
 *
 * @param temperature the lowest value of our sources, or our cautious estimate
 * @param origin where it comes from
 */
public record Solidus(Temperature temperature, Origin origin) {

  /** An alloy of gold begins to melt so far under its bench melting point, K; our estimate. */
  private static final double UNDER_BENCH_KELVINS = 60;

  /** What we take where the person has no number from the supplier. */
  public static Solidus of(TreatedMetal metal) {
    return switch (metal) {
      case FINE_SILVER -> pure(FixedPoints.SILVER_CELSIUS);
      case STERLING_925 ->
          new Solidus(
              Temperature.ofCelsius(788),
              Origin.read("a metals data page, the lowest of three published values"));
      case GERMANIUM_SILVER_925 ->
          new Solidus(
              Temperature.ofCelsius(750),
              Origin.estimate("some 40 K under sterling's; the supplier's number goes first"));
      case COPPER -> pure(FixedPoints.COPPER_CELSIUS);
      case BRASS ->
          new Solidus(
              Temperature.ofCelsius(870),
              Origin.estimate("under cartridge brass, 915 °C (memory: ASM Handbook vol. 2)"));
      case BRONZE -> new Solidus(Temperature.ofCelsius(845), Origin.memory("ASM Handbook vol. 3"));
      case YELLOW_GOLD_14K -> bench(KaratGolds.YELLOW_14K_CELSIUS);
      case YELLOW_GOLD_18K -> bench(KaratGolds.YELLOW_18K_CELSIUS);
      case YELLOW_GOLD_22K ->
          new Solidus(
              Temperature.ofCelsius(KaratGolds.ANY_22K_CELSIUS),
              Origin.estimate("well under fine gold; the supplier's number goes first"));
      case RED_GOLD_14K -> bench(KaratGolds.RED_14K_CELSIUS);
      case RED_GOLD_18K -> bench(KaratGolds.RED_18K_CELSIUS);
      case WHITE_GOLD_NICKEL_14K, WHITE_GOLD_PALLADIUM_14K -> bench(KaratGolds.WHITE_14K_CELSIUS);
      case WHITE_GOLD_NICKEL_18K, WHITE_GOLD_PALLADIUM_18K -> bench(KaratGolds.WHITE_18K_CELSIUS);
      case PALLADIUM_950 ->
          new Solidus(
              Temperature.ofCelsius(1400),
              Origin.estimate("well under palladium, 1555 °C (memory: CRC Handbook)"));
      case PLATINUM_950 ->
          new Solidus(
              Temperature.ofCelsius(1600),
              Origin.estimate("well under platinum, 1768 °C (memory: CRC Handbook)"));
    };
  }

  /** In whole degrees, rounded down. */
  private static Solidus pure(double meltsAtCelsius) {
    return new Solidus(Temperature.ofCelsius(Math.floor(meltsAtCelsius)), FixedPoints.ORIGIN);
  }

  private static Solidus bench(double meltsAtCelsius) {
    return new Solidus(
        Temperature.ofCelsius(meltsAtCelsius - UNDER_BENCH_KELVINS),
        Origin.estimate(
            "%.0f K under the melting point in a bench table, %.0f °C (read)"
                .formatted(UNDER_BENCH_KELVINS, meltsAtCelsius)));
  }
}
