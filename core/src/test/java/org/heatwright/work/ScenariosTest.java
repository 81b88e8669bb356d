package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ScenariosTest {

  static List<Scenarios.Scenario> scenarios() {
    return Scenarios.all();
  }

  @ParameterizedTest
  @MethodSource("scenarios")
  void everyStudioGetsAScheduleThatPassesItsOwnInspection(Scenarios.Scenario scenario) {
    Composition composed = Composer.compose(scenario.work(), scenario.kiln(), Optional.empty());
    assertThat(
            Inspector.inspect(
                Inspection.of(composed.schedule()).in(scenario.kiln()).forWork(composed.demands())))
        .noneMatch(f -> f.severity() != Severity.NOTE);
    assertThat(composed.moments()).anyMatch(m -> m.kind() == Moment.Kind.READY);
    assertThat(composed.cautions()).isNotEmpty();
  }

  /** The rules of practice, against the model of kiln and mould: a check of each by the other. */
  @ParameterizedTest
  @MethodSource("scenarios")
  void theForecastAgreesThatTheKilnFollowsAndTheWorkGetsReady(Scenarios.Scenario scenario) {
    Composition composed = Composer.compose(scenario.work(), scenario.kiln(), Optional.empty());
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(composed.schedule(), scenario.kiln(), composed.charge()));
    assertThat(
            Inspector.inspect(
                Inspection.of(composed.schedule())
                    .in(scenario.kiln())
                    .forWork(composed.demands())
                    .with(forecast)))
        .noneMatch(f -> f.severity() != Severity.NOTE);
    if (scenario.work() instanceof BurnoutWork) {
      assertThat(forecast.workReadySeconds()).isPresent();
      assertThat(forecast.work()).allSatisfy(w -> assertThat(w.drySeconds()).isPresent());
    }
  }

  /**
   * The drying estimate says that two hours at 150 °C leave the core of a 90 mm mould wet; the
   * forecast's mould model says so too.
   */
  @Test
  void theForecastAgreesThatTwoHoursAt150LeaveTheCoreOfANinetyWet() {
    Scenarios.Scenario scenario = Scenarios.quaysideMoulds();
    Composition composed = Composer.compose(scenario.work(), scenario.kiln(), Optional.empty());
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(composed.schedule(), scenario.kiln(), composed.charge()));
    assertThat(forecast.work().get(0).drySeconds().orElseThrow().low())
        .isGreaterThan(forecast.segments().get(0).endSeconds().high());
  }

  /**
   * A slow rise lets the wax run before the chamber gets to where it burns, full power does not.
   */
  @Test
  void whenTheWaxHasRunIsTold() {
    Scenarios.Scenario scenario = Scenarios.quaysideMoulds();
    Composition composed = Composer.compose(scenario.work(), scenario.kiln(), Optional.empty());
    Schedule fullPower = atFullPowerTo(700);
    Schedule whereOneSourceOfTwoHasItBurn = atFullPowerTo(245);

    assertThat(waxFindings(scenario, composed, composed.schedule()))
        .extracting(Finding::code, Finding::severity)
        .containsExactly(tuple("wax-runs", Severity.NOTE));
    assertThat(waxFindings(scenario, composed, fullPower))
        .extracting(Finding::code, Finding::severity)
        .containsExactly(tuple("wax-burns-before-it-runs", Severity.WARN));
    assertThat(waxFindings(scenario, composed, whereOneSourceOfTwoHasItBurn))
        .extracting(Finding::code, Finding::severity)
        .containsExactly(tuple("wax-burns-before-it-runs", Severity.WARN));
  }

  private static Schedule atFullPowerTo(double celsius) {
    return Schedule.of(
        "full-power",
        TemperatureUnit.CELSIUS,
        List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofHours(4))));
  }

  private static List<Finding> waxFindings(
      Scenarios.Scenario scenario, Composition composed, Schedule schedule) {
    Forecast forecast =
        Forecaster.forecast(ForecastRequest.of(schedule, scenario.kiln(), composed.charge()));
    return Inspector.inspect(
            Inspection.of(schedule).in(scenario.kiln()).forWork(composed.demands()).with(forecast))
        .stream()
        .filter(finding -> finding.code().startsWith("wax"))
        .toList();
  }
}
