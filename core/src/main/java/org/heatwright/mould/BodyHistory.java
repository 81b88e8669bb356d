package org.heatwright.mould;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.heatwright.numerics.LinearTable;
import org.heatwright.units.Temperature;

/**
 * What probes in a body read while its surroundings follow a curve, at even times.
 *
 * <p>The solver's steps are longer than the report's where little happens; between them a monotone
 * cubic is laid through the probe's own readings (<i>memory</i>: Fritsch and Carlson, 1980; Hyman,
 * 1983), which does not overshoot. It has a corner where the surroundings have one.
 */
public final class BodyHistory {

  private static final double EQUAL_KELVINS = 0.005;
  private static final int LONGEST_HOURS = 48;

  private final List<BodyProbe> probes;
  private final double[] seconds;
  private final double[][] celsius;
  private final double heatTakenJoules;
  private final double hottestCelsius;
  private final long steps;
  private final int cells;

  private BodyHistory(
      List<BodyProbe> probes,
      double[] seconds,
      double[][] celsius,
      BodySolver solver,
      double hottestCelsius) {
    this.probes = List.copyOf(probes);
    this.seconds = seconds;
    this.celsius = celsius;
    this.heatTakenJoules = solver.heatTakenJoules();
    this.hottestCelsius = hottestCelsius;
    this.steps = solver.steps();
    this.cells = solver.cells();
  }

  /**
   * Runs a body through its surroundings.
   *
   * @param body what and where it starts
   * @param surroundings temperature of gas and walls, °C over seconds from the start, straight
   *     between its points
   * @param endSeconds how long, s, above zero
   * @param everySeconds between two readings, s, above zero
   * @param probes where to read
   * @param accuracy how fine
   */
  public static BodyHistory of(
      Body body,
      LinearTable surroundings,
      double endSeconds,
      double everySeconds,
      List<BodyProbe> probes,
      BodySolver.Accuracy accuracy) {
    if (!(endSeconds > 0) || !(everySeconds > 0) || !(endSeconds / everySeconds <= 1e6)) {
      throw new IllegalArgumentException(
          "The end (%s s) and the time between readings (%s s) must be above zero, with at most a million readings."
              .formatted(endSeconds, everySeconds));
    }
    BodySolver solver = new BodySolver(body, accuracy);
    int columns = probes.size() + 1;
    List<double[]> knots = new ArrayList<>();
    double[] hottest = {Double.NEGATIVE_INFINITY};
    BodySolver.Watcher read =
        s -> {
          double[] row = new double[columns];
          row[0] = s.seconds();
          for (int i = 1; i < columns; i++) {
            row[i] = probes.get(i - 1).celsius(s);
          }
          hottest[0] = Math.max(hottest[0], s.hottestCelsius());
          knots.add(row);
        };
    read.step(solver);
    double at = 0;
    List<Integer> corners = new ArrayList<>(List.of(0));
    for (double next : stops(surroundings, endSeconds)) {
      Temperature from = Temperature.ofCelsius(surroundings.at(at));
      Temperature to = Temperature.ofCelsius(surroundings.at(next));
      solver.advance(next - at, from, to, from, to, read);
      corners.add(knots.size() - 1);
      at = next;
    }
    int rows = (int) Math.floor(endSeconds / everySeconds + 1e-9) + 1;
    double[] seconds = new double[rows];
    for (int i = 0; i < rows; i++) {
      seconds[i] = Math.min(endSeconds, i * everySeconds);
    }
    boolean[] corner = new boolean[knots.size()];
    corners.forEach(i -> corner[i] = true);
    double[] x = knots.stream().mapToDouble(k -> k[0]).toArray();
    double[][] celsius = new double[columns - 1][];
    for (int c = 1; c < columns; c++) {
      int column = c;
      celsius[c - 1] =
          between(x, knots.stream().mapToDouble(k -> k[column]).toArray(), corner, seconds);
    }
    return new BodyHistory(probes, seconds, celsius, solver, hottest[0]);
  }

