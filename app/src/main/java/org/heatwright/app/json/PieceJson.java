package org.heatwright.app.json;

import java.util.List;
import org.heatwright.forecast.PieceForecast;

/** What a followed piece does, at the place that is judged. */
public record PieceJson(
    String piece, int count, String place, BandJson hottestCelsius, BandJson atEndCelsius) {

  static List<PieceJson> of(List<PieceForecast> pieces) {
    return pieces.stream()
        .map(
            forecast ->
                new PieceJson(
                    forecast.piece().name(),
                    forecast.piece().count(),
                    forecast.piece().judged().name(),
                    BandJson.of(forecast.hottestCelsius()),
                    BandJson.of(forecast.atEndCelsius())))
        .toList();
  }
}
