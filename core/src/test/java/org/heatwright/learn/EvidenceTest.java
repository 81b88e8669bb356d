package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.heatwright.schedule.TestSchedules.segment;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
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
import org.heatwright.schedule.TestSchedules;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class EvidenceTest {

  /**
   * A log that ends in a long hold of an on-off kiln: the last of the means that are fitted is of
   * an hour, and its middle long before the last reading.
   */
  @Test
  void aRunLastsAsLongAsTheReadingsDo() {
    Kiln kiln = TestKilns.fibreMuffle();
    Schedule schedule =
        Schedule.of(
            "hold",
            TemperatureUnit.CELSIUS,
            List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(700), Duration.ofHours(4))));
    double[] seconds = IntStream.range(0, 3 * 360).mapToDouble(i -> 10 * i).toArray();
    double[] celsius = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      double swing = 8 * Math.sin(2 * Math.PI * seconds[i] / 300);
      celsius[i] = seconds[i] < 1200 ? 20 + 680 * seconds[i] / 1200 : 700 + swing;
    }
    LoggedFiring firing =
        new LoggedFiring(
            "log",
            schedule,
            FiringConditions.usual(),
            Charge.empty(),
            Readings.of(seconds, celsius));
    Evidence evidence = Evidence.byItself(kiln, firing, new HeatCurves());
    double[] scores = new double[KilnQuantity.values().length];
    double last = firing.readings().lastSecond();
    assertThat(evidence.seen().lastSecond()).isLessThan(last - 1200);
    assertThat(evidence.run(scores, 0, FiringConditions.usual(), Optional.empty()).lastSecond())
        .isGreaterThanOrEqualTo(last);
  }

  /**
   * A log of a kiln of the model's own whose holds tell when they began, one of them by its display
   * alone, so that its length is left to some seconds. Differences are of runs a fifth of a score
   * to either side, and good to a tenth: nearer runs, which are solved to 0.15 K, differ by their
   * steps.
   */
  @Test
  void slopesOfResidualsAreThoseOfRuns() {
    Kiln kiln = TestKilns.brickMuffle(1800);
    Schedule schedule = TestSchedules.of(segment(400, 300, 2), segment(0, 800, 40));
    FiringConditions day = FiringConditions.usual();
    double[] truth = new double[KilnQuantity.values().length];
    truth[KilnQuantity.LEAK.ordinal()] = 0.8;
    truth[KilnQuantity.CAPACITY.ordinal()] = -0.7;
    FiringSimulation simulation =
        new FiringSimulation(
            kiln,
            KilnBeliefs.at(kiln, truth),
            day,
            List.of(),
            schedule,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    simulation.coastUntil(simulation.elapsedSeconds() + 3000);
    FiringRun run = simulation.run();
    double[] seconds =
        IntStream.range(0, (int) run.lastSecond() / 10).mapToDouble(i -> 10 * i).toArray();
    double[] celsius =
        Arrays.stream(seconds).map(s -> Math.rint(run.readingCelsiusAt(s))).toArray();
    Evidence evidence =
        new Evidence(
            kiln,
            new LoggedFiring("log", schedule, day, Charge.empty(), Readings.of(seconds, celsius)),
            new HeatCurves());
    KilnQuantity[] quantities = {
      KilnQuantity.POWER,
      KilnQuantity.CONDUCTIVITY,
      KilnQuantity.CAPACITY,
      KilnQuantity.LEAK,
      KilnQuantity.FITTINGS,
      KilnQuantity.SENSOR
    };
    double[] scores = new double[truth.length];
    double[] today = new double[Evidence.DAY];
    double[][] slopes = evidence.derivatives(scores, today, quantities).orElseThrow();
    for (int i = 0; i < quantities.length; i++) {
      double[][] residuals = new double[2][evidence.size()];
      for (int side = 0; side < 2; side++) {
        double[] tried = scores.clone();
        tried[quantities[i].ordinal()] += side == 0 ? -0.2 : 0.2;
        evidence.residuals(tried, today, residuals[side], 0);
      }
      double squares = 0;
      double off = 0;
      for (int r = 0; r < residuals[0].length; r++) {
        double difference = (residuals[1][r] - residuals[0][r]) / 0.4;
        squares += difference * difference;
        off += Math.pow(slopes[i][r] - difference, 2);
      }
      assertThat(squares).isPositive();
      assertThat(Math.sqrt(off / squares)).as(quantities[i].name()).isLessThan(0.12);
    }
  }
}
