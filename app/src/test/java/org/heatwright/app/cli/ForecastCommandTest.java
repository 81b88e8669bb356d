package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.component.VEvent;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ForecastCommandTest {

  private static final Path HARBOUR = Studio.schedule("harbour-burnout");
  private static final Path ANCHOR = Studio.kiln("anchor");
  private static final Path WORK = Studio.work("harbour-burnout");

  @TempDir private Path dir;

  private static JsonNode json(Run run) throws IOException {
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  private static List<String> keys(JsonNode node) {
    List<String> keys = new java.util.ArrayList<>();
    node.fieldNames().forEachRemaining(keys::add);
    return keys;
  }

  @Test
  void anHourMayHaveOneDigit() {
    Run run =
        Run.of(
            "forecast",
            Studio.schedule("working-heat"),
            "--kiln",
            Studio.kiln("buoy"),
            "--start",
            "9:10");

    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("Start 09:10 Thursday 3 December");
  }

  @Test
  void theAnswerComesFirstAndFitsTheTerminal() {
    Run run =
        Run.of(
            "forecast",
            HARBOUR,
            "--kiln",
            ANCHOR,
            "--work",
            WORK,
            "--ready-by",
            "2026-12-03T10:00");

    assertThat(run.code()).isZero();
    assertThat(run.out().lines().toList().get(0))
        .matches("Ready \\d\\d:\\d\\d to (09:59|10:00) Thursday 3 December\\.");
    assertThat(run.out().lines().toList().get(1))
        .matches("Start \\d\\d:\\d\\d Wednesday 2 December, a delay of .* from now\\.");
    assertThat(run.out()).contains("cost EUR").contains("kWh").contains("Mould 1, centre:");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void theWorksOwnReadyByIsKeptWhereNothingElseIsAsked() {
    Run asked =
        Run.of(
            "forecast",
            HARBOUR,
            "--kiln",
            ANCHOR,
            "--work",
            WORK,
            "--ready-by",
            "2026-12-03T10:00");

    assertThat(Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--work", WORK)).isEqualTo(asked);
    Run later =
        Run.at(
            Instant.parse("2027-01-01T12:00:00Z"),
            "forecast",
            HARBOUR,
            "--kiln",
            ANCHOR,
            "--work",
            WORK);
    assertThat(later.out())
        .contains("The work's own ready-by has passed")
        .contains("after the start");
  }

  @Test
  void jsonHasTheAgreedShape() throws IOException {
    JsonNode root =
        json(
            Run.of(
                "forecast",
                HARBOUR,
                "--kiln",
                ANCHOR,
                "--work",
                WORK,
                "--start",
                "20:00",
                "--json"));

    assertThat(keys(root))
        .contains(
            "schedule",
            "kiln",
            "segments",
            "endSeconds",
            "energyKilowattHours",
            "cost",
            "work",
            "findings");
    assertThat(root.get("schedule").asText()).isEqualTo("harbour-burnout-by-hand");
    assertThat(root.get("kiln").asText()).isEqualTo("Anchor");
    assertThat(root.get("segments")).hasSize(4);
    JsonNode segment = root.get("segments").get(1);
    assertThat(segment.get("index").asInt()).isEqualTo(2);
    assertThat(keys(segment.get("reachedSeconds"))).containsExactly("low", "median", "high");
    assertThat(keys(segment.get("endSeconds"))).containsExactly("low", "median", "high");
    assertThat(segment.get("saturatedSeconds").isNumber()).isTrue();
    assertThat(keys(root.get("endSeconds"))).containsExactly("low", "median", "high");
    assertThat(keys(root.get("energyKilowattHours"))).containsExactly("low", "median", "high");
    assertThat(keys(root.get("cost"))).contains("currency", "low", "median", "high");
    JsonNode core = root.get("work").get(0);
    assertThat(core.get("mould").asInt()).isEqualTo(1);
    assertThat(core.get("probe").asText()).isEqualTo("centre");
    assertThat(keys(core.get("atEndCelsius"))).containsExactly("low", "median", "high");
    assertThat(root.get("start").get("start").asText()).isEqualTo("2026-12-02T20:00:00Z");
    assertThat(root.get("start").get("delayToSetSeconds").asInt()).isEqualTo(8 * 3600);
    for (JsonNode finding : root.get("findings")) {
      assertThat(finding.get("severity").asText()).isIn("stop", "warn", "note");
    }
  }

  @Test
  void theTraceHasTheAgreedColumns() throws IOException {
    Path trace = dir.resolve("curve.csv");

    Run run = Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--work", WORK, "--trace", trace);

    assertThat(run.out()).contains("Written to ");
    List<String> lines = Files.readAllLines(trace);
    assertThat(lines.get(0))
        .startsWith(
            "time_s,setpoint_c,chamber_low_c,chamber_c,chamber_high_c,power_w,work_centre_c");
    assertThat(lines.get(1)).startsWith("0,");
    double before = -1;
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",", -1);
      assertThat(cells).hasSize(lines.get(0).split(",").length);
      assertThat(Double.parseDouble(cells[0])).isGreaterThan(before);
      assertThat(Double.parseDouble(cells[2])).isLessThanOrEqualTo(Double.parseDouble(cells[3]));
      assertThat(Double.parseDouble(cells[3])).isLessThanOrEqualTo(Double.parseDouble(cells[4]));
      before = Double.parseDouble(cells[0]);
    }
    assertThat(Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--trace", trace).code()).isZero();
  }

  private Run weak(int watts, Object... more) throws IOException {
    return weakly(watts, "--start", more);
  }

  private Run weakly(int watts, String option, Object... more) throws IOException {
    Path kiln = dir.resolve("weak.yaml");
    Files.writeString(kiln, Files.readString(ANCHOR).replace("rated-w: 2600", "rated-w: " + watts));
    Path schedule = dir.resolve("hot.yaml");
    Files.writeString(
        schedule, "name: hot\nunit: C\nsegments: [{rate: 300, target: 800, hold: \"0:30\"}]\n");
    List<Object> all =
        new java.util.ArrayList<>(
            List.of("forecast", schedule, "--kiln", kiln, option, "2026-12-03T10:00"));
    all.addAll(List.of(more));
    return Run.of(all.toArray());
  }

  /** When a simulation gives up is no end of the program. */
  @Test
  void aKilnThatIsTooWeakHasNoEnd() throws IOException {
    JsonNode some = json(weak(900, "--json"));
    assertThat(some.get("segments").get(0).get("reachedShare").asDouble()).isBetween(0.5, 0.94);
    assertThat(weak(900).out().replaceAll("\\s+", " "))
        .containsPattern("No end can be promised: in \\d+ of 100 cases that the forecast tried")
        .contains("may be never")
        .doesNotContain("Ends ");
    JsonNode none = json(weak(300, "--json"));
    assertThat(none.get("segments").get(0).get("reachedShare").asDouble()).isZero();
    assertThat(weak(300).out()).contains("It never ends: ").doesNotContain("Ends ");
    assertThat(none.get("endSeconds").isNull()).isTrue();
    assertThat(none.get("start").get("end").isNull()).isTrue();
    assertThat(none.get("segments").get(0).get("reachedSeconds").isNull()).isTrue();
    assertThat(none.get("segments").get(0).get("endSeconds").isNull()).isTrue();
    // A program may take what most cases tell, beside the share that tells how many.
    assertThat(some.get("endSeconds").get("median").asDouble()).isPositive();
    assertThat(some.get("segments").get(0).get("reachedSeconds").isNull()).isFalse();
    assertThat(json(weak(2600, "--json")).get("endSeconds").get("high").asDouble()).isPositive();
  }

  /** No start is counted back from when a simulation gave up. */
  @Test
  void aKilnThatIsTooWeakHasNoStartForAReadyBy() throws IOException {
    String why =
        "No start can be reckoned for ready by 10:00 Thursday 3 December: the kiln gets there in ";
    for (int watts : new int[] {300, 900}) {
      Run words = weakly(watts, "--ready-by");
      assertThat(words.code()).isEqualTo(1);
      assertThat(words.out()).doesNotContain("\nStart ").contains("No ready time can be promised.");
      assertThat(words.out().replaceAll("\\s+", " "))
          .containsPattern(
              why
                  + (watts == 300
                      ? "hardly any likely case\\."
                      : "[5-9]\\d of 100 likely cases only\\."));
      Run asked = weakly(watts, "--ready-by", "--json");
      assertThat(asked.code()).isEqualTo(1);
      JsonNode root = json(asked);
      assertThat(root.get("start").isNull()).isTrue();
      JsonNode first = root.get("findings").get(0);
      assertThat(first.get("severity").asText()).isEqualTo("stop");
      assertThat(first.get("code").asText()).isEqualTo("no-start");
      assertThat(first.get("message").asText()).startsWith(why);
    }
    assertThat(weakly(2600, "--ready-by").out()).contains("\nStart ").doesNotContain("No start");
  }

  /** Its card has no times, and there is no calendar; both are said. */
  @Test
  void theCardOfAReadyByWithoutAStartHasNoTimes() throws IOException {
    weak(300);
    Path card = dir.resolve("card.pdf");
    Path calendar = dir.resolve("firing.ics");
    Run run =
        Run.of(
            "card",
            dir.resolve("hot.yaml"),
            "--kiln",
            dir.resolve("weak.yaml"),
            "--ready-by",
            "2026-12-03T10:00",
            "--calendar",
            calendar,
            "-o",
            card);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out())
        .contains("No start can be reckoned", "No calendar was written")
        .doesNotContain("Start ");
    assertThat(card).exists();
    assertThat(calendar).doesNotExist();
  }

  /** Nor does the card print one. */
  @Test
  void theCardOfSuchAKilnPromisesNoEnd() throws IOException {
    weak(900);
    Path card = dir.resolve("card.pdf");
    Run run =
        Run.of(
            "card",
            dir.resolve("hot.yaml"),
            "--kiln",
            dir.resolve("weak.yaml"),
            "--start",
            "2026-12-03T10:00",
            "-o",
            card);
    assertThat(run.err()).isEmpty();
    try (PDDocument pdf = Loader.loadPDF(card.toFile())) {
      assertThat(new PDFTextStripper().getText(pdf))
          .contains("may never end", "of 100 cases", "may be never");
    }
  }

  /** Nor does its calendar; nor is work ready, or to be taken out, when a simulation gave up. */
  @Test
  void theCalendarOfSuchAKilnHasNoInventedTimes() throws IOException {
    weak(300);
    Path calendar = dir.resolve("firing.ics");
    Path work = Studio.work("soldered-catches");
    Path schedule = dir.resolve("catches.yaml");
    assertThat(Run.of("compose", work, "--kiln", ANCHOR, "-o", schedule).err()).isEmpty();
    Object[] asked = {
      "card",
      schedule,
      "--kiln",
      dir.resolve("weak.yaml"),
      "--work",
      work,
      "--start",
      "2026-12-03T10:00",
      "--calendar",
      calendar,
      "-o",
      dir.resolve("card.pdf")
    };
    assertThat(Run.of(asked).err()).isEmpty();
    List<VEvent> events = Biweekly.parse(Files.readString(calendar)).first().getEvents();
    assertThat(events).hasSize(1);
    assertThat(events.get(0).getSummary().getValue()).startsWith("Act now: ");
    assertThat(events.get(0).getDescription().getValue())
        .contains("This program never ends: in every case");
    Object[] forecast = {
      "forecast",
      schedule,
      "--kiln",
      dir.resolve("weak.yaml"),
      "--work",
      work,
      "--start",
      "2026-12-03T10:00"
    };
    assertThat(Run.of(forecast).out()).contains("No ready time can be promised.", "It never ends");
  }

  /** What was measured comes but once: no forecast takes its place. */
  @Test
  void aTraceReplacesNoLog() throws IOException {
    String rows = "time_s,chamber_c\n0,20\n60,21\n120,23\n";
    Path log = Files.writeString(dir.resolve("log.csv"), rows);
    Path truth =
        Files.writeString(
            dir.resolve("truth.csv"), "time_s,setpoint_c,sensor_c,air_c\n0,19.0,18.06,19.00\n");
    for (Path kept : List.of(log, truth)) {
      String before = Files.readString(kept);
      Run run = Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--trace", kept);
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.err())
          .isEqualTo(
              kept
                  + ": the file is there already and is not a trace; choose another name or move it away."
                  + System.lineSeparator());
      assertThat(kept).hasContent(before);
    }
    Run own = Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--log", log, "--trace", log);
    assertThat(own.code()).isEqualTo(2);
    assertThat(own.err())
        .isEqualTo(
            "--trace: %s is the file that --log reads, which would be lost; choose another name to write to.%n"
                .formatted(log));
    assertThat(log).hasContent(rows);
    assertThat(
            Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--trace", dir.resolve("x.svg")).code())
        .isZero();
    Run two =
        Run.of(
            "inside",
            HARBOUR,
            "--kiln",
            ANCHOR,
            "--plot",
            dir.resolve("a.svg"),
            "--curves",
            dir.resolve("./a.svg"));
    assertThat(two.err()).contains("is written by --curves too; choose two names.");
  }

  @Test
  void aFiringFileHoldsTheHeat() throws IOException {
    Path firing = dir.resolve("firing.yaml");
    Files.writeString(firing, "load: {furniture-kg: 6}\n");
    Path empty = dir.resolve("empty.yaml");
    Files.writeString(empty, "load: {}\n");

    double heavy =
        json(Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--firing", firing, "--json"))
            .get("energyKilowattHours")
            .get("median")
            .asDouble();
    double light =
        json(Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--firing", empty, "--json"))
            .get("energyKilowattHours")
            .get("median")
            .asDouble();

    assertThat(heavy).isGreaterThan(light + 0.3);
  }

  @Test
  void priceBandsNeedAStartAndAFlatPriceDoesNot() throws IOException {
    assertThat(json(Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--json")).get("cost").isNull())
        .isTrue();
    Path flat = dir.resolve("kiln.yaml");
    Files.writeString(
        flat,
        Files.readString(ANCHOR)
            .replaceFirst("(?m)^tariff:.*$", "tariff: {currency: EUR, flat: 0.5}"));
    JsonNode root = json(Run.of("forecast", HARBOUR, "--kiln", flat, "--json"));
    assertThat(root.get("cost").get("median").asDouble())
        .isCloseTo(
            0.5 * root.get("energyKilowattHours").get("median").asDouble(),
            org.assertj.core.api.Assertions.within(1e-5));
  }

  @Test
  void theSameRequestGivesTheSameText() {
    assertThat(Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--json"))
        .isEqualTo(Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--json"));
  }

  @Test
  void theNightWhenTheClocksGoBackIsTold() {
    Run run =
        Run.at(
            Instant.parse("2026-10-24T12:00:00Z"),
            "forecast",
            HARBOUR,
            "--kiln",
            ANCHOR,
            "--start",
            "2026-10-24T20:00");

    assertThat(run.out()).contains("The clocks go back from 02:00 to 01:00 on Sunday 25 October.");
  }

  @Test
  void whatLogsTaughtIsToldNotUsed() throws IOException {
    Path kiln = dir.resolve("kiln.yaml");
    Files.writeString(kiln, Files.readString(ANCHOR) + "learned: {loss: 1.4}\n");

    assertThat(Run.of("forecast", HARBOUR, "--kiln", kiln).out())
        .containsPattern("another version\\s+learned");
  }

  /**
   * An enamel kiln is ready for its first piece after the walls have followed, not at first sight.
   */
  @Test
  void readyForEnamelIsWhatTheWorkCallsReady() throws IOException {
    Path schedule = dir.resolve("s.yaml");
    Path work = Studio.work("evening-enamel");
    Path buoy = Studio.kiln("buoy");
    Run.of("compose", work, "--kiln", buoy, "-o", schedule);

    JsonNode root = json(Run.of("forecast", schedule, "--kiln", buoy, "--work", work, "--json"));

    JsonNode start = root.get("start");
    assertThat(start.get("readyWhat").asText()).isEqualTo("first piece may go in");
    assertThat(start.get("ready").get("high").asText())
        .isBetween("2026-12-02T18:29:00Z", "2026-12-02T18:30:00Z");
    double reached = root.get("segments").get(0).get("reachedSeconds").get("median").asDouble();
    double end = root.get("endSeconds").get("median").asDouble();
    assertThat(end).isGreaterThan(reached + 2.5 * 3600);
    assertThat(start.get("start").asText()).isLessThan("2026-12-02T18:00");
  }

  @Test
  void anEventAfterTheProgramsEndIsTold() throws IOException {
    Path firing = dir.resolve("late.yaml");
    Files.writeString(
        firing, "events: [{at-s: 3600, door-open-s: 10}, {at-s: 180000, door-open-s: 10}]\n");
    String told = Run.of("forecast", HARBOUR, "--kiln", ANCHOR, "--firing", firing).out();
    assertThat(told.replaceAll("\\s+", " "))
        .containsOnlyOnce("The \"door open\" of the firing file begins 50 h")
        .contains("it changes nothing before that.");
  }

  /** What an enamelling session takes is more than its openings, and somebody is told so. */
  @Test
  void aSessionsPiecesAreForecastAndMayBeDenied() throws IOException {
    String openings =
        "events: [{at-s: 2400, door-open-s: 20}, {at-s: 2700, door-open-s: 20}, {at-s: 3000, door-open-s: 20}, {at-s: 3300, door-open-s: 20}]\n";
    Run likely = session(openings);
    Run denied = session(openings + "goes-in-cold: none\n");
    Run known = session(openings + "goes-in-cold: {j-per-k: 200}\n");
    String note = "a cold piece is taken to go in";
    assertThat(String.join(" ", likely.out().split("\\s+"))).containsOnlyOnce(note);
    for (Run quiet : List.of(denied, known)) {
      assertThat(String.join(" ", quiet.out().split("\\s+"))).doesNotContain(note);
    }
    double least = kilowattHours(openings + "goes-in-cold: none\n");
    double usual = kilowattHours(openings);
    double most = kilowattHours(openings + "goes-in-cold: {j-per-k: 200}\n");
    // 45 J/K by 800 K, three times: 0.03 kWh; the kiln loses less meanwhile.
    assertThat(usual - least).isBetween(0.01, 0.04);
    assertThat(most - least).isBetween(0.06, 0.14);
  }

  private Run session(String firing, String... more) throws IOException {
    Path file = Files.writeString(dir.resolve("session.yaml"), firing);
    List<Object> arguments =
        new java.util.ArrayList<>(
            List.of(
                "forecast",
                Studio.schedule("working-heat"),
                "--kiln",
                Studio.kiln("buoy"),
                "--firing",
                file));
    arguments.addAll(List.of(more));
    return Run.of(arguments.toArray());
  }

  private double kilowattHours(String firing) throws IOException {
    return json(session(firing, "--json")).at("/energyKilowattHours/median").asDouble();
  }
}
