package org.heatwright.mould;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.heatwright.numerics.Samples;
import org.heatwright.units.Temperature;

/**
 * The gas and the walls about a body, as they change: straight lines between points, constant
 * outside. Immutable.
 */
public final class Surroundings {

  private final double[] seconds;
  private final double[] gasCelsius;
  private final double[] wallsCelsius;

  private Surroundings(double[] seconds, double[] gasCelsius, double[] wallsCelsius) {
    this.seconds = seconds;
    this.gasCelsius = gasCelsius;
    this.wallsCelsius = wallsCelsius;
  }

  /**
   * Surroundings by points.
   *
   * @param seconds rising, s
   * @param gasCelsius the gas, °C
   * @param wallsCelsius what radiates, as one black wall, °C
   * @throws IllegalArgumentException if there is no point, the columns differ in length, or a time
   *     does not rise
   */
  public static Surroundings of(double[] seconds, double[] gasCelsius, double[] wallsCelsius) {
    if (seconds.length == 0
        || gasCelsius.length != seconds.length
        || wallsCelsius.length != seconds.length) {
      throw new IllegalArgumentException(
          "Surroundings need at least one time and as many temperatures of gas (%d) and walls (%d) as times (%d)."
              .formatted(gasCelsius.length, wallsCelsius.length, seconds.length));
    }
    for (int i = 1; i < seconds.length; i++) {
      if (!(seconds[i] > seconds[i - 1])) {
        throw new IllegalArgumentException(
            "Time %d of the surroundings (%s s) must be after the one before it (%s s)."
                .formatted(i + 1, seconds[i], seconds[i - 1]));
      }
    }
    return new Surroundings(seconds.clone(), gasCelsius.clone(), wallsCelsius.clone());
  }

  /**
   * Surroundings sampled at equal steps from 0 to {@code untilSecond}.
   *
   * @param untilSecond s, above zero
   * @param stepSeconds s, above zero
   * @param gasCelsius the gas at a second, °C
   * @param wallsCelsius what radiates at a second, °C
   */
  public static Surroundings sampled(
      double untilSecond,
      double stepSeconds,
      DoubleUnaryOperator gasCelsius,
      DoubleUnaryOperator wallsCelsius) {
    int steps = Math.max(1, (int) Math.ceil(untilSecond / stepSeconds - 1e-9));
    double[] seconds = new double[steps + 1];
    double[] gas = new double[steps + 1];
    double[] walls = new double[steps + 1];
    for (int i = 0; i <= steps; i++) {
      seconds[i] = untilSecond * i / steps;
      gas[i] = gasCelsius.applyAsDouble(seconds[i]);
      walls[i] = wallsCelsius.applyAsDouble(seconds[i]);
    }
    return new Surroundings(seconds, gas, walls);
  }

  /** The same temperature for gas and walls, by alternating seconds and °C. */
  public static Surroundings points(double... secondsCelsiusPairs) {
    double[] seconds = new double[secondsCelsiusPairs.length / 2];
    double[] celsius = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = secondsCelsiusPairs[2 * i];
      celsius[i] = secondsCelsiusPairs[2 * i + 1];
    }
    return of(seconds, celsius, celsius);
  }

  /**
   * The same with fewer points: none that both curves pass by within so much on a straight line
   * between points that are kept (memory: Douglas and Peucker 1973).
   *
   * @param kelvins how far a point may be off, K, above zero
   */
  public Surroundings thinned(double kelvins) {
    boolean[] kept = new boolean[seconds.length];
    kept[0] = true;
    kept[seconds.length - 1] = true;
    Deque<int[]> open = new ArrayDeque<>();
    open.push(new int[] {0, seconds.length - 1});
    while (!open.isEmpty()) {
      int[] span = open.pop();
      int worst = -1;
      double most = kelvins;
      for (int i = span[0] + 1; i < span[1]; i++) {
        double off = Math.max(off(gasCelsius, span, i), off(wallsCelsius, span, i));
        if (off > most) {
          most = off;
          worst = i;
        }
      }
      if (worst > 0) {
        kept[worst] = true;
        open.push(new int[] {span[0], worst});
        open.push(new int[] {worst, span[1]});
      }
    }
    int[] index = IntStream.range(0, kept.length).filter(i -> kept[i]).toArray();
    return new Surroundings(
        Arrays.stream(index).mapToDouble(i -> seconds[i]).toArray(),
        Arrays.stream(index).mapToDouble(i -> gasCelsius[i]).toArray(),
        Arrays.stream(index).mapToDouble(i -> wallsCelsius[i]).toArray());
  }

  private double off(double[] column, int[] span, int i) {
    double share = (seconds[i] - seconds[span[0]]) / (seconds[span[1]] - seconds[span[0]]);
    return Math.abs(column[span[0]] + share * (column[span[1]] - column[span[0]]) - column[i]);
  }

  /** Takes a solver that stands at the first point through these surroundings up to a time, s. */
  void drive(BodySolver solver, double untilSecond, BodySolver.Watcher watcher) {
    double at = seconds[0];
    for (int i = 1; i < seconds.length && at < untilSecond; i++) {
      double next = Math.min(seconds[i], untilSecond);
      solver.advance(
          next - at,
          Temperature.ofCelsius(gasCelsiusAt(at)),
          Temperature.ofCelsius(gasCelsiusAt(next)),
          Temperature.ofCelsius(wallsCelsiusAt(at)),
          Temperature.ofCelsius(wallsCelsiusAt(next)),
          watcher);
      at = next;
    }
  }

  /** How many points. */
  int size() {
    return seconds.length;
  }

  /** The last point, s. */
  public double lastSecond() {
    return seconds[seconds.length - 1];
  }

  /** The first point after a time, s; infinite if there is none: where a solver must stop. */
  public double nextPointAfter(double second) {
    int found = Arrays.binarySearch(seconds, second);
    int next = found >= 0 ? found + 1 : -found - 1;
    return next < seconds.length ? seconds[next] : Double.POSITIVE_INFINITY;
  }

  /** The gas, °C. */
  public double gasCelsiusAt(double second) {
    return Samples.linear(seconds, gasCelsius, second);
  }

  /** What radiates, °C. */
  public double wallsCelsiusAt(double second) {
    return Samples.linear(seconds, wallsCelsius, second);
  }
}
