package org.heatwright.material;

import java.util.Objects;
import org.heatwright.units.Temperature;

/**
 * Viscosity of a glass by three constants, {@code log10 η = A + B/(T - T0)}, η in poise (dPa s), T
 * in °C. Immutable.
 *
 * <p>It holds over the range its points were taken from; well below the annealing point a glass
 * that cools has no time to follow it. At and below T0 the glass counts as rigid.
 *
 * @see "memory: Vogel 1921, Fulcher 1925, Tammann and Hesse 1926, the three-constant equation"
 */
public final class Viscosity {

  /** Stress goes in hours: log10 of poise at the strain point (an encyclopaedia, read). */
  public static final double STRAIN_LOG_POISE = 14.5;

  /** Stress goes in minutes: log10 of poise at the annealing point (an encyclopaedia, read). */
  public static final double ANNEALING_LOG_POISE = 13;

  /** A fibre sags under itself: log10 of poise at the softening point (from memory). */
  public static final double SOFTENING_LOG_POISE = 7.6;

  /** log10 of poise at the working point (common practice). */
  public static final double WORKING_LOG_POISE = 4;

  private static final double PASCAL_SECONDS_A_POISE = 0.1;

  /** ln of the viscosity may change by so much in one panel: five nodes are then good to 1e-8. */
  private static final double LOG_A_PANEL = 1;

  /** What is thicker by e to this power adds nothing. */
  private static final double LOG_CUT = 40;

  private final double a;
  private final double b;
  private final double t0Celsius;
  private final Origin origin;

  private Viscosity(double a, double b, double t0Celsius, Origin origin) {
    this.a = a;
    this.b = b;
    this.t0Celsius = t0Celsius;
    this.origin = Objects.requireNonNull(origin, "origin");
    if (!Double.isFinite(a)
        || !(b > 0 && b < Double.POSITIVE_INFINITY)
        || !Double.isFinite(t0Celsius)) {
      throw new IllegalArgumentException(
          "The viscosity needs finite constants with B above zero, not A %s, B %s, T0 %s."
              .formatted(a, b, t0Celsius));
    }
  }

  /**
   * By its constants.
   *
   * @param a log10 of poise that it tends to when very hot
   * @param b K, above zero
   * @param t0 where it would be rigid
   * @param origin where they come from
   */
  public static Viscosity of(double a, double b, Temperature t0, Origin origin) {
    return new Viscosity(a, b, t0.celsius(), origin);
  }

  /**
   * Through three measured points, exactly.
   *
   * @param cold coldest of the three
   * @param coldLogPoise log10 of poise there
   * @param middle between the two
   * @param middleLogPoise log10 of poise there
   * @param hot hottest of the three
   * @param hotLogPoise log10 of poise there
   * @param origin where the points come from
   * @throws IllegalArgumentException if the points do not get thinner as they get hotter, or do not
   *     curve as a glass does (the fall a kelvin must get less with heat)
   */
  public static Viscosity through(
      Temperature cold,
      double coldLogPoise,
      Temperature middle,
      double middleLogPoise,
      Temperature hot,
      double hotLogPoise,
      Origin origin) {
    double t1 = cold.celsius();
    double t2 = middle.celsius();
    double t3 = hot.celsius();
    double bend =
        (coldLogPoise - middleLogPoise) * (t3 - t2) / ((middleLogPoise - hotLogPoise) * (t2 - t1));
    if (!(t1 < t2 && t2 < t3)
        || !(coldLogPoise > middleLogPoise && middleLogPoise > hotLogPoise)
        || !(bend > 1)) {
      throw new IllegalArgumentException(
          ("The points (%s °C: log %s, %s °C: log %s, %s °C: log %s) must get hotter and thinner in"
                  + " that order, and fall less a kelvin between the hotter two.")
              .formatted(t1, coldLogPoise, t2, middleLogPoise, t3, hotLogPoise));
    }
    double t0 = (bend * t1 - t3) / (bend - 1);
    double b = (coldLogPoise - middleLogPoise) * (t1 - t0) * (t2 - t0) / (t2 - t1);
    return new Viscosity(coldLogPoise - b / (t1 - t0), b, t0, origin);
  }

