package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** From the work to a proven program and a card, by commands alone, in four studios. */
class ChainTest {

  private static final Path SCENARIOS = Path.of("src", "test", "resources", "scenarios");
  private static final Pattern QUESTION = Pattern.compile("  - \\[(\\d+), \"\"]  # (.+)");

  @TempDir private Path dir;

  /** One studio's files, and when somebody stands at its kiln. */
  record Bench(
      String name,
      Path kiln,
      Path keypad,
      Path work,
      String coldReading,
      String thermometer,
      Instant now) {
    @Override
    public String toString() {
      return name;
    }
  }

  static Stream<Bench> benches() {
    return Stream.of(
        demo("capstan", "tern", "harbour-burnout", "2026-12-02T14:00:00Z"),
        demo("anchor", "gull", "harbour-burnout", "2026-12-02T14:00:00Z"),
        demo("capstan", "heron", "mixed-moulds", "2026-12-04T10:00:00Z"),
        demo("anchor", "gull", "platinum-pair", "2026-12-06T14:00:00Z"),
        demo("buoy", "tern", "evening-enamel", "2026-12-02T15:00:00Z"),
        scenario("lanternmoor-bench", "16", "16C", "2026-12-02T14:00:00Z"),
        scenario("brackwell-sands", "68", "20C", "2026-10-31T19:00:00Z"),
        scenario("kettledown-foundry", "17", "63F", "2026-10-24T16:00:00Z"));
  }

  private static Bench demo(String kiln, String keypad, String work, String now) {
    return new Bench(
        work + " in " + kiln + " by " + keypad,
        Studio.kiln(kiln),
        Studio.keypad(keypad),
        Studio.work(work),
        "19",
        "20C",
        Instant.parse(now));
  }

  private static Bench scenario(String name, String reading, String thermometer, String now) {
    Path folder = SCENARIOS.resolve(name);
    return new Bench(
        name,
        folder.resolve("kiln.yaml"),
        folder.resolve("keypad.yaml"),
        folder.resolve("work.yaml"),
        reading,
        thermometer,
        Instant.parse(now));
  }

  @ParameterizedTest
  @MethodSource("benches")
  void workBecomesAProvenProgramAndACard(Bench bench) throws IOException {
    Path schedule = dir.resolve("schedule.yaml");
    Object[] place = {"--kiln", bench.kiln(), "--keypad", bench.keypad()};

    Run compose = run(bench, "compose", bench.work(), place, "-o", schedule);
    assertThat(compose.code()).isZero();
    assertThat(compose.out()).contains("Why:").contains("Before the heat:");
    assertThat(compose.out().lines()).allMatch(line -> line.length() <= 80);

    Run inspect = run(bench, "inspect", schedule, place, "--work", bench.work());
    assertThat(inspect.out()).doesNotContain("stop ");
    assertThat(inspect.code()).isZero();

    JsonNode forecast =
        json(
            run(
                bench,
                "forecast",
                schedule,
                "--kiln",
                bench.kiln(),
                "--work",
                bench.work(),
                "--json"));
    JsonNode plan = forecast.get("start");
    assertThat(plan.get("inTime").asBoolean()).as(plan.toString()).isTrue();
    Instant start =
        Instant.parse(
            java.time.OffsetDateTime.parse(plan.get("start").asText()).toInstant().toString());
    assertThat(start).isAfter(bench.now());

    JsonNode keying =
        json(run(bench, "keying", schedule, "--keypad", bench.keypad(), "--slot", 2, "--json"));
    assertThat(keying.get("fits").asBoolean()).isTrue();
    assertThat(keying.get("steps").size()).isGreaterThan(keying.get("values").size());
    assertThat(keying.get("byHandSeconds").asInt()).isBetween(10, 1800);
    Run sheet = run(bench, "keying", schedule, "--keypad", bench.keypad(), "--slot", 2);
    assertThat(sheet.out().lines()).allMatch(line -> line.length() <= 80);

    List<String[]> shown = shown(bench, schedule, keying);
    assertThat(readback(bench, schedule, shown).code()).isZero();
    assertThat(readback(bench, schedule, shown).out()).startsWith("Proven: ");
    everySlipIsCaught(bench, schedule, shown);

    Path card = dir.resolve("card.pdf");
    Path calendar = dir.resolve("firing.ics");
    Run printed =
        run(
            bench,
            "card",
            schedule,
            place,
            "--work",
            bench.work(),
            "--slot",
            2,
            "--calendar",
            calendar,
            "-o",
            card);
    assertThat(printed.err()).isEmpty();
    assertThat(printed.code()).isZero();
    assertThat(new String(Files.readAllBytes(card), StandardCharsets.ISO_8859_1))
        .startsWith("%PDF-");
    assertThat(Files.readString(calendar)).startsWith("BEGIN:VCALENDAR").contains("BEGIN:VEVENT");

    Path handedOn = dir.resolve("handed-on.yaml");
    Run scanned = run(bench, "scan", card, "-o", handedOn);
    assertThat(scanned.code()).as(scanned.err()).isZero();
    Run again = run(bench, "readback", handedOn, "--keypad", bench.keypad(), "--questions");
    assertThat(again.code()).as(again.err()).isZero();
  }

