package org.heatwright.learn;

import java.util.function.DoubleUnaryOperator;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringRun;

/** What a meter says of a firing: how far a simulation of it misses the power it told. */
final class MeteredPower {

  private static final double SHORTEST_SECONDS = 1;

  private final Readings seen;
  private final double ratedWatts;
  private final int[] rows;
  private final Discrepancy discrepancy;

  /**
   * @param seen averaged readings
   * @param ratedWatts what shares are of, W
   * @param slowShare standard deviation of the slow error, a share
   * @param slowSeconds its correlation time, s
   * @param noiseShare standard deviation of the noise of a row of {@code seen}, a share
   */
  MeteredPower(
      Readings seen,
      double ratedWatts,
      double slowShare,
      double slowSeconds,
      IntToDoubleFunction noiseShare) {
    this.seen = seen;
    this.ratedWatts = ratedWatts;
    this.rows = IntStream.range(0, seen.size()).filter(i -> !Double.isNaN(seen.watts(i))).toArray();
    this.discrepancy =
        new Discrepancy(
            IntStream.of(rows).mapToDouble(seen::second).toArray(),
            slowShare,
            slowSeconds,
            IntStream.of(rows).mapToDouble(noiseShare).toArray());
  }

  /** How many rows of the readings have a power. */
  int size() {
    return rows.length;
  }

  /** A row of the readings that has a power. */
  int row(int index) {
    return rows[index];
  }

  Discrepancy discrepancy() {
    return discrepancy;
  }

  /**
   * Writes independent residuals.
   *
   * @param shift by how much the simulation's clock is ahead at a second of the log, s
   * @param span over how long readings about a second are averaged, s
   */
  void residuals(
      FiringRun run, DoubleUnaryOperator shift, DoubleUnaryOperator span, double[] into, int at) {
    if (rows.length == 0) {
      return;
    }
    double[] miss = new double[rows.length];
    for (int i = 0; i < miss.length; i++) {
      double seenAt = seen.second(rows[i]);
      double second = seenAt + shift.applyAsDouble(seenAt);
      double half = span.applyAsDouble(seenAt) / 2;
      double from = Math.max(0, second - half);
      double to = Math.max(from + SHORTEST_SECONDS, second + half);
      double watts = (run.joulesAt(to) - run.joulesAt(from)) / (to - from);
      miss[i] = (watts - seen.watts(rows[i])) / ratedWatts;
    }
    discrepancy.whiten(miss, into, at);
  }
}
