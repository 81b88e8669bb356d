package org.heatwright.forecast;

import static org.heatwright.numerics.NormalSteps.NINE_IN_TEN;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.mould.BodySolver;
import org.heatwright.mould.MouldFiring;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/** Runs an ensemble of kilns through a schedule and tells what they have in common. */
public final class Forecaster {

  /** A core this near the last target counts as ready, K. */
  public static final double READY_WITHIN_KELVINS = 10;

  /** How long a target that is kept is looked at beyond the program's end, s. */
  private static final double KEPT_SECONDS = 3 * 3600;

  /** A display this near a target has arrived, where the controller does not say otherwise, K. */
  private static final double ARRIVED_WITHIN_KELVINS = 3;

  private static final double JOULES_PER_KILOWATT_HOUR = 3.6e6;

  /**
   * What a display adds beyond the model: its last digit, noise, the ripple of a relay's cycle,
   * standard deviation, K. Our estimate.
   */
  private static final double DISPLAY_NOISE_KELVINS = 0.8;

  /** The same of an on-off kiln, whose swings differ from one to the next. */
  private static final double SWITCHED_NOISE_KELVINS = 2.5;

  /** What the model's energy misses beyond its quantities, standard deviation. Our estimate. */
  private static final double ENERGY_SHARE = 0.02;

  /** Times in a run are that uncertain beyond the model, standard deviation, s. Our estimate. */
  private static final double CLOCK_SECONDS = 12;

  /** Half of the longest usual cycle of an on-off kiln, s. Our estimate. */
  private static final double HALF_CYCLE_SECONDS = 150;

  /** Grid points of a trace, besides those at segment changes. */
  private static final int TRACE_POINTS = 600;

  private static final double SHORTEST_GRID_SECONDS = 10;

  private Forecaster() {}

  /**
   * Forecasts a firing.
   *
   * @param request what to run, where, when and with what inside
   * @return median and band of everything; the same request gives the same forecast
   * @throws org.heatwright.numerics.NumericsException if a simulation does not converge
   */
  public static Forecast forecast(ForecastRequest request) {
    return forecast(request, EnsembleProgress.UNTOLD);
  }

  /**
   * The same.
   *
   * @param request what to run, where, when and with what inside
   * @param progress is told how far it is, and may end it
   * @throws org.heatwright.numerics.NumericsException if a simulation does not converge
   */
  public static Forecast forecast(ForecastRequest request, EnsembleProgress progress) {
    return forecast(request, Optional.of(MouldFiring.QUICK), progress);
  }

  /**
   * The median kiln alone, without a band, and the inside of its moulds less exactly: while
   * somebody is still changing a value.
   *
   * @param request what to run, where, when and with what inside; its draws do not count
   * @throws org.heatwright.numerics.NumericsException if a simulation does not converge
   */
  public static Forecast sketch(ForecastRequest request) {
    return forecast(request.withDraws(1), Optional.of(MouldFiring.SKETCH), EnsembleProgress.UNTOLD);
  }

  /**
   * The display alone: what {@link #forecast} tells of it, without following the inside of the
   * work, which takes longer than all else. Work and pieces are not in it.
   *
   * @param request what to run, where, when and with what inside
   * @throws org.heatwright.numerics.NumericsException if a simulation does not converge
   */
  public static Forecast forecastDisplay(ForecastRequest request) {
    return forecastDisplay(request, EnsembleProgress.UNTOLD);
  }

  /**
   * The same.
   *
   * @param request what to run, where, when and with what inside
   * @param progress is told how far it is, and may end it
   * @throws org.heatwright.numerics.NumericsException if a simulation does not converge
   */
  public static Forecast forecastDisplay(ForecastRequest request, EnsembleProgress progress) {
    return forecast(request, Optional.empty(), progress);
  }

