package org.heatwright.benchmarks;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.learn.RunningFiring;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** What twelve hours of readings, one every ten seconds, teach of a kiln. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class LearnBenchmark {

  private static final double TWELVE_HOURS = 12 * 3600;

  private final Kiln kiln = BenchmarkKilns.muffle();
  private final Schedule schedule =
      Schedule.of(
          "quick",
          TemperatureUnit.CELSIUS,
          List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(880), Duration.ofHours(4))));
  private final LoggedFiring firing =
      new LoggedFiring("log", schedule, FiringConditions.usual(), Charge.empty(), readings());

  private Readings readings() {
    FiringSimulation simulation =
        new FiringSimulation(
            kiln,
            KilnBeliefs.prior().ensemble(kiln, 8, 3).get(5),
            FiringConditions.usual(),
            List.of(),
            schedule,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    simulation.coastUntil(TWELVE_HOURS);
    FiringRun run = simulation.run();
    int n = (int) (TWELVE_HOURS / 10);
    double[] seconds = new double[n];
    double[] celsius = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = 10.0 * i;
      celsius[i] = Math.rint(run.readingCelsiusAt(seconds[i]));
    }
    return Readings.of(seconds, celsius);
  }

  /** A fit of 14 quantities and two of the day, with covariance, and two usual forecasts. */
  @Benchmark
  public RunningFiring.Update updateByTwelveHours() {
    return RunningFiring.update(
        ForecastRequest.of(schedule, kiln, Charge.empty()), firing.readings());
  }

  /** The same fit with a search for faults, and no forecast. */
  @Benchmark
  public Lesson fitTwelveHours() {
    return KilnLearner.learn(kiln, List.of(firing));
  }
}
