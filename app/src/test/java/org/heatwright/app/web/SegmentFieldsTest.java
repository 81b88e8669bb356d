package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SegmentFieldsTest {

  @ParameterizedTest
  @EnumSource(TemperatureUnit.class)
  void whatTheFieldsShowIsNoEdit(TemperatureUnit unit) {
    Schedule composed = schedule(unit);
    Segment first = composed.segments().get(0);
    var edited =
        SegmentFields.apply(
            Map.of(
                "rate1", SegmentFields.rate(first, unit),
                "target1", SegmentFields.target(first, unit),
                "hold1", SegmentFields.hold(first)),
            composed);
    assertThat(edited.schedule()).isEqualTo(composed);
    assertThat(edited.kept()).isEmpty();
    assertThat(edited.errors()).isEmpty();
  }

  @Test
  void typedValuesGoIntoTheirPlaces() {
    var edited =
        SegmentFields.apply(
            Map.of("rate2", "95,5", "target1", "160", "hold2", "26:15"),
            schedule(TemperatureUnit.CELSIUS));
    assertThat(edited.errors()).isEmpty();
    Schedule schedule = edited.schedule();
    assertThat(schedule.segments().get(0).target().celsius()).isEqualTo(160);
    assertThat(schedule.segments().get(1).ramp())
        .isEqualTo(Ramp.at(TemperatureUnit.CELSIUS.rate(95.5)));
    assertThat(schedule.segments().get(1).hold()).isEqualTo(Duration.ofMinutes(26 * 60 + 15));
    assertThat(edited.kept()).hasSize(3);
  }

  @ParameterizedTest
  @CsvSource({
    "rate1, 0, above 0",
    "rate1, -5, above 0",
    "rate1, NaN, above 0",
    "rate1, quick, fastest",
    "target2, 5000, 0 to 2000",
    "target2, 7o0, 0 to 2000",
    "hold1, 90, 1:30 or 90:00",
    "hold1, 1.50, such as 2:30",
    "hold1, '', empty now",
    "hold1, 999:00, the program comes to 41 days 19 h",
    "rate1, '0,1', the program comes to 116 days",
  })
  void aWrongTextIsToldInOneSentenceAndTheComposedValueStands(
      String field, String typed, String told) {
    Schedule composed = schedule(TemperatureUnit.CELSIUS);
    var edited = SegmentFields.apply(Map.of(field, typed), composed);
    assertThat(edited.errors()).containsOnlyKeys(field);
    assertThat(edited.errors().get(field)).contains(told).endsWith(".").doesNotContain("\n");
    assertThat(edited.schedule()).isEqualTo(composed);
    assertThat(edited.kept()).containsEntry(field, typed);
  }

  private static Schedule schedule(TemperatureUnit unit) {
    return Schedule.of(
        "harbour",
        unit,
        List.of(
            new Segment(Ramp.at(unit.rate(100)), unit.temperature(300), Duration.ofHours(2)),
            new Segment(Ramp.fastest(), unit.temperature(1300), Duration.ofMinutes(90))));
  }

  /** As a phone's keyboard has it; a bare number stays refused, it could be either. */
  @ParameterizedTest
  @CsvSource({
    "1:30, 90",
    "1h30, 90",
    "1 h 30 min, 90",
    "90 min, 90",
    "90m, 90",
    "2h, 120",
    "2 H, 120",
    "0h05, 5"
  })
  void aHoldIsTakenAsItIsTyped(String typed, long minutes) {
    assertThat(SegmentFields.parseHold(typed)).contains(Duration.ofMinutes(minutes));
  }

  @ParameterizedTest
  @ValueSource(strings = {"90", "1h60", "h30", "1.30", "1 h 5 h", ""})
  void aHoldThatIsNoneIsRefused(String typed) {
    assertThat(SegmentFields.parseHold(typed)).isEmpty();
  }
}
