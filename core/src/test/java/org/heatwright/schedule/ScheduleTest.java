package org.heatwright.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.heatwright.schedule.TestSchedules.segment;

import java.time.Duration;
import java.util.List;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScheduleTest {

  @ParameterizedTest
  @CsvSource({"0:00,0", "0:45,45", "2:30,150", "27:30,1650", "100:00,6000"})
  void readsHoursAndMinutesBeyondADay(String text, long minutes) {
    assertThat(HourMinute.parse(text)).contains(Duration.ofMinutes(minutes));
    assertThat(HourMinute.format(Duration.ofMinutes(minutes))).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "2", "2.30", "2:60", "2:5", "-1:00", "a:bc", "2:30:00", "1e3:00"})
  void refusesWhatIsNotHoursAndMinutes(String text) {
    assertThat(HourMinute.parse(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0,0 min", "45,45 min", "60,1 h", "150,2 h 30 min"})
  void saysDurationsInWords(long minutes, String words) {
    assertThat(HourMinute.words(Duration.ofMinutes(minutes))).isEqualTo(words);
  }

  /** Worked by hand: 130/150 h, 2 h, 220/150 h, 2 h, 362/200 h, 4 h, 232/200 h, 2 h = 15 h 17.6. */
  @Test
  void addsUpTheTimeOnPaperUpAndDown() {
    Schedule schedule =
        Schedule.of(
            "burnout",
            TemperatureUnit.CELSIUS,
            List.of(
                segment(150, 150, 120),
                segment(150, 370, 120),
                segment(200, 732, 240),
                segment(200, 500, 120)));
    Schedule.NominalTime time = schedule.nominalTime(Temperature.ofCelsius(20));
    assertThat(time.complete()).isTrue();
    assertThat(time.total()).isEqualTo(Duration.ofHours(15).plusSeconds(18 * 60 + 12));
    assertThat(schedule.peak()).isEqualTo(Temperature.ofCelsius(732));
    assertThat(schedule.setpointBefore(3, Temperature.ofCelsius(20)))
        .isEqualTo(Temperature.ofCelsius(732));
  }

  @Test
  void saysThatPaperCannotTimeTheFastestRamp() {
    Schedule schedule =
        Schedule.of(
            "enamel",
            TemperatureUnit.CELSIUS,
            List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(800), Duration.ofHours(30))));
    Schedule.NominalTime time = schedule.nominalTime(Temperature.ofCelsius(20));
    assertThat(time.complete()).isFalse();
    assertThat(time.total()).isEqualTo(Duration.ofHours(30));
  }

  @Test
  void refusesWhatNoControllerCanDo() {
    assertThatThrownBy(() -> Schedule.of("none", TemperatureUnit.CELSIUS, List.of()))
        .hasMessageContaining("at least one segment");
    assertThatThrownBy(() -> segment(100, 500, 10).withHold(Duration.ofSeconds(90)))
        .hasMessageContaining("whole number of minutes");
    assertThatThrownBy(() -> HeatingRate.ofKelvinsPerHour(0)).hasMessageContaining("above zero");
    assertThatThrownBy(() -> HeatingRate.ofKelvinsPerHour(Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
