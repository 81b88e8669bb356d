package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class LogFileTest {

  private static LogFile.Log read(String text) {
    return LogFile.read(text, "log.csv");
  }

  @Test
  void readsSecondsAndOptionalColumns() {
    LogFile.Log log =
        read(
            """
            time_s,chamber_c,setpoint_c,power_w,work_c,event
            0,20,20,0,19.5,
            60,22.5,21,2200,,"door-open, briefly"
            """);

    assertThat(log.rows()).hasSize(2);
    assertThat(log.rows().get(0).workCelsius()).hasValue(19.5);
    assertThat(log.rows().get(1).workCelsius()).isEmpty();
    assertThat(log.rows().get(1).event()).contains("door-open, briefly");
    assertThat(log.remarks()).isEmpty();
    assertThat(read(LogFile.write(log))).isEqualTo(log);
  }

  @Test
  void readsFahrenheitAndClockTimesOverAClockChange() {
    LogFile.Log log =
        read(
            """
            time,chamber_f
            2026-10-25T00:59:30+01:00,212
            2026-10-25T01:00:30+01:00,392
            2026-10-25T01:00:30+00:00,32
            """);

    assertThat(log.start()).contains(Instant.parse("2026-10-24T23:59:30Z"));
    assertThat(log.rows()).extracting(LogFile.Row::seconds).containsExactly(0.0, 60.0, 3660.0);
    assertThat(log.rows())
        .extracting(LogFile.Row::chamberCelsius)
        .containsExactly(100.0, 200.0, 0.0);
  }

  @Test
  void gapsRepeatsAndDisorderAreToldNotHidden() {
    LogFile.Log log =
        read(
            """
            time_s,chamber_c,colour
            0,20,red
            10,21,red
            10,22,red
            30,23,red
            20,22,red
            40,,red
            50,24,red
            900,80,red
            910,81,red
            """);

    assertThat(log.rows())
        .extracting(LogFile.Row::seconds)
        .containsExactly(0.0, 10.0, 20.0, 30.0, 50.0, 900.0, 910.0);
    assertThat(log.remarks())
        .containsExactly(
            "Column \"colour\" is not one of ours and is not used.",
            "Line 7 is without a reading of the chamber and is left out.",
            "Line 6 is out of order (20 s after a row of 30 s); the rows are sorted by time.",
            "1 rows have the time of the row before them and are left out.",
            "The log has a gap of 850 s after 50 s.");
  }

  /** Local times in the night when the clocks go back: the file's order is what happened. */
  @Test
  void aClockThatGoesBackCountsOnInTheOrderOfTheFile() {
    LogFile.Log log =
        read(
            """
            time,chamber_c
            2026-10-25T01:56,400
            2026-10-25T01:57,404
            2026-10-25T01:58,408
            2026-10-25T01:59,412
            2026-10-25T01:00,416
            2026-10-25T01:01,420
            2026-10-25T01:58,650
            2026-10-25T01:59,655
            2026-10-25T02:00,660
            """);
    assertThat(log.rows())
        .extracting(LogFile.Row::seconds)
        .containsExactly(0.0, 60.0, 120.0, 180.0, 240.0, 300.0, 3720.0, 3780.0, 3840.0);
    assertThat(log.rows().get(4).chamberCelsius()).isEqualTo(416);
    assertThat(log.remarks())
        .contains(
            "Line 6: the clock goes back, from 180 s to -3360 s; the rows were kept in the order of"
                + " the file, and the times from there on count on from the row before.");
  }

  @Test
  void aLogCanBeCountedFromAnotherMoment() {
    LogFile.Log log = read("time,chamber_c\n2026-12-03T10:00:00Z,20\n2026-12-03T11:00:00Z,30\n");
    LogFile.Log later = log.startingAt(3600);
    assertThat(later.rows()).extracting(LogFile.Row::seconds).containsExactly(-3600.0, 0.0);
    assertThat(later.start()).contains(Instant.parse("2026-12-03T11:00:00Z"));
  }

  @Test
  void localTimesAreTakenAndTold() {
    LogFile.Log log = read("time,chamber_c\n2026-12-03 10:00,20\n2026-12-03T10:01:30,21\n");

    assertThat(log.rows().get(1).seconds()).isEqualTo(90);
    assertThat(log.start()).isEmpty();
    assertThat(log.remarks()).singleElement().asString().startsWith("The times have no offset");
  }

  @Test
  void refusesWithOneSentence() {
    Inputs.refused(
        () -> read(""),
        "log.csv: the log has no rows; expected a header such as time_s,chamber_c and rows below"
            + " it.");
    Inputs.refused(
        () -> read("time_s,temp\n0,20\n"),
        "log.csv, line 1: expected one of the columns chamber_c and chamber_f; found time_s,"
            + " temp; heatwright log import makes a log of ours of what another logger wrote.");
    Inputs.refused(
        () -> read("time_s,chamber_c,chamber_f\n0,20,68\n"),
        "log.csv, line 1: expected one of the columns chamber_c and chamber_f; found time_s,"
            + " chamber_c, chamber_f; heatwright log import makes a log of ours of what another logger wrote.");
    Inputs.refused(
        () -> read("time_s,chamber_c\n0,20\n10,n/a\n"),
        "log.csv, line 3: chamber_c is \"n/a\"; expected a number.");
    Inputs.refused(
        () -> read("time_s,chamber_c\n0,NaN\n"),
        "log.csv, line 2: chamber_c is \"NaN\"; expected a number.");
    Inputs.refused(
        () -> read("time_s,chamber_c\n0,32767\n"),
        "log.csv, line 2: the chamber reads 32767; expected -100 to 2500 °C.");
    Inputs.refused(
        () -> read("time,chamber_c\n3 December,20\n"),
        "log.csv, line 2: time is \"3TDecember\"; expected ISO 8601 such as"
            + " 2026-12-03T10:00:00+00:00.");
    Inputs.refused(
        () -> read("time_s,chamber_c\n0,\n"),
        "log.csv: no row of the log has a reading of the chamber.");
  }

  /** None of them prints the file, and what another logger wrote is sent to the import. */
  @Test
  void whatAnotherLoggerOrACutLeavesIsToldShortly() {
    String rows = "20,20\n".repeat(2000);
    Inputs.refused(
        () -> read("time_s,chamber_c\n0,20\n10,\"20\n" + rows),
        "log.csv, line 3: a quote (\") is opened in this row and not closed in it; remove it or close it.");
    Inputs.refused(
        () -> read("time_s,chamber_c\n0,20\n10"),
        "log.csv: row 3, the header counted, has 1 columns and the header has 2, as in a file that was cut off; remove that row, or give it its columns.");
    Inputs.refused(
        () -> read("Date;Temp\n3.4.26;20\n"),
        "log.csv, line 1: expected one of the columns time_s and time; found Date;Temp; heatwright log import makes a log of ours of what another logger wrote.");
    LogFile.Log log = read("time_s,chamber_c,event\n0,20,\"door\nwide\"\n");
    assertThat(log.rows().get(0).event()).contains("door\nwide");
  }

  /** The readings and their times count, and a moment only where both tell one. */
  @Test
  void theSameLogIsTheSameHoweverItIsWritten() {
    LogFile.Log log = read("time_s,chamber_c\n0,20\n60,22.5\n120,31\n");
    for (String same :
        new String[] {
          "time_s,chamber_c,event\r\n0,20,\r\n60,22.5,door-open\r\n120,31,\r\n\r\n",
          "time_s,chamber_c\n120,31\n0,20\n60,22.5\n",
          "time_s,chamber_c,power_w\n600,20,0\n660,22.5,2200\n720,31,\n",
          "time_s,chamber_f\n0,68\n60,72.5\n120,87.8\n",
          "time,chamber_c\n2026-05-02T09:00:00Z,20\n2026-05-02T09:01:00Z,22.5\n2026-05-02T09:02:00Z,31\n",
        }) {
      assertThat(log.isSameAs(read(same))).as(same).isTrue();
      assertThat(read(same).isSameAs(log)).as(same).isTrue();
    }
    for (String other :
        new String[] {
          "time_s,chamber_c\n0,20\n60,22.7\n120,31\n",
          "time_s,chamber_c\n0,20\n61,22.5\n120,31\n",
          "time_s,chamber_c\n0,20\n60,22.5\n",
          "time_s,chamber_c\n0,20\n60,22.5\n120,31\n180,40\n",
        }) {
      assertThat(log.isSameAs(read(other))).as(other).isFalse();
    }
    LogFile.Log first = read("time,chamber_c\n2026-05-02T09:00:00Z,20\n2026-05-02T09:01:00Z,30\n");
    assertThat(
            first.isSameAs(
                read(
                    "time,chamber_c\n2026-05-02T10:00:00+01:00,20\n2026-05-02T10:01:00+01:00,30\n")))
        .isTrue();
    assertThat(
            first.isSameAs(
                read("time,chamber_c\n2026-05-03T09:00:00Z,20\n2026-05-03T09:01:00Z,30\n")))
        .isFalse();
  }
}
