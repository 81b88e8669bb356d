package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.ProgramLimits;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScheduleFileTest {

  private static final String GOOD =
      """
      name: harbour-burnout
      unit: C
      segments:
        - {rate: 120, target: 150, hold: "2:00"}
        - {rate: fastest, target: 650, hold: "27:30"}
      start-delay: "0:15"
      at-end: keep
      """;

  private static Schedule read(String text) {
    return ScheduleFile.read(text, "schedule.yaml");
  }

  @Test
  void readsEveryField() {
    Schedule schedule = read(GOOD);

    assertThat(schedule.name()).isEqualTo("harbour-burnout");
    assertThat(schedule.unit()).isEqualTo(TemperatureUnit.CELSIUS);
    assertThat(schedule.startDelay()).hasMinutes(15);
    assertThat(schedule.atEnd()).isEqualTo(AtEnd.KEEP);
    assertThat(schedule.segments())
        .containsExactly(
            new Segment(
                Ramp.at(HeatingRate.ofKelvinsPerHour(120)),
                Temperature.ofCelsius(150),
                Duration.ofHours(2)),
            new Segment(Ramp.fastest(), Temperature.ofCelsius(650), Duration.ofMinutes(1650)));
  }

  @Test
  void fahrenheitTargetsAreOffsetAndRatesAreNot() {
    Schedule schedule = read("name: f\nunit: F\nsegments:\n- {rate: 270, target: 1350}\n");

    assertThat(schedule.segments().get(0).target().celsius()).isEqualTo((1350 - 32) / 1.8);
    assertThat(schedule.segments().get(0).ramp().rate().orElseThrow().kelvinsPerHour())
        .isEqualTo(150);
    assertThat(ScheduleFile.write(schedule)).contains("{rate: 270, target: 1350, hold: \"0:00\"}");
  }

  @Test
  void whatIsWrittenReadsBackTheSame() {
    Random random = new Random(4711);
    int kept = 0;
    while (kept < 2000) {
      Schedule schedule = anySchedule(random);
      if (ProgramLimits.beyond(schedule.segments()).isPresent()) {
        continue;
      }
      kept++;
      assertThat(read(ScheduleFile.write(schedule))).isEqualTo(schedule);
    }
  }

  private static Schedule anySchedule(Random random) {
    TemperatureUnit unit =
        random.nextBoolean() ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT;
    List<Segment> segments = new ArrayList<>();
    for (int n = 1 + random.nextInt(9); n > 0; n--) {
      double decimals = Math.pow(10, random.nextInt(4));
      double target = Math.rint((40 + 1800 * random.nextDouble()) * decimals) / decimals;
      double rate = Math.rint((1 + 3000 * random.nextDouble()) * decimals) / decimals;
      segments.add(
          new Segment(
              random.nextInt(4) == 0 ? Ramp.fastest() : Ramp.at(unit.rate(rate)),
              unit.temperature(target),
              Duration.ofMinutes(random.nextInt(3000))));
    }
    String[] names = {"plain", "with space", "no", "7", "quote \" \\ and line", "Ä: {x}", "- a"};
    return new Schedule(
        names[random.nextInt(names.length)],
        unit,
        segments,
        Duration.ofMinutes(random.nextInt(3000)),
        random.nextBoolean() ? AtEnd.OFF : AtEnd.KEEP);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          unit: C    | unit: K    | line 2: unit is "K"; expected C or F.
          unit: C    | unit:      | line 2: unit is empty; expected C or F.
          unit: C    | uint: C    | line 2: uint is not known; expected one of name, unit, segments, start-delay, at-end (did you mean unit?).
          name: harbour-burnout | {} | line 2: name is missing; expected a line such as name: harbour-burnout.
          rate: 120  | rate: 0    | line 4: segments[1].rate is 0; expected a number above zero (°C an hour, at most 100000, or the word fastest).
          rate: 120  | rate: -120 | line 4: segments[1].rate is -120; expected a number above zero (°C an hour, at most 100000, or the word fastest).
          rate: 120  | rate: .nan | line 4: segments[1].rate is ".nan"; expected a number above zero (°C an hour, at most 100000, or the word fastest).
          rate: 120  | rate: 1e6  | line 4: segments[1].rate is 1e6; expected at most 100000 °C an hour.
          rate: 120  | rate: fast | line 4: segments[1].rate is "fast"; expected a number above zero (°C an hour, at most 100000, or the word fastest).
          target: 150 | target: -5 | line 4: segments[1].target is -5; expected a number from 0 to 2000 (°C).
          target: 150 | target: 6500 | line 4: segments[1].target is 6500; expected a number from 0 to 2000 (°C).
          target: 150, | hold: "1:00", | line 4: segments[1].hold is given twice (first on line 4); keep one.
          hold: "2:00" | hold: "2:60" | line 4: segments[1].hold is "2:60"; expected hours and minutes such as "1:30", at most 999:59.
          hold: "2:00" | hold: 90 | line 4: segments[1].hold is 90; expected hours and minutes such as "1:30", at most 999:59.
          hold: "2:00" | hold: -1:00 | line 4: segments[1].hold is "-1:00"; expected hours and minutes such as "1:30", at most 999:59.
          hold: "2:00" | hold: "1000:00" | line 4: segments[1].hold is "1000:00"; expected hours and minutes such as "1:30", at most 999:59.
          at-end: keep | at-end: kep | line 7: at-end is "kep"; expected off or keep (did you mean keep?).
          """)
  void refusesWithOneSentence(String part, String replacement, String message) {
    String with = replacement.equals("{}") ? "" : replacement;
    Inputs.refused(ScheduleFileTest::read, GOOD, part, with, "schedule.yaml, " + message);
  }

  @Test
  void aScheduleWithoutSegmentsIsRefused() {
    Inputs.refused(
        () -> read("name: x\nunit: C\nsegments: []\n"),
        "schedule.yaml, line 3: segments is an empty list; expected a list with at least one"
            + " item.");
    Inputs.refused(
        () -> read("name: x\nunit: C\nsegments: 3\n"),
        "schedule.yaml, line 3: segments is 3; expected a list.");
    Inputs.refused(
        () -> read("name: x\nunit: C\nsegments: [3]\n"),
        "schedule.yaml, line 3: segments[1] is 3; expected a mapping (keys with values).");
  }

  /** A slip, and no forecast of it would end; both limits are our estimate. */
  @Test
  void aProgramIsTenDaysAndTwoHundredSegmentsAtMost() {
    String head = "name: x\nunit: C\nsegments:\n";
    String line = "  - {rate: 100, target: 500, hold: \"0:01\"}\n";
    assertThatThrownBy(
            () -> ScheduleFile.read(head + line + line.replace("0:01", "999:59"), "s.yaml"))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "s.yaml, line 5: with segments[2] the program comes to 41 days 20 h 48 min on paper; expected at most 10 days in all.");
    for (String slow : new String[] {"0.01", "1e-300"}) {
      assertThatThrownBy(
              () -> ScheduleFile.read(head + line.replace("rate: 100", "rate: " + slow), "s.yaml"))
          .hasMessage(
              "s.yaml, line 4: with segments[1] the program comes to more than 1000 days on paper; expected at most 10 days in all.");
    }
    assertThatThrownBy(() -> ScheduleFile.read(head + line.repeat(5000), "s.yaml"))
        .hasMessage(
            "s.yaml, line 204: with segments[201] the program comes to 5000 segments; expected at most 200 segments.");
    assertThat(ScheduleFile.read(head + line.repeat(200), "s.yaml").segments()).hasSize(200);
    assertThat(
            ScheduleFile.read(head + "  - {rate: fastest, target: 500, hold: \"240:00\"}\n", "s")
                .segments())
        .hasSize(1);
  }
}
