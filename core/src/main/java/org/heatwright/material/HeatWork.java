package org.heatwright.material;

import java.util.Objects;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/**
 * Heat-work: what time and temperature do together to work that changes by an activated process
 * (sintering, diffusion, flow of a glass over a narrow range). It is told as the seconds at one
 * reference temperature that would do the same. Immutable.
 *
 * <p>Rate at T over the rate at the reference: {@code exp(-(Q/R)(1/T - 1/T0))}, times {@code T0/T}
 * for the master sintering curve. It knows nothing of melting, of gas that must leave, or of a
 * second process that takes over; one Q holds over a range, and far outside it the answer is a
 * guess.
 *
 * @param activationJoulesPerMole Q, J/mol, above zero; for metals and glasses 1e5 to 5e5
 * @param reference T0, the temperature at which the equivalent seconds are counted
 * @param weighting which integrand
 * @see "memory: Arrhenius law, any physical chemistry; Su and Johnson, Master Sintering Curve, J.
 *     Am. Ceram. Soc. 1996, for the weighting with 1/T"
 */
public record HeatWork(double activationJoulesPerMole, Temperature reference, Weighting weighting) {

  /** Molar gas constant, J/(mol K), exact since the 2019 SI. Source: memory, CODATA 2018. */
  public static final double GAS_CONSTANT = 8.314462618;

  /** The exponent may change by this much in one panel: the rule is then exact to rounding. */
  private static final double EXPONENT_A_PANEL = 0.25;

  /** The two integrands in use. */
  public enum Weighting {
    /** {@code exp(-(Q/R)(1/T - 1/T0))}: equivalent time of a first-order change. */
    PLAIN,
    /** The same times {@code T0/T}: the work of sintering of the master sintering curve. */
    MASTER_SINTERING
  }

  public HeatWork {
    Objects.requireNonNull(reference, "reference");
    Objects.requireNonNull(weighting, "weighting");
    if (!(activationJoulesPerMole > 0 && activationJoulesPerMole < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          "The activation energy (%s J/mol) must be finite and above zero."
              .formatted(activationJoulesPerMole));
    }
    if (!(reference.kelvin() > 0)) {
      throw new IllegalArgumentException(
          "The reference temperature (%s °C) must be above absolute zero."
              .formatted(reference.celsius()));
    }
  }

  /** Heat-work with the plain weighting. */
  public static HeatWork of(double activationJoulesPerMole, Temperature reference) {
    return new HeatWork(activationJoulesPerMole, reference, Weighting.PLAIN);
  }

  /** How many seconds at the reference one second at a temperature is worth. */
  public double worthOfSecondAt(Temperature temperature) {
    return worth(temperature.kelvin());
  }

  /**
   * How long another temperature takes to do what a stay at the first has done.
   *
   * @param seconds the stay, s
   * @param at where it was
   * @param instead the other temperature, above absolute zero
   * @return s
   */
  public double equivalentSeconds(double seconds, Temperature at, Temperature instead) {
    return seconds * worth(at.kelvin()) / worth(instead.kelvin());
  }

  /**
   * How much hotter than the reference the work goes twice as fast, {@code ln 2 R T0²/Q}: exact for
   * a small step, and some hundredths short for the plain weighting at usual Q.
   */
  public TemperatureChange halvingStep() {
    double kelvin = reference.kelvin();
    return TemperatureChange.ofKelvins(
        Math.log(2) * GAS_CONSTANT * kelvin * kelvin / activationJoulesPerMole);
  }

  /** Equivalent seconds of one ramp, up or down. */
  public double secondsOfRamp(Temperature from, Temperature to, HeatingRate rate) {
    double seconds = Math.abs(to.celsius() - from.celsius()) / rate.kelvinsPerHour() * 3600;
    return seconds * meanWorth(from.kelvin(), to.kelvin());
  }

  /**
   * Equivalent seconds of a temperature history that is straight between its points, integrated to
   * rounding.
   *
   * @param seconds times, s, never falling
   * @param celsius temperature at each, °C, not below absolute zero
   */
  public double secondsOf(double[] seconds, double[] celsius) {
    return StraightHistory.integral(
        seconds, celsius, (from, to) -> meanWorth(kelvin(from), kelvin(to)));
  }

  private static double kelvin(double celsius) {
    return Temperature.ofCelsius(celsius).kelvin();
  }

  private double worth(double kelvin) {
    if (kelvin <= 0) {
      return 0;
    }
    double t0 = reference.kelvin();
    double plain = Math.exp(-activationJoulesPerMole / GAS_CONSTANT * (1 / kelvin - 1 / t0));
    return weighting == Weighting.PLAIN ? plain : plain * t0 / kelvin;
  }

  /** Mean worth along a straight change of temperature, in panels of like exponent. */
  private double meanWorth(double fromKelvin, double toKelvin) {
    double low = Math.min(fromKelvin, toKelvin);
    double high = Math.max(fromKelvin, toKelvin);
    if (high <= 0 || low == high) {
      return worth(high);
    }
    double scale = activationJoulesPerMole / GAS_CONSTANT;
    // From the hot end down: what is colder by e^-45 adds nothing that a double could hold.
    double coldest = Math.max(low, 1 / (1 / high + 45 / scale));
    // Where Q is small the factor 1/T is what bends: no panel is wider than a tenth of T.
    return StraightHistory.overStretch(
            coldest,
            high,
            top -> Math.max(1 / (1 / top + EXPONENT_A_PANEL / scale), 0.9 * top),
            this::worth)
        / (high - low);
  }
}
