package org.heatwright.work.enamel;

import static org.heatwright.kiln.HeatTransfer.STEFAN_BOLTZMANN;

/**
 * A plate so thin that it has one temperature, heated or cooled by radiation alone from
 * surroundings that stay as they are: the closed form.
 *
 * @see "read: Heat Transfer Handbook, Wiley, eq. 3.283, the same integral"
 */
public final class ThinPlate {

  static final double ZERO_CELSIUS = 273.15;

  private ThinPlate() {}

  /**
   * How long from one temperature to another.
   *
   * @param joulesPerSquareMetreKelvin heat that a square metre of the plate takes up
   * @param emissivitySum of its two faces, each times what it sees of the surroundings
   * @param fromCelsius where it starts
   * @param toCelsius between the start and the surroundings, not reaching them
   * @param aroundCelsius what radiates, as one black wall
   * @return s
   * @throws IllegalArgumentException if it would never get there
   */
  public static double seconds(
      double joulesPerSquareMetreKelvin,
      double emissivitySum,
      double fromCelsius,
      double toCelsius,
      double aroundCelsius) {
    double around = aroundCelsius + ZERO_CELSIUS;
    double from = fromCelsius + ZERO_CELSIUS;
    double to = toCelsius + ZERO_CELSIUS;
    if (!((from <= to && to < around) || (from >= to && to > around))) {
      throw new IllegalArgumentException(
          "A plate of %s °C in surroundings of %s °C never comes to %s °C."
              .formatted(fromCelsius, aroundCelsius, toCelsius));
    }
    return joulesPerSquareMetreKelvin
        / (4 * emissivitySum * STEFAN_BOLTZMANN * around * around * around)
        * (at(to / around) - at(from / around));
  }

  private static double at(double share) {
    return Math.log(Math.abs((1 + share) / (1 - share))) + 2 * Math.atan(share);
  }
}
