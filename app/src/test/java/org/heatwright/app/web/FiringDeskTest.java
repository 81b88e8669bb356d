package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.Watch;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ForecastRequest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiringDeskTest {

  private static final ZoneId LONDON = ZoneId.of("Europe/London");
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);

  /**
   * In London 01:00 to 02:00 comes twice on 25 October 2026 and is missing on 28 March 2027: the
   * last such time by then.
   */
  @ParameterizedTest
  @CsvSource({
    "2026-10-25T01:20:00Z, 01:40, 2026-10-25T01:40+01:00",
    "2026-10-25T01:40:00Z, 01:30, 2026-10-25T01:30Z",
    "2026-10-25T00:40:00Z, 01:30, 2026-10-25T01:30+01:00",
    "2026-10-25T09:00:00Z, 08:30, 2026-10-25T08:30Z",
    "2026-12-02T09:00:00Z, 09:01, 2026-12-02T09:01Z",
    "2026-12-02T09:00:00Z, 09:02, 2026-12-01T09:02Z",
  })
  void aTypedTimeIsTheLastOneThatTheClockShowed(Instant now, String typed, String expected) {
    assertThat(FiringDesk.last(typed, now.atZone(LONDON)).toOffsetDateTime()).hasToString(expected);
  }

  @ParameterizedTest
  @CsvSource({"2027-03-28T08:00:00Z, 01:30", "2027-03-29T00:10:00Z, 01:30"})
  void aTimeThatTheClockLeftOutIsRefused(Instant now, String typed) {
    assertThatThrownBy(() -> FiringDesk.last(typed, now.atZone(LONDON)))
        .hasMessage(
            "time: 01:30 Sunday 28 March does not exist in Europe/London: the clocks go forward from"
                + " 01:00 to 02:00; write a time that the clock has shown.");
  }

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
