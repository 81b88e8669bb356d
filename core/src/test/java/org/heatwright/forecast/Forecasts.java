package org.heatwright.forecast;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Forecasts made by hand, for tests that need no kiln. */
final class Forecasts {

  private Forecasts() {}

  /** An empty kiln that reaches its last target and ends as told, at constant power. */
  static Forecast empty(Band reached, Band end, double watts, Band kilowattHours) {
    return forecast(reached, 1, end, watts, kilowattHours, List.of());
  }

  /** A forecast whose work is ready as told. */
  static Forecast withWork(Optional<Band> ready, Band end) {
    return forecast(
        Band.exactly(3600),
        1,
        end,
        1000,
        Band.exactly(5),
        List.of(new WorkForecast(1, "centre", Optional.empty(), ready, Band.exactly(500))));
  }

  static Forecast forecast(
      Band reached,
      double reachedShare,
      Band end,
      double watts,
      Band kilowattHours,
      List<WorkForecast> work) {
    double[] seconds = {0, Math.min(reached.median(), 0.99 * end.median()), end.high()};
    double[] celsius = {20, 500, 500};
    return new Forecast(
        "s",
        "k",
        List.of(new SegmentForecast(1, reached, Optional.of(reached), end, 0, 0, reachedShare)),
        end,
        kilowattHours,
        watts,
        work,
        new ForecastTrace(
            seconds,
            celsius,
            celsius,
            celsius,
            celsius,
            new double[] {watts, watts, watts},
            Map.of()),
        List.of(),
        List.of());
  }
}
