package org.heatwright.reference;

/**
 * What one firing of a {@link RichKiln} was: rows every {@link #ROW_SECONDS} s from the program's
 * start, and what happened when. The arrays are this object's own; read, don't write.
 *
 * @param displayCelsius what the display shows: offset, noise and rounding included, °C
 * @param sensorCelsius the tip's true temperature, °C
 * @param radiantCelsius the chamber as an inner face sees it, °C
 * @param airCelsius the chamber's air, °C
 * @param elementCelsius the elements' mean, °C
 * @param setpointCelsius where the setpoint stands, °C; NaN when the program is over with the
 *     elements off
 * @param powerWatts mean of the 10 s before the row, W
 * @param powered false while the mains are off: a logger on the same socket has no row then
 * @param reachedSeconds per segment, when the hold's clock started; NaN if it never did
 * @param endSeconds per segment, when the hold was over; NaN if it never was
 * @param energyAtEndJoules per segment, energy taken until then, J; NaN if it never ended
 * @param energyJoules energy taken until the program's end (or until the last row, if earlier), J
 * @param saturatedSeconds how long the control wanted more than there is, s: a proportional one at
 *     full output; an on-off one switched on with the reading more than 5 K under its lower edge
 * @param audit where the heat went over all rows
 */
@SuppressWarnings("ArrayRecordComponent") // plain arrays: this is read in hot loops of tests
public record RichFiring(
    double[] displayCelsius,
    double[] sensorCelsius,
    double[] radiantCelsius,
    double[] airCelsius,
    double[] elementCelsius,
    double[] setpointCelsius,
    double[] powerWatts,
    boolean[] powered,
    double[] reachedSeconds,
    double[] endSeconds,
    double[] energyAtEndJoules,
    double energyJoules,
    double saturatedSeconds,
    Audit audit) {

  /** Time between rows, s. */
  public static final int ROW_SECONDS = 10;

  /**
   * The balance of heat, J.
   *
   * @param inJoules from the elements
   * @param storedJoules in everything, above the start
   * @param wallJoules through the outer faces, edges and metal
   * @param airJoules with the air that leaks
   * @param openingJoules radiation and heat lost at an open door, gaps, holes and element tails
   */
  public record Audit(
      double inJoules,
      double storedJoules,
      double wallJoules,
      double airJoules,
      double openingJoules) {

    /** What does not close, over what came in and what went out. */
    public double errorShare() {
      double out = wallJoules + airJoules + openingJoules;
      return (inJoules - storedJoules - out) / Math.max(Math.abs(inJoules), Math.abs(out));
    }
  }

  public int rows() {
    return displayCelsius.length;
  }

  public double secondsAt(int row) {
    return row * (double) ROW_SECONDS;
  }

  /** When the program was over, or NaN. */
  public double programEndSeconds() {
    return endSeconds[endSeconds.length - 1];
  }

  /** The highest true sensor temperature, °C. */
  public double peakCelsius() {
    double peak = sensorCelsius[0];
    for (double celsius : sensorCelsius) {
      peak = Math.max(peak, celsius);
    }
    return peak;
  }

  /** The row at or before a time. */
  public int rowAt(double seconds) {
    return Math.max(0, Math.min(rows() - 1, (int) (seconds / ROW_SECONDS)));
  }

  /** Mean of a column over rows from (with) to (without). */
  public static double mean(double[] column, int fromRow, int toRow) {
    double sum = 0;
    for (int i = fromRow; i < toRow; i++) {
      sum += column[i];
    }
    return sum / (toRow - fromRow);
  }
}
