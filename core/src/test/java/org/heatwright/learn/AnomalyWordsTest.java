package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.junit.jupiter.api.Test;

class AnomalyWordsTest {

  private static String happened(double afterSeconds) {
    return new Anomaly(
            new Disturbance(Disturbance.Kind.MAINS_OFF, afterSeconds, 300), List.of(), 9, 30)
        .happened(
            Optional.of(Instant.parse("2026-10-24T22:00:00Z").atZone(ZoneId.of("Europe/London"))));
  }

  /** A firing from 23:00 on over the night when London's clocks go back at 02:00. */
  @Test
  void whenItHappenedIsTakenOffTheClockOfThatNight() {
    assertThat(happened(3_600)).startsWith("At 00:00 (+1:00) the display");
    assertThat(happened(9_000)).startsWith("At 01:30 (1st) (+2:30) the display");
    assertThat(happened(12_600)).startsWith("At 01:30 (2nd) (+3:30) the display");
    assertThat(happened(18_000)).startsWith("At 03:00 (+5:00) the display");
  }
}