  /** The German standard float glass; standard deviation 0.16 in log10. */
  public static Viscosity standardFloatGlass() {
    return new Viscosity(
        -1.601,
        4330.9,
        246.1,
        Origin.read(
            "Encyclopedia of Glass Science, Technology, History and Culture: constants of DGG-1"));
  }

  /**
   * The same glass, thicker by so many powers of ten at every temperature.
   *
   * @param logPoise added to log10, negative for thinner
   * @param newOrigin where the shift comes from
   */
  public Viscosity thickerBy(double logPoise, Origin newOrigin) {
    return new Viscosity(a + logPoise, b, t0Celsius, newOrigin);
  }

  /** A: log10 of poise that it tends to when very hot. */
  public double a() {
    return a;
  }

  /** B, K. */
  public double b() {
    return b;
  }

  /** T0: where it would be rigid. */
  public Temperature t0() {
    return Temperature.ofCelsius(t0Celsius);
  }

  public Origin origin() {
    return origin;
  }

  /** log10 of the viscosity in poise; infinite at and below T0. */
  public double logPoiseAt(Temperature temperature) {
    return logPoise(temperature.celsius());
  }

  /** The viscosity, Pa s; infinite at and below T0. */
  public double pascalSecondsAt(Temperature temperature) {
    return PASCAL_SECONDS_A_POISE * Math.pow(10, logPoise(temperature.celsius()));
  }

  /**
   * Where the glass has a viscosity.
   *
   * @param logPoise log10 of poise, above A
   */
  public Temperature temperatureAt(double logPoise) {
    if (!(logPoise > a)) {
      throw new IllegalArgumentException(
          "The viscosity (log10 of poise %s) must be above what the glass tends to (%s)."
              .formatted(logPoise, a));
    }
    return Temperature.ofCelsius(t0Celsius + b / (logPoise - a));
  }

  /**
   * Q of the Arrhenius law that has the same slope at a temperature, J/mol: what {@link HeatWork}
   * takes. Above T0.
   */
  public double activationJoulesPerMole(Temperature temperature) {
    double above = temperature.celsius() - t0Celsius;
    if (!(above > 0)) {
      throw new IllegalArgumentException(
          "At %s °C the glass is rigid (T0 is %s °C).".formatted(temperature.celsius(), t0Celsius));
    }
    double share = temperature.kelvin() / above;
    return Math.log(10) * HeatWork.GAS_CONSTANT * b * share * share;
  }

  /**
   * How much the glass has flowed for each pascal of stress, {@code ∫ dt/η}, over a temperature
   * history that is straight between its points.
   *
   * @param seconds times, s, never falling
   * @param celsius temperature at each, °C
   * @return 1/Pa
   */
  public double flowPerPascal(double[] seconds, double[] celsius) {
    return StraightHistory.integral(seconds, celsius, this::meanFluidity);
  }

  private double logPoise(double celsius) {
    return celsius > t0Celsius ? a + b / (celsius - t0Celsius) : Double.POSITIVE_INFINITY;
  }

  /** 1/η, 1/(Pa s). */
  private double fluidity(double celsius) {
    return Math.pow(10, -logPoise(celsius)) / PASCAL_SECONDS_A_POISE;
  }

  /** Mean of 1/η along a straight change of temperature. */
  private double meanFluidity(double from, double to) {
    if (from == to) {
      return fluidity(from);
    }
    double low = Math.min(from, to);
    double high = Math.max(from, to);
    if (high <= t0Celsius) {
      return 0;
    }
    double scale = Math.log(10) * b;
    double coldest = Math.max(low, t0Celsius + scale / (scale / (high - t0Celsius) + LOG_CUT));
    return StraightHistory.overStretch(
            coldest,
            high,
            top -> t0Celsius + scale / (scale / (top - t0Celsius) + LOG_A_PANEL),
            this::fluidity)
        / (high - low);
  }

  @Override
  public String toString() {
    return "log10 poise = %s + %s/(T - %s °C)".formatted(a, b, t0Celsius);
  }
}
