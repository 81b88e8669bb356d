package org.heatwright.learn;

import java.time.Duration;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/**
 * By how much the program that was logged came earlier or later than the simulated one, because a
 * hold's clock waits for the display, and a display that swings comes near its target by chance, or
 * a log tells to some seconds only when it came. It is no unknown of the fit: for each simulation
 * the most probable waits are taken, and what they cost is a residual a hold.
 */
final class HoldWaits {

  /** The spread of a wait in swings: even over one, and a little more. Our estimate. */
  private static final double SPREAD_SWINGS = 0.4;

  /** A display that is that far from a target when it begins to rise comes at full power, K. */
  private static final double FULL_POWER_KELVINS = 60;

  /** So near a target it has arrived, where it swings about it, K. */
  private static final double ARRIVED_KELVINS = 20;

  /** A rate is taken over so long to either side, s. */
  private static final double RATE_SECONDS = 30;

  private static final int ROUNDS = 3;

  /** Spreads that a wait may move in a round. */
  private static final double LONGEST_STEP = 1;

  /** Spread of each hold's wait, s; zero where it is not left to chance. */
  private final double[] spread;

  /** The holds whose wait is. */
  private final int[] chance;

  private HoldWaits(double[] spread) {
    this.spread = spread;
    this.chance = IntStream.range(0, spread.length).filter(s -> spread[s] > 0).toArray();
  }

  /**
   * Which holds of a log began by chance: in a kiln whose holds wait, where its display swings or
   * the log does not tell it to the second.
   *
   * @param swinging where it does
   * @param starts what the log tells
   */
  static HoldWaits of(Kiln kiln, LoggedFiring firing, SwingMeans swinging, HoldStarts starts) {
    if (kiln.control().kind() == Control.Kind.PID) {
      return new HoldWaits(starts.spreads());
    }
    return new HoldWaits(
        kiln.control()
            .holdWaitsWithin()
            .map(within -> spreads(firing, within, swinging.lowestSeconds()))
            .orElseGet(() -> new double[0]));
  }

  private static double[] spreads(LoggedFiring firing, TemperatureChange within, double[] lowest) {
    Readings readings = firing.readings();
    double[] spread = new double[firing.schedule().segments().size()];
    double from = 0;
    Temperature before = Temperature.ofCelsius(readings.celsius(0));
    for (int s = 0; s < spread.length; s++) {
      Segment segment = firing.schedule().segments().get(s);
      double target = segment.target().celsius();
      // The setpoint itself is not there sooner.
      double paper =
          segment
              .ramp()
              .nominalTime(segment.target().minus(before))
              .map(Duration::toSeconds)
              .orElse(0L);
      before = segment.target();
      int row = readings.firstFrom(from + paper);
      while (row < readings.size()
          && Math.abs(readings.celsius(row) - target)
              > Math.max(ARRIVED_KELVINS, within.kelvins())) {
        row++;
      }
      if (row == readings.size()) {
        break;
      }
      double arrived = readings.second(row);
      for (int i = 1; i + 1 < lowest.length; i++) {
        double swing = lowest[i + 1] - lowest[i];
        if (lowest[i] <= arrived
            && arrived < lowest[i + 1]
            && swing < SwingMeans.LONGEST_SECONDS
            && target - readings.celsius(readings.firstFrom(lowest[i])) < FULL_POWER_KELVINS) {
          spread[s] = SPREAD_SWINGS * swing;
        }
      }
      from = arrived + segment.hold().toSeconds();
    }
    return spread;
  }

  /** What waits cost: one residual a hold. */
  void residuals(double[] waits, double[] into, int at) {
    for (int s = 0; s < size(); s++) {
      into[at + s] = spread[s] > 0 ? waits[s] / spread[s] : 0;
    }
  }

  /** Whether any hold began by chance. */
  boolean any() {
    return chance.length > 0;
  }

  /** How many holds there are; each is a residual. */
  int size() {
    return any() ? spread.length : 0;
  }

  /**
   * When the simulated program was where the logged one was.
   *
   * @param waits by how much the simulated program is later from each hold's end on than before it,
   *     s
   * @param shift by how much its clock is ahead, s
   */
  DoubleUnaryOperator clock(FiringRun run, double[] waits, double shift) {
    return second -> {
      double later = shift;
      for (int s = 0; s < waits.length; s++) {
        double end = run.segments().get(s).endSeconds();
        if (second + later + waits[s] < end) {
          return Math.min(second + later, end);
        }
        later += waits[s];
      }
      return second + later;
    };
  }

