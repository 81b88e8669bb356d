package org.heatwright.work.heattreat;

import static org.heatwright.kiln.HeatTransfer.STEFAN_BOLTZMANN;

import java.util.function.DoubleUnaryOperator;

/**
 * How a flat thing follows the kiln, or cools in the room: radiation and a film of air on its
 * faces, the same temperature all through, with an allowance where it is not.
 *
 * <p>Times between two temperatures are the exact integral {@code t = C ∫ dT / (q_rad + q_film)}:
 * with the film alone it is the exponential law, with radiation alone the closed form of handbooks.
 *
 * @param joulesPerSquareMetreKelvin heat capacity over one face, density × heat × thickness, J/(m²
 *     K), above zero
 * @param facesEmissivity emissivities, added over the faces that see the kiln, 0 to 2
 * @param filmWattsPerSquareMetreKelvin film coefficient, added over these faces, zero or more,
 *     W/(m² K); not zero together with the emissivity
 * @param innerSquareMetreKelvinPerWatt resistance from the surface to the middle, m² K/W, zero for
 *     what conducts well
 * @see "memory: Bejan, Heat Transfer Handbook (read in an excerpt: the same integral); Incropera
 *     and DeWitt, lumped capacitance"
 */
public record Warming(
    double joulesPerSquareMetreKelvin,
    double facesEmissivity,
    double filmWattsPerSquareMetreKelvin,
    double innerSquareMetreKelvinPerWatt) {

  private static final double ZERO_CELSIUS_KELVIN = 273.15;

  /** Panels of Simpson's rule over the logarithm of what is left to go. */
  private static final int PANELS = 64;

  /** Steps over a ramp. */
  private static final int RAMP_STEPS = 120;

  public Warming {
    if (!(joulesPerSquareMetreKelvin > 0)
        || !(facesEmissivity >= 0 && facesEmissivity <= 2)
        || !(filmWattsPerSquareMetreKelvin >= 0)
        || !(facesEmissivity + filmWattsPerSquareMetreKelvin > 0)
        || !(innerSquareMetreKelvinPerWatt >= 0)) {
      throw new IllegalArgumentException(
          "A thing that warms needs heat capacity (%s J/(m² K)), emissivities (%s together) or a film (%s W/(m² K)), and no negative resistance (%s m² K/W)."
              .formatted(
                  joulesPerSquareMetreKelvin,
                  facesEmissivity,
                  filmWattsPerSquareMetreKelvin,
                  innerSquareMetreKelvinPerWatt));
    }
  }

  /**
   * Time from one temperature to another in surroundings that stay the same.
   *
   * @param fromCelsius where it starts, °C
   * @param toCelsius where it is meant to get to, °C, between the start and the surroundings
   * @param aroundCelsius gas and walls, °C
   * @return s; zero if it is there already
   * @throws IllegalArgumentException if it never gets there
   */
  public double secondsBetween(double fromCelsius, double toCelsius, double aroundCelsius) {
    double start = fromCelsius - aroundCelsius;
    double end = toCelsius - aroundCelsius;
    if (start * end <= 0 && start != end || Math.abs(end) > Math.abs(start)) {
      throw new IllegalArgumentException(
          "From %s °C nothing gets to %s °C in surroundings of %s °C."
              .formatted(fromCelsius, toCelsius, aroundCelsius));
    }
    if (start == end) {
      return 0;
    }
    // dt = C dT/q; with u = ln|T - around| the integrand 1/H(T) is smooth to the end.
    double from = Math.log(Math.abs(end));
    double to = Math.log(Math.abs(start));
    double sign = Math.signum(start);
    DoubleUnaryOperator integrand =
        u -> secondsAFold(aroundCelsius + sign * Math.exp(u), aroundCelsius);
    double sum = 0;
    double step = (to - from) / PANELS;
    for (int i = 0; i < PANELS; i++) {
      double a = from + i * step;
      sum +=
          integrand.applyAsDouble(a)
              + 4 * integrand.applyAsDouble(a + step / 2)
              + integrand.applyAsDouble(a + step);
    }
    return sum * step / 6;
  }

  /**
   * How far it is behind when surroundings that rise at a rate have arrived.
   *
   * @param fromCelsius where both start, °C
   * @param toCelsius where the surroundings arrive, °C, not below the start
   * @param kelvinsPerSecond rate, K/s, above zero
   * @return K, from zero to the whole way
   */
  public double kelvinsBehind(double fromCelsius, double toCelsius, double kelvinsPerSecond) {
    double step = (toCelsius - fromCelsius) / kelvinsPerSecond / RAMP_STEPS;
    double behind = 0;
    for (int i = 0; i < RAMP_STEPS && step > 0; i++) {
      double around = fromCelsius + (i + 1) * step * kelvinsPerSecond;
      double tau = secondsAFold(around - behind, around);
      double kept = Math.exp(-step / tau);
      behind = Math.min(around - fromCelsius, behind * kept + kelvinsPerSecond * tau * (1 - kept));
    }
    return behind;
  }

  /**
   * Time after surroundings that rise at a rate have arrived, until it is near them too.
   *
   * @param withinKelvins how near, K, above zero
   * @return s, zero or more
   */
  public double secondsToArrive(
      double fromCelsius, double toCelsius, double kelvinsPerSecond, double withinKelvins) {
    double behind = kelvinsBehind(fromCelsius, toCelsius, kelvinsPerSecond);
    return behind <= withinKelvins
        ? 0
        : secondsBetween(toCelsius - behind, toCelsius - withinKelvins, toCelsius);
  }

  /** Time in which what is left to go shrinks to 1/e, at that temperature, s. */
  public double secondsAFold(double celsius, double aroundCelsius) {
    double t = celsius + ZERO_CELSIUS_KELVIN;
    double a = aroundCelsius + ZERO_CELSIUS_KELVIN;
    double coefficient =
        facesEmissivity * STEFAN_BOLTZMANN * (t * t + a * a) * (t + a)
            + filmWattsPerSquareMetreKelvin;
    return joulesPerSquareMetreKelvin * (1 / coefficient + innerSquareMetreKelvinPerWatt);
  }
}