  /**
   * When a body has come to within {@value #EQUAL_KELVINS} K of where its surroundings end,
   * everywhere: in whole hours, s; at most {@value #LONGEST_HOURS} hours.
   */
  public static double equalisedSeconds(Body body, LinearTable surroundings) {
    BodySolver solver = new BodySolver(body);
    int points = surroundings.asPoints().size();
    double end = surroundings.asPoints().get(points - 1)[1];
    double at = 0;
    for (int hour = 1; hour <= LONGEST_HOURS; hour++) {
      for (double next : stops(surroundings, hour * 3600.0)) {
        if (next > at) {
          Temperature from = Temperature.ofCelsius(surroundings.at(at));
          Temperature to = Temperature.ofCelsius(surroundings.at(next));
          solver.advance(next - at, from, to, from, to, s -> {});
          at = next;
        }
      }
      if (Math.abs(solver.hottestCelsius() - end) < EQUAL_KELVINS
          && Math.abs(solver.coldestCelsius() - end) < EQUAL_KELVINS) {
        break;
      }
    }
    return at;
  }

  private static double[] stops(LinearTable surroundings, double end) {
    return java.util.stream.DoubleStream.concat(
            surroundings.asPoints().stream().mapToDouble(p -> p[0]).filter(t -> t > 0 && t < end),
            java.util.stream.DoubleStream.of(end))
        .toArray();
  }

  /**
   * A monotone cubic through the points, read at rising places.
   *
   * @param corner at each point, whether the slopes on its two sides have nothing to do with each
   *     other
   */
  private static double[] between(double[] x, double[] y, boolean[] corner, double[] places) {
    int n = x.length;
    double[] secant = new double[n - 1];
    for (int i = 0; i + 1 < n; i++) {
      secant[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }
    double[] out = new double[places.length];
    int i = 0;
    for (int p = 0; p < places.length; p++) {
      while (i + 2 < n && x[i + 1] < places[p]) {
        i++;
      }
      double h = x[i + 1] - x[i];
      double t = Math.min(1, (places[p] - x[i]) / h);
      double u = 1 - t;
      double left = slope(x, secant, corner, i, i, i - 1);
      double right = slope(x, secant, corner, i + 1, i, i + 1);
      out[p] =
          u * u * (1 + 2 * t) * y[i]
              + t * t * (3 - 2 * t) * y[i + 1]
              + t * u * h * (u * left - t * right);
    }
    return out;
  }

  /**
   * Slope at a point of the parabola through three points, held between none and three times that
   * of each secant.
   *
   * @param at the point
   * @param own the secant on this side of it
   * @param other the secant on the other side
   */
  private static double slope(
      double[] x, double[] secant, boolean[] corner, int at, int own, int other) {
    boolean oneSided = corner[at];
    int beyond = oneSided ? 2 * own - other : other; // towards the inside from a corner
    if (beyond < 0 || beyond >= secant.length || (oneSided && corner[2 * own + 1 - at])) {
      return secant[own];
    }
    double h = x[own + 1] - x[own];
    double g = x[beyond + 1] - x[beyond];
    double parabola =
        oneSided
            ? secant[own] + h / (h + g) * (secant[own] - secant[beyond])
            : (g * secant[own] + h * secant[beyond]) / (h + g);
    double most = 3 * (oneSided ? secant[own] : smaller(secant[own], secant[beyond]));
    return most > 0 ? Math.max(0, Math.min(parabola, most)) : Math.min(0, Math.max(parabola, most));
  }

  /** The one nearer to zero; zero where signs differ. */
  private static double smaller(double a, double b) {
    return a * b <= 0 ? 0 : Math.abs(a) < Math.abs(b) ? a : b;
  }

  public List<BodyProbe> probes() {
    return probes;
  }

  public int size() {
    return seconds.length;
  }

  /** Times of the readings, s from the start. */
  public double[] seconds() {
    return seconds.clone();
  }

  /** What a probe read at those times, °C. */
  public double[] celsius(BodyProbe probe) {
    int i = probes.indexOf(probe);
    if (i < 0) {
      throw new IllegalArgumentException("The probe '%s' was not read.".formatted(probe.name()));
    }
    return Arrays.copyOf(celsius[i], celsius[i].length);
  }

  /** Heat the body took up, J. */
  public double heatTakenJoules() {
    return heatTakenJoules;
  }

  /** The hottest anywhere in the body at the end of any step, °C. */
  public double hottestCelsius() {
    return hottestCelsius;
  }

  public long steps() {
    return steps;
  }

  public int cells() {
    return cells;
  }
}