  /** One wrong value, one value left out, one too many: none passes. */
  private void everySlipIsCaught(Bench bench, Path schedule, List<String[]> shown)
      throws IOException {
    for (int i = 1; i < shown.size(); i += 4) {
      List<String[]> wrong = copy(shown);
      String text = wrong.get(i)[1];
      wrong.get(i)[1] = text.matches(".*\\d.*") ? text.replaceFirst("\\d", nextDigit(text)) : "150";
      assertThat(readback(bench, schedule, wrong).code()).as("value %s", i + 1).isEqualTo(1);
    }
    List<String[]> more = copy(shown);
    more.add(new String[] {String.valueOf(shown.size() + 1), "150"});
    assertThat(readback(bench, schedule, more).code()).isEqualTo(1);
    List<String[]> fewer = copy(shown);
    fewer.remove(3);
    for (int i = 0; i < fewer.size(); i++) {
      fewer.get(i)[0] = String.valueOf(i + 1);
    }
    assertThat(readback(bench, schedule, fewer).code()).isEqualTo(1);
  }

  private static String nextDigit(String text) {
    Matcher digit = Pattern.compile("\\d").matcher(text);
    assertThat(digit.find()).isTrue();
    return String.valueOf((Integer.parseInt(digit.group()) + 1) % 10);
  }

  private static List<String[]> copy(List<String[]> shown) {
    List<String[]> copy = new ArrayList<>();
    shown.forEach(pair -> copy.add(pair.clone()));
    return copy;
  }

  /** The form of blind questions, answered by somebody who keyed exactly the sheet's digits. */
  private List<String[]> shown(Bench bench, Path schedule, JsonNode keying) {
    Map<String, String> digits = new HashMap<>();
    for (JsonNode value : keying.get("values")) {
      digits.put(
          value.get("segment").asInt() + " " + value.get("kind").asText(),
          value.get("digits").asText());
    }
    Run form = run(bench, "readback", schedule, "--keypad", bench.keypad(), "--questions");
    List<String[]> shown = new ArrayList<>();
    for (String line : form.out().lines().toList()) {
      Matcher question = QUESTION.matcher(line);
      if (question.matches()) {
        shown.add(new String[] {question.group(1), answer(question.group(2), digits)});
      }
    }
    assertThat(shown).isNotEmpty();
    return shown;
  }

  private static String answer(String words, Map<String, String> digits) {
    String[] parts = words.split("[ ,]+");
    String key =
        switch (words) {
          case "start delay" -> "0 delay";
          case "number of segments" -> "0 end";
          default -> parts[1] + " " + parts[2];
        };
    if (words.endsWith("first value")) {
      String end = digits.get(parts[1] + " end");
      return end != null
          ? end
          : digits.values().stream().filter(t -> t.matches("[^0-9]+")).findFirst().orElseThrow();
    }
    String text = digits.get(key);
    assertThat(text).as(words).isNotNull();
    return text;
  }

