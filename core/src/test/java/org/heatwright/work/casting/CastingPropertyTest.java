package org.heatwright.work.casting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.heatwright.material.Origin;
import org.heatwright.mould.Mould;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What must hold for any numbers, tried on 10,000. */
@Tag("property")
class CastingPropertyTest {

  private static final int TRIES = 10_000;
  private static final long SEED = 20261126;

  private final SplittableRandom random = new SplittableRandom(SEED);

  private double between(double low, double high) {
    return random.nextDouble(low, high);
  }

  @Test
  void aHeavierPatternTakesMoreMetalAndNothingIsNegative() {
    List<CastingAlloy> alloys = CastingAlloys.all();
    for (int i = 0; i < TRIES; i++) {
      Spread metal = alloys.get(random.nextInt(alloys.size())).kilogramsPerCubicMetre();
      PatternMaterial pattern = PatternMaterial.values()[random.nextInt(2)];
      PouringMethod method = PouringMethod.values()[random.nextInt(3)];
      double grams = between(0.01, 500);
      double more = grams + between(0.001, 100);
      MetalNeed light = need(grams, pattern, metal, method);
      MetalNeed heavy = need(more, pattern, metal, method);
      assertThat(heavy.totalKilograms().low()).isGreaterThan(light.totalKilograms().low());
      assertThat(heavy.totalKilograms().usual()).isGreaterThan(light.totalKilograms().usual());
      assertThat(light.castKilograms().low()).isPositive();
      assertThat(light.buttonKilograms().low()).isPositive();
      assertThat(heavy.totalKilograms().usual() / light.totalKilograms().usual())
          .isCloseTo(more / grams, within(1e-9 * more / grams));
    }
  }

  private static MetalNeed need(
      double grams, PatternMaterial pattern, Spread metal, PouringMethod method) {
    return MetalNeed.ofPattern(
        grams / 1000,
        pattern.kilogramsPerCubicMetre(),
        metal,
        Spread.exactly(0),
        method.buttonShare());
  }

  @Test
  void anAdditionComesToTheWantedFinenessAndBack() {
    for (int i = 0; i < TRIES; i++) {
      Fineness low = new Fineness(between(0.05, 0.9));
      Fineness high = new Fineness(between(low.share() + 1e-3, 0.999));
      Lot start = new Lot(between(0.001, 2), low);
      Lot up = start.and(start.addition(high, Fineness.PURE));
      assertThat(up.fineness().share()).isCloseTo(high.share(), within(1e-9));
      assertThat(up.kilograms()).isGreaterThan(start.kilograms());
      Lot down = up.and(up.addition(low, Fineness.NONE));
      assertThat(down.fineness().share()).isCloseTo(low.share(), within(1e-9));
    }
  }

  @Test
  void aMixLiesBetweenItsMetals() {
    for (int i = 0; i < TRIES; i++) {
      Map<Metal, Double> parts = new EnumMap<>(Metal.class);
      for (int k = 0; k < 3; k++) {
        parts.put(Metal.values()[random.nextInt(Metal.values().length)], between(0.1, 900));
      }
      Mix mix = Mix.ofParts(parts, Origin.own(""));
      double low =
          parts.keySet().stream().mapToDouble(Metal::kilogramsPerCubicMetre).min().orElseThrow();
      double high =
          parts.keySet().stream().mapToDouble(Metal::kilogramsPerCubicMetre).max().orElseThrow();
      assertThat(mix.kilogramsPerCubicMetre()).isBetween(low - 1e-6, high + 1e-6);
    }
  }

  @Test
  void aLargerMouldTakesMorePowderAndTheScaleIsNeverShort() {
    for (int i = 0; i < TRIES; i++) {
      double diameter = between(0.03, 0.2);
      double height = between(0.03, 0.3);
      double pattern = between(0, 0.3) * Math.PI / 4 * diameter * diameter * height;
      double ratio = between(0.36, 0.45);
      PowderNeed small = powder(diameter, height, pattern, ratio);
      PowderNeed large = powder(diameter, height + 0.01, pattern, ratio);
      assertThat(large.powderKilograms().usual()).isGreaterThan(small.powderKilograms().usual());
      assertThat(small.powderKilograms().low()).isPositive();
      double step = new double[] {0.0001, 0.001, 0.005, 0.01}[random.nextInt(4)];
      PowderNeed.Weighed weighed = small.weighed(step);
      assertThat(weighed.powderKilograms())
          .isBetween(
              small.powderKilograms().usual() - 1e-9,
              small.powderKilograms().usual() + step + 1e-9);
      assertThat(weighed.waterKilograms())
          .isCloseTo(weighed.powderKilograms() * ratio, within(step / 2 + 1e-9));
    }
  }

  private static PowderNeed powder(double diameter, double height, double pattern, double ratio) {
    return PowderNeed.gypsum(
        List.of(new MouldFill(new Mould(1, diameter, height, 0), pattern)), ratio, 0.05);
  }

  @Test
  void sizesComeBackThroughTheShrinkage() {
    for (int i = 0; i < TRIES; i++) {
      Shrinkage shrinkage = Shrinkage.of(between(0, 0.2));
      double size = between(1e-4, 1);
      double pattern = shrinkage.patternMetres(size).usual();
      assertThat(pattern).isGreaterThanOrEqualTo(size);
      assertThat(shrinkage.castMetres(pattern).usual()).isCloseTo(size, within(1e-12));
    }
  }
}
