package org.heatwright.work.heattreat;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.heatwright.work.heattreat.SterlingHardness.Hardness;
import org.junit.jupiter.api.Test;

/** The published points, each by its source, and that the range goes the right way. */
class SterlingHardnessTest {

  /** Read, a supplier's note: 700 to 730 °C, water, 300 °C for 30 to 60 min: 120 to 140 HV. */
  @Test
  void theSuppliersNoteLiesWithinTheRange() {
    Hardness hardness = SterlingHardness.expected(700, 730, 30, 60, 300);
    assertThat(hardness.low()).isLessThanOrEqualTo(120);
    assertThat(hardness.high()).isGreaterThanOrEqualTo(140);
  }

  /** Read, bench-forum posts: 750 to 760 °C for 30 min, water, 300 °C for 1 h: 60 to 110 or 120. */
  @Test
  void theForumsHourLiesWithinTheRange() {
    Hardness hardness = SterlingHardness.expected(750, 760, 60, 60, 300);
    assertThat(hardness.low()).isLessThanOrEqualTo(110).isGreaterThanOrEqualTo(105);
    assertThat(hardness.high()).isBetween(120.0, 150.0);
  }

  /** Read, the same: a solution heat of 650 °C gives only a minor gain; 700 °C a part of it. */
  @Test
  void aCoolSolutionHeatGainsLittle() {
    Hardness minor = SterlingHardness.expected(650, 650, 60, 60, 300);
    assertThat(minor.low()).isEqualTo(60);
    assertThat(minor.high() - 70).isLessThanOrEqualTo(0.25 * (140 - 70) + 1e-9);
    Hardness part = SterlingHardness.expected(700, 700, 60, 60, 300);
    assertThat(part.low()).isBetween(65.0, 100.0);
  }

  /** Read, a symposium abstract: as cast 60 to 70 HV. */
  @Test
  void withoutAnythingItIsAsSoftAsCast() {
    Hardness hardness = SterlingHardness.expected(20, 20, 0, 0, 20);
    assertThat(hardness).isEqualTo(new Hardness(60, 70));
  }

  /** Practice: above 350 °C it softens again. */
  @Test
  void overAgeingSoftens() {
    Hardness aged = SterlingHardness.expected(750, 750, 60, 60, 300);
    Hardness over = SterlingHardness.expected(750, 750, 60, 60, 400);
    assertThat(over.low()).isLessThan(aged.low());
    assertThat(over.high()).isLessThan(aged.high());
  }

  @Test
  void hotterSolutionAndLongerAgeingNeverPromiseLess() {
    SplittableRandom random = new SplittableRandom(3);
    for (int i = 0; i < 10_000; i++) {
      double solution = random.nextDouble(550, 780);
      double hotter = solution + random.nextDouble(0, 60);
      double minutes = random.nextDouble(0, 90);
      double longer = minutes + random.nextDouble(0, 60);
      double age = random.nextDouble(200, 480);
      Hardness base = SterlingHardness.expected(solution, solution, minutes, minutes, age);
      Hardness up = SterlingHardness.expected(hotter, hotter, minutes, minutes, age);
      Hardness on = SterlingHardness.expected(solution, solution, longer, longer, age);
      Hardness over =
          SterlingHardness.expected(
              solution, solution, minutes, minutes, age + random.nextDouble(0, 100));
      assertThat(up.low()).isGreaterThanOrEqualTo(base.low());
      assertThat(up.high()).isGreaterThanOrEqualTo(base.high());
      assertThat(on.low()).isGreaterThanOrEqualTo(base.low());
      assertThat(on.high()).isGreaterThanOrEqualTo(base.high());
      assertThat(over.low()).isLessThanOrEqualTo(base.low());
      assertThat(over.high()).isLessThanOrEqualTo(base.high());
      assertThat(base.low()).isBetween(60.0, 110.0);
      assertThat(base.high()).isBetween(70.0, 140.0);
    }
  }
}