  private static Forecast forecast(
      ForecastRequest request, Optional<BodySolver.Accuracy> inMoulds, EnsembleProgress progress) {
    List<KilnParameters> ensemble =
        request.kiln().beliefs().ensemble(request.kiln(), request.draws(), request.seed());
    ArrivalErrors errors = ArrivalErrors.of(request, ensemble);
    List<FiringSimulation> simulations =
        EnsembleRuns.through(request, ensemble, Optional.of(errors), progress);
    double ended =
        simulations.stream().mapToDouble(FiringSimulation::elapsedSeconds).max().orElseThrow();
    // A target that is kept may be reached after its segment has ended.
    boolean keeps = request.schedule().atEnd() == AtEnd.KEEP;
    double horizon = keeps ? ended + KEPT_SECONDS : ended;
    List<FiringRun> runs =
        simulations.parallelStream()
            .map(
                simulation -> {
                  simulation.coastUntil(horizon);
                  return simulation.run();
                })
            .toList();
    InsideSolver.Inside inside =
        inMoulds
            .map(accuracy -> inside(request, ensemble, runs, horizon, accuracy, progress))
            .orElseGet(() -> new InsideSolver.Inside(List.of(), List.of()));
    return summarise(request, runs, errors, inside, horizon);
  }

  /** The inside of the work in some of the draws. */
  private static InsideSolver.Inside inside(
      ForecastRequest request,
      List<KilnParameters> ensemble,
      List<FiringRun> runs,
      double horizon,
      BodySolver.Accuracy accuracy,
      EnsembleProgress progress) {
    int draws = Math.min(InsideSolver.DRAWS, runs.size());
    List<Integer> chosen =
        IntStream.range(0, draws).mapToObj(i -> i * runs.size() / draws).toList();
    return InsideSolver.solve(
        request,
        chosen.stream().map(ensemble::get).toList(),
        chosen.stream().map(runs::get).toList(),
        horizon,
        accuracy,
        progress);
  }

  private static Forecast summarise(
      ForecastRequest request,
      List<FiringRun> runs,
      ArrivalErrors errors,
      InsideSolver.Inside inside,
      double horizon) {
    Schedule schedule = request.schedule();
    List<SegmentForecast> segments = new ArrayList<>();
    double near =
        request
            .kiln()
            .control()
            .holdWaitsWithin()
            .map(TemperatureChange::kelvins)
            .orElse(ARRIVED_WITHIN_KELVINS);
    double previousEndMedian = 0;
    double setpointCelsius = runs.get(0).setpointCelsiusAt(0);
    for (int s = 0; s < schedule.segments().size(); s++) {
      int index = s;
      Segment segment = schedule.segments().get(s);
      Band reached =
          band(runs, run -> Math.min(horizon, run.segments().get(index).reachedSeconds()));
      Band end = band(runs, run -> Math.min(horizon, run.segments().get(index).endSeconds()));
      double[] arrived =
          IntStream.range(0, runs.size())
              .mapToDouble(
                  draw ->
                      runs.get(draw)
                          .arrivalSeconds(
                              index,
                              segment.target().celsius(),
                              errors.withinKelvins(near, draw, index),
                              until(schedule, runs.get(draw), index, horizon)))
              .toArray();
      double share =
          runs.stream()
                  .filter(run -> Double.isFinite(run.segments().get(index).reachedSeconds()))
                  .count()
              / (double) runs.size();
      double began = previousEndMedian;
      double behind =
          segment
              .ramp()
              .nominalTime(segment.target().minus(Temperature.ofCelsius(setpointCelsius)))
              .map(paper -> reached.median() - began - paper.toMillis() / 1000.0)
              .orElse(0.0);
      segments.add(
          new SegmentForecast(
              s + 1,
              reached,
              Band.ofComing(arrived),
              end,
              band(runs, run -> run.segments().get(index).saturatedSeconds()).median(),
              Math.max(0, behind),
              share,
              Overshoot.of(
                  runs,
                  index,
                  segment.target().celsius(),
                  near,
                  horizon,
                  keptBeyond(schedule, index))));
      previousEndMedian = end.median();
      setpointCelsius = segment.target().celsius();
    }
    Band endBand = band(runs, run -> Math.min(horizon, run.endSeconds()));
    Band energyBand =
        widened(
            band(
                runs,
                run ->
                    run.joulesAt(Math.min(horizon, run.endSeconds())) / JOULES_PER_KILOWATT_HOUR),
            runs.size() > 1 ? ENERGY_SHARE : 0);
    return new Forecast(
        schedule.name(),
        request.kiln().name(),
        segments,
        endBand,
        energyBand,
        energyBand.median() * JOULES_PER_KILOWATT_HOUR / Math.max(1, endBand.median()),
        workForecasts(schedule, runs, inside.moulds(), horizon),
        trace(request.kiln(), runs, inside, segments, horizon),
        inside.moulds(),
        inside.pieces());
  }

