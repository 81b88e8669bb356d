package org.heatwright.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.kiln.Load;
import org.heatwright.material.HeatCurves;
import org.heatwright.mould.Mould;
import org.heatwright.mould.MouldFiring;
import org.heatwright.mould.Surroundings;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;

/**
 * What the inside of the moulds did, from nothing but what the display said.
 *
 * <p>In each draw the kiln is simulated through the schedule; what the display said above the
 * simulated display is added to the simulated air and to the simulated radiant temperature, so that
 * the lag of the thermocouple and what the elements give beyond the air stay in. On top come the
 * kelvins of the thermocouple's stem ({@link LoadSurroundings}). Each kind of mould is then solved
 * in its section.
 *
 * <p>Limits: where the real firing ran apart from the simulated one by more than a few minutes
 * (mains cut, door), the difference between chamber and display is taken from the wrong moment.
 */
public final class InsideFromLog {

  private static final int DRAWS = 16;

  /** Whole degrees and noise are averaged over so long to either side, s. */
  private static final double SMOOTHED_SECONDS = 90;

  private static final double SAMPLE_SECONDS = 30;

  /** Surroundings are kept where they bend by this, K. */
  private static final double BEND_KELVINS = 0.4;

  private InsideFromLog() {}

  /**
   * Estimates the inside.
   *
   * @param request the firing as it was meant; its number of draws does not matter
   * @param seconds of the readings, s from the program's start, rising
   * @param celsius what the display said, °C
   * @return one a kind of mould, from 0 s to the last reading; empty where the charge has none
   * @throws IllegalArgumentException if there are not at least two readings, as many times as
   *     temperatures, or the last is not after the start
   * @throws org.heatwright.numerics.NumericsException if a simulation does not converge
   */
  public static List<InsideForecast> estimate(
      ForecastRequest request, double[] seconds, double[] celsius) {
    if (seconds.length < 2
        || seconds.length != celsius.length
        || seconds[seconds.length - 1] <= SAMPLE_SECONDS) {
      throw new IllegalArgumentException(
          "The inside needs at least two readings, the last after the start (%d times, %d readings)."
              .formatted(seconds.length, celsius.length));
    }
    double horizon = seconds[seconds.length - 1];
    Temperature room = request.conditions().room().orElse(request.kiln().room());
    List<KilnParameters> ensemble =
        request.kiln().beliefs().ensemble(request.kiln(), DRAWS, request.seed());
    List<Load> loads = request.charge().loads();
    HeatCurves curves = new HeatCurves();
    List<FiringRun> runs =
        ensemble.parallelStream().map(p -> run(request, p, loads, curves, horizon)).toList();
    List<Surroundings> around =
        IntStream.range(0, DRAWS)
            .parallel()
            .mapToObj(
                d ->
                    around(
                        runs.get(d),
                        seconds,
                        celsius,
                        LoadSurroundings.stem(d, DRAWS),
                        room.celsius()))
            .toList();
    List<Segment> segments = request.schedule().segments();
    double target = segments.get(segments.size() - 1).target().celsius();
    List<InsideForecast.Day> days =
        IntStream.range(0, DRAWS)
            .mapToObj(
                d ->
                    new InsideForecast.Day(
                        runs.get(d).endSeconds(),
                        LoadSurroundings.stemKelvins(
                            LoadSurroundings.stem(d, DRAWS), target, room.celsius())))
            .toList();
    List<InsideForecast> all = new ArrayList<>();
    for (Mould mould : request.charge().moulds()) {
      List<MouldFiring> firings =
          IntStream.range(0, DRAWS)
              .parallel()
              .mapToObj(
                  d ->
                      MouldFiring.of(
                          MouldFiring.Setting.of(
                              mould, request.charge().investment().orElseThrow(), ensemble.get(d)),
                          request.conditions().start().orElse(room),
                          around.get(d)))
              .toList();
      all.add(new InsideForecast(all.size() + 1, firings, days));
    }
    return all;
  }

  private static FiringRun run(
      ForecastRequest request,
      KilnParameters parameters,
      List<Load> loads,
      HeatCurves curves,
      double horizon) {
    FiringSimulation simulation =
        new FiringSimulation(
            request.kiln(),
            parameters,
            request.conditions(),
            loads,
            request.schedule(),
            FiringSimulation.Accuracy.USUAL,
            curves);
    simulation.runProgram();
    simulation.coastUntil(horizon);
    return simulation.run();
  }

  private static Surroundings around(
      FiringRun run, double[] seconds, double[] celsius, double stem, double roomCelsius) {
    double[] above = new double[seconds.length];
    for (int i = 0; i < above.length; i++) {
      above[i] = celsius[i] - run.readingCelsiusAt(Math.max(0, seconds[i]));
    }
    Smoothed differs = new Smoothed(seconds, above);
    return Surroundings.sampled(
            seconds[seconds.length - 1],
            SAMPLE_SECONDS,
            second ->
                run.airCelsiusAt(second) + more(run, differs.at(second), second, stem, roomCelsius),
            second ->
                run.radiantCelsiusAt(second)
                    + more(run, differs.at(second), second, stem, roomCelsius))
        .thinned(BEND_KELVINS);
  }

  private static double more(
      FiringRun run, double differs, double second, double stem, double roomCelsius) {
    double display = run.readingCelsiusAt(second) + differs;
    return differs + LoadSurroundings.stemKelvins(stem, display, roomCelsius);
  }

  /** Means over a window; straight lines over gaps, constant outside. */
  private record Smoothed(double[] seconds, double[] values) {

    double at(double second) {
      int from = index(second - SMOOTHED_SECONDS);
      int to = index(second + SMOOTHED_SECONDS);
      if (to > from) {
        double sum = 0;
        for (int i = from; i < to; i++) {
          sum += values[i];
        }
        return sum / (to - from);
      }
      if (from == 0) {
        return values[0];
      }
      if (from == seconds.length) {
        return values[from - 1];
      }
      double share = (second - seconds[from - 1]) / (seconds[from] - seconds[from - 1]);
      return values[from - 1] + share * (values[from] - values[from - 1]);
    }

    /** The first reading not before a time. */
    private int index(double second) {
      int found = java.util.Arrays.binarySearch(seconds, second);
      return found >= 0 ? found : -found - 1;
    }
  }
}
