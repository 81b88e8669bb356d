package org.heatwright.work.enamel;

import org.heatwright.kiln.HeatTransfer;
import org.heatwright.material.Viscosity;
import org.heatwright.mould.Surroundings;
import org.heatwright.numerics.Samples;
import org.heatwright.units.Temperature;

/**
 * The temperature of a thin piece from the moment the door was shut behind it. Immutable.
 *
 * <p>{@code C dT/dt = Σε σ (Tw⁴ - T⁴) + Σh (Tg - T)}, by Runge and Kutta's fourth order with steps
 * that grow from half a second to ten; tested against the closed form and ten times finer steps.
 */
public final class PieceCurve {

  private static final double FIRST_STEP_SECONDS = 0.5;
  private static final double LATER_STEP_SECONDS = 2;
  private static final double LATER_FROM_SECONDS = 90;
  private static final double LAST_STEP_SECONDS = 10;
  private static final double LAST_FROM_SECONDS = 360;

  private final double[] seconds;
  private final double[] celsius;
  private final double[] chamberCelsius;

  private PieceCurve(double[] seconds, double[] celsius, double[] chamberCelsius) {
    this.seconds = seconds;
    this.celsius = celsius;
    this.chamberCelsius = chamberCelsius;
  }

  /**
   * Follows a piece.
   *
   * @param joulesPerSquareMetreKelvin what a square metre takes up, J/(m² K)
   * @param emissivitySum of both faces, each times what it sees
   * @param filmSum convection of both faces, W/(m² K)
   * @param around gas and walls, s from the door's shutting
   * @param startCelsius the piece at second 0, °C
   * @param untilSecond how long, s
   * @param stepFactor 1; less for finer steps
   */
  static PieceCurve follow(
      double joulesPerSquareMetreKelvin,
      double emissivitySum,
      double filmSum,
      Surroundings around,
      double startCelsius,
      double untilSecond,
      double stepFactor) {
    // A very thin piece answers within a second: keep the steps well below that.
    double hot = Math.max(around.wallsCelsiusAt(0), around.wallsCelsiusAt(untilSecond)) + 273.15;
    double answer =
        joulesPerSquareMetreKelvin
            / (4 * emissivitySum * HeatTransfer.STEFAN_BOLTZMANN * hot * hot * hot
                + filmSum
                + 1e-9);
    double first = stepFactor * Math.max(0.02, Math.min(FIRST_STEP_SECONDS, answer / 8));
    double later = stepFactor * Math.max(0.02, Math.min(LATER_STEP_SECONDS, answer / 3));
    double last = stepFactor * Math.max(0.02, Math.min(LAST_STEP_SECONDS, answer));
    double[] seconds = times(untilSecond, first, later, last);
    int steps = seconds.length - 1;
    double[] celsius = new double[steps + 1];
    double[] chamber = new double[steps + 1];
    celsius[0] = startCelsius;
    chamber[0] = around.wallsCelsiusAt(0);
    Rate rate = new Rate(joulesPerSquareMetreKelvin, emissivitySum, filmSum);
    double gas = around.gasCelsiusAt(0);
    for (int i = 0; i < steps; i++) {
      double h = seconds[i + 1] - seconds[i];
      double t = seconds[i];
      double y = celsius[i];
      double wallsHalf = around.wallsCelsiusAt(t + h / 2);
      double gasHalf = around.gasCelsiusAt(t + h / 2);
      chamber[i + 1] = around.wallsCelsiusAt(seconds[i + 1]);
      double k1 = rate.at(chamber[i], gas, y);
      double k2 = rate.at(wallsHalf, gasHalf, y + h / 2 * k1);
      double k3 = rate.at(wallsHalf, gasHalf, y + h / 2 * k2);
      gas = around.gasCelsiusAt(seconds[i + 1]);
      double k4 = rate.at(chamber[i + 1], gas, y + h * k3);
      celsius[i + 1] = y + h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
    }
    return new PieceCurve(seconds, celsius, chamber);
  }

