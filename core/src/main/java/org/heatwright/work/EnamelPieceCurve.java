package org.heatwright.work;

import java.util.List;

/**
 * A piece that goes into the hot kiln, on its own clock: from the moment the door was shut behind
 * it.
 *
 * @param rows rising in time
 */
public record EnamelPieceCurve(List<Row> rows) {

  /**
   * One moment.
   *
   * @param seconds from the door's shutting
   * @param lowCelsius the piece, 5th percentile
   * @param medianCelsius the piece
   * @param highCelsius the piece, 95th percentile
   * @param chamberCelsius what radiates about it, median
   */
  public record Row(
      double seconds,
      double lowCelsius,
      double medianCelsius,
      double highCelsius,
      double chamberCelsius) {}

  public EnamelPieceCurve {
    rows = List.copyOf(rows);
  }
}
