package org.heatwright.material;

import org.heatwright.numerics.LinearTable;

/**
 * Temperature and conductivity of a material as functions of its heat content: the form in which a
 * solver that conserves energy wants them. Latent heats are part of the curve. Immutable.
 *
 * <p>Tabulated at equal steps of heat between {@value #LOWEST_CELSIUS} and {@value
 * #HIGHEST_CELSIUS} °C and linear between; beyond the ends the last slope goes on. The table is
 * fine enough that the temperature is within 0.05 K of the exact inverse for the materials of the
 * library (tested).
 *
 * <p>Limit: a latent heat marked {@code once} is treated as reversible here. That is right as long
 * as the body is heated through the range and does not cool back into it.
 */
public final class HeatCurve {

  /** Heat content is counted from here, °C. */
  public static final double LOWEST_CELSIUS = -60;

  /** The table ends here, °C. */
  public static final double HIGHEST_CELSIUS = 1500;

  private static final int POINTS = 2048;
  private static final int COLUMNS = 4;
  private static final double SCAN_KELVINS = 0.125;

  /** Where each interval begins and the last ends, °C. */
  private final double[] celsius = new double[POINTS + 1];

  /** Of each interval in turn: °C where it begins, its rise, W/(m K) where it begins, its rise. */
  private final double[] table = new double[COLUMNS * POINTS];

  private final double stepJoulesPerCubicMetre;
  private final double perStep;

  private HeatCurve(Material material) {
    LinearTable capacity = material.heatCapacityJoulesPerKilogramKelvin();
    double density = material.densityKilogramsPerCubicMetre();
    int scans = (int) Math.round((HIGHEST_CELSIUS - LOWEST_CELSIUS) / SCAN_KELVINS);
    double[] heat = new double[scans + 1];
    double base = capacity.integral(LOWEST_CELSIUS);
    for (int i = 0; i <= scans; i++) {
      double t = LOWEST_CELSIUS + i * SCAN_KELVINS;
      double latent = 0;
      for (Material.LatentHeat step : material.latentHeats()) {
        double share = (t - step.fromCelsius()) / (step.toCelsius() - step.fromCelsius());
        latent += step.joulesPerKilogram() * Math.max(0, Math.min(1, share));
      }
      heat[i] = density * (capacity.integral(t) - base + latent);
    }
    stepJoulesPerCubicMetre = heat[scans] / POINTS;
    perStep = 1 / stepJoulesPerCubicMetre;
    LinearTable k = material.conductivityWattsPerMetreKelvin();
    int below = 0;
    for (int i = 0; i <= POINTS; i++) {
      double h = i * stepJoulesPerCubicMetre;
      while (below < scans - 1 && heat[below + 1] < h) {
        below++;
      }
      double share = (h - heat[below]) / (heat[below + 1] - heat[below]);
      celsius[i] = LOWEST_CELSIUS + (below + share) * SCAN_KELVINS;
    }
    double begins = k.at(celsius[0]);
    for (int i = 0; i < POINTS; i++) {
      double ends = k.at(celsius[i + 1]);
      table[COLUMNS * i] = celsius[i];
      table[COLUMNS * i + 1] = celsius[i + 1] - celsius[i];
      table[COLUMNS * i + 2] = begins;
      table[COLUMNS * i + 3] = ends - begins;
      begins = ends;
    }
  }

  public static HeatCurve of(Material material) {
    return new HeatCurve(material);
  }

  /** Index of the table interval that holds a heat content; the caller may reuse it below. */
  public int interval(double joulesPerCubicMetre) {
    int i = (int) (joulesPerCubicMetre * perStep);
    return i < 0 ? 0 : Math.min(i, POINTS - 1);
  }

  /** Temperature, °C, at a heat content within {@code interval} (or beyond an end). */
  public double celsius(int interval, double joulesPerCubicMetre) {
    double share = joulesPerCubicMetre * perStep - interval;
    return table[COLUMNS * interval] + share * table[COLUMNS * interval + 1];
  }

  /** Kelvins a J/m³ in an interval. */
  public double kelvinsPerHeat(int interval) {
    return table[COLUMNS * interval + 1] * perStep;
  }

  /** Conductivity, W/(m K). */
  public double conductivity(int interval, double joulesPerCubicMetre) {
    double share = joulesPerCubicMetre * perStep - interval;
    share = share < 0 ? 0 : Math.min(share, 1);
    return table[COLUMNS * interval + 2] + share * table[COLUMNS * interval + 3];
  }

  /**
   * Looks up a row of heat contents at once, as {@link #interval}, {@link #celsius}, {@link
   * #conductivity} and {@link #kelvinsPerHeat} do one by one.
   *
   * @param heat J/m³
   * @param from first index, in all of the arrays
   * @param to one after the last
   * @param celsiusOut receives temperatures, °C
   * @param conductivityOut receives conductivities, W/(m K)
   * @param kelvinsPerHeatOut receives K m³/J
   */
  public void lookUp(
      double[] heat,
      int from,
      int to,
      double[] celsiusOut,
      double[] conductivityOut,
      double[] kelvinsPerHeatOut) {
    for (int c = from; c < to; c++) {
      double place = heat[c] * perStep;
      int i = Math.max(0, Math.min((int) place, POINTS - 1));
      double share = place - i;
      int row = COLUMNS * i;
      double rise = table[row + 1];
      celsiusOut[c] = table[row] + share * rise;
      kelvinsPerHeatOut[c] = rise * perStep;
      double inside = share < 0 ? 0 : share > 1 ? 1 : share;
      conductivityOut[c] = table[row + 2] + inside * table[row + 3];
    }
  }

  /**
   * How conductivity changes with heat content, for a row of heat contents: the slope of what
   * {@link #lookUp} gives, zero beyond the ends.
   *
   * @param heat J/m³
   * @param from first index, in both arrays
   * @param to one after the last
   * @param slopeOut receives W/(m K) a J/m³
   */
  public void conductivitySlopes(double[] heat, int from, int to, double[] slopeOut) {
    for (int c = from; c < to; c++) {
      double place = heat[c] * perStep;
      int i = Math.max(0, Math.min((int) place, POINTS - 1));
      boolean inside = place >= 0 && place <= POINTS;
      slopeOut[c] = inside ? table[COLUMNS * i + 3] * perStep : 0;
    }
  }

  /** Heat content at a temperature, J/m³, from {@value #LOWEST_CELSIUS} °C. */
  public double heatAt(double temperatureCelsius) {
    int found = java.util.Arrays.binarySearch(celsius, temperatureCelsius);
    int i = found >= 0 ? found : -found - 2;
    i = Math.max(0, Math.min(POINTS - 1, i));
    double share = (temperatureCelsius - celsius[i]) / (celsius[i + 1] - celsius[i]);
    return (i + share) * stepJoulesPerCubicMetre;
  }
}
