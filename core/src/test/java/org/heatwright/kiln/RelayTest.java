package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.schedule.TestSchedules;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A proportional controller's relay, resolved, beside the mean of its cycle. */
class RelayTest {

  private static final double CYCLE = 20;

  private static final Kiln KILN =
      TestKilns.brickMuffle(2200)
          .withControl(
              new Control(
                  Control.Kind.PID,
                  CYCLE,
                  TemperatureChange.ofKelvins(0),
                  Optional.of(TemperatureChange.ofKelvins(3)),
                  Control.AfterPowerCut.CONTINUE));

  private static final Schedule TRACKED =
      Schedule.of(
          "tracked",
          TemperatureUnit.CELSIUS,
          List.of(
              new Segment(
                  Ramp.at(HeatingRate.ofKelvinsPerHour(250)),
                  Temperature.ofCelsius(600),
                  Duration.ofMinutes(60))));

  private static FiringRun run(FiringSimulation.Accuracy accuracy) {
    return run(KILN, TRACKED, accuracy);
  }

  private static FiringRun run(Kiln kiln, Schedule schedule, FiringSimulation.Accuracy accuracy) {
    FiringSimulation simulation = simulation(kiln, schedule, accuracy);
    simulation.runProgram();
    return simulation.run();
  }

  private static FiringSimulation simulation(
      Kiln kiln, Schedule schedule, FiringSimulation.Accuracy accuracy) {
    return new FiringSimulation(
        kiln,
        KilnBeliefs.prior().median(kiln),
        FiringConditions.usual(),
        List.of(),
        schedule,
        accuracy,
        new HeatCurves());
  }

  @Test
  void theMeanOfItsCycleIsWhatTheUsualSimulationTakes() {
    FiringRun mean = run(FiringSimulation.Accuracy.USUAL);
    FiringRun relay = run(FiringSimulation.Accuracy.USUAL.withRelay());
    assertThat(relay.endSeconds()).isCloseTo(mean.endSeconds(), within(60.0));
    double end = Math.min(mean.endSeconds(), relay.endSeconds());
    assertThat(relay.joulesAt(end))
        .isCloseTo(mean.joulesAt(end), within(0.01 * mean.joulesAt(end)));
    for (double at = 1800; at + 600 < end; at += 600) {
      assertThat(average(relay, at)).isCloseTo(average(mean, at), within(1.5));
    }
  }

  @Test
  void theRelaySwitchesOnAndOffOnceACycleAndTheDisplayRipples() {
    FiringRun relay = run(FiringSimulation.Accuracy.USUAL.withRelay());
    double from = relay.endSeconds() - 1200;
    int switches = 0;
    boolean on = relay.wattsAt(from) > 1000;
    for (double at = from; at < from + 1000; at += 0.25) {
      boolean now = relay.wattsAt(at) > 1000;
      if (now != on) {
        switches++;
        on = now;
      }
    }
    assertThat(switches / 2.0).isCloseTo(1000 / CYCLE, within(3.0));
    double[] range = TestKilns.displayRange(relay, from, from + 1000);
    assertThat(range[1] - range[0]).isBetween(0.2, 15.0);
  }

  /** A hold of two hours: mean, swing and energy against the same firing switch by switch. */
  @Test
  void theMeanOfAnOnOffSwingIsWhatEverySwitchGives() {
    Kiln kiln = TestKilns.fibreMuffle();
    Schedule hold =
        Schedule.of(
            "hold",
            TemperatureUnit.CELSIUS,
            List.of(
                new Segment(Ramp.fastest(), Temperature.ofCelsius(800), Duration.ofMinutes(120))));
    FiringRun mean = run(kiln, hold, FiringSimulation.Accuracy.USUAL);
    FiringRun every = run(kiln, hold, FiringSimulation.Accuracy.USUAL.withRelay());
    assertThat(mean.steps()).isLessThan(every.steps() / 4);
    assertThat(mean.endSeconds()).isCloseTo(every.endSeconds(), within(1.0));
    double end = mean.endSeconds();
    assertThat(mean.joulesAt(end))
        .isCloseTo(every.joulesAt(end), within(0.01 * every.joulesAt(end)));
    for (double at = 2400; at + 600 < end; at += 600) {
      assertThat(average(mean, at)).isCloseTo(average(every, at), within(2.0));
      double swing = 0;
      for (int i = 0; i < 300; i++) {
        double away = every.readingCelsiusAt(at + 2 * i) - average(every, at);
        swing += away * away / 300;
      }
      assertThat(mean.swingKelvinsAt(at + 300)).isCloseTo(Math.sqrt(swing), within(1.0));
    }
  }

