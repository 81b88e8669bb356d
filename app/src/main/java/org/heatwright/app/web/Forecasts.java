package org.heatwright.app.web;

import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BiFunction;
import org.heatwright.forecast.EnsembleProgress;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.jspecify.annotations.Nullable;

/**
 * Forecasts that were made lately: the page, the read-back and the card of one plan ask for the
 * same one. All who wait for one are told how far it is, and it ends early when none of them wants
 * it any more. Safe for use from several threads.
 */
final class Forecasts {

  private static final int KEPT = 16;
  private static final int SKETCHES_KEPT = 4;
  private static final int DISPLAYS_KEPT = 4;

  private final Shared whole = new Shared(KEPT, Forecaster::forecast);
  private final Shared sketches =
      new Shared(SKETCHES_KEPT, (request, progress) -> Forecaster.sketch(request));
  private final Shared displays = new Shared(DISPLAYS_KEPT, Forecaster::forecastDisplay);

  /**
   * The whole forecast.
   *
   * @param asker is told how far it is; throws {@link CancellationException} when it does not want
   *     it any more
   * @throws CancellationException if the asker has thrown it
   */
  Forecast of(ForecastRequest request, EnsembleProgress asker) {
    return whole.of(request, asker);
  }

  /** The same, however long it takes. */
  Forecast of(ForecastRequest request) {
    return of(request, EnsembleProgress.UNTOLD);
  }

  /** The display alone, sooner than the whole where something inside the work is followed. */
  Forecast ofDisplay(ForecastRequest request, EnsembleProgress asker) {
    boolean nothingInside =
        request.charge().moulds().isEmpty() && request.charge().followed().isEmpty();
    return nothingInside ? of(request, asker) : displays.of(request, asker);
  }

  /** The median kiln alone, roughly and soon. */
  Forecast sketch(ForecastRequest request) {
    return sketches.of(request, EnsembleProgress.UNTOLD);
  }

  /** One kind of forecast, worked out once for all who ask. */
  private static final class Shared {

    private final Lately<ForecastRequest, Forecast> lately;
    private final BiFunction<ForecastRequest, EnsembleProgress, Forecast> make;
    private final Map<ForecastRequest, List<EnsembleProgress>> waiting = new ConcurrentHashMap<>();

    Shared(int most, BiFunction<ForecastRequest, EnsembleProgress, Forecast> make) {
      this.lately = new Lately<>(most);
      this.make = make;
    }

    Forecast of(ForecastRequest request, EnsembleProgress asker) {
      while (true) {
        List<EnsembleProgress> askers = waiting.compute(request, (r, those) -> with(asker, those));
        try {
          return lately.of(
              request, r -> make.apply(r, (part, done, of) -> tell(askers, part, done, of)));
        } catch (CancellationException ended) {
          if (!askers.contains(asker)) {
            throw ended;
          } // the others did not want it any more just when this one came
        } finally {
          waiting.computeIfPresent(request, (r, those) -> without(asker, those));
        }
      }
    }

    private static List<EnsembleProgress> with(
        EnsembleProgress asker, @Nullable List<EnsembleProgress> those) {
      List<EnsembleProgress> all = those == null ? new CopyOnWriteArrayList<>() : those;
      all.add(asker);
      return all;
    }

    private static @Nullable List<EnsembleProgress> without(
        EnsembleProgress asker, List<EnsembleProgress> those) {
      those.remove(asker);
      return those.isEmpty() ? null : those;
    }

    private static void tell(
        List<EnsembleProgress> askers, EnsembleProgress.Part part, int done, int of) {
      for (EnsembleProgress asker : askers) {
        try {
          asker.done(part, done, of);
        } catch (CancellationException notWantedAnyMore) {
          askers.remove(asker);
          if (askers.isEmpty()) {
            throw notWantedAnyMore;
          }
        }
      }
    }
  }
}
