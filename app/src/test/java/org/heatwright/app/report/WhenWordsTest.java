package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.junit.jupiter.api.Test;

class WhenWordsTest {

  private static final double HOUR = 3600;

  private static WhenWords from(int year, int month, int day, int hour, int minute, String zone) {
    return new WhenWords(
        Optional.of(ZonedDateTime.of(year, month, day, hour, minute, 0, 0, ZoneId.of(zone))));
  }

  @Test
  void saysWeekdayDateAndClockAcrossMidnight() {
    WhenWords words = from(2026, 12, 2, 20, 30, "Europe/Lisbon");
    assertThat(words.full(0)).isEqualTo("Wed 2 Dec 20:30");
    assertThat(words.full(12 * HOUR)).isEqualTo("Thu 3 Dec 08:30");
    assertThat(words.full(89)).isEqualTo("Wed 2 Dec 20:31");
  }

  @Test
  void aDeadlineGoesDownToItsMinute() {
    WhenWords words = from(2026, 12, 2, 20, 30, "Europe/Lisbon");
    assertThat(words.full(words.minuteBefore(89))).isEqualTo("Wed 2 Dec 20:31");
    assertThat(words.full(words.minuteBefore(59))).isEqualTo("Wed 2 Dec 20:30");
    assertThat(words.full(words.minuteBefore(60))).isEqualTo("Wed 2 Dec 20:31");
    assertThat(words.full(words.minuteAfter(61))).isEqualTo("Wed 2 Dec 20:32");
  }

  @Test
  void aBandOpensOutwardAndNamesTheOtherDay() {
    WhenWords words = from(2026, 12, 2, 20, 30, "Europe/Lisbon");
    assertThat(words.band(new Band(61, 300, 359))).isEqualTo("20:31 to 20:36");
    assertThat(words.band(new Band(60, 300, 360))).isEqualTo("20:31 to 20:36");
    assertThat(words.band(new Band(3 * HOUR, 3.4 * HOUR, 4 * HOUR)))
        .isEqualTo("23:30 to Thu 00:30");
    assertThat(words.band(new Band(3 * HOUR, 3.6 * HOUR, 4 * HOUR)))
        .isEqualTo("Wed 23:30 to 00:30");
  }

  /** Source: arithmetic with the zone's rules; the night of 24 to 25 October 2026 has 25 hours. */
  @Test
  void theNightWithAnHourTwiceSaysWhichOne() {
    WhenWords words = from(2026, 10, 24, 20, 0, "Europe/London");
    assertThat(words.full(5.5 * HOUR)).isEqualTo("Sun 25 Oct 01:30 (1st)");
    assertThat(words.full(6.5 * HOUR)).isEqualTo("Sun 25 Oct 01:30 (2nd)");
    assertThat(words.full(12 * HOUR)).isEqualTo("Sun 25 Oct 07:00");
  }

  @Test
  void theNightWithoutAnHourIsElapsedTime() {
    WhenWords words = from(2027, 3, 27, 20, 0, "Europe/London");
    assertThat(words.full(12 * HOUR)).isEqualTo("Sun 28 Mar 09:00");
  }

  @Test
  void withoutAStartItSaysElapsedTime() {
    WhenWords words = new WhenWords(Optional.empty());
    assertThat(words.full(12 * HOUR + 60)).isEqualTo("+12:01 h");
    assertThat(words.day(0)).isEmpty();
    assertThat(words.band(new Band(30 * HOUR, 31 * HOUR, 31 * HOUR + 1)))
        .isEqualTo("+30:00 h to +31:01 h");
  }
}
