package org.heatwright.benchmarks;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.ExplicitFiring;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.material.HeatCurves;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.numerics.LinearTable;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.Slab;
import org.heatwright.schedule.Schedule;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A forecast of twelve hours: one draw on one core, beside a general-purpose integrator on the same
 * equations at the same accuracy, and the usual ensemble.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class ForecastBenchmark {

  /**
   * Gives the explicit integrator the same largest error against the converged run, about 0.2 K.
   */
  private static final double SAME_ACCURACY_KELVINS = 0.05;

  private final Kiln kiln = BenchmarkKilns.muffle();
  private final Schedule schedule = BenchmarkKilns.twelveHours();
  private final KilnParameters median = KilnBeliefs.prior().median(kiln);
  private final Charge moulds =
      Charge.moulds(List.of(new Mould(3, 0.09, 0.15, 0.003)), Investment.gypsum(0.40));
  private final Kiln fibre = BenchmarkKilns.fibre();
  private final Schedule hold = BenchmarkKilns.holdOfHours();
  private final HeatCurves curves = new HeatCurves();
  private final FiringRun known = oneDraw();

  /** One kiln, one firing of twelve hours. */
  @Benchmark
  public FiringRun oneDraw() {
    FiringSimulation simulation =
        new FiringSimulation(
            kiln,
            median,
            FiringConditions.usual(),
            List.of(),
            schedule,
            FiringSimulation.Accuracy.USUAL,
            curves);
    simulation.runProgram();
    return simulation.run();
  }

  /** The same by Hipparchus' Dormand-Prince 8(5,3). */
  @Benchmark
  public double oneDrawGeneralPurpose() {
    return new ExplicitFiring(kiln, median, schedule, known, SAME_ACCURACY_KELVINS)
        .finalReadingCelsius();
  }

  /** The usual forecast of 64 draws, curves and bands included, on all cores. */
  @Benchmark
  public Forecast usualForecast() {
    return Forecaster.forecast(ForecastRequest.of(schedule, kiln, Charge.empty()));
  }

  /** 256 draws with curves and bands, on all cores. */
  @Benchmark
  public Forecast manyDraws() {
    return Forecaster.forecast(ForecastRequest.of(schedule, kiln, Charge.empty()).withDraws(256));
  }

  /** The usual forecast of an on-off fibre kiln with a hold of hours. */
  @Benchmark
  public Forecast usualForecastOnOff() {
    return Forecaster.forecast(ForecastRequest.of(hold, fibre, Charge.empty()));
  }

  /** The usual forecast with three moulds in the kiln. */
  @Benchmark
  public Forecast usualForecastWithMoulds() {
    return Forecaster.forecast(ForecastRequest.of(schedule, kiln, moulds));
  }

  /** The usual forecast with a sheet of glass and a box of carbon followed in it. */
  @Benchmark
  public Forecast usualForecastWithPieces() {
    return Forecaster.forecast(
        ForecastRequest.of(schedule, kiln, Charge.followed(List.of(GLASS, BOX))));
  }

  private static final FollowedPiece GLASS =
      new FollowedPiece(
          "glass",
          1,
          0.03,
          Slab.lying(solid("glass", 2500, 1, 1000), 0.012, new Slab.Face(0.9, 8)),
          List.of(new FollowedPiece.Place("middle", 0.006)));

  private static final FollowedPiece BOX =
      new FollowedPiece(
          "box",
          1,
          0.02,
          new Slab(
              List.of(
                  new Slab.Layer(solid("steel", 7900, 20, 500), 0.001),
                  new Slab.Layer(solid("carbon", 550, 0.15, 1100), 0.03)),
              new Slab.Face(0.85, 8),
              Optional.empty()),
          List.of(new FollowedPiece.Place("middle", 0.031)));

  private static Material solid(
      String name, double density, double conductivity, double heatCapacity) {
    return new Material(
        name,
        density,
        LinearTable.constant(conductivity),
        LinearTable.constant(heatCapacity),
        List.of(),
        Origin.estimate("benchmark"));
  }
}
