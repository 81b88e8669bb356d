package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A running firing told from a terminal by what the display says. */
class SeenTest {

  private static final Path DEMO = Path.of("src", "main", "resources", "demo");
  private static final Path SCHEDULE = DEMO.resolve("schedules/harbour-burnout.yaml");
  private static final Path KILN = DEMO.resolve("kilns/capstan.yaml");

  /** The next morning: what was seen had been. */
  private static final Instant MORNING = Instant.parse("2026-12-03T08:00:00Z");

  private static Run forecast(Object... more) {
    Object[] first = {
      "forecast", SCHEDULE, "--kiln", KILN, "--start", "2026-12-02T18:40",
    };
    Object[] all = java.util.Arrays.copyOf(first, first.length + more.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    return Run.at(MORNING, all);
  }

  /** The demo's own forecast says what is normal at a time; the test does not know it. */
  private static double expected(int seconds) throws IOException {
    JsonNode json = new ObjectMapper().readTree(forecast("--seen", "19:40=100", "--json").out());
    assertThat(seconds).isEqualTo(3600);
    return json.get("seen").get("readings").get(0).get("expectedCelsius").get("median").asDouble();
  }

  /** A letter goes before the schedule's unit: 302 °F is 150 °C. */
  @Test
  void aReadingWithALetterIsTakenByIt() throws IOException {
    JsonNode json =
        new ObjectMapper()
            .readTree(forecast("--seen", "19:40=302F", "--seen", "19:50=150C", "--json").out());
    assertThat(json.get("seen").get("readings").findValuesAsText("celsius"))
        .containsExactly("150", "150");
    for (String none : new String[] {"302d", "0x1p7", "NaN", "-300", "302 K"}) {
      Run run = forecast("--seen", "19:40=" + none);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err()).startsWith("--seen: \"19:40=" + none + "\" is not a reading");
    }
  }

  /** Who tries it out the day before may type what will be. */
  @Test
  void readingsOfAFiringThatIsToComeAreARehearsal() {
    Run run =
        Run.at(
            Run.NOON,
            "forecast",
            SCHEDULE,
            "--kiln",
            KILN,
            "--start",
            "2026-12-05T04:00",
            "--seen",
            "05:00=20");
    assertThat(run.err()).isEmpty();
  }

