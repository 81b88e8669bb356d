package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ThinningTest {

  @Test
  void aStraightLineIsItsEnds() {
    double[] x = IntStream.range(0, 500).asDoubleStream().toArray();
    assertThat(Thinning.kept(x, List.of(x.clone()), 0.25)).containsExactly(0, 499);
    assertThat(Thinning.kept(new double[] {3}, List.of(new double[] {7}), 0.25)).containsExactly(0);
  }

  @Test
  void nothingIsMissedByMoreThanTheTolerance() {
    SplittableRandom random = new SplittableRandom(5);
    for (int round = 0; round < 200; round++) {
      int n = random.nextInt(2, 400);
      double[] x = new double[n];
      double[] one = new double[n];
      double[] other = new double[n];
      for (int i = 1; i < n; i++) {
        x[i] = x[i - 1] + random.nextDouble(1, 90);
        one[i] = one[i - 1] + random.nextDouble(-4, 5);
        other[i] = i < n / 2 ? 20 : 800;
      }
      double tolerance = random.nextDouble(0.1, 6);
      int[] kept = Thinning.kept(x, List.of(one, other), tolerance);
      assertThat(kept).startsWith(0).endsWith(n - 1).isSorted();
      for (int k = 1; k < kept.length; k++) {
        for (int i = kept[k - 1]; i <= kept[k]; i++) {
          double share = (x[i] - x[kept[k - 1]]) / (x[kept[k]] - x[kept[k - 1]]);
          for (double[] y : List.of(one, other)) {
            double drawn = y[kept[k - 1]] + share * (y[kept[k]] - y[kept[k - 1]]);
            assertThat(Math.abs(drawn - y[i])).isLessThanOrEqualTo(tolerance + 1e-9);
          }
        }
      }
    }
  }
}
