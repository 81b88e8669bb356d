package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.TestKilns;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class CoverageTest {

  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);

  private static LoggedFiring firing(Ramp ramp, double celsius, int holdMinutes, double until) {
    Schedule schedule =
        Schedule.of(
            "test",
            TemperatureUnit.CELSIUS,
            List.of(
                new Segment(
                    ramp, Temperature.ofCelsius(celsius), Duration.ofMinutes(holdMinutes))));
    FiringSimulation simulation =
        new FiringSimulation(
            MUFFLE,
            KilnBeliefs.prior().median(MUFFLE),
            FiringConditions.usual(),
            List.of(),
            schedule,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    double last = until == 0 ? simulation.elapsedSeconds() : until;
    simulation.coastUntil(last);
    FiringRun run = simulation.run();
    int n = (int) (last / 30) + 1;
    double[] seconds = new double[n];
    double[] shown = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = 30.0 * i;
      shown[i] = Math.rint(run.readingCelsiusAt(seconds[i]));
    }
    return new LoggedFiring(
        "test", schedule, FiringConditions.usual(), Charge.empty(), Readings.of(seconds, shown));
  }

  private static Coverage of(LoggedFiring firing) {
    return Coverage.of(MUFFLE, KilnBeliefs.prior(), List.of(firing));
  }

  @Test
  void aLogThatEndsWithTheProgramNeverSawCooling() {
    Coverage coverage = of(firing(Ramp.fastest(), 900, 30, 0));
    assertThat(coverage.coolingSeconds()).isLessThan(120);
    assertThat(coverage.restSeconds()).isCloseTo(1800, within(600.0));
    assertThat(coverage.fullPowerSeconds()).isGreaterThan(900);
    assertThat(coverage.words(List.of(), TemperatureUnit.CELSIUS))
        .containsExactly(
            "Cooling was never logged: the loss below 300 °C is still the nameplate's.",
            "No meter was logged: energy is as sure as the nameplate's power.",
            "The door was never opened: what an opening costs is still the nameplate's.");
  }

  @Test
  void coolingThatStopsEarlySaysWhereInTheKilnsOwnUnit() {
    Coverage coverage = of(firing(Ramp.fastest(), 900, 30, 8_500));
    assertThat(coverage.coldestCoolingCelsius()).isBetween(320.0, 890.0);
    assertThat(coverage.words(List.of(), TemperatureUnit.FAHRENHEIT).get(0))
        .matches(
            "Cooling was logged down to \\d+ °F only: the loss below 570 °F is still the"
                + " nameplate's\\.");
  }

  @Test
  void aNightOfCoolingTellsTheLoss() {
    Coverage coverage = of(firing(Ramp.fastest(), 900, 30, 60_000));
    assertThat(coverage.coldCoolingSeconds()).isGreaterThan(3600);
    assertThat(coverage.words(List.of(), TemperatureUnit.CELSIUS))
        .noneMatch(sentence -> sentence.contains("loss"));
  }

  @Test
  void aSlowRampNeverRanAtFullPower() {
    Coverage coverage = of(firing(Ramp.at(HeatingRate.ofKelvinsPerHour(60)), 400, 5, 0));
    assertThat(coverage.words(List.of(KilnQuantity.SWITCH), TemperatureUnit.CELSIUS))
        .contains(
            "The kiln never ran at full power for long: how strong it is, is still the"
                + " nameplate's.",
            "No hold was logged: how the control settles is still the nameplate's.");
  }
}