  private Run readback(Bench bench, Path schedule, List<String[]> shown) throws IOException {
    StringBuilder yaml = new StringBuilder("slot: 2\nshown:\n");
    shown.forEach(
        pair ->
            yaml.append("  - [").append(pair[0]).append(", \"").append(pair[1]).append("\"]\n"));
    Path file = Files.writeString(dir.resolve("shown.yaml"), yaml);
    return run(
        bench,
        "readback",
        schedule,
        "--keypad",
        bench.keypad(),
        "--shown",
        file,
        "--slot",
        2,
        "--display-reads",
        bench.coldReading(),
        "--thermometer",
        bench.thermometer(),
        "--unheated-overnight");
  }

  private static Run run(Bench bench, Object... words) {
    List<Object> flat = new ArrayList<>();
    for (Object word : words) {
      if (word instanceof Object[] several) {
        flat.addAll(List.of(several));
      } else {
        flat.add(word);
      }
    }
    return Run.at(bench.now(), flat.toArray());
  }

  private static JsonNode json(Run run) throws IOException {
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  // ---- the scenarios' own stories

  private static Run storyOf(String scenario, String shown, Object... more) {
    Path folder = SCENARIOS.resolve(scenario);
    List<Object> words =
        new ArrayList<>(
            List.of(
                "readback",
                folder.resolve("schedule.yaml"),
                "--keypad",
                folder.resolve("keypad.yaml"),
                "--shown",
                folder.resolve(shown)));
    words.addAll(List.of(more));
    return Run.of(words.toArray());
  }

  @Test
  void theForgottenSegmentIsNamedAndTheSecondReadBackPasses() {
    Run first = storyOf("lanternmoor-bench", "shown-without-segment-3.yaml", "--slot", 1);
    assertThat(first.code()).isEqualTo(1);
    assertThat(first.out()).startsWith("Not proven").contains("Segment 3 is missing");

    Run second = storyOf("lanternmoor-bench", "shown.yaml", "--slot", 1);
    assertThat(second.out()).startsWith("Proven");
    assertThat(second.code()).isZero();
  }

  @Test
  void nineHundredInTheWrongUnitIsCaughtTwice() {
    Path folder = SCENARIOS.resolve("brackwell-sands");
    Run inspect =
        Run.of(
            "inspect",
            folder.resolve("schedule.yaml"),
            "--kiln",
            folder.resolve("kiln.yaml"),
            "--work",
            folder.resolve("work.yaml"));
    assertThat(inspect.code()).isEqualTo(1);
    assertThat(inspect.out()).contains("900 °F is 482 °C");

    Run readback = storyOf("brackwell-sands", "shown-in-celsius.yaml");
    assertThat(readback.code()).isEqualTo(1);
    assertThat(readback.out()).contains("is the plan's value in °C");
  }

  @Test
  void twentyHoursForTwoAreCaught() {
    Run run =
        storyOf(
            "kettledown-foundry",
            "shown-twenty-hours.yaml",
            "--display-reads",
            "16",
            "--thermometer",
            "16C",
            "--unheated-overnight");
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out()).contains("Segment 4 hold must be 2.00, it shows '20.00'.");
  }

  /** The pour at nine is eleven hours and more after a start on the evening before, not ten. */
  @Test
  void theNightWhenTheClocksGoBackIsCountedRight() throws IOException {
    Path folder = SCENARIOS.resolve("kettledown-foundry");
    JsonNode plan =
        json(Run.at(
                Instant.parse("2026-10-24T16:00:00Z"),
                "forecast",
                folder.resolve("schedule.yaml"),
                "--kiln",
                folder.resolve("kiln.yaml"),
                "--work",
                folder.resolve("work.yaml"),
                "--json"))
            .get("start");

    assertThat(plan.get("start").asText()).endsWith("+01:00");
    assertThat(plan.get("ready").get("high").asText()).startsWith("2026-10-25T0").endsWith("Z");
    assertThat(plan.get("notes").toString()).contains("The clocks go back from 02:00 to 01:00");
  }
}
