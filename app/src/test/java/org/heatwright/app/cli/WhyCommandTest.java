package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WhyCommandTest {

  @TempDir private Path dir;

  @Test
  void aFaultAloneGivesCausesTestsAndWhatToAsk() throws Exception {
    Run run = Run.of("why", "--kind", "burnout", "--found", "carbon");
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("What may be behind “carbon”", "test, a look: ", "One change to try: ")
        .contains("it would change the order");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    JsonNode root = json("why", "--kind", "burnout", "--found", "carbon", "--json");
    assertThat(root.get("causes").get(0).get("standing").asText()).isEqualTo("possible");
    assertThat(root.get("causes").get(0).get("tests")).isNotEmpty();
    assertThat(root.get("facts")).isEmpty();
    assertThat(fields(root))
        .containsExactly(
            "kind", "found", "causes", "contradicted", "questions", "change", "facts", "notes");
    assertThat(fields(root.get("causes").get(0)))
        .containsExactly(
            "code",
            "side",
            "standing",
            "cause",
            "speaksFor",
            "speaksAgainst",
            "tests",
            "change",
            "caution",
            "origin");
    assertThat(root.get("questions").get(0).get("clue").asText()).isNotBlank();
  }

  @Test
  void whatIsToldMovesTheOrder() throws Exception {
    JsonNode root =
        json("why", "--kind", "burnout", "--found", "carbon", "--told", "heat-away=yes", "--json");
    assertThat(root.get("causes").get(0).get("code").asText()).isEqualTo("mains-cut");
    assertThat(root.get("causes").get(0).get("standing").asText()).isEqualTo("likely");
    assertThat(root.get("change").asText()).contains("Find out what cut the power");
    JsonNode not =
        json("why", "--kind", "burnout", "--found", "carbon", "--told", "heat-away=no", "--json");
    assertThat(not.get("contradicted").findValuesAsText("code")).contains("mains-cut");
  }

  /** The slot held the plan's Celsius in Fahrenheit. */
  @Test
  void whatWasKeyedIsHeldAgainstWhatWasPlanned() throws Exception {
    Path planned =
        Files.writeString(
            dir.resolve("planned.yaml"),
            "name: disc\nunit: C\nsegments:\n  - {rate: 200, target: 800, hold: \"0:15\"}\n");
    Path keyed =
        Files.writeString(
            dir.resolve("keyed.yaml"),
            "name: disc\nunit: F\nsegments:\n  - {rate: 200, target: 800, hold: \"0:15\"}\n");
    JsonNode root =
        json(
            "why",
            "--kind",
            "glass",
            "--found",
            "under-fired",
            "--schedule",
            planned,
            "--keyed",
            keyed,
            "--highest",
            "426",
            "--json");
    assertThat(root.get("causes").get(0).get("code").asText()).isEqualTo("unit-cold");
    assertThat(root.get("causes").get(0).get("standing").asText()).isEqualTo("likely");
    assertThat(root.get("change").asText()).contains("change nothing else");
  }

  /** What can hurt is a stop, by the contract of exit codes. */
  @Test
  void aLikelyCauseThatCanHurtIsAStop() {
    Run run = Run.of("why", "--kind", "kiln", "--found", "never-there", "--told", "behind=yes");
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out().replaceAll("\\s+", " ")).contains("caution: ", "licensed person");
  }

  @Test
  void workAndKilnBringTheirFactsAndReadings() throws Exception {
    JsonNode root =
        json(
            "why",
            "--work",
            Studio.work("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "--found",
            "incomplete",
            "--start",
            "2026-12-01T18:00",
            "--seen",
            "2026-12-01T19:00=24",
            "--seen",
            "2026-12-01T21:00=24",
            "--json");
    assertThat(root.get("facts").findValuesAsText("clue"))
        .contains("resin", "stayed-cold", "plan-short", "behind");
    assertThat(root.get("kind").asText()).isEqualTo("burnout");
  }

  /** A log of quite another program: the inside is left out, and that is said. */
  @Test
  void aLogOfAnotherProgramIsSaidToBeOne() throws Exception {
    StringBuilder csv = new StringBuilder("time_s,chamber_c\n");
    for (int second = 0; second <= 36_000; second += 60) {
      csv.append(second).append(',').append(20 + Math.min(880, second / 4)).append('\n');
    }
    Path log = Files.writeString(dir.resolve("other.csv"), csv);
    Object[] words = {
      "why",
      "--work",
      Studio.work("harbour-burnout"),
      "--kiln",
      Studio.kiln("capstan"),
      "--found",
      "carbon",
      "--log",
      log
    };
    Run run = Run.of(words);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isIn(0, 1);
    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("note Of the log: on average its display is ")
        .contains("Perhaps another slot ran. What happened inside the work is not worked out");
    Object[] more = java.util.Arrays.copyOf(words, words.length + 1);
    more[words.length] = "--json";
    assertThat(json(more).get("notes").get(0).asText()).startsWith("Of the log: on average");
  }

  @Test
  void badInputGetsOneSentence() {
    wrong("--found", "why", "--kind", "glass", "--found", "carbon");
    wrong("--kind", "why", "--kind", "soup", "--found", "carbon");
    wrong("--kind", "why", "--found", "carbon");
    wrong("--told", "why", "--kind", "glass", "--found", "devit", "--told", "damp=maybe");
    wrong("--told", "why", "--kind", "glass", "--found", "devit", "--told", "soup=yes");
    wrong("--highest", "why", "--kind", "glass", "--found", "devit", "--highest", "800");
  }

  private static void wrong(String option, Object... args) {
    Run run = Run.of(args);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).hasSize(1).allMatch(line -> line.startsWith(option));
  }

  private static List<String> fields(JsonNode node) {
    return node.properties().stream().map(Map.Entry::getKey).toList();
  }

  private static JsonNode json(Object... args) throws Exception {
    return new ObjectMapper().readTree(Run.of(args).out());
  }
}
