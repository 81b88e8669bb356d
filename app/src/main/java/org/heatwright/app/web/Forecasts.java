package org.heatwright.app.web;

import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;

/**
 * Forecasts that were made lately: the page, the read-back and the card of one plan ask for the
 * same one. Safe for use from several threads.
 */
final class Forecasts {

  private static final int KEPT = 16;
  private static final int DISPLAYS_KEPT = 4;

  private final Lately<ForecastRequest, Forecast> whole = new Lately<>(KEPT);
  private final Lately<ForecastRequest, Forecast> displays = new Lately<>(DISPLAYS_KEPT);

  Forecast of(ForecastRequest request) {
    return whole.of(request, Forecaster::forecast);
  }

  /** The display alone, sooner than the whole where something inside the work is followed. */
  Forecast ofDisplay(ForecastRequest request) {
    boolean nothingInside =
        request.charge().moulds().isEmpty() && request.charge().followed().isEmpty();
    return nothingInside ? of(request) : displays.of(request, Forecaster::forecastDisplay);
  }
}
