package org.heatwright.work.sinter;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CurveBeliefTest {

  private static final SinterHeat BEST = heat(900, 120);
  private static final SinterHeat SHORT = heat(900, 30);
  private static final SinterHeat WEAK = heat(650, 30);

  @Test
  void nothingMeasuredLeavesWideRanges() {
    CurveBelief belief = belief(Clay.FINE_SILVER, List.of());
    Likely q = belief.activation();
    assertThat(q.low()).isGreaterThan(80e3);
    assertThat(q.high()).isLessThan(190e3);
    assertThat(q.high() - q.low()).isGreaterThan(70e3);
    Likely shrinkage = belief.shrinkage(BEST);
    assertThat(shrinkage.low()).isBetween(0.06, 0.10);
    assertThat(shrinkage.high()).isBetween(0.13, 0.17);
    assertThat(belief.tellsActivation()).isFalse();
    assertThat(belief.tests()).isZero();
    // The source: half an hour at 899 °C gives about 5 % less strength than two.
    assertThat(belief.strength(List.of(SHORT), BEST).median()).isBetween(0.93, 0.98);
    // The least firing is weaker than that, and by how much is not well known.
    Likely least = belief.strength(List.of(WEAK), BEST);
    assertThat(least.median()).isLessThan(0.93);
    assertThat(least.high() - least.low()).isGreaterThan(0.1);
  }

  @ParameterizedTest
  @EnumSource(Clay.class)
  void hotterAndLongerNeverLeaveALighterPiece(Clay clay) {
    var maybe = CurveBelief.of(Clays.of(clay), List.of());
    assertThat(maybe.isEmpty()).isEqualTo(clay.isBronze());
    if (maybe.isEmpty()) {
      return;
    }
    double before = 0;
    double shrunk = 0;
    for (double celsius = 600; celsius <= 950; celsius += 25) {
      Likely density = maybe.get().density(heat(celsius, 60));
      assertThat(density.median()).isGreaterThan(before).isLessThan(1);
      assertThat(maybe.get().density(heat(celsius, 90)).low()).isGreaterThan(density.low());
      assertThat(maybe.get().shrinkage(heat(celsius, 60)).median()).isGreaterThanOrEqualTo(shrunk);
      before = density.median();
      shrunk = maybe.get().shrinkage(heat(celsius, 60)).median();
    }
  }

  /** A powder whose truth we know, measured with calipers in three firings, four strips each. */
  @Test
  void measuredShrinkagesNarrowTheRangeRoundTheTruth() {
    MasterSinteringCurve truth = MasterSinteringCurve.through(110e3, 0.64, WEAK, 0.83, BEST, 0.95);
    List<SinterHeat> firings =
        List.of(heat(650, 30), heat(750, 10), heat(800, 60), heat(900, 120), heat(650, 240));
    List<MeasuredStrip> tests = tests(truth, firings, 4);
    CurveBelief before = belief(Clay.FINE_SILVER, List.of());
    CurveBelief after = belief(Clay.FINE_SILVER, tests);
    SinterHeat asked = heat(850, 45);
    double right = Shrinkage.ofShares(0.64, truth.densityShare(asked));
    assertThat(after.firings()).isEqualTo(5);
    assertThat(after.strained()).isFalse();
    assertThat(after.shrinkage(asked).contains(right)).isTrue();
    assertThat(after.shrinkage(asked).spread()).isLessThan(0.65 * before.shrinkage(asked).spread());
    assertThat(after.activation().contains(110e3)).isTrue();
    assertThat(after.activation().spread()).isLessThan(before.activation().spread());
  }

  @Test
  void oneFiringTellsItsOwnShrinkageAndNothingOfTheActivationEnergy() {
    MasterSinteringCurve truth = MasterSinteringCurve.through(110e3, 0.60, WEAK, 0.83, BEST, 0.95);
    CurveBelief after = belief(Clay.FINE_SILVER, tests(truth, List.of(BEST), 5));
    CurveBelief before = belief(Clay.FINE_SILVER, List.of());
    assertThat(after.firings()).isEqualTo(1);
    assertThat(after.tellsActivation()).isFalse();
    assertThat(after.shrinkage(BEST).contains(Shrinkage.ofShares(0.60, truth.densityShare(BEST))))
        .isTrue();
    assertThat(after.shrinkage(BEST).spread()).isLessThan(0.6 * before.shrinkage(BEST).spread());
    assertThat(after.activation().spread()).isGreaterThan(0.7 * before.activation().spread());
  }

  @Test
  void aShrinkageThatNoCurveGivesIsSaid() {
    CurveBelief belief =
        belief(Clay.FINE_SILVER, List.of(new MeasuredStrip(0.05, 0.05 * 0.70, BEST)));
    assertThat(belief.strained()).isTrue();
  }

  @Test
  void theSameTestsGiveTheSameAnswer() {
    List<MeasuredStrip> tests = List.of(new MeasuredStrip(0.05, 0.05 * 0.88, BEST));
    assertThat(belief(Clay.FINE_SILVER, tests).density(WEAK))
        .isEqualTo(belief(Clay.FINE_SILVER, tests).density(WEAK));
  }

  private static List<MeasuredStrip> tests(
      MasterSinteringCurve truth, List<SinterHeat> firings, int each) {
    SplittableRandom random = new SplittableRandom(5);
    List<MeasuredStrip> tests = new ArrayList<>();
    for (SinterHeat heat : firings) {
      double share = Shrinkage.ofShares(truth.greenShare(), truth.densityShare(heat));
      for (int i = 0; i < each; i++) {
        double off = CurveBelief.SCATTER_SHARE * random.nextGaussian();
        tests.add(new MeasuredStrip(0.05, 0.05 * (1 - share - off), heat));
      }
    }
    return tests;
  }

  private static CurveBelief belief(Clay clay, List<MeasuredStrip> tests) {
    return CurveBelief.of(Clays.of(clay), tests).orElseThrow();
  }

  private static SinterHeat heat(double celsius, long minutes) {
    return SinterHeat.rampAndHold(
        HeatingRate.ofKelvinsPerHour(1000),
        Temperature.ofCelsius(celsius),
        Duration.ofMinutes(minutes));
  }
}
