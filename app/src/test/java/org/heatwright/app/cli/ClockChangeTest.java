package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Nights on which the clocks change, at the terminal. Outside: in London 01:00 to 02:00 comes twice
 * on 25 October 2026 (first at +01:00, then at +00:00) and is missing on 28 March 2027.
 */
class ClockChangeTest {

  /** 20:00 in London on the evening before. */
  private static final Instant EVENING = Instant.parse("2026-10-24T19:00:00Z");

  @TempDir private Path dir;
  private Path kiln;
  private Path schedule;

  @BeforeEach
  void londonsKiln() throws IOException {
    kiln = dir.resolve("london.yaml");
    Files.writeString(
        kiln,
        Files.readString(Studio.kiln("anchor"))
            .replaceFirst("time-zone: .*", "time-zone: Europe/London"));
    schedule = dir.resolve("short.yaml");
    Files.writeString(
        schedule, "name: short\nunit: C\nsegments: [{rate: 300, target: 200, hold: \"0:10\"}]\n");
  }

  private Run forecast(Instant now, Object... more) {
    Object[] first = {"forecast", schedule, "--kiln", kiln};
    Object[] all = java.util.Arrays.copyOf(first, first.length + more.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    return Run.at(now, all);
  }

  private static String words(Run run) {
    assertThat(run.err()).isEmpty();
    return run.out().replaceAll("\\s+", " ");
  }

  private static String refusal(Run run) {
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1);
    return run.err().strip();
  }

  private static String start(Run run) throws IOException {
    assertThat(run.err()).isEmpty();
    JsonNode json = new ObjectMapper().readTree(run.out());
    return json.at("/start/start").asText();
  }

  @Test
  void anHourThatComesTwiceSaysWhichOneAndNoOtherDoes() {
    String first = words(forecast(EVENING, "--start", "2026-10-25T01:30+01:00"));
    assertThat(first).contains("Start 01:30 (1st) Sunday 25 October").contains("(2nd)");
    String second = words(forecast(EVENING, "--start", "2026-10-25T01:30+00:00"));
    assertThat(second).contains("Start 01:30 (2nd) Sunday 25 October").doesNotContain("(1st)");
    assertThat(words(forecast(EVENING, "--start", "2026-10-25T02:00")))
        .contains("Start 02:00 Sunday 25 October")
        .doesNotContain("(1st)", "(2nd)");
  }

  @Test
  void aTimeThatComesTwiceIsTakenAsTheFirstAndSaysHowToMeanTheSecond() {
    for (String option : new String[] {"--start", "--ready-by", "--press-at"}) {
      for (String time : new String[] {"2026-10-25T01:30", "01:30"}) {
        assertThat(words(forecast(EVENING, option, time)))
            .contains(
                "01:30 Sunday 25 October comes twice in Europe/London, because the clocks go back."
                    + " Taken as the first (UTC+01:00). For the second write"
                    + " 2026-10-25T01:30+00:00.");
      }
    }
  }

  /** 01:40 the first time: of 01:30 only the second is to come, of 01:50 both are. */
  @ParameterizedTest
  @CsvSource({
    "2026-10-25T00:40:00Z, 01:30, 2026-10-25T01:30:00Z",
    "2026-10-25T00:40:00Z, 01:50, 2026-10-25T01:50:00+01:00",
    "2026-10-25T01:40:00Z, 01:50, 2026-10-25T01:50:00Z",
    "2026-10-25T01:40:00Z, 01:30, 2026-10-26T01:30:00Z",
    "2027-03-28T00:40:00Z, 02:30, 2027-03-28T02:30:00+01:00",
    "2027-03-28T00:40:00Z, 01:30, 2027-03-28T02:00:00+01:00",
    "2027-03-28T01:10:00Z, 01:30, 2027-03-29T01:30:00+01:00",
  })
  void aTimeOfDayIsTheNextOne(Instant now, String time, String expected) throws IOException {
    assertThat(start(forecast(now, "--start", time, "--json"))).isEqualTo(expected);
  }

  @Test
  void aTimeThatIsMissingIsTakenAsTheChange() {
    assertThat(
            words(forecast(Instant.parse("2027-03-27T20:00:00Z"), "--start", "2027-03-28T01:30")))
        .contains(
            "01:30 Sunday 28 March does not exist in Europe/London: the clocks go forward from"
                + " 01:00 to 02:00. Taken as 02:00.");
  }

