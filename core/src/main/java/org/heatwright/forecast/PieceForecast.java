package org.heatwright.forecast;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.SlabHistory;

/**
 * What a followed piece does, in some of the forecast's draws: their kilns, and the piece as
 * uncertain as it is. The same record tells what a piece did by a log.
 *
 * @param piece what it is
 * @param draws one history a draw, each from 0 s to the forecast's horizon; at least one, the first
 *     with the piece as it most likely is
 * @param days the day of each draw
 */
public record PieceForecast(
    FollowedPiece piece, List<SlabHistory> draws, List<InsideForecast.Day> days) {

  public PieceForecast {
    draws = List.copyOf(draws);
    days = List.copyOf(days);
    if (draws.isEmpty() || draws.size() != days.size()) {
      throw new IllegalArgumentException(
          "A forecast of a piece needs at least one draw and a day for each (%d draws, %d days)."
              .formatted(draws.size(), days.size()));
    }
  }

  /** The band of something that every draw has. */
  public Band band(ToDoubleFunction<SlabHistory> value) {
    return Band.of(draws.stream().mapToDouble(value).toArray());
  }

  /** Temperature of a place at a time, °C. */
  public Band celsiusAt(FollowedPiece.Place place, double second) {
    return band(draw -> draw.celsiusAt(place.depthMetres(), second));
  }

  /** The hottest of the judged place, °C. */
  public Band hottestCelsius() {
    return band(draw -> draw.hottestCelsius(piece.judged().depthMetres()));
  }

  /** The judged place when the program ends, °C. */
  public Band atEndCelsius() {
    double[] values = new double[draws.size()];
    for (int d = 0; d < values.length; d++) {
      SlabHistory draw = draws.get(d);
      double end = Math.min(draw.endSecond(), days.get(d).endSeconds());
      values[d] = draw.celsiusAt(piece.judged().depthMetres(), end);
    }
    return Band.of(values);
  }
}