  /** How far a display goes above and below, against the same firing switch by switch. */
  @ParameterizedTest
  @ValueSource(doubles = {350, 600, 900})
  void theMeanKnowsHowFarTheSwingGoesToEitherSide(double celsius) {
    Kiln kiln = TestKilns.fibreMuffle();
    Schedule hold =
        Schedule.of(
            "hold",
            TemperatureUnit.CELSIUS,
            List.of(
                new Segment(
                    Ramp.fastest(), Temperature.ofCelsius(celsius), Duration.ofMinutes(120))));
    FiringRun mean = run(kiln, hold, FiringSimulation.Accuracy.USUAL);
    FiringRun every = run(kiln, hold, FiringSimulation.Accuracy.USUAL.withRelay());
    double end = mean.endSeconds();
    assertThat(mean.swingKelvinsAt(end - 1)).isPositive();
    assertThat(every.swingKelvinsAt(end - 1)).isZero();
    double reached = mean.segments().get(0).reachedSeconds();
    for (double from : new double[] {reached, end - 3600}) {
      double width = every.highestReadingCelsius(from, end) - every.lowestReadingCelsius(from, end);
      assertThat(mean.highestReadingCelsius(from, end))
          .isCloseTo(every.highestReadingCelsius(from, end), within(2 + 0.1 * width));
      assertThat(mean.lowestReadingCelsius(from, end))
          .isCloseTo(every.lowestReadingCelsius(from, end), within(2 + 0.1 * width));
    }
    double above = every.highestReadingCelsius(end - 3600, end) - celsius;
    double below = celsius - every.lowestReadingCelsius(end - 3600, end);
    // Not to both sides alike: that is what a deviation alone does not know.
    assertThat(above).isGreaterThan(below + (celsius < 400 ? 10 : 0));
  }

  /**
   * Where in its swing a display is when a slow ramp ends is chance, and a hold waits accordingly:
   * as spread as the same kiln's, switch by switch, whose ramps end 25 s apart.
   */
  @Test
  void aHoldAfterASlowRampWaitsForTheSwing() {
    Kiln kiln = TestKilns.fibreMuffle();
    int runs = 24;
    double[] every = new double[runs];
    double[] taken = new double[runs];
    double[] mean = new double[runs];
    for (int i = 0; i < runs; i++) {
      // Ten minutes of the ramp, from the first to the last, are several swings.
      double celsius = 400 + 1.37 * i;
      Schedule slow = TestSchedules.of(TestSchedules.segment(200, celsius, 5));
      double paper = (celsius - kiln.room().celsius()) / 200 * 3600;
      every[i] = reached(kiln, slow, FiringSimulation.Accuracy.USUAL.withRelay()) - paper;
      mean[i] = reached(kiln, slow, FiringSimulation.Accuracy.USUAL) - paper;
      taken[i] = reached(kiln, slow, FiringSimulation.Accuracy.USUAL, (i + 0.5) / runs) - paper;
    }
    for (double[] one : List.of(every, mean, taken)) {
      Arrays.sort(one);
    }
    assertThat(every[0]).isCloseTo(0, within(5.0));
    double longest = every[runs - 1];
    assertThat(longest).isGreaterThan(60);
    // In the mean all of them wait alike.
    assertThat(mean[runs - 1] - mean[0]).isLessThan(0.1 * longest);
    assertThat(taken[0]).isCloseTo(0, within(5.0));
    assertThat(taken[runs - 1]).isCloseTo(longest, within(0.2 * longest));
    assertThat(Arrays.stream(taken).average().orElseThrow())
        .isCloseTo(Arrays.stream(every).average().orElseThrow(), within(0.15 * longest));
  }

  private static double reached(
      Kiln kiln, Schedule schedule, FiringSimulation.Accuracy accuracy, double... shares) {
    FiringSimulation simulation = simulation(kiln, schedule, accuracy);
    simulation.arriveInSwing(shares);
    simulation.runProgram();
    return simulation.run().segments().get(0).reachedSeconds();
  }

  private static double average(FiringRun run, double from) {
    double sum = 0;
    for (int i = 0; i < 300; i++) {
      sum += run.readingCelsiusAt(from + 2 * i);
    }
    return sum / 300;
  }
}
