package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import org.junit.jupiter.api.Test;

/**
 * Outside: in London 01:00 to 02:00 comes twice on 25 October 2026; on Lord Howe Island 01:30 to
 * 02:00 on 4 April 2027, half an hour apart.
 */
class ClockWordsTest {

  private static ZonedDateTime at(String instant, String zone) {
    return Instant.parse(instant).atZone(ZoneId.of(zone));
  }

  @Test
  void anHourThatComesTwiceSaysWhichOne() {
    ZonedDateTime first = at("2026-10-25T00:30:00Z", "Europe/London");
    ZonedDateTime second = at("2026-10-25T01:30:00Z", "Europe/London");
    assertThat(ClockWords.time(first)).isEqualTo("01:30 (1st)");
    assertThat(ClockWords.time(second)).isEqualTo("01:30 (2nd)");
    assertThat(ClockWords.moment(second)).isEqualTo("01:30 (2nd) Sunday 25 October");
    assertThat(ClockWords.stamp(second)).isEqualTo("Sun 25 Oct, 01:30 (2nd)");
    assertThat(ClockWords.window(first, second))
        .isEqualTo("01:30 (1st) to 01:30 (2nd) Sunday 25 October");
    assertThat(ClockWords.window(second, second.plusMinutes(30)))
        .isEqualTo("01:30 (2nd) to 02:00 Sunday 25 October");
  }

  @Test
  void onlyWhatComesTwiceIsMarked() {
    for (String once : new String[] {"2026-10-24T23:59:00Z", "2026-10-25T02:00:00Z"}) {
      assertThat(ClockWords.time(at(once, "Europe/London"))).doesNotContain("(");
      assertThat(ClockWords.time(Instant.parse(once).atZone(ZoneOffset.UTC))).doesNotContain("(");
    }
    assertThat(ClockWords.time(at("2027-04-03T14:45:00Z", "Australia/Lord_Howe")))
        .isEqualTo("01:45 (1st)");
    assertThat(ClockWords.time(at("2027-04-03T15:15:00Z", "Australia/Lord_Howe")))
        .isEqualTo("01:45 (2nd)");
    assertThat(ClockWords.time(at("2027-04-03T14:25:00Z", "Australia/Lord_Howe")))
        .isEqualTo("01:25");
  }

  /** Local time at +00:00 is told as such, not as Z. */
  @Test
  void anOffsetIsTold() {
    assertThat(ClockWords.offset(at("2026-10-25T00:30:00Z", "Europe/London"))).isEqualTo("+01:00");
    assertThat(ClockWords.offset(at("2026-10-25T00:30:00Z", "Atlantic/Azores")))
        .isEqualTo("+00:00");
  }
}
