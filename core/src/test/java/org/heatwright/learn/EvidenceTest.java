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
    Evidence evidence = evidence(kiln, schedule);
    KilnQuantity[] quantities = {
      KilnQuantity.POWER,
      KilnQuantity.CONDUCTIVITY,
      KilnQuantity.CAPACITY,
      KilnQuantity.LEAK,
      KilnQuantity.FITTINGS,
      KilnQuantity.SENSOR
    };
    double[] scores = new double[KilnQuantity.values().length];
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

  /**
   * On a slow ramp the swings of an on-off kiln come sooner or later by chance. What the log tells
   * of the kiln is how residuals change over a score or so, here by the line through 41 runs; two
   * runs a seventh of a score apart differ by chance as much, and that would pass for knowledge.
   */
  @Test
  void slopesOfAnOnOffKilnAreFreeOfItsChance() {
    Kiln kiln = TestKilns.fibreMuffle();
    Schedule schedule = TestSchedules.of(segment(150, 300, 40), segment(240, 700, 30));
    Evidence evidence = evidence(kiln, schedule);
    KilnQuantity[] quantities = {
      KilnQuantity.POWER, KilnQuantity.CONDUCTIVITY, KilnQuantity.CAPACITY, KilnQuantity.SENSOR
    };
    double[] scores = new double[KilnQuantity.values().length];
    double[] today = new double[Evidence.DAY];
    double[][] slopes = evidence.slopes(scores, today, quantities, quantity -> true);
    double[] near = new double[evidence.size()];
    double[] at = new double[evidence.size()];
    evidence.residuals(scores, today, at, 0);
    double offAll = 0;
    double offNear = 0;
    double squares = 0;
    for (int i = 0; i < quantities.length; i++) {
      double[] line = line(evidence, scores, quantities[i]);
      double[] tried = scores.clone();
      tried[quantities[i].ordinal()] += 0.15;
      evidence.residuals(tried, today, near, 0);
      for (int r = 0; r < line.length; r++) {
        squares += line[r] * line[r];
        offAll += Math.pow(slopes[i][r] - line[r], 2);
        offNear += Math.pow((near[r] - at[r]) / 0.15 - line[r], 2);
      }
    }
    assertThat(Math.sqrt(offAll / squares)).isLessThan(0.35);
    assertThat(offNear).isGreaterThan(20 * offAll);
  }

  /** The line of least squares through many runs to both sides. */
  private static double[] line(Evidence evidence, double[] scores, KilnQuantity quantity) {
    double[] line = new double[evidence.size()];
    double[] residual = new double[line.length];
    double squares = 0;
    for (int k = -20; k <= 20; k++) {
      double aside = k / 30.0;
      double[] tried = scores.clone();
      tried[quantity.ordinal()] += aside;
      evidence.residuals(tried, new double[Evidence.DAY], residual, 0);
      squares += aside * aside;
      for (int r = 0; r < line.length; r++) {
        line[r] += aside * residual[r];
      }
    }
    for (int r = 0; r < line.length; r++) {
      line[r] /= squares;
    }
    return line;
  }

  /**
   * What a log tells of a kiln of the model's own, leakier and lighter than usual, in whole degrees
   * every ten seconds.
   */
  private static Evidence evidence(Kiln kiln, Schedule schedule) {
    double[] truth = new double[KilnQuantity.values().length];
    truth[KilnQuantity.LEAK.ordinal()] = 0.8;
    truth[KilnQuantity.CAPACITY.ordinal()] = -0.7;
    FiringConditions day = FiringConditions.usual();
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
    return new Evidence(
        kiln,
        new LoggedFiring("log", schedule, day, Charge.empty(), Readings.of(seconds, celsius)),
        new HeatCurves());
  }
}
