package org.heatwright.app.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class LogImportTest {

  private static LogReading read(String text, String... corrections) {
    return LogImport.read(
        text.getBytes(StandardCharsets.UTF_8),
        "thursday.csv",
        Corrections.of(List.of(corrections), "--set"));
  }

  private static Decision decision(LogReading reading, Topic topic) {
    return reading.decision(topic).orElseThrow();
  }

  /** Lines of a log: a time, a reading. */
  private static String rows(String... rows) {
    return String.join("\n", rows) + "\n";
  }

  @Test
  void semicolonsDecimalCommasFahrenheitShortYearsAndAGapAreReadRight() {
    String text =
        rows(
            "Kiln room, left wall",
            "",
            "Date;Time;Set °F;Actual °F;Output %;Note",
            "30.04.26;23:40;68,0;68,9;0;",
            "30.04.26;23:45;212,0;199,4;100;door-shut",
            "30.04.26;23:50;230,0;212,0;100;",
            "30.04.26;23:55;248,0;---;100;",
            "01.05.26;1:25;1112,0;1103,9;40,5;",
            "01.05.26;1:30;1130,0;1121,0;41,0;");
    LogReading reading =
        LogImport.read(
            text.getBytes(StandardCharsets.ISO_8859_1),
            "thursday.csv",
            Corrections.of(List.of("full-power-w=2000"), "--set"));

    assertThat(reading.log().localStart()).contains(LocalDateTime.of(2026, 4, 30, 23, 40));
    assertThat(reading.log().rows().stream().mapToDouble(LogFile.Row::seconds))
        .containsExactly(0.0, 300.0, 600.0, 6300.0, 6600.0);
    // (68.9 − 32) / 1.8 and so on, by hand
    double[] celsius = {20.5, 93.0, 100.0, 595.5, 605.0};
    for (int i = 0; i < celsius.length; i++) {
      assertThat(reading.log().rows().get(i).chamberCelsius()).isCloseTo(celsius[i], within(1e-9));
    }
    assertThat(reading.log().rows().get(3).powerWatts().orElseThrow()).isCloseTo(810, within(1e-9));
    assertThat(reading.log().rows().get(1).event()).contains("door-shut");
    assertThat(reading.log().remarks())
        .anySatisfy(r -> assertThat(r).isEqualTo("The log has a gap of 5700 s after 600 s."))
        .anySatisfy(r -> assertThat(r).contains("Line 7 is without a reading of the chamber"));
    assertThat(decision(reading, Topic.DATE_ORDER).sure()).isEqualTo(Sureness.SURE);
    assertThat(decision(reading, Topic.UNIT).word()).isEqualTo("fahrenheit");
    assertThat(reading.columns())
        .extracting(LogColumn::use)
        .containsExactly("date", "time", "setpoint", "chamber", "power", "event");
  }

  @Test
  void whatNothingDecidesIsToldToBeAGuess() {
    LogReading reading =
        read(
            rows(
                "Time,Temp",
                "03/04/26 10:00,20.5",
                "03/04/26 10:05,120.5",
                "03/04/26 10:10,220.5"));
    Decision order = decision(reading, Topic.DATE_ORDER);
    assertThat(order.sure()).isEqualTo(Sureness.GUESS);
    assertThat(order.why())
        .startsWith(
            "03/04/26: day first or month first cannot be told: nothing in the file decides");
    assertThat(order.alternatives()).containsExactly("month-day-year");
    assertThat(reading.log().localStart()).contains(LocalDateTime.of(2026, 4, 3, 10, 0));
    Decision unit = decision(reading, Topic.UNIT);
    assertThat(unit.sure()).isEqualTo(Sureness.GUESS);
    assertThat(unit.word()).isEqualTo("celsius");
    assertThat(reading.guesses())
        .extracting(Decision::topic)
        .contains(Topic.DATE_ORDER, Topic.UNIT);
  }

  @Test
  void everyDecisionCanBeTold() {
    String text =
        rows(
            "Time,Temp A,Temp B",
            "03/04/26 10:00,20.5,68.0",
            "03/04/26 10:05,120.5,212.0",
            "03/04/26 10:10,220.5,392.0");
    LogReading reading =
        read(text, "date-order=month-day-year", "chamber=Temp B", "unit=fahrenheit");
    assertThat(reading.log().localStart()).contains(LocalDateTime.of(2026, 3, 4, 10, 0));
    assertThat(reading.log().rows())
        .extracting(LogFile.Row::chamberCelsius)
        .containsExactly(20.0, 100.0, 200.0);
    assertThat(decision(reading, Topic.CHAMBER).sure()).isEqualTo(Sureness.TOLD);
    LogReading byNumber =
        read(text, "chamber=3", "header=none", "first-row=3", "time=1", "unit=fahrenheit");
    assertThat(byNumber.log().rows()).hasSize(2);
    assertThat(byNumber.log().rows().get(0).chamberCelsius()).isEqualTo(100);
    // The form is known again, whatever was told.
    assertThat(byNumber.shape()).isEqualTo(reading.shape()).isEqualTo("comma|time|temp a|temp b");
  }

  @ParameterizedTest
  @CsvSource({
    "13/04/26 10:00, day-month-year, 2026-04-13T10:00",
    "04/13/26 10:00, month-day-year, 2026-04-13T10:00",
    "4/13/2026 12:05 AM, month-day-year, 2026-04-13T00:05",
    "2026/04/03 10:00, year-month-day, 2026-04-03T10:00",
    "26-04-03 10:00, year-month-day, 2026-04-03T10:00",
    "3 Apr 2026 10:00, day-month-year, 2026-04-03T10:00"
  })
  void datesSayTheirOrderWhereTheyCan(String first, String order, LocalDateTime start) {
    String day = first.replaceAll(" [0-9:]+( AM)?$", "");
    LogReading reading =
        read(
            rows(
                "Time;Temp °C",
                first + ";20",
                day + " 2:05" + (first.endsWith("AM") ? " AM" : "") + ";600"),
            first.startsWith("26-") ? "date-order=year-month-day" : "decimal=point");
    assertThat(decision(reading, Topic.DATE_ORDER).word()).isEqualTo(order);
    assertThat(reading.log().localStart()).contains(start);
  }

  @Test
  void instantsAreKept() {
    LogReading offset =
        read(rows("time,temp °C", "2026-04-03T10:00:00+02:00,20", "2026-04-03T10:01:00+02:00,90"));
    assertThat(offset.log().start()).contains(Instant.parse("2026-04-03T08:00:00Z"));
    LogReading epoch = read(rows("t,temp °C", "1775203200000,20", "1775203260500,90"));
    assertThat(epoch.log().start()).contains(Instant.ofEpochMilli(1_775_203_200_000L));
    assertThat(epoch.log().rows().get(1).seconds()).isEqualTo(60.5);
  }

  @Test
  void clocksGoOnAfterMidnight() {
    LogReading reading =
        read(rows("Time;Temp °C", "11:50 PM;400", "11:55 PM;420", "12:00 AM;440", "12:05 AM;460"));
    assertThat(reading.log().rows().stream().mapToDouble(LogFile.Row::seconds))
        .containsExactly(0.0, 300.0, 600.0, 900.0);
  }

  @Test
  void thousandsAndUnitsBehindNumbersAreRead() {
    LogReading reading =
        read(rows("Elapsed min;Temp", "0;998,5 °F", "1;1.002,5 °F", "2;1.006,0 °F"));
    assertThat(decision(reading, Topic.UNIT).word()).isEqualTo("fahrenheit");
    assertThat(reading.log().rows().get(2).chamberCelsius())
        .isCloseTo((1006.0 - 32) / 1.8, within(1e-9));
    assertThat(reading.log().rows().get(2).seconds()).isEqualTo(120);
  }

  @Test
  void aClockThatWasPutBackAndACutOffLineAreTold() {
    StringBuilder text = new StringBuilder("Time;Temp °C\n");
    for (int i = 0; i < 20; i++) {
      text.append("2026-10-25 02:%02d:00;%d\n".formatted(30 + i, 300 + i));
    }
    for (int i = 0; i < 20; i++) {
      text.append("2026-10-25 02:%02d:00;%d\n".formatted(i + 32, 320 + i));
    }
    text.append("2026-10-25 02");
    LogReading reading = read(text.toString());
    assertThat(reading.log().rows()).hasSize(40);
    assertThat(reading.log().remarks())
        .anySatisfy(r -> assertThat(r).startsWith("Line 22: the clock goes back"))
        .anySatisfy(r -> assertThat(r).startsWith("From line 42 on there are no rows"));
  }

  /**
   * One that nothing names: the noisy one is read, the smooth one is the setpoint; both guesses.
   */
  @Test
  void withoutNamesTheReadingIsTheOneWithNoise() {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < 30; i++) {
      text.append("%d %d %d.%d\n".formatted(i * 60, 20 + 10 * i, 18 + 10 * i, i * 7 % 10));
    }
    LogReading reading = read(text.toString());
    assertThat(decision(reading, Topic.CHAMBER).word()).isEqualTo("3");
    assertThat(decision(reading, Topic.CHAMBER).sure()).isEqualTo(Sureness.GUESS);
    assertThat(decision(reading, Topic.SETPOINT).word()).isEqualTo("2");
    assertThat(decision(reading, Topic.TIME_FORM).sure()).isEqualTo(Sureness.GUESS);
  }

  /** A file, corrections for it, and what the sentence must hold. */
  record Wrong(String about, byte[] bytes, String correction, List<String> says) {
    @Override
    public String toString() {
      return about;
    }
  }

  private static Wrong wrong(String about, String text, String... says) {
    return new Wrong(about, text.getBytes(StandardCharsets.UTF_8), "", List.of(says));
  }

  private static Wrong told(String about, String text, String correction, String... says) {
    return new Wrong(about, text.getBytes(StandardCharsets.UTF_8), correction, List.of(says));
  }

  static Stream<Wrong> malformed() {
    String good = "Time;Temp °C\n0:00:00;20,5\n0:01:00;30,5\n0:02:00;40,5\n";
    byte[] cut = Arrays.copyOf(("\uFEFF" + good).getBytes(StandardCharsets.UTF_16LE), 41);
    return Stream.of(
        wrong("empty", " \n\n", "the file is empty", "expected a row"),
        wrong("a workbook", "PK\u0003\u0004 and so on", "a workbook", "save its table as CSV"),
        wrong(
            "bytes", "Time;Temp\n0;20\n60;\u0002\u00011\n", "line 3", "byte 2", "expected a table"),
        new Wrong(
            "cut in a letter", cut, "", List.of("not whole in utf-16le", "copy the file again")),
        wrong(
            "prose",
            "Dear all\nthe kiln was hot\n",
            "line 2",
            "no line holds two values",
            "expected rows"),
        wrong("names alone", "Time;Temp\n", "line 1", "no line holds two values"),
        wrong(
            "a garbled reading",
            good + "0:03:00;5o,5\n",
            "line 5",
            "\"5o,5\"",
            "column \"Temp °C\"",
            "decimal comma",
            "expected one"),
        wrong("both decimal signs", good + "0:03:00;50.5\n", "line 5", "\"50.5\"", "decimal comma"),
        wrong(
            "a garbled time",
            good + "0:61:00;50,5\n",
            "line 5",
            "\"0:61:00\"",
            "is no time",
            "expected one such as"),
        wrong(
            "no such day",
            "Date;Time;Temp °C\n31/04/2026;10:00;20\n31/04/2026;10:05;30\n",
            "line 2",
            "\"31/04/2026\"",
            "is no date",
            "expected a day"),
        wrong(
            "an open quotation mark",
            good + "0:03:00;\"50,5\n0:04:00;60,5\n",
            "line 5",
            "quotation mark",
            "expected two"),
        wrong(
            "rows of other widths",
            good + "0:03:00;5;0\n0:04:00;6;0\n0:05:00;7;0\n0:06:00;8;0\n0:07:00;9,5\n",
            "line 5",
            "3 values",
            "expected 2"),
        wrong(
            "no time",
            "A;B\n20;1\n20;5\n19;3\n22;2\n",
            "no column rises",
            "expected one with a time"),
        wrong(
            "no firing",
            "Time s;Humidity\n0;20,1\n60;20,2\n120;20,3\n",
            "no column holds readings of a firing",
            "expected one"),
        wrong(
            "a clock that stands",
            "Time;Temp °C\n10:00:00;20\n10:00:00;30\n10:00:00;40\n",
            "line 4",
            "same time",
            "expected times that go on"),
        wrong(
            "readings of no kiln",
            "Time s;Temp °C\n0;20\n60;32767\n120;32767\n180;32767\n",
            "line 3",
            "\"32767\"",
            "outside of -100 to 2500",
            "expected another unit"),
        told(
            "no such column",
            good,
            "chamber=Furnace",
            "\"Furnace\"",
            "no such column",
            "expected a number from 1 to 2"),
        told("no such line", good, "first-row=77", "\"77\"", "expected the number of a line"));
  }

  @ParameterizedTest
  @MethodSource("malformed")
  void whatIsWrongIsToldInOneSentence(Wrong wrong) {
    List<String> typed = wrong.correction().isEmpty() ? List.of() : List.of(wrong.correction());
    assertThatThrownBy(
            () -> LogImport.read(wrong.bytes(), "thursday.csv", Corrections.of(typed, "--set")))
        .isInstanceOf(InputException.class)
        .satisfies(
            e -> {
              String said = String.valueOf(e.getMessage());
              assertThat(said).startsWith("thursday.csv").contains(wrong.says());
              assertThat(said).doesNotContain("\n").matches(".*[.…]$");
              assertThat(said.replaceAll("\"[^\"]*\"", "").split("[a-z]\\. ")).hasSize(1);
            });
  }

  @ParameterizedTest
  @CsvSource({
    "unti=fahrenheit, unit",
    "unit=farenheit, fahrenheit",
    "unit, expected unit=…",
    "separator=;, semicolon"
  })
  void aCorrectionThatCannotBeIsToldInOneSentence(String typed, String says) {
    assertThatThrownBy(() -> Corrections.of(List.of(typed), "--set"))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("--set: ")
        .hasMessageContaining(says);
  }

  @Test
  void correctionsAreKeptAsText() {
    Corrections corrections =
        Corrections.of(List.of("unit=fahrenheit", "chamber=Temp = 2"), "--set");
    assertThat(Corrections.read(corrections.text())).isEqualTo(corrections);
    assertThat(Corrections.of(List.of("unit=kelvin"), "").over(corrections).words())
        .containsEntry(Topic.UNIT, "kelvin")
        .containsEntry(Topic.CHAMBER, "Temp = 2");
  }
}