  private static List<WorkForecast> workForecasts(
      Schedule schedule, List<FiringRun> runs, List<InsideForecast> inside, double horizon) {
    boolean complete = runs.stream().allMatch(FiringRun::complete);
    boolean kept = schedule.atEnd() == AtEnd.KEEP;
    double target = schedule.segments().get(schedule.segments().size() - 1).target().celsius();
    List<WorkForecast> work = new ArrayList<>();
    for (InsideForecast one : inside) {
      int n = one.draws().size();
      double[] dry = new double[n];
      double[] ready = new double[n];
      double[] atEnd = new double[n];
      for (int d = 0; d < n; d++) {
        MouldFiring draw = one.draws().get(d);
        double end = Math.min(horizon, one.days().get(d).endSeconds());
        double chamber = target + one.days().get(d).aboveDisplayKelvins();
        dry[d] = draw.drySeconds();
        ready[d] =
            draw.staysWithinSeconds(
                chamber - READY_WITHIN_KELVINS,
                chamber + READY_WITHIN_KELVINS,
                kept ? horizon : end);
        atEnd[d] = draw.centreCelsiusAt(end);
      }
      work.add(
          new WorkForecast(
              one.mould(),
              "centre",
              complete ? Band.ofFinite(dry) : Optional.empty(),
              complete ? Band.ofFinite(ready) : Optional.empty(),
              Band.of(atEnd)));
    }
    return work;
  }

  private static boolean keptBeyond(Schedule schedule, int segment) {
    return schedule.atEnd() == AtEnd.KEEP && segment == schedule.segments().size() - 1;
  }

  /** Until when a segment's target counts: its end, or as far as we look where it is kept. */
  private static double until(Schedule schedule, FiringRun run, int segment, double horizon) {
    return keptBeyond(schedule, segment) ? horizon : run.segments().get(segment).endSeconds();
  }

  private static Band band(List<FiringRun> runs, ToDoubleFunction<FiringRun> value) {
    return Band.of(runs.stream().mapToDouble(value).toArray());
  }

  /** A band with an error of that share of its median, in quadrature. */
  private static Band widened(Band band, double share) {
    double more = NINE_IN_TEN * share * band.median();
    return new Band(
        band.median() - Math.hypot(band.median() - band.low(), more),
        band.median(),
        band.median() + Math.hypot(band.high() - band.median(), more));
  }