  /**
   * The most probable waits of a simulation.
   *
   * @param seconds one a hold, s; empty where none is left to chance
   * @param slopes how the independent residuals of the display change with each wait that is left
   *     to chance, a row each, in spreads
   */
  @SuppressWarnings("ArrayRecordComponent") // read, never written
  record Fitted(double[] seconds, double[][] slopes) {}

  /**
   * Fits the waits of a simulation.
   *
   * @param shift by how much its clock is ahead, s
   * @param misses what it misses by a clock, K
   * @param seconds of the readings
   * @param discrepancy of model and kiln
   */
  Fitted fitted(
      FiringRun run,
      double shift,
      Function<DoubleUnaryOperator, double[]> misses,
      double[] seconds,
      Discrepancy discrepancy) {
    double[] waits = new double[size()];
    double[][] slopes = new double[chance.length][seconds.length];
    double[] rate = new double[seconds.length];
    double moved = Double.POSITIVE_INFINITY;
    for (int round = 0; any() && round < ROUNDS; round++) {
      DoubleUnaryOperator clock = clock(run, waits, shift);
      if (moved > STILL_SECONDS) {
        double[] before = misses.apply(second -> clock.applyAsDouble(second) - RATE_SECONDS);
        double[] after = misses.apply(second -> clock.applyAsDouble(second) + RATE_SECONDS);
        for (int i = 0; i < rate.length; i++) {
          rate[i] = (after[i] - before[i]) / (2 * RATE_SECONDS);
        }
        slopes(run, clock, rate, seconds, discrepancy, slopes);
      }
      double[] residual = new double[seconds.length];
      discrepancy.whiten(misses.apply(clock), residual, 0);
      double[] at = IntStream.of(chance).mapToDouble(s -> waits[s] / spread[s]).toArray();
      double[] step = step(slopes, residual, at);
      moved = 0;
      for (int c = 0; c < chance.length; c++) {
        double by = spread[chance[c]] * NormalEquations.clamp(step[c], LONGEST_STEP);
        waits[chance[c]] += by;
        moved = Math.max(moved, Math.abs(by));
      }
    }
    return new Fitted(waits, slopes);
  }

  /** Waits that move by less leave the rates as they are, s: a tenth of what those are over. */
  private static final double STILL_SECONDS = RATE_SECONDS / 10;

  /** What a wait moves comes after its hold. */
  private void slopes(
      FiringRun run,
      DoubleUnaryOperator clock,
      double[] rate,
      double[] seconds,
      Discrepancy discrepancy,
      double[][] into) {
    double[] later = new double[seconds.length];
    for (int c = 0; c < chance.length; c++) {
      double end = run.segments().get(chance[c]).endSeconds();
      for (int i = 0; i < later.length; i++) {
        later[i] = clock.applyAsDouble(seconds[i]) >= end ? rate[i] * spread[chance[c]] : 0;
      }
      discrepancy.whiten(later, into[c], 0);
    }
  }

  /**
   * The step of the linear problem, in spreads.
   *
   * @param residual independent residuals of the display
   * @param at where the waits are, in spreads
   */
  private double[] step(double[][] slopes, double[] residual, double[] at) {
    NormalEquations equations = new NormalEquations(chance.length);
    for (int c = 0; c < chance.length; c++) {
      equations.addPrior(c, 1, at[c]);
    }
    double[] equal = new double[residual.length];
    Arrays.fill(equal, 1);
    equations.addReadings(slopes, equal, residual);
    return equations.solve().toArray();
  }

  /**
   * By how much the most probable waits change with something, to first order, in spreads; and lets
   * the residuals change with them.
   *
   * @param residual how the display's independent residuals change with it where the waits do not;
   *     receives how they do with them
   * @return one a hold
   */
  double[] follow(Fitted fitted, double[] residual) {
    double[] all = new double[size()];
    if (!any()) {
      return all;
    }
    double[] step = step(fitted.slopes(), residual, new double[chance.length]);
    for (int c = 0; c < chance.length; c++) {
      all[chance[c]] = step[c];
      for (int i = 0; i < residual.length; i++) {
        residual[i] += step[c] * fitted.slopes()[c][i];
      }
    }
    return all;
  }

  /** Waits in seconds from waits in spreads, one a hold. */
  double[] seconds(double[] inSpreads) {
    double[] all = new double[inSpreads.length];
    for (int s = 0; s < all.length; s++) {
      all[s] = spread[s] * inSpreads[s];
    }
    return all;
  }
}
