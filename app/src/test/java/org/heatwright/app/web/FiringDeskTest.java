package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.Watch;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ForecastRequest;
import org.junit.jupiter.api.Test;

class FiringDeskTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);

  /** A person presses start and looks at Now: what was worked out for the plan is there. */
  @Test
  void aFiringThatWasPlannedIsNotForecastAgain() {
    try (Store store = Store.temporary(CLOCK)) {
      DemoStudio.fill(store);
      Forecasts forecasts = new Forecasts();
      Firing firing =
          new FiringPlanner(store, CLOCK, forecasts)
              .plan(Choices.of(DemoStudio.OPENING), ForecastRequest.USUAL_DRAWS)
              .firing()
              .orElseThrow();
      FiringDesk desk = new FiringDesk(store, CLOCK, new SlotsDesk(store, CLOCK), forecasts);
      desk.put(firing, true);
      Watch watch = desk.watch(new FiringBook(store, CLOCK).all().get(0));
      assertThat(watch.forecast() == firing.forecast()).as("the very same").isTrue();
    }
  }
}