  /** Nobody has seen what is still to come, nor what was before the start. */
  @Test
  void aReadingIsFromTheStartToNow() {
    Object[] words = {
      "forecast", SCHEDULE, "--kiln", KILN, "--start", "2026-12-02T04:00", "--seen", ""
    };
    for (String time : new String[] {"23:00", "03:00", "2026-12-02T12:03"}) {
      words[words.length - 1] = time + "=20";
      Run run = Run.at(Run.NOON, words);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err())
          .startsWith("--seen: \"" + time + "=20\" would be at ")
          .contains("which is still to come; expected a time from the start (")
          .hasLineCount(1);
    }
    words[words.length - 1] = "2026-12-02T03:00=20";
    assertThat(Run.at(Run.NOON, words).err()).contains("is before the start");
    words[words.length - 1] = "12:00=300";
    assertThat(Run.at(Run.NOON, words).err()).isEmpty();
  }

  /** A firing whose display was read runs: it began the last time that the clock showed that. */
  @ParameterizedTest
  @CsvSource({
    "2026-12-02T13:37:00Z, 10:37, 13:36, 2026-12-02T10:37:00Z, 10740",
    "2026-12-02T13:37:00Z, 10:37, now, 2026-12-02T10:37:00Z, 10800",
    "2026-12-02T13:37:00Z, 10:37, 10:37, 2026-12-02T10:37:00Z, 0",
    // The evening before, by the clock and by a reading of that evening.
    "2026-12-03T00:30:00Z, 18:40, 21:40, 2026-12-02T18:40:00Z, 10800",
    "2026-12-03T08:00:00Z, 18:40, 07:50, 2026-12-02T18:40:00Z, 47400",
    "2026-12-03T19:00:00Z, 18:40, 2026-12-02T21:40, 2026-12-02T18:40:00Z, 10800",
    // Of a firing of a day and a half what was seen this morning.
    "2026-12-03T12:00:00Z, 10:37, 09:00, 2026-12-02T10:37:00Z, 80580",
    // This machine's clock may be behind the kiln's by a minute.
    "2026-12-02T13:37:00Z, 10:37, 13:38, 2026-12-02T10:37:00Z, 10860",
  })
  void aStartWithoutADateIsTheLastOne(
      Instant now, String start, String time, String expected, int seconds) throws IOException {
    for (String option : new String[] {"--start", "--press-at"}) {
      Object[] words = {
        "forecast", SCHEDULE, "--kiln", KILN, option, start, "--seen", time + "=100", "--json"
      };
      Run run = Run.at(now, words);
      assertThat(run.err()).isEmpty();
      JsonNode json = new ObjectMapper().readTree(run.out());
      assertThat(json.at("/start/start").asText()).isEqualTo(expected);
      assertThat(json.at("/seen/readings/0/seconds").asInt()).isEqualTo(seconds);
    }
  }

  /** A firing that is to come begins the next time, as ever. */
  @Test
  void withoutReadingsAStartWithoutADateIsTheNextOne() throws IOException {
    Object[] words = {"forecast", SCHEDULE, "--kiln", KILN, "--start", "10:37", "--json"};
    assertThat(
            new ObjectMapper()
                .readTree(Run.at(Instant.parse("2026-12-02T13:37:00Z"), words).out())
                .at("/start/start")
                .asText())
        .isEqualTo("2026-12-03T10:37:00Z");
  }

  @Test
  void theHelpShowsHowARunningFiringIsTold() {
    assertThat(Run.of("forecast", "--help").out().replaceAll("\\s+", " "))
        .contains("--start 18:40 \\ --seen 21:40=312")
        .contains("needs --start, of which a time of day is then the last one");
  }

  /** Pressing alone tells the start: the program waits for its own delay from then. */
  @Test
  void pressingTellsTheStart(@TempDir Path dir) throws IOException {
    Path schedule = dir.resolve("odd.yaml");
    Files.writeString(
        schedule,
        "name: odd\nunit: C\nsegments: [{rate: 300, target: 500}]\nstart-delay: \"3:17\"\n");
    Object[] words = {
      "forecast", schedule, "--kiln", KILN, "--press-at", "2026-12-02T22:00", "--json"
    };
    JsonNode start = new ObjectMapper().readTree(Run.of(words).out()).get("start");
    assertThat(start.get("start").asText()).startsWith("2026-12-03T01:17");
    assertThat(start.get("delayToSetSeconds").asInt()).isEqualTo((3 * 60 + 17) * 60);
    Run card =
        Run.of(
            "card",
            schedule,
            "--kiln",
            KILN,
            "--press-at",
            "2026-12-02T22:00",
            "-o",
            dir.resolve("c.pdf"));
    assertThat(card.err()).isEmpty();
    assertThat(card.out()).contains("Start 01:17 Thursday 3 December");
  }

  @Test
  void whatWasExpectedIsNormal() throws IOException {
    Run run = forecast("--seen", "19:40=" + Math.round(expected(3600)));
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("Normal: ").contains("was expected");
  }

  @Test
  void roomTemperatureAfterAnHourIsNotHeating() {
    Run run = forecast("--seen", "20:10=18");
    assertThat(run.out())
        .contains("Not heating: 18 °C")
        .containsPattern("delay is\\s+still running");
  }

  /** A kiln at full power that lags: the clock time of what moves is told. */
  @Test
  void aSlowKilnIsBehindAndItsReadyTimeMovesToAClockTime(@TempDir Path dir) throws IOException {
    Path schedule = dir.resolve("quick.yaml");
    Files.writeString(
        schedule,
        """
        name: quick
        unit: C
        segments:
          - {rate: fastest, target: 900, hold: "0:30"}
        """);
    Object[] plain = {
      "forecast",
      schedule,
      "--kiln",
      KILN,
      "--start",
      "2026-12-02T18:40",
      "--seen",
      "19:00=100",
      "--json"
    };
    JsonNode expected =
        new ObjectMapper()
            .readTree(Run.at(MORNING, plain).out())
            .at("/seen/readings/0/expectedCelsius");
    long slow = Math.round(expected.get("low").asDouble() - 8);
    Run run =
        Run.at(
            MORNING,
            "forecast",
            schedule,
            "--kiln",
            KILN,
            "--start",
            "2026-12-02T18:40",
            "--seen",
            "19:00=" + slow);
    assertThat(run.out())
        .contains("Behind: " + slow + " °C")
        .containsPattern(
            "The\\s+ready\\s+time\\s+moves\\s+to\\s+\\d\\d:\\d\\d,\\s+\\d+\\s+min\\s+later");
  }

  @Test
  void severalReadingsAreCounted() throws IOException {
    Run run = forecast("--seen", "19:00=21", "--seen", "19:40=" + Math.round(expected(3600)));
    assertThat(run.out())
        .containsPattern("all\\s+2\\s+readings\\s+were|of\\s+2\\s+readings\\s+1\\s+were\\s+not");
  }

  @Test
  void aFahrenheitKilnIsReadInFahrenheit(@TempDir Path dir) throws IOException {
    Path schedule = dir.resolve("f.yaml");
    Files.writeString(
        schedule,
        """
        name: f
        unit: F
        segments:
          - {rate: 200, target: 1300, hold: "1:00"}
        """);
    Run run =
        Run.at(
            MORNING,
            "forecast",
            schedule,
            "--kiln",
            KILN,
            "--start",
            "2026-12-02T18:40",
            "--seen",
            "19:20=68",
            "--seen",
            "20:10=66");
    assertThat(run.out()).contains("Not heating: 66 °F");
  }

  @Test
  void programsGetTheVerdictInOneWord() throws IOException {
    JsonNode json = new ObjectMapper().readTree(forecast("--seen", "20:10=18", "--json").out());
    assertThat(json.get("seen").get("verdict").asText()).isEqualTo("not-heating");
    assertThat(json.get("seen").get("readings").get(0).get("inside").asBoolean()).isFalse();
  }

  @ParameterizedTest
  @CsvSource({
    "21:40, is not a reading",
    "21:40=hot, is not a reading",
    "21:40=312=4, is not a reading",
    "2026-12-02T18:00=20, is before the start",
    "25:40=312, --seen"
  })
  void aReadingThatIsNoneIsToldInOneSentence(String text, String sentence) {
    Run run = forecast("--seen", text);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--seen").contains(sentence).doesNotContain("Exception");
    assertThat(run.err().strip().lines()).hasSize(1);
  }

  @Test
  void withoutAStartItSaysWhatIsMissing() {
    Run run = Run.of("forecast", SCHEDULE, "--kiln", KILN, "--seen", "21:40=312");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("--seen: needs --start");
  }
}
