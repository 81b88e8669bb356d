package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.heatwright.forecast.Forecast;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DisplayTimesTest {

  private static final Kiln KILN = TestFirings.kiln("Anchor");

  private static Forecast of(Schedule schedule) {
    return TestFirings.forecast(schedule, KILN, false);
  }

  /** Seeded: schedules of 1 to 8 segments from some minutes to days, started at any minute. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16})
  void sixToEightRisingRowsInsideTheFiring(long seed) {
    Random random = new Random(seed);
    TemperatureUnit c = TemperatureUnit.CELSIUS;
    List<org.heatwright.schedule.Segment> segments = new java.util.ArrayList<>();
    for (int i = 0; i <= random.nextInt(8); i++) {
      segments.add(
          TestFirings.segment(
              c, 60 + random.nextInt(500), 60 + random.nextInt(900), 10 + random.nextInt(300)));
    }
    Schedule schedule = new Schedule("any", c, segments, Duration.ZERO, AtEnd.OFF);
    ZonedDateTime start = TestFirings.EVENING.plusMinutes(random.nextInt(1440));
    Forecast forecast = of(schedule);
    List<Card.DisplayRow> rows = DisplayTimes.choose(forecast, Optional.of(start));
    assertThat(rows).hasSizeBetween(6, 8);
    double previous = 0;
    for (Card.DisplayRow row : rows) {
      assertThat(row.seconds()).isGreaterThan(previous);
      assertThat(row.seconds()).isLessThanOrEqualTo(forecast.endSeconds().low());
      assertThat(row.displayCelsius()).isEqualTo(forecast.trace().displayCelsiusAt(row.seconds()));
      previous = row.seconds();
    }
  }

  @Test
  void aLongFiringIsLookedAtOnTheQuarterHourThisEveningAndInTheMorning() {
    ZonedDateTime start = TestFirings.EVENING.plusMinutes(7);
    List<ZonedDateTime> times =
        DisplayTimes.choose(of(TestFirings.burnout()), Optional.of(start)).stream()
            .map(r -> start.plusSeconds((long) r.seconds()))
            .toList();
    assertThat(times).allMatch(t -> t.getMinute() % 15 == 0 && t.getSecond() == 0);
    assertThat(times.stream().filter(t -> t.getDayOfMonth() == 2 && t.getHour() < 23))
        .hasSizeGreaterThanOrEqualTo(2);
    assertThat(times.stream().filter(t -> t.getDayOfMonth() == 3 && t.getHour() >= 6))
        .hasSizeGreaterThanOrEqualTo(3);
  }

  @Test
  void aFullPowerRampIsAvoidedWhereAHoldIsNear() {
    TemperatureUnit c = TemperatureUnit.CELSIUS;
    Schedule schedule =
        new Schedule(
            "ramps",
            c,
            List.of(
                TestFirings.segment(c, 0, 400, 120),
                TestFirings.segment(c, 0, 700, 120),
                TestFirings.segment(c, 0, 950, 120)),
            Duration.ZERO,
            AtEnd.OFF);
    List<Card.DisplayRow> rows = DisplayTimes.choose(of(schedule), Optional.empty());
    long narrow =
        rows.stream()
            .filter(r -> r.displayCelsius().high() - r.displayCelsius().low() < 16)
            .count();
    assertThat(narrow).isGreaterThanOrEqualTo(rows.size() - 2L);
  }
}
