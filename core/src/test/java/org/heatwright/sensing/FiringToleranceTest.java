package org.heatwright.sensing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class FiringToleranceTest {

  private static Segment to(double celsius) {
    return new Segment(Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofHours(1));
  }

  private static FiringTolerance of(ToleranceClass toleranceClass, Segment... segments) {
    return FiringTolerance.of(
        Schedule.of("Harbour burnout", TemperatureUnit.CELSIUS, List.of(segments)),
        ThermocoupleType.K,
        toleranceClass);
  }

  /** IEC 60584-1 class 2, as sensor makers print it: 2.5 K or 0.75 %. */
  @Test
  void everyTargetHasItsTolerance() {
    FiringTolerance firing = of(ToleranceClass.CLASS_2, to(150), to(750), to(540));

    assertThat(firing.targets())
        .extracting(target -> target.tolerance().orElseThrow().kelvins())
        .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-9 ? 0 : 1)
        .containsExactly(2.5, 5.625, 4.05);
    assertThat(firing.widest().map(TemperatureChange::kelvins)).hasValue(5.625);
    assertThat(firing.targets().get(1).segment()).isEqualTo(2);
    assertThat(firing.targets().get(1).hottest().orElseThrow().celsius())
        .isCloseTo(755.625, within(1e-9));
    assertThat(firing.targets().get(1).coolest().orElseThrow().celsius())
        .isCloseTo(744.375, within(1e-9));
  }

  @Test
  void oneSentenceInTheUnitOfTheDisplay() {
    FiringTolerance firing = of(ToleranceClass.CLASS_2, to(150), to(800), to(540));
    assertThat(firing.sentence(TemperatureUnit.CELSIUS))
        .isEqualTo(
            "When a new class 2 type K shows 800 °C, it is between 794 and 806 °C (6 K either way);"
                + " used wire may be further off.");
    assertThat(firing.sentence(TemperatureUnit.FAHRENHEIT))
        .contains("shows 1472 °F, it is between 1461.2 and 1482.8 °F (6 K either way)");
  }

  @Test
  void beyondTheClassNothingIsClaimed() {
    FiringTolerance firing = of(ToleranceClass.CLASS_1, to(600), to(1100));
    assertThat(firing.targets().get(1).tolerance()).isEmpty();
    assertThat(firing.targets().get(1).hottest()).isEmpty();
    assertThat(firing.widest().map(TemperatureChange::kelvins)).hasValue(2.4);
    assertThat(firing.sentence(TemperatureUnit.CELSIUS))
        .isEqualTo("IEC 60584-1 class 1 says nothing about type K at 1100 °C.");
  }

  @Test
  void theClauseNeverSaysLessThanTheClass() {
    assertThat(clause(700)).isEqualTo("A class 2 type K couple may be 6 K off at 700 °C");
    assertThat(clause(800)).isEqualTo("A class 2 type K couple may be 6 K off at 800 °C");
    assertThat(clause(1250)).isEqualTo("No class 2 couple of type K is vouched for at 1250 °C");
  }

  private static String clause(double celsius) {
    return of(ToleranceClass.CLASS_2, to(celsius)).clause(TemperatureUnit.CELSIUS);
  }
}