  private static double[] times(double until, double first, double later, double last) {
    double early = Math.min(until, LATER_FROM_SECONDS);
    double middle = Math.min(until, LAST_FROM_SECONDS);
    int a = Math.max(1, (int) Math.ceil(early / first));
    int b = (int) Math.ceil((middle - early) / later);
    int c = (int) Math.ceil((until - middle) / last);
    double[] seconds = new double[a + b + c + 1];
    for (int i = 1; i < seconds.length; i++) {
      seconds[i] =
          i <= a
              ? early * i / a
              : i <= a + b
                  ? early + (middle - early) * (i - a) / b
                  : middle + (until - middle) * (i - a - b) / c;
    }
    return seconds;
  }

  private record Rate(double joules, double emissivity, double film) {
    double at(double wallsCelsius, double gasCelsius, double celsius) {
      double walls = wallsCelsius + ThinPlate.ZERO_CELSIUS;
      double piece = celsius + ThinPlate.ZERO_CELSIUS;
      double w2 = walls * walls;
      double p2 = piece * piece;
      return (emissivity * HeatTransfer.STEFAN_BOLTZMANN * (w2 * w2 - p2 * p2)
              + film * (gasCelsius - celsius))
          / joules;
    }
  }

  /** Times, s from the door's shutting. */
  public double[] seconds() {
    return seconds.clone();
  }

  public double lastSecond() {
    return seconds[seconds.length - 1];
  }

  /** The piece, °C. */
  public double celsiusAt(double second) {
    return Samples.linear(seconds, celsius, second);
  }

  /** What radiates about it, °C. */
  public double chamberCelsiusAt(double second) {
    return Samples.linear(seconds, chamberCelsius, second);
  }

  /** The hottest the piece becomes up to a time, °C. */
  public double hottestCelsius(double untilSecond) {
    double hottest = celsius[0];
    for (int i = 0; i < seconds.length && seconds[i] <= untilSecond; i++) {
      hottest = Math.max(hottest, celsius[i]);
    }
    return Math.max(hottest, celsiusAt(Math.min(untilSecond, lastSecond())));
  }

  /** When the piece first reaches a temperature, s; infinite if it does not. */
  public double secondsTo(double target) {
    for (int i = 1; i < celsius.length; i++) {
      if (celsius[i] >= target && celsius[i] > celsius[i - 1]) {
        double share = Math.max(0, (target - celsius[i - 1]) / (celsius[i] - celsius[i - 1]));
        return seconds[i - 1] + share * (seconds[i] - seconds[i - 1]);
      }
    }
    return celsius[0] >= target ? 0 : Double.POSITIVE_INFINITY;
  }

  /**
   * log10 of {@code ∫ dt/η} up to each of the times, by the trapezoidal rule over the curve's own
   * steps: within 1 % of {@link Viscosity#flowPerPascal} (tested).
   */
  double[] logFlow(Viscosity viscosity) {
    double[] logs = new double[seconds.length];
    double sum = 0;
    double before = fluidity(viscosity, celsius[0]);
    logs[0] = Double.NEGATIVE_INFINITY;
    for (int i = 1; i < seconds.length; i++) {
      double now = fluidity(viscosity, celsius[i]);
      sum += (before + now) / 2 * (seconds[i] - seconds[i - 1]);
      logs[i] = Math.log10(sum);
      before = now;
    }
    return logs;
  }

  private static double fluidity(Viscosity viscosity, double celsius) {
    return 1 / viscosity.pascalSecondsAt(Temperature.ofCelsius(celsius));
  }

  /** log10 of the flow up to a time. */
  double logFlowAt(Viscosity viscosity, double second) {
    double sum = 0;
    double before = fluidity(viscosity, celsius[0]);
    for (int i = 1; i < seconds.length && seconds[i - 1] < second; i++) {
      double until = Math.min(second, seconds[i]);
      double now = fluidity(viscosity, until < seconds[i] ? celsiusAt(until) : celsius[i]);
      sum += (before + now) / 2 * (until - seconds[i - 1]);
      before = now;
    }
    return Math.log10(sum);
  }

  /** Seconds at one temperature that flow as much as the piece has until a time. */
  public double equivalentSeconds(Viscosity viscosity, double atCelsius, double untilSecond) {
    return Math.pow(10, logFlowAt(viscosity, untilSecond))
        * viscosity.pascalSecondsAt(Temperature.ofCelsius(atCelsius));
  }
}
