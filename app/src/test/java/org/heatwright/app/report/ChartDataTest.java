package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Forecast;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class ChartDataTest {

  private static final ChartData.Limit MOULD = new ChartData.Limit(730, "mould");
  private static final ChartData.Limit KILN = new ChartData.Limit(1100, "kiln");

  private static ChartData chart(Optional<ZonedDateTime> start, TemperatureUnit unit) {
    Schedule schedule = TestFirings.burnout();
    Forecast forecast = TestFirings.forecast(schedule, TestFirings.kiln("Anchor"), true);
    return ChartData.of(forecast, unit, start, List.of(KILN, MOULD));
  }

  @Test
  void ticksAreRoundAndFew() {
    ChartData c = chart(Optional.of(TestFirings.EVENING), TemperatureUnit.CELSIUS);
    assertThat(c.temperatureTicks()).hasSizeBetween(4, 8);
    assertThat(c.temperatureTicks())
        .extracting(ChartData.TemperatureTick::label)
        .startsWith("0", "200", "400");
    assertThat(c.timeTicks()).hasSizeBetween(4, 9);
    assertThat(c.timeTicks().get(0).label()).isEqualTo("21:00");
    assertThat(c.timeTicks().get(0).date()).isEqualTo("Wed 2 Dec");
    assertThat(c.timeTicks().get(0).seconds()).isEqualTo(1800);
    assertThat(c.timeTicks().stream().filter(t -> !t.date().isEmpty())).hasSize(2);
    ChartData f = chart(Optional.empty(), TemperatureUnit.FAHRENHEIT);
    assertThat(f.temperatureTicks().get(1).label()).isEqualTo("500");
    assertThat(f.temperatureTicks().get(1).celsius()).isEqualTo(260);
    assertThat(f.timeTicks().get(0).label()).isEqualTo("+0:00 h");
  }

  @Test
  void onlyTheLowestLimitNearTheCurveIsShownAndThereIsRoomAboveIt() {
    ChartData c = chart(Optional.empty(), TemperatureUnit.CELSIUS);
    assertThat(c.limits()).containsExactly(MOULD);
    assertThat(c.topCelsius()).isGreaterThan(730);
  }

  @Test
  void nightIsFromTenToSix() {
    ChartData c = chart(Optional.of(TestFirings.EVENING), TemperatureUnit.CELSIUS);
    assertThat(c.nights()).containsExactly(new ChartData.Night(1.5 * 3600, 9.5 * 3600));
    assertThat(chart(Optional.empty(), TemperatureUnit.CELSIUS).nights()).isEmpty();
  }

  /** On a night with 25 hours the ticks stay on the clock, and the night is an hour longer. */
  @Test
  void ticksFollowTheClockOverADaylightSavingNight() {
    ZonedDateTime start = ZonedDateTime.of(2026, 10, 24, 20, 0, 0, 0, ZoneId.of("Europe/London"));
    ChartData c = chart(Optional.of(start), TemperatureUnit.CELSIUS);
    assertThat(c.nights()).containsExactly(new ChartData.Night(2 * 3600, 11 * 3600));
    double previous = -1;
    for (ChartData.TimeTick tick : c.timeTicks()) {
      assertThat(tick.seconds()).isGreaterThan(previous);
      assertThat(tick.label()).endsWith(":00");
      previous = tick.seconds();
    }
  }
}
