package org.heatwright.sensing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.heatwright.sensing.OffsetCorrection.Point;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.junit.jupiter.api.Test;

class OffsetCorrectionTest {

  private static Point point(double shown, double offset) {
    return new Point(Temperature.ofCelsius(shown), TemperatureChange.ofKelvins(offset));
  }

  private static double offset(OffsetCorrection correction, double shown) {
    return correction.offsetAt(Temperature.ofCelsius(shown)).kelvins();
  }

  @Test
  void aConstantIsTheSameEverywhere() {
    OffsetCorrection four = OffsetCorrection.constant(TemperatureChange.ofKelvins(4));
    assertThat(four.truth(Temperature.ofCelsius(824)).celsius()).isEqualTo(820);
    assertThat(four.shown(Temperature.ofCelsius(820)).celsius()).isEqualTo(824);
    assertThat(offset(four, -50)).isEqualTo(4);
  }

  @Test
  void aFirstGuessGrowsInProportion() {
    OffsetCorrection guess = OffsetCorrection.inProportion(point(970, 9.7));
    assertThat(offset(guess, 485)).isCloseTo(4.85, within(1e-12));
    assertThat(offset(guess, 0)).isZero();
    assertThat(offset(guess, 1000)).isEqualTo(9.7);
  }

  @Test
  void betweenPointsItIsLinear() {
    OffsetCorrection two = new OffsetCorrection(List.of(point(500, -2), point(900, 6)));
    assertThat(offset(two, 600)).isCloseTo(0, within(1e-12));
    assertThat(two.truth(Temperature.ofCelsius(700)).celsius()).isCloseTo(698, within(1e-12));
    assertThat(offset(two, 20)).isEqualTo(-2);
    assertThat(offset(two, 1100)).isEqualTo(6);
  }

  @Test
  void setpointAndTruthGoThereAndBack() {
    Random random = new Random(11);
    for (int i = 0; i < 500; i++) {
      List<Point> points = new ArrayList<>();
      double shown = 100 * random.nextDouble();
      for (int n = 0; n < 1 + i % 5; n++) {
        points.add(point(shown, 20 * random.nextDouble() - 10));
        shown += 30 + 300 * random.nextDouble();
      }
      OffsetCorrection correction = new OffsetCorrection(points);
      Temperature truth = Temperature.ofCelsius(1200 * random.nextDouble() - 50);
      assertThat(correction.truth(correction.shown(truth)).celsius())
          .isCloseTo(truth.celsius(), within(1e-9));
    }
  }

  @Test
  void pointsThatCannotBeAreRefused() {
    assertThatThrownBy(() -> new OffsetCorrection(List.of())).hasMessageContaining("one point");
    assertThatThrownBy(() -> new OffsetCorrection(List.of(point(500, 0), point(500, 1))))
        .hasMessageContaining("must come after");
    assertThatThrownBy(() -> new OffsetCorrection(List.of(point(500, 0), point(510, 10))))
        .hasMessageContaining("truth must rise");
    assertThatThrownBy(() -> OffsetCorrection.inProportion(point(-5, 1)))
        .hasMessageContaining("must come after");
  }
}
