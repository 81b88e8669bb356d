package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.kiln.KilnQuantity;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/**
 * A kiln of three logarithms: its power, the day's mains and its walls, of which a display shows
 * power times mains over walls. The answers follow from normal distributions by hand.
 */
class UsualScaleTest {

  private static final double POWER = KilnQuantity.POWER.logarithmPerScore();
  private static final double MAINS = KilnQuantity.MAINS.logarithmPerScore();
  private static final double WALLS = 0.1;
  private static final RealMatrix PRIOR = MatrixUtils.createRealIdentityMatrix(3);
  private static final double[] SHOWN = {POWER, MAINS, -WALLS};

  private static final UsualScale USUAL =
      new UsualScale(PRIOR, new double[] {1 / POWER, 0, 1 / WALLS}, new int[] {0}, new int[] {1});

  private static double shown(double[] scores) {
    return NormalEquations.dot(SHOWN, scores);
  }

  /** What a display says within a hundredth, and a wrong model of its power within three. */
  private static NormalEquations readings(double shown, double power) {
    NormalEquations equations = new NormalEquations(3);
    equations.addReadings(
        new double[][] {{POWER, POWER}, {MAINS, MAINS}, {-WALLS, 0}},
        new double[] {1 / 1e-4, 1 / 9e-4},
        new double[] {-shown, -power});
    return equations;
  }

  @Test
  void theUsualKilnShowsTheSame() {
    double[] at = {1.8, 1.2, -0.4};
    double[] usual = USUAL.usual(at);
    assertThat(shown(usual)).isCloseTo(shown(at), within(1e-12));
    // Power with mains and walls each answer for what is shown by their variance, so that neither
    // is further from the prior than the other.
    assertThat((POWER * usual[0] + MAINS * usual[1]) / (POWER * POWER + MAINS * MAINS))
        .isCloseTo(-usual[2] / WALLS, within(1e-9));
  }

  /** Of all kilns and days that show this each quantity has its share by its variance. */
  @Test
  void aFitIsNotBentByWhatSeemsToTellTheScale() {
    double shown = 0.2;
    NormalEquations held = readings(shown, 0.15);
    held.addPrior(PRIOR, new double[3]);
    NormalEquations free = readings(shown, 0.15);
    free.addPrior(PRIOR, new double[3]);
    USUAL.hold(held);
    double all = POWER * POWER + MAINS * MAINS + WALLS * WALLS;
    double[] fitted = USUAL.usual(held.solve().toArray());
    assertThat(shown(fitted)).isCloseTo(shown, within(0.02 * shown));
    assertThat(fitted[0]).isCloseTo(shown * POWER / all, within(0.05));
    assertThat(fitted[1]).isCloseTo(shown * MAINS / all, within(0.05));
    assertThat(fitted[2]).isCloseTo(-shown * WALLS / all, within(0.05));
    // Else power and the day's mains both have far more.
    assertThat(free.solve().getEntry(0)).isGreaterThan(2 * shown * POWER / all);
    assertThat(free.solve().getEntry(1)).isGreaterThan(2 * shown * MAINS / all);
  }

  @Test
  void readingsTellWhatIsShownAndNothingOfTheScale() {
    RealMatrix posterior =
        new CholeskyDecomposition(PRIOR.add(USUAL.told(readings(0, 0).matrix())))
            .getSolver()
            .getInverse();
    assertThat(spread(posterior, SHOWN)).isBetween(0.006, 0.0105);
    assertThat(spread(posterior, new double[] {POWER, MAINS, 0}))
        .isBetween(0.9 * Math.hypot(POWER, MAINS), Math.hypot(POWER, MAINS));
    RealMatrix believed =
        new CholeskyDecomposition(PRIOR.add(readings(0, 0).matrix())).getSolver().getInverse();
    assertThat(spread(believed, new double[] {POWER, MAINS, 0})).isLessThan(0.03);
  }

  /** Firings of one kiln on two days share its power: what each day shows stays as it is. */
  @Test
  void theUsualKilnShowsTheSameOnEachOfItsDays() {
    UsualScale twoDays =
        new UsualScale(
            MatrixUtils.createRealIdentityMatrix(4),
            new double[] {1 / POWER, 0, 0, 1 / WALLS},
            new int[] {0, 0},
            new int[] {1, 2});
    double[] at = {1.8, 1.2, -0.7, -0.4};
    double[] usual = twoDays.usual(at);
    for (int day : new int[] {1, 2}) {
      assertThat(shown(new double[] {usual[0], usual[day], usual[3]}))
          .isCloseTo(shown(new double[] {at[0], at[day], at[3]}), within(1e-12));
    }
    assertThat(usual[1] - usual[2]).isCloseTo(at[1] - at[2], within(1e-12));
    assertThat(usual).isNotEqualTo(at);
  }

  private static double spread(RealMatrix covariance, double[] of) {
    RealMatrix row = new Array2DRowRealMatrix(new double[][] {of});
    return Math.sqrt(row.multiply(covariance).multiply(row.transpose()).getEntry(0, 0));
  }
}
