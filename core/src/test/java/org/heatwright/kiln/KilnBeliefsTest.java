package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Latin hypercubes: McKay, Beckman and Conover 1979 (from memory); mirrored by ourselves. */
class KilnBeliefsTest {

  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);
  private static final List<ToDoubleFunction<KilnParameters>> FACTORS =
      List.of(
          KilnParameters::powerFactor,
          KilnParameters::conductivityFactor,
          KilnParameters::capacityFactor,
          KilnParameters::leakWattsPerKelvin,
          KilnParameters::fittingsJoulesPerKelvin,
          KilnParameters::sensorFactor);

  private static KilnBeliefs tied() {
    int n = KilnQuantity.values().length;
    double[][] covariance = new double[n][n];
    for (int i = 0; i < n; i++) {
      covariance[i][i] = 0.5;
    }
    int power = KilnQuantity.POWER.ordinal();
    int walls = KilnQuantity.CAPACITY.ordinal();
    covariance[power][walls] = 0.4;
    covariance[walls][power] = 0.4;
    double[] mean = new double[n];
    mean[walls] = 0.7;
    return KilnBeliefs.of(mean, covariance);
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 7, 16, 64, 255})
  void everyDrawHasItsMirrorImageAboutTheMedianKiln(int draws) {
    KilnBeliefs beliefs = tied();
    List<KilnParameters> ensemble = beliefs.ensemble(MUFFLE, draws, 1);
    KilnParameters median = beliefs.median(MUFFLE);
    assertThat(ensemble).hasSize(draws);
    for (ToDoubleFunction<KilnParameters> factor : FACTORS) {
      double middle = factor.applyAsDouble(median);
      for (int i = 0; i < draws / 2; i++) {
        double one = factor.applyAsDouble(ensemble.get(i));
        double other = factor.applyAsDouble(ensemble.get(draws / 2 + i));
        assertThat(one * other / (middle * middle)).isCloseTo(1, within(1e-9));
      }
      if (draws % 2 == 1) {
        assertThat(factor.applyAsDouble(ensemble.get(draws - 1)))
            .isCloseTo(middle, within(1e-12 * middle));
      }
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {7, 40})
  void everySliceIsVisitedOnceByFew(int draws) {
    NormalDistribution normal = new NormalDistribution();
    double[] visited =
        KilnBeliefs.of(new double[KilnQuantity.values().length], identity())
            .ensemble(MUFFLE, draws, 5)
            .stream()
            .mapToDouble(kiln -> KilnQuantity.GAIN.score(kiln.gainPerKelvin()))
            .map(normal::cumulativeProbability)
            .sorted()
            .toArray();
    for (int i = 0; i < draws; i++) {
      assertThat(visited[i]).isCloseTo((i + 0.5) / draws, within(1e-9));
    }
  }

  /**
   * Otherwise a sum of quantities, as an energy is, has a band that is as wide as chance has it.
   */
  @ParameterizedTest
  @ValueSource(ints = {44, 64, 255})
  void manyDrawsAreUncorrelatedAsASample(int draws) {
    KilnBeliefs apart = KilnBeliefs.of(new double[KilnQuantity.values().length], identity());
    List<KilnParameters> ensemble = apart.ensemble(MUFFLE, draws, 1);
    KilnParameters median = apart.median(MUFFLE);
    double[][] logs =
        FACTORS.stream()
            .map(
                factor ->
                    ensemble.stream()
                        .mapToDouble(
                            one ->
                                Math.log(factor.applyAsDouble(one) / factor.applyAsDouble(median)))
                        .toArray())
            .toArray(double[][]::new);
    for (int a = 0; a < logs.length; a++) {
      for (int b = 0; b < a; b++) {
        assertThat(
                mean(logs[a], logs[b]) / Math.sqrt(mean(logs[a], logs[a]) * mean(logs[b], logs[b])))
            .isCloseTo(0, within(1e-9));
      }
    }
    double[] capacity =
        ensemble.stream()
            .mapToDouble(one -> KilnQuantity.CAPACITY.score(one.capacityFactor()))
            .toArray();
    assertThat(mean(capacity, capacity)).isCloseTo(draws / 2 * 2.0 / draws, within(1e-9));
  }

  private static double mean(double[] a, double[] b) {
    return IntStream.range(0, a.length).mapToDouble(i -> a[i] * b[i]).average().orElseThrow();
  }

  private static double[][] identity() {
    int n = KilnQuantity.values().length;
    return IntStream.range(0, n)
        .mapToObj(i -> IntStream.range(0, n).mapToDouble(j -> i == j ? 1 : 0).toArray())
        .toArray(double[][]::new);
  }

  @Test
  void theSeedShufflesAndNothingElse() {
    KilnBeliefs beliefs = tied();
    assertThat(beliefs.ensemble(MUFFLE, 16, 3)).isEqualTo(beliefs.ensemble(MUFFLE, 16, 3));
    assertThat(beliefs.ensemble(MUFFLE, 16, 3)).isNotEqualTo(beliefs.ensemble(MUFFLE, 16, 4));
    assertThat(beliefs.ensemble(MUFFLE, 1, 3)).containsExactly(beliefs.median(MUFFLE));
  }
}
