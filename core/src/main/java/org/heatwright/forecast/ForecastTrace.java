package org.heatwright.forecast;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.heatwright.numerics.Samples;

/**
 * The forecast as curves over one time grid. Immutable; what is read out is a copy.
 *
 * <p>The display band says what the display shows (sensor lag and offset included), nine times in
 * ten.
 */
public final class ForecastTrace {

  private final double[] seconds;
  private final double[] setpointCelsius;
  private final double[] lowCelsius;
  private final double[] medianCelsius;
  private final double[] highCelsius;
  private final double[] powerWatts;
  private final Map<String, double[]> workCelsius;

  /**
   * @param seconds rising, s from the program's start
   * @param setpointCelsius the median draw's setpoint, °C
   * @param lowCelsius 5th percentile of the display, °C
   * @param medianCelsius median of the display, °C
   * @param highCelsius 95th percentile of the display, °C
   * @param powerWatts median power, W
   * @param workCelsius median temperature at named places in the work, °C, in order
   */
  public ForecastTrace(
      double[] seconds,
      double[] setpointCelsius,
      double[] lowCelsius,
      double[] medianCelsius,
      double[] highCelsius,
      double[] powerWatts,
      Map<String, double[]> workCelsius) {
    this.seconds = seconds.clone();
    this.setpointCelsius = requireSameLength(setpointCelsius, seconds.length);
    this.lowCelsius = requireSameLength(lowCelsius, seconds.length);
    this.medianCelsius = requireSameLength(medianCelsius, seconds.length);
    this.highCelsius = requireSameLength(highCelsius, seconds.length);
    this.powerWatts = requireSameLength(powerWatts, seconds.length);
    this.workCelsius = new LinkedHashMap<>();
    workCelsius.forEach(
        (name, column) -> this.workCelsius.put(name, requireSameLength(column, seconds.length)));
  }

  public int size() {
    return seconds.length;
  }

  public double[] seconds() {
    return seconds.clone();
  }

  public double[] setpointCelsius() {
    return setpointCelsius.clone();
  }

  public double[] lowCelsius() {
    return lowCelsius.clone();
  }

  public double[] medianCelsius() {
    return medianCelsius.clone();
  }

  public double[] highCelsius() {
    return highCelsius.clone();
  }

  public double[] powerWatts() {
    return powerWatts.clone();
  }

  /** Names of the places in the work, e.g. "mould 1 centre". */
  public List<String> workNames() {
    return new ArrayList<>(workCelsius.keySet());
  }

  public double[] workCelsius(String name) {
    return Objects.requireNonNull(workCelsius.get(name), () -> "no column " + name).clone();
  }

  /** What the display shows at a time, °C: linear between grid points, constant outside. */
  public Band displayCelsiusAt(double second) {
    return new Band(
        Samples.linear(seconds, lowCelsius, second),
        Samples.linear(seconds, medianCelsius, second),
        Samples.linear(seconds, highCelsius, second));
  }

  private static double[] requireSameLength(double[] column, int length) {
    if (column.length != length) {
      throw new IllegalArgumentException(
          "A column of the trace has %d values, but the grid has %d."
              .formatted(column.length, length));
    }
    return column.clone();
  }
}