  /** What was seen is not guessed: only where start and now leave one of the two. */
  @Test
  void aReadingInTheDoubledHourIsRefusedUnlessOnlyOneIsMeant() throws IOException {
    Instant morning = Instant.parse("2026-10-25T08:00:00Z");
    String refused =
        "--seen: 01:30 Sunday 25 October comes twice in Europe/London, because the clocks go back;"
            + " expected 2026-10-25T01:30+01:00 for the first or 2026-10-25T01:30+00:00 for the"
            + " second.";
    for (String time : new String[] {"01:30", "2026-10-25T01:30"}) {
      assertThat(refusal(forecast(morning, "--start", "2026-10-24T23:00", "--seen", time + "=100")))
          .isEqualTo(refused);
    }
    assertThat(seconds(morning, "2026-10-24T23:00", "2026-10-25T01:30+00:00")).isEqualTo(12_600);
    assertThat(seconds(morning, "2026-10-24T23:00", "2026-10-25T01:30+01:00")).isEqualTo(9_000);
    // Begun after the first: the second. Not yet the second: the first.
    assertThat(seconds(morning, "2026-10-25T01:40+01:00", "01:30")).isEqualTo(3_000);
    assertThat(seconds(Instant.parse("2026-10-25T00:45:00Z"), "2026-10-24T23:00", "01:30"))
        .isEqualTo(9_000);
  }

  private double seconds(Instant now, String start, String time) throws IOException {
    Run run = forecast(now, "--start", start, "--seen", time + "=100", "--json");
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out()).at("/seen/readings/0/seconds").asDouble();
  }

  @Test
  void aReadingInTheMissingHourIsRefused() {
    assertThat(
            refusal(
                forecast(
                    Instant.parse("2027-03-28T08:00:00Z"),
                    "--start",
                    "2027-03-27T23:00",
                    "--seen",
                    "01:30=100")))
        .isEqualTo(
            "--seen: 01:30 Sunday 28 March does not exist in Europe/London: the clocks go forward"
                + " from 01:00 to 02:00; expected a time that the clock has shown.");
  }

  /** As on the bench: the last time that the clock showed it before what was seen. */
  @Test
  void aStartInTheDoubledHourIsTheLastOneThatCanBeMeant() throws IOException {
    Instant morning = Instant.parse("2026-10-25T08:00:00Z");
    String[] late = {"--start", "01:30", "--seen", "03:00=100"};
    assertThat(words(forecast(morning, late[0], late[1], late[2], late[3])))
        .contains(
            "Start 01:30 (2nd) Sunday 25 October",
            "because the clocks go back. Taken as the second (UTC+00:00). For the first write"
                + " 2026-10-25T01:30+01:00.");
    String early =
        start(
            forecast(
                morning, "--start", "01:30", "--seen", "2026-10-25T01:50+01:00=100", "--json"));
    assertThat(early).isEqualTo("2026-10-25T01:30:00+01:00");
    assertThat(
            start(
                forecast(
                    Instant.parse("2027-03-28T08:00:00Z"),
                    "--start",
                    "01:30",
                    "--seen",
                    "03:00=100",
                    "--json")))
        .isEqualTo("2027-03-28T02:00:00+01:00");
  }

  /** Now is when it is typed, not when the firing began. */
  @Test
  void whatTheDisplaySaysNowIsOfNow() throws IOException {
    assertThat(seconds(Instant.parse("2026-10-24T23:30:00Z"), "2026-10-24T23:00", "now"))
        .isEqualTo(5_400);
  }

  @Test
  void otherCommandsAskWhichOne() {
    Object[] inside = {
      "inside",
      Studio.schedule("harbour-burnout"),
      "--kiln",
      kiln,
      "--work",
      Studio.work("harbour-burnout"),
      "--start",
      "2026-10-24T22:00",
      "--at",
      "01:30"
    };
    assertThat(refusal(Run.at(EVENING, inside)))
        .startsWith("--at: 01:30 Sunday 25 October comes twice in Europe/London");
    Object[] why = {
      "why",
      "--kind",
      "burnout",
      "--found",
      "carbon",
      "--schedule",
      schedule,
      "--kiln",
      kiln,
      "--start",
      "2026-10-25T01:30",
      "--seen",
      "03:00=200"
    };
    assertThat(refusal(Run.at(Instant.parse("2026-10-25T08:00:00Z"), why)))
        .startsWith("--start: 01:30 Sunday 25 October comes twice in Europe/London");
  }
}
