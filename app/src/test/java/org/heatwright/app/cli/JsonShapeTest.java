package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What programs read: the keys of every command's JSON are there, in camelCase, and stay. */
class JsonShapeTest {

  private static final Path HARBOUR = Studio.schedule("harbour-burnout");

  @TempDir private Path dir;

  private static JsonNode json(Run run) throws IOException {
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  /** Every key of the tree. */
  private static TreeSet<String> allKeys(JsonNode node) {
    TreeSet<String> keys = new TreeSet<>(keys(node));
    node.forEach(child -> keys.addAll(allKeys(child)));
    return keys;
  }

  @Test
  void theQuestionsOfAReadbackGiveNoAnswers() throws IOException {
    JsonNode root =
        json(
            Run.of(
                "readback", HARBOUR, "--keypad", Studio.keypad("tern"), "--questions", "--json"));

    assertThat(keys(root)).containsExactly("schedule", "keypad", "questions");
    assertThat(keys(root.get("questions").get(0))).containsExactly("position", "label", "words");
  }

  @Test
  void composeGivesTheScheduleAndEveryReason() throws IOException {
    JsonNode root =
        json(
            Run.of(
                "compose",
                Studio.work("harbour-burnout"),
                "--kiln",
                Studio.kiln("capstan"),
                "--json"));

    assertThat(keys(root))
        .containsExactly("schedule", "reasons", "cautions", "moments", "findings");
    JsonNode schedule = root.get("schedule");
    assertThat(keys(schedule))
        .containsExactly("name", "unit", "segments", "startDelaySeconds", "atEnd");
    assertThat(keys(schedule.get("segments").get(0)))
        .containsExactly("index", "kelvinsPerHour", "targetCelsius", "holdSeconds");
    assertThat(keys(root.get("reasons").get(0)))
        .containsExactly("segment", "part", "purpose", "value", "rule", "range", "origin");
    for (JsonNode segment : schedule.get("segments")) {
      for (String part : List.of("rate", "target", "hold")) {
        assertThat(root.get("reasons"))
            .as("a reason for the %s of segment %s", part, segment.get("index"))
            .anyMatch(
                reason ->
                    reason.get("segment").equals(segment.get("index"))
                        && reason.get("part").asText().equals(part)
                        && !reason.get("origin").asText().isBlank());
      }
    }
  }

  @Test
  void insideGivesEveryKindOfMould() throws IOException {
    JsonNode root =
        json(
            Run.of(
                "inside",
                HARBOUR,
                "--kiln",
                Studio.kiln("capstan"),
                "--work",
                Studio.work("harbour-burnout"),
                "--json"));

    assertThat(keys(root))
        .containsExactly(
            "schedule", "kiln", "source", "atSeconds", "moulds", "door", "notes", "written");
    assertThat(keys(root.get("moulds").get(0)))
        .containsExactly(
            "mould",
            "count",
            "diameterMm",
            "heightMm",
            "boilBeginsSeconds",
            "boilEndsSeconds",
            "drySeconds",
            "steamGramsPerMinute",
            "steamSeconds",
            "meltedSeconds",
            "meltedCelsius",
            "burnSeconds",
            "burnReferenceCelsius",
            "coldestPeakCelsius",
            "hottestPeakCelsius",
            "boilingKelvin",
            "cristobaliteKelvin",
            "quartzKelvin",
            "tensionMegapascals",
            "coreCelsius",
            "coldestCelsius",
            "hottestCelsius",
            "pour");
    assertThat(keys(root.get("moulds").get(0).get("pour")))
        .containsExactly("startCelsius", "patternMm", "fallsKelvin", "airSeconds", "cradleSeconds");
  }

  @Test
  void inspectGivesFindings() throws IOException {
    JsonNode root = json(Run.of("inspect", HARBOUR, "--kiln", Studio.kiln("buoy"), "--json"));

    assertThat(keys(root)).containsExactly("schedule", "findings");
    assertThat(keys(root.get("findings").get(0)))
        .containsExactly("severity", "code", "segment", "message", "origin");
  }

  @Test
  void keyingGivesValuesAndSteps() throws IOException {
    JsonNode root =
        json(Run.of("keying", HARBOUR, "--keypad", Studio.keypad("heron"), "--slot", 3, "--json"));

    assertThat(keys(root))
        .containsExactly(
            "schedule",
            "keypad",
            "slot",
            "fits",
            "unit",
            "expressible",
            "values",
            "notes",
            "checkFigures",
            "steps",
            "byHandSeconds",
            "timesOrigin",
            "slips",
            "register");
    assertThat(keys(root.get("steps").get(0)))
        .containsExactly(
            "number", "prompt", "showsBefore", "press", "showsAfter", "meaning", "keys");
    // After a look at the unit: the knob is held, the slot is turned to, and taken.
    assertThat(root.get("steps").get(0).get("keys")).isEmpty();
    assertThat(root.get("steps").get(1).get("keys").get(0).asText()).isEqualTo("push 2 s");
    assertThat(root.get("steps").get(2).get("keys").toString()).isEqualTo("[\"until 3\",\"push\"]");
    assertThat(keys(root.get("values").get(0)))
        .containsExactly("segment", "kind", "digits", "meaning");
  }

  @Test
  void readbackGivesAVerdictForEachValue() throws IOException {
    Path shown = Files.writeString(dir.resolve("shown.yaml"), "shown: [[1, \"4\"]]\n");
    Run run =
        Run.of("readback", HARBOUR, "--keypad", Studio.keypad("gull"), "--shown", shown, "--json");

    assertThat(run.code()).isEqualTo(1);
    JsonNode root = json(run);
    assertThat(keys(root))
        .containsExactly(
            "schedule",
            "keypad",
            "outcome",
            "verdicts",
            "findings",
            "correction",
            "checkFigures",
            "unproven");
    assertThat(root.get("outcome").asText()).isEqualTo("not-proven");
    assertThat(keys(root.get("verdicts").get(0)))
        .containsExactly("position", "place", "expected", "shown", "kind", "message", "correction");
  }

  @Test
  void sendSaysWhereThePageIs() throws IOException {
    Path page = dir.resolve("firing.html");
    JsonNode root =
        json(
            Run.of(
                "send",
                HARBOUR,
                "--keypad",
                Studio.keypad("gull"),
                "--slot",
                3,
                "-o",
                page,
                "--json"));
    assertThat(keys(root))
        .containsExactly("schedule", "keypad", "slot", "page", "bytes", "findings");
    assertThat(root.get("page").asText()).isEqualTo(page.toString());
    assertThat(root.get("bytes").asLong()).isEqualTo(Files.size(page)).isLessThan(400_000);
  }

  @Test
  void cardSaysWhereItIs() throws IOException {
    Path card = dir.resolve("card.pdf");
    JsonNode root =
        json(Run.of("card", HARBOUR, "--kiln", Studio.kiln("anchor"), "-o", card, "--json"));

    assertThat(keys(root))
        .containsExactly("schedule", "kiln", "card", "calendar", "start", "findings");
    assertThat(root.get("card").asText()).isEqualTo(card.toString());
    assertThat(root.get("calendar").isNull()).isTrue();
  }

  @Test
  void heatworkGivesEveryAssumption() throws IOException {
    Path schedule = Studio.schedule("working-heat");
    JsonNode root =
        json(
            Run.of(
                "heatwork", schedule, schedule, "--activation", 185, "--fastest", 600, "--json"));

    assertThat(keys(root))
        .containsExactly("first", "second", "referenceCelsius", "law", "curves", "cases", "notes");
    assertThat(keys(root.get("cases").get(0)))
        .containsExactly(
            "name",
            "activationKilojoulesPerMole",
            "firstMinutes",
            "secondMinutes",
            "ratio",
            "holdSegment",
            "holdMinutes");
    assertThat(root.get("cases").get(0).get("ratio").doubleValue()).isEqualTo(1);
  }

  @Test
  void coupleGivesBothSidesAndTheTolerance() throws IOException {
    assertThat(keys(json(Run.of("couple", "--type", "K", "--celsius", "800", "--json"))))
        .containsExactly(
            "type",
            "celsius",
            "millivolts",
            "toleranceKelvin",
            "coldJunctionCelsius",
            "toleranceClass",
            "notes");
  }

  @Test
  void offsetGivesTheLimitsAndWhatTheDisplayShows() throws IOException {
    JsonNode root =
        json(
            Run.of(
                "offset",
                "--melt",
                "958..962",
                "--in-air",
                "--compare",
                "503=500",
                "--kiln",
                Studio.kiln("anchor"),
                "--json"));
    assertThat(keys(root))
        .containsExactly(
            "melt",
            "comparisons",
            "type",
            "coldJunctionCelsius",
            "suspects",
            "kiln",
            "work",
            "shows",
            "notes",
            "cautions",
            "origins");
    assertThat(keys(root.get("melt")))
        .containsExactly(
            "lastWholeCelsius",
            "firstMeltedCelsius",
            "surroundings",
            "mostBehindKelvins",
            "shownCelsius",
            "offsetKelvins",
            "lowOffsetKelvins",
            "highOffsetKelvins");
    assertThat(keys(root.get("comparisons").get(0)))
        .containsExactly("shownCelsius", "trueCelsius", "offsetKelvins");
    assertThat(keys(root.get("kiln"))).containsExactly("name", "offsetKelvins");
    assertThat(keys(root.get("work")))
        .containsExactly("trueCelsius", "shownCelsius", "offsetKelvins", "standing");
    assertThat(keys(root.get("shows").get(0))).isEqualTo(keys(root.get("work")));
  }

  @Test
  void castGivesValuesWithTheirRangesAndSources() throws IOException {
    JsonNode metal = json(Run.of("cast", "metal", "--alloy", "sterling", "--wax-g", 5, "--json"));
    assertThat(keys(metal))
        .containsExactly(
            "metal",
            "method",
            "totalGrams",
            "castGrams",
            "buttonGrams",
            "totalTroyOunces",
            "totalPennyweights",
            "usedMetalAtMostGrams",
            "metalGramsPerCubicCentimetre",
            "patternGramsPerCubicCentimetre",
            "densities",
            "notes",
            "cautions");
    assertThat(keys(metal.get("totalGrams"))).containsExactly("low", "usual", "high");
    JsonNode powder =
        json(Run.of("cast", "powder", "--diameter-mm", 75, "--height-mm", 100, "--json"));
    assertThat(keys(powder))
        .containsExactly(
            "slurryMillilitres",
            "powderGrams",
            "waterGrams",
            "waterPowder",
            "weigh",
            "workingTime",
            "notes",
            "cautions");
    JsonNode fineness =
        json(Run.of("cast", "fineness", "--metal-g", 9, "--fineness", 750, "--to", 585, "--json"));
    assertThat(keys(fineness)).containsExactly("together", "add", "result", "notes");
    JsonNode size = json(Run.of("cast", "size", "--wanted-mm", 18, "--json"));
    assertThat(keys(size))
        .containsExactly(
            "patternMillimetres", "castMillimetres", "factor", "shrinkagePercent", "notes");
    JsonNode pour = json(Run.of("cast", "pour", "--alloy", "sterling", "--json"));
    assertThat(keys(pour))
        .containsExactly(
            "alloy",
            "section",
            "method",
            "mould",
            "metal",
            "superheatKelvins",
            "remarks",
            "cautions",
            "clocks");
    assertThat(keys(pour.get("mould")))
        .containsExactly("celsius", "own", "rangeCelsius", "why", "sources");
    assertThat(keys(pour.at("/mould/sources/0")))
        .containsExactly("about", "celsius", "counts", "origin");
    JsonNode order =
        json(
            Run.of(
                "cast",
                "order",
                "--mould",
                "a",
                "--wants",
                600,
                "--mould",
                "b",
                "--wants",
                500,
                "--kiln-now",
                700,
                "--fall-per-hour",
                100,
                "--json"));
    assertThat(keys(order)).containsExactly("steps", "totalMinutes", "compromise");
    for (JsonNode root : List.of(metal, powder, fineness, size, pour, order)) {
      assertThat(allKeys(root)).allMatch(key -> key.matches("[a-z][a-zA-Z]*"));
    }
  }

  @Test
  void everyKeyIsCamelCase() throws IOException {
    JsonNode forecast =
        json(
            Run.of(
                "forecast",
                HARBOUR,
                "--kiln",
                Studio.kiln("anchor"),
                "--work",
                Studio.work("harbour-burnout"),
                "--start",
                "now",
                "--json"));
    JsonNode keying =
        json(Run.of("keying", HARBOUR, "--keypad", Studio.keypad("tern"), "--slot", 3, "--json"));

    assertThat(allKeys(forecast)).allMatch(key -> key.matches("[a-z][a-zA-Z]*"));
    assertThat(allKeys(keying)).allMatch(key -> key.matches("[a-z][a-zA-Z]*"));
  }
}
