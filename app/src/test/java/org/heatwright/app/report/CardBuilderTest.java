package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import org.heatwright.forecast.Forecast;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class CardBuilderTest {

  private static final Kiln KILN = TestFirings.kiln("Anchor");

  private static Forecast forecast(Schedule schedule) {
    return TestFirings.forecast(schedule, KILN, false);
  }

  @Test
  void withoutAKeypadTheDigitsAreTheSchedules() {
    Card card = TestFirings.bareCard(TestFirings.burnout());
    assertThat(card.digitHeads()).containsExactly("rate, °C/h", "target, °C", "hold, h:mm");
    assertThat(card.entries())
        .extracting(Card.Entry::digits)
        .containsExactly(
            List.of("120", "150", "2:00"),
            List.of("150", "370", "2:00"),
            List.of("180", "720", "2:30"),
            List.of("fastest", "500", "3:00"));
    assertThat(card.extras()).extracting(Card.Extra::digits).containsExactly("3:30");
    assertThat(card.header().zone()).isEqualTo(TestFirings.LISBON);
  }

  /** Source: arithmetic. 150 + 370 + 720 + 500; 120 + 120 + 150 + 180 min of holds. */
  @Test
  void checkFiguresAddUp() {
    Card card = TestFirings.bareCard(TestFirings.burnout());
    assertThat(card.checkFigures())
        .contains(
            new Card.Fact("segments", "4"),
            new Card.Fact("sum of targets", "1740 °C"),
            new Card.Fact("all holds", "570 min = 9 h 30 min"),
            new Card.Fact("segment 5 must read", "empty"));
  }

  /** A delay is elapsed time: on the night with 25 hours it ends an hour earlier by the clock. */
  @Test
  void theDelayIsCountedBackInElapsedTime() {
    ZonedDateTime start = ZonedDateTime.of(2026, 10, 25, 7, 0, 0, 0, ZoneId.of("Europe/London"));
    Schedule schedule = TestFirings.burnout().withStartDelay(Duration.ofHours(12));
    Card card =
        CardBuilder.of(schedule, KILN, forecast(schedule)).start(start, List.of("note")).build();
    assertThat(card.extras().get(0).meaning()).isEqualTo("12 h, start pressed Sat 24 Oct 20:00");
    assertThat(card.timing().notes()).containsExactly("note");
  }

  @Test
  void readyEndsWithTheEarliestEndUnlessTheHeatIsKept() {
    Schedule kept = TestFirings.burnout();
    assertThat(TestFirings.bareCard(kept).timing().ready().orElseThrow().untilSeconds()).isEmpty();
    Schedule off = new Schedule("off", kept.unit(), kept.segments(), Duration.ZERO, AtEnd.OFF);
    assertThat(TestFirings.bareCard(off).timing().ready().orElseThrow().untilSeconds())
        .contains(forecast(off).endSeconds().low());
  }

  @Test
  void aProgramThatEndsAsItGetsThereHasNoReadyWindow() {
    Schedule schedule = TestFirings.stairs(2, TemperatureUnit.CELSIUS);
    assertThat(TestFirings.bareCard(schedule).timing().ready()).isEmpty();
  }

  @Test
  void theLowestLimitRulesTheAlarmAndEveryLimitIsNamed() {
    Card card = TestFirings.burnoutCard();
    assertThat(card.alarms()).hasSize(3);
    assertThat(card.alarms().get(0).sign()).startsWith("Display above 730 °C");
    assertThat(card.limits())
        .contains(
            new Card.Fact("never above", "730 °C, the gypsum-bonded mould; 1100 °C, the kiln"));
  }

  @Test
  void theLastMomentForTheHighestTargetIsWhenItsRampBegins() {
    Card card = TestFirings.bareCard(TestFirings.burnout());
    Card.Act act = card.moments().get(0);
    assertThat(act.what()).isEqualTo("last moment to change the highest target, 720 °C");
    assertThat(act.seconds())
        .isEqualTo(forecast(TestFirings.burnout()).segments().get(1).endSeconds());
    assertThat(act.actNow()).isFalse();
  }

  @Test
  void aForecastOfAnotherScheduleIsRefused() {
    Schedule other = TestFirings.stairs(3, TemperatureUnit.CELSIUS);
    assertThatThrownBy(() -> CardBuilder.of(TestFirings.burnout(), KILN, forecast(other)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("has 3 segments")
        .hasMessageContaining("has 4");
  }
}
