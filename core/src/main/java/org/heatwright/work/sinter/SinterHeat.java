package org.heatwright.work.sinter;

import java.time.Duration;
import org.heatwright.material.HeatWork;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;

/**
 * The temperatures a piece has been through, and the work of sintering they did: {@code Theta =
 * integral of (1/T) exp(-Q/(R T)) dt}, in s/K. Immutable.
 *
 * @see "memory: Su and Johnson, Master Sintering Curve: A Practical Approach to Sintering, J. Am.
 *     Ceram. Soc. 79 (1996) 3211"
 */
public final class SinterHeat {

  /** Where equivalent seconds are counted; Theta does not depend on it. */
  private static final Temperature REFERENCE = Temperature.ofCelsius(900);

  private static final double LEAST_JOULES_PER_MOLE = 50e3;
  private static final double STEP_JOULES_PER_MOLE = 10e3;
  private static final int STEPS = 28;

  /** Less than any work of sintering: the piece was not hot at all. */
  private static final double COLD = -60;

  private final double[] seconds;
  private final double[] celsius;

  /** log10 Theta at the activation energies of the grid, where a curve reads it quickly. */
  private final double[] grid;

  private SinterHeat(double[] seconds, double[] celsius) {
    this.seconds = seconds;
    this.celsius = celsius;
    grid = new double[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
      grid[i] = exactLogTheta(LEAST_JOULES_PER_MOLE + i * STEP_JOULES_PER_MOLE);
    }
  }

  /**
   * A history, straight between its points.
   *
   * @param seconds times, s, never falling
   * @param celsius temperature of the piece at each, °C
   */
  public static SinterHeat of(double[] seconds, double[] celsius) {
    return new SinterHeat(seconds.clone(), celsius.clone());
  }

  /** A hold alone. */
  public static SinterHeat hold(Temperature at, Duration hold) {
    return of(new double[] {0, hold.toSeconds()}, new double[] {at.celsius(), at.celsius()});
  }

  /** From 20 °C straight up, then a hold; what the piece does while it cools is left out. */
  public static SinterHeat rampAndHold(HeatingRate rate, Temperature at, Duration hold) {
    double up = Math.max(0, at.celsius() - 20) / rate.kelvinsPerHour() * 3600;
    return of(
        new double[] {0, up, up + hold.toSeconds()}, new double[] {20, at.celsius(), at.celsius()});
  }

  /**
   * Theta, s/K: as small as 1e-13.
   *
   * @param activationJoulesPerMole Q, J/mol, above zero
   */
  public double thetaSecondsPerKelvin(double activationJoulesPerMole) {
    return Math.pow(10, exactLogTheta(activationJoulesPerMole));
  }

  /** log10 of Theta in s/K, integrated to rounding. */
  double exactLogTheta(double activationJoulesPerMole) {
    HeatWork work =
        new HeatWork(activationJoulesPerMole, REFERENCE, HeatWork.Weighting.MASTER_SINTERING);
    double equivalent = work.secondsOf(seconds, celsius);
    double kelvin = REFERENCE.kelvin();
    return equivalent > 0
        ? Math.max(
            COLD,
            Math.log10(equivalent / kelvin)
                - activationJoulesPerMole / (HeatWork.GAS_CONSTANT * kelvin * Math.log(10)))
        : COLD;
  }

  /** The same from a table over Q, by cubics; good to millionths of a decade, 60 to 320 kJ/mol. */
  double logTheta(double activationJoulesPerMole) {
    double place = (activationJoulesPerMole - LEAST_JOULES_PER_MOLE) / STEP_JOULES_PER_MOLE;
    int i = (int) Math.max(1, Math.min(STEPS - 2.0, Math.floor(place)));
    double u = place - i;
    return -u * (u - 1) * (u - 2) / 6 * grid[i - 1]
        + (u + 1) * (u - 1) * (u - 2) / 2 * grid[i]
        - (u + 1) * u * (u - 2) / 2 * grid[i + 1]
        + (u + 1) * u * (u - 1) / 6 * grid[i + 2];
  }

  /**
   * Whether two firings differ so clearly that together they say something of how time trades for
   * temperature: by a factor of one and a half in Theta at a low or a high Q.
   */
  boolean differsFrom(SinterHeat other) {
    return Math.max(
            Math.abs(logTheta(100e3) - other.logTheta(100e3)),
            Math.abs(logTheta(200e3) - other.logTheta(200e3)))
        > Math.log10(1.5);
  }
}