  private static ForecastTrace trace(
      Kiln kiln,
      List<FiringRun> runs,
      InsideSolver.Inside inside,
      List<SegmentForecast> segments,
      double horizon) {
    double[] grid = grid(segments, horizon);
    int n = grid.length;
    FiringRun median = medianRun(runs, horizon);
    double[] setpoint = new double[n];
    double[] low = new double[n];
    double[] middle = new double[n];
    double[] high = new double[n];
    double[] power = new double[n];
    boolean swings = runs.size() > 1 && kiln.control().kind() == Control.Kind.ON_OFF;
    boolean many = runs.size() > 1;
    double noise = swings ? SWITCHED_NOISE_KELVINS : DISPLAY_NOISE_KELVINS;
    // Times are independent of each other: side by side they give the same as in turn.
    IntStream.range(0, n)
        .parallel()
        .forEach(
            i -> {
              double[] sample = new double[runs.size()];
              double[] powerSample = new double[runs.size()];
              for (int r = 0; r < sample.length; r++) {
                FiringRun run = runs.get(r);
                sample[r] = run.readingCelsiusAt(grid[i]);
                powerSample[r] = run.wattsAt(grid[i]);
              }
              setpoint[i] = median.setpointCelsiusAt(grid[i]);
              Band shown = Band.of(sample);
              middle[i] = shown.median();
              Band spread = swings ? Band.of(swing(runs, grid[i], sample)) : shown;
              double beyond =
                  many ? NINE_IN_TEN * Math.hypot(noise, CLOCK_SECONDS * rate(runs, grid[i])) : 0;
              low[i] = middle[i] - Math.hypot(Math.max(0, middle[i] - spread.low()), beyond);
              high[i] = middle[i] + Math.hypot(Math.max(0, spread.high() - middle[i]), beyond);
              power[i] = Band.of(powerSample).median();
            });
    Map<String, double[]> work = new LinkedHashMap<>();
    for (InsideForecast one : inside.moulds()) {
      double[] column = new double[n];
      for (int i = 0; i < n; i++) {
        column[i] = one.centreCelsiusAt(grid[i]).median();
      }
      work.put("mould " + one.mould() + " centre", column);
    }
    for (PieceForecast one : inside.pieces()) {
      for (FollowedPiece.Place place : one.piece().places()) {
        double[] column = new double[n];
        for (int i = 0; i < n; i++) {
          column[i] = one.celsiusAt(place, grid[i]).median();
        }
        work.put(one.piece().curve(place), column);
      }
    }
    return new ForecastTrace(grid, setpoint, low, middle, high, power, work);
  }

  /** Mean rate of the display about a time, K/s, not below zero. */
  private static double rate(List<FiringRun> runs, double second) {
    double sum = 0;
    for (FiringRun run : runs) {
      sum +=
          Math.abs(
              run.readingCelsiusAt(second + RATE_SECONDS)
                  - run.readingCelsiusAt(second - RATE_SECONDS));
    }
    return sum / runs.size() / (2 * RATE_SECONDS);
  }

  private static final double RATE_SECONDS = 60;

  /**
   * An on-off kiln swings about its setpoint in a phase that is chance: while it holds, what the
   * display may show at a time is whatever it shows within a cycle of it.
   */
  private static double[] swing(List<FiringRun> runs, double second, double[] sample) {
    double[] all = new double[sample.length * SWING_POINTS];
    for (int r = 0; r < sample.length; r++) {
      FiringRun run = runs.get(r);
      double from = second;
      double to = second;
      for (FiringRun.SegmentRun segment : run.segments()) {
        if (second >= segment.reachedSeconds() && second <= segment.endSeconds()) {
          from = Math.max(segment.reachedSeconds(), second - HALF_CYCLE_SECONDS);
          to = Math.min(segment.endSeconds(), second + HALF_CYCLE_SECONDS);
        }
      }
      double amplitude = Math.sqrt(2) * run.swingKelvinsAt(second);
      for (int p = 0; p < SWING_POINTS; p++) {
        double share = (p + 0.5) / SWING_POINTS;
        all[r * SWING_POINTS + p] =
            amplitude > 0
                ? sample[r] + amplitude * Math.sin(2 * Math.PI * share)
                : from == to ? sample[r] : run.readingCelsiusAt(from + (to - from) * share);
      }
    }
    return all;
  }

  private static final int SWING_POINTS = 16;

  /** The run that ends in the middle. */
  private static FiringRun medianRun(List<FiringRun> runs, double horizon) {
    return runs.stream()
        .sorted(java.util.Comparator.comparingDouble(run -> Math.min(horizon, run.endSeconds())))
        .skip(runs.size() / 2)
        .findFirst()
        .orElseThrow();
  }

  /** Equal steps, and the median segment changes between them. */
  private static double[] grid(List<SegmentForecast> segments, double horizon) {
    double step = Math.max(SHORTEST_GRID_SECONDS, Math.ceil(horizon / TRACE_POINTS / 10) * 10);
    java.util.TreeSet<Double> times = new java.util.TreeSet<>();
    for (double t = 0; t < horizon; t += step) {
      times.add(t);
    }
    times.add(horizon);
    for (SegmentForecast segment : segments) {
      times.add(Math.min(horizon, (double) Math.round(segment.reachedSeconds().median())));
      times.add(Math.min(horizon, (double) Math.round(segment.endSeconds().median())));
    }
    return times.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
