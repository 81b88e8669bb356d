package org.heatwright.kiln;

/** The few formulas of surface heat transfer that the network uses. Temperatures in °C. */
public final class HeatTransfer {

  /** Stefan-Boltzmann constant, W/(m² K⁴), exact since the 2019 SI. Source: memory, CODATA 2018. */
  public static final double STEFAN_BOLTZMANN = 5.670374419e-8;

  /** Convection inside a chamber, W/(m² K). Source: estimate, range 5 to 12. */
  public static final double CHAMBER_CONVECTION = 8;

  private static final double ZERO_CELSIUS_KELVIN = 273.15;

  private HeatTransfer() {}

  /** Black-body emission of a surface, W/m². */
  public static double emission(double celsius) {
    double kelvin = celsius + ZERO_CELSIUS_KELVIN;
    double square = kelvin * kelvin;
    return STEFAN_BOLTZMANN * square * square;
  }

  /** Temperature of a black surface that emits so much, °C; the inverse of {@link #emission}. */
  public static double radiantCelsius(double wattsPerSquareMetre) {
    return Math.sqrt(Math.sqrt(wattsPerSquareMetre / STEFAN_BOLTZMANN)) - ZERO_CELSIUS_KELVIN;
  }

  /** Derivative of {@link #emission}, W/(m² K). */
  public static double emissionSlope(double celsius) {
    double kelvin = celsius + ZERO_CELSIUS_KELVIN;
    return 4 * STEFAN_BOLTZMANN * kelvin * kelvin * kelvin;
  }

  /**
   * Natural convection from a shell to a room, W/(m² K): simplified laminar vertical plate, {@code
   * 1.42 (dT/H)^0.25}.
   *
   * @param kelvins shell above room, K
   * @param heightMetres height of the shell, m
   * @see "memory: Holman, Heat Transfer, table 7-2"
   */
  public static double shellConvection(double kelvins, double heightMetres) {
    return 1.42 * Math.sqrt(Math.sqrt(Math.abs(kelvins) / heightMetres));
  }

  /**
   * Mass flow of the two-way exchange through an open door, kg/s: an upper bound for a small
   * chamber, whose air is not reheated while it passes.
   *
   * @param widthMetres width of the opening, m
   * @param heightMetres height of the opening, m
   * @param insideCelsius inside, °C
   * @param outsideCelsius outside, °C
   * @see "memory: Prahl and Emmons, Combustion and Flame 1975; Rockett 1976"
   */
  public static double doorKilogramsPerSecond(
      double widthMetres, double heightMetres, double insideCelsius, double outsideCelsius) {
    double cold = 353 / (outsideCelsius + ZERO_CELSIUS_KELVIN);
    double hot = 353 / (insideCelsius + ZERO_CELSIUS_KELVIN);
    if (hot >= cold) {
      return 0;
    }
    double term = 1 + Math.cbrt(cold / hot);
    return 2.0
        / 3
        * 0.6
        * widthMetres
        * Math.pow(heightMetres, 1.5)
        * Math.sqrt(2 * 9.80665 * cold * (cold - hot) / (term * term * term));
  }
}
