package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.heatwright.schedule.TestSchedules.segment;

import java.util.List;
import org.heatwright.kiln.TestKilns;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.TestSchedules;
import org.junit.jupiter.api.Test;

/** No measured case is known to us; what is checked is which way things go, and their order. */
class DoorCostTest {

  private static final double LATE_IN_THE_SOAK = 16 * 3600;

  private static final ForecastRequest TWO_KINDS =
      ForecastRequest.of(
              TestSchedules.of(
                  segment(120, 150, 120),
                  segment(120, 370, 60),
                  segment(200, 730, 150),
                  segment(200, 500, 360)),
              TestKilns.brickMuffle(2200),
              Charge.moulds(
                  List.of(new Mould(2, 0.05, 0.06, 0), new Mould(1, 0.09, 0.1, 0)),
                  Investment.gypsum(0.40)))
          .withDraws(6);

  @Test
  void aLongerLookCostsMoreAndTheCoreFeelsLeast() {
    DoorCost brief = DoorCost.of(TWO_KINDS, LATE_IN_THE_SOAK, 15);
    DoorCost lengthy = DoorCost.of(TWO_KINDS, LATE_IN_THE_SOAK, 90);

    assertThat(brief.displayFallKelvins().median()).isBetween(2.0, 200.0);
    assertThat(lengthy.displayFallKelvins().low())
        .isGreaterThan(brief.displayFallKelvins().median());
    assertThat(lengthy.displayBackSeconds().orElseThrow().median())
        .isGreaterThan(brief.displayBackSeconds().orElseThrow().median())
        .isGreaterThan(90);
    assertThat(lengthy.moulds()).hasSize(2);
    for (int m = 0; m < 2; m++) {
      DoorCost.Mould more = lengthy.moulds().get(m);
      DoorCost.Mould less = brief.moulds().get(m);
      assertThat(more.mould()).isEqualTo(m + 1);
      assertThat(more.faceFallKelvins().median())
          .isGreaterThan(less.faceFallKelvins().median())
          .isGreaterThan(more.coreFallKelvins().median());
      assertThat(more.evenSeconds().orElseThrow().median())
          .isGreaterThanOrEqualTo(less.evenSeconds().orElseThrow().median());
    }
    // The thick one's core lies deeper.
    assertThat(lengthy.moulds().get(1).coreFallKelvins().median())
        .isLessThan(lengthy.moulds().get(0).coreFallKelvins().median());
  }

  /** An on-off kiln at low heat swings by tens of kelvins in a phase that any door shifts. */
  @Test
  void whatASwitchDoesByItselfIsNotTheDoors() {
    ForecastRequest request =
        ForecastRequest.of(
                TestSchedules.of(segment(300, 100, 300)), TestKilns.fibreMuffle(), Charge.empty())
            .withDraws(16);
    DoorCost touched = DoorCost.of(request, 4 * 3600, 1);
    assertThat(touched.displayFallKelvins().high()).isLessThan(1);
    assertThat(touched.displayBackSeconds().orElseThrow().high()).isZero();
    DoorCost open = DoorCost.of(request, 4 * 3600, 60);
    assertThat(open.displayFallKelvins().high()).isGreaterThan(10);
  }

  @Test
  void theDoorMustOpenWhileTheProgramRuns() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> DoorCost.of(TWO_KINDS, 40 * 3600, 20))
        .withMessageContaining("the program may end at");
  }
}
