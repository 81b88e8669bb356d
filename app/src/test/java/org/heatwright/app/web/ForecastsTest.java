package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.EnsembleProgress;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** One forecast is worked out once, for as long as somebody wants it. */
@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ForecastsTest {

  private static final int DRAWS = 12;

  private static final ForecastRequest REQUEST = request();

  private final Forecasts forecasts = new Forecasts();

  private static ForecastRequest request() {
    try (Store store = Store.temporary(Clock.systemUTC())) {
      DemoStudio.fill(store);
      Firing firing =
          new FiringPlanner(store, Clock.systemUTC())
              .plan(Choices.of(DemoStudio.OPENING), 1)
              .firing()
              .orElseThrow();
      return ForecastRequest.of(
              firing.program().expressible(), firing.kiln(), firing.composition().charge())
          .withDraws(DRAWS);
    }
  }

  @Test
  void tellsEveryKilnAndEveryMouldOnce() {
    AtomicInteger kilns = new AtomicInteger();
    AtomicInteger parts = new AtomicInteger();
    int kinds = REQUEST.charge().moulds().size();
    forecasts.of(
        REQUEST,
        (part, done, of) -> {
          boolean inside = part == EnsembleProgress.Part.MOULDS;
          (inside ? parts : kilns).incrementAndGet();
          assertThat(of).isEqualTo(inside ? kinds * DRAWS : DRAWS);
          assertThat(done).isBetween(1, of);
        });
    assertThat(kilns).hasValue(DRAWS);
    assertThat(parts).hasValue(kinds * DRAWS);
  }

  @Test
  void endsWhenNobodyWantsItAndIsMadeAnewForTheNext() {
    AtomicInteger told = new AtomicInteger();
    assertThatThrownBy(
            () ->
                forecasts.of(
                    REQUEST,
                    (part, done, of) -> {
                      told.incrementAndGet();
                      throw new CancellationException();
                    }))
        .isInstanceOf(CancellationException.class);
    assertThat(told.get()).as("before all of it was done").isLessThan(DRAWS);
    assertThat(forecasts.of(REQUEST).segments()).isNotEmpty();
  }

  @Test
  void goesOnForWhoStillWantsIt() throws Exception {
    CompletableFuture<Void> bothAsk = new CompletableFuture<>();
    CompletableFuture<Forecast> first =
        CompletableFuture.supplyAsync(
            () ->
                forecasts.of(
                    REQUEST,
                    (part, done, of) -> {
                      bothAsk.join();
                      throw new CancellationException();
                    }));
    AtomicInteger told = new AtomicInteger();
    CompletableFuture<Forecast> second = new CompletableFuture<>();
    Thread other =
        new Thread(
            () ->
                second.complete(forecasts.of(REQUEST, (part, done, of) -> told.incrementAndGet())));
    other.start();
    while (other.getState() != Thread.State.WAITING) {
      Thread.sleep(5);
    }
    bothAsk.complete(null);
    assertThat(second.get(30, TimeUnit.SECONDS).segments()).isNotEmpty();
    assertThat(told.get()).isPositive();
    assertThat(first.get(30, TimeUnit.SECONDS)).isSameAs(second.join());
  }
}
