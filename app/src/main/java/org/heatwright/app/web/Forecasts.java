package org.heatwright.app.web;

import java.util.LinkedHashMap;
import java.util.Map;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;

/**
 * Forecasts that were made lately: the page, the read-back and the card of one plan ask for the
 * same one. Safe for use from several threads; two that ask for the same one at once may both work.
 */
final class Forecasts {

  private static final int KEPT = 24;

  private final Map<ForecastRequest, Forecast> kept =
      new LinkedHashMap<>(KEPT, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<ForecastRequest, Forecast> eldest) {
          return size() > KEPT;
        }
      };

  Forecast of(ForecastRequest request) {
    synchronized (kept) {
      Forecast known = kept.get(request);
      if (known != null) {
        return known;
      }
    }
    Forecast made = Forecaster.forecast(request);
    synchronized (kept) {
      kept.put(request, made);
    }
    return made;
  }
}
