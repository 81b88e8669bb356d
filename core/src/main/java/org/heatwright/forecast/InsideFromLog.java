package org.heatwright.forecast;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.mould.MouldFiring;
import org.heatwright.numerics.Samples;

/**
 * What the inside of the work did, from nothing but what the display said.
 *
 * <p>In each draw the kiln is simulated through the schedule; what the display said above the
 * simulated display is added to the simulated air and to the simulated radiant temperature, so that
 * the lag of the thermocouple and what the elements give beyond the air stay in. On top come the
 * kelvins of the thermocouple's stem ({@link org.heatwright.kiln.StemLoss}). Each kind of mould is
 * then solved in its section, each followed piece through its thickness.
 *
 * <p>Limits: where the real firing ran apart from the simulated one by more than a few minutes
 * (mains cut, door), the difference between chamber and display is taken from the wrong moment.
 */
public final class InsideFromLog {

  /** Whole degrees and noise are averaged over so long to either side, s. */
  private static final double SMOOTHED_SECONDS = 90;

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
    return solve(request, seconds, celsius).moulds();
  }

  /**
   * As {@link #estimate}, for the followed pieces.
   *
   * @return one a piece, from 0 s to the last reading; empty where the charge has none
   */
  public static List<PieceForecast> pieces(
      ForecastRequest request, double[] seconds, double[] celsius) {
    return solve(request, seconds, celsius).pieces();
  }

  private static InsideSolver.Inside solve(
      ForecastRequest request, double[] seconds, double[] celsius) {
    if (seconds.length < 2
        || seconds.length != celsius.length
        || seconds[seconds.length - 1] <= 0) {
      throw new IllegalArgumentException(
          "The inside needs at least two readings, the last after the start (%d times, %d readings)."
              .formatted(seconds.length, celsius.length));
    }
    double horizon = seconds[seconds.length - 1];
    List<KilnParameters> ensemble =
        request.kiln().beliefs().ensemble(request.kiln(), InsideSolver.DRAWS, request.seed());
    List<FiringRun> runs =
        EnsembleRuns.through(request, ensemble, EnsembleProgress.UNTOLD).parallelStream()
            .map(
                simulation -> {
                  simulation.coastUntil(horizon);
                  return simulation.run();
                })
            .toList();
    return InsideSolver.solve(
        request,
        ensemble,
        runs,
        runs.stream().map(run -> beyond(run, seconds, celsius)).toList(),
        horizon,
        MouldFiring.QUICK,
        EnsembleProgress.UNTOLD);
  }

  /** By how much the display was above the simulated one. */
  private static DoubleUnaryOperator beyond(FiringRun run, double[] seconds, double[] celsius) {
    double[] above = new double[seconds.length];
    for (int i = 0; i < above.length; i++) {
      above[i] = celsius[i] - run.readingCelsiusAt(Math.max(0, seconds[i]));
    }
    return new Smoothed(seconds, above)::at;
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
      return Samples.linear(seconds, values, second);
    }

    /** The first reading not before a time. */
    private int index(double second) {
      int found = Arrays.binarySearch(seconds, second);
      return found >= 0 ? found : -found - 1;
    }
  }
}
