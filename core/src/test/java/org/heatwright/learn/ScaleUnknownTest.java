package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/**
 * A kiln of three logarithms: its power, the day's mains and its walls, of which a display shows
 * power times mains over walls. The answers follow from normal distributions by hand.
 */
class ScaleUnknownTest {

  private static final double POWER = 0.03;
  private static final double MAINS = 0.02;
  private static final double WALLS = 0.1;
  private static final RealMatrix PRIOR = MatrixUtils.createRealIdentityMatrix(3);

  /** In scores: power, mains, walls. */
  private static final double[] SCALE = {1 / POWER, 0, 1 / WALLS};

  private static final double[] SWAP = {1 / POWER, -1 / MAINS, 0};

  private static double shown(double[] scores) {
    return POWER * scores[0] + MAINS * scores[1] - WALLS * scores[2];
  }

  /** The display said {@code log} within a spread; a wrong model takes power for known, too. */
  private static RealMatrix data(double spread) {
    double[] display = {POWER / spread, MAINS / spread, -WALLS / spread};
    double[] wrong = {POWER / 0.01, MAINS / 0.01, 0};
    RealMatrix rows = new Array2DRowRealMatrix(new double[][] {display, wrong});
    return rows.transpose().multiply(rows);
  }

  @Test
  void whatIsShownStaysAndTheRestIsTheMostProbable() {
    double[] at = {1.8, 1.2, -0.4};
    double[] moved = ScaleUnknown.of(PRIOR, data(0.01), at, SCALE, SWAP).moved();
    assertThat(shown(moved)).isCloseTo(shown(at), within(1e-12));
    // The most probable of all kilns and days that show this: each has its share by its variance.
    double all = POWER * POWER + MAINS * MAINS + WALLS * WALLS;
    assertThat(moved[0]).isCloseTo(shown(at) * POWER / all, within(1e-12));
    assertThat(moved[1]).isCloseTo(shown(at) * MAINS / all, within(1e-12));
    assertThat(moved[2]).isCloseTo(-shown(at) * WALLS / all, within(1e-12));
  }

  @Test
  void whatADayWouldKeepIsNotTheKilns() {
    double[] at = {1.8, 1.2, -0.4};
    double[] kept = ScaleUnknown.of(PRIOR, data(0.01), at, SCALE).moved();
    assertThat(kept[1]).isEqualTo(1.2); // so the next day's kiln would be weaker by it
  }

  @Test
  void theReadingsTellNothingOfIt() {
    RealMatrix posterior =
        new CholeskyDecomposition(
                ScaleUnknown.of(PRIOR, data(0.01), new double[3], SCALE, SWAP).information())
            .getSolver()
            .getInverse();
    double[] scale = {POWER, MAINS, WALLS};
    // Power and mains as sure as before where the walls are as large as they please.
    double power = 0;
    for (int i = 0; i < 2; i++) {
      for (int j = 0; j < 2; j++) {
        power += scale[i] * scale[j] * posterior.getEntry(i, j);
      }
    }
    assertThat(Math.sqrt(power))
        .isBetween(0.9 * Math.hypot(POWER, MAINS), 1.1 * Math.hypot(POWER, MAINS));
    // What the display shows is as sure as it says.
    double shown = 0;
    double[] by = {POWER, MAINS, -WALLS};
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        shown += by[i] * by[j] * posterior.getEntry(i, j);
      }
    }
    assertThat(Math.sqrt(shown)).isCloseTo(0.01, within(0.001));
  }
}
