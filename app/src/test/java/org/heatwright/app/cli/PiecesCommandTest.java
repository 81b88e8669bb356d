package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PiecesCommandTest {

  @TempDir static Path folder;

  private static Path log;
  private static Path told;

  /** A session at 820 °C whose door is opened for 20 s; the chamber falls and comes back. */
  private static String session(double[] opens, String[] names) {
    StringBuilder csv = new StringBuilder("time_s,chamber_c,event\r\n");
    double dip = 0;
    double end = opens[opens.length - 1] + 400;
    for (int t = 0; t < end + 2000; t += 5) {
      boolean open = false;
      String event = "";
      for (int i = 0; i < opens.length; i++) {
        open |= t >= opens[i] && t < opens[i] + 20;
        if (names.length > 0 && t == opens[i]) {
          event = "\"door-open " + names[i] + "\"";
        } else if (names.length > 0 && t == opens[i] + 20) {
          event = "door-shut";
        }
      }
      dip = open ? dip + (70 - dip) * 0.4 : dip * 0.93;
      double celsius =
          (t < 3000 ? 20 + 800 * (1 - Math.exp(-t / 400.0)) : 820)
              - dip
              - (t > end ? 0.15 * (t - end) : 0);
      csv.append("%d,%.1f,%s\r\n".formatted(t, celsius, event));
    }
    return csv.toString();
  }

  @BeforeAll
  static void write() throws IOException {
    double[] opens = new double[14];
    for (int i = 0; i < 14; i++) {
      opens[i] = 4800 + 300 * i - (i > 8 ? 230 : 0);
    }
    log = Files.writeString(folder.resolve("session.csv"), session(opens, new String[0]));
    told =
        Files.writeString(
            folder.resolve("told.csv"),
            session(
                new double[] {4800, 5000, 5200},
                new String[] {"brooch 1, coat 1, left", "brooch 2, coat 1", "brooch 1, coat 2"}));
  }

  private static JsonNode json(String options) throws IOException {
    Run run = run(options + " --json");
    assertThat(run.code()).as(run.err()).isZero();
    return new ObjectMapper().readTree(run.out());
  }

  private static Run run(String options) {
    return Run.of(
        ("pieces --work "
                + Studio.work("evening-enamel")
                + " --kiln "
                + Studio.kiln("buoy")
                + " "
                + options)
            .strip()
            .split(" "));
  }

  /** Fourteen dips are fourteen firings; the ninth was pulled before the display was back. */
  @Test
  void aLogIsSplitIntoItsPieces() throws IOException {
    JsonNode firings = json("--log " + log).at("/sessions/0/firings");

    assertThat(firings).hasSize(14);
    for (JsonNode firing : firings) {
      assertThat(firing.get("pulledBeforeRecovery").asBoolean())
          .isEqualTo(firing.get("number").asInt() == 9);
    }
    assertThat(firings.get(8).get("heatSeconds").asDouble())
        .isLessThan(firings.get(7).get("heatSeconds").asDouble() / 2);

    Run page = run("--log " + log);
    assertThat(page.out())
        .contains("14 pieces in", "The display falls", "Pulled before the display was back.")
        .contains("test tiles");
  }

  @Test
  void namedPiecesHaveAHistoryOverSessions() throws IOException {
    JsonNode pieces = json("--log " + told + " --log " + told).get("pieces");

    assertThat(pieces).hasSize(2);
    assertThat(pieces.get(0).get("name").asText()).isEqualTo("brooch 1");
    assertThat(pieces.get(0).get("firings")).hasSize(4);
    assertThat(pieces.get(0).at("/firings/0/place").asText()).isEqualTo("left");
    assertThat(pieces.get(0).at("/firings/1/coat").asInt()).isEqualTo(2);
    assertThat(run("--log " + told).out()).contains("brooch 1: 2 firings, coats 1 to 2");
  }

  /** What was kept comes back, once for the same log; a log judged anew replaces what it told. */
  @Test
  void namedPiecesAreKeptAndListed() throws IOException {
    Path file = folder.resolve("kept.db");
    Store.open(file, Clock.systemUTC()).close();
    Path demo = Path.of("src", "main", "resources", "demo", "logs", "2026-11-20.csv");
    assertThat(run("--log " + demo + " --keep --store " + file).out())
        .contains("Kept: 12 firings of named pieces.");
    JsonNode read =
        json("--log " + demo + " --log " + told + " --keep --store " + file)
            .at("/sessions/0/firings");

    JsonNode pieces = kept(file, "--json");
    assertThat(pieces).hasSize(6);
    JsonNode first = pieces.get(0);
    assertThat(first.get("name").asText()).isEqualTo("brooch 1");
    // Two of the demo log and two of a log without a clock, which come first.
    assertThat(first.get("firings")).hasSize(4);
    assertThat(first.at("/firings/0/fired").isNull()).isTrue();
    JsonNode last = first.at("/firings/3");
    assertThat(last.get("fired").asText()).isEqualTo("2026-11-20T20:02:10Z");
    assertThat(last.get("coat").asInt()).isEqualTo(2);
    assertThat(last.get("place").asText()).isEqualTo("left");
    assertThat(last.get("kiln").asText()).isEqualTo("Buoy");
    assertThat(last.get("heatSeconds")).isEqualTo(read.get(6).get("heatSeconds"));
    assertThat(last.get("hottestCelsius")).isEqualTo(read.get(6).get("hottestCelsius"));

    Run page = Run.of("pieces", "--kept", "--piece", "brooch 4", "--store", file.toString());
    assertThat(page.out())
        .contains("brooch 4: 2 firings, coats 1 to 2", "last sugary", "2026-11-20.csv")
        .doesNotContain("brooch 5");
    Run none = Run.of("pieces", "--kept", "--piece", "vase", "--store", file.toString());
    assertThat(none.code()).isNotZero();
    assertThat(none.err()).startsWith("--piece: nothing was kept of \"vase\"; expected brooch 1");
  }

  private static JsonNode kept(Path file, String more) throws IOException {
    Run run = Run.of("pieces", "--kept", "--store", file.toString(), more);
    assertThat(run.code()).as(run.err()).isZero();
    return new ObjectMapper().readTree(run.out()).get("pieces");
  }

  /** An opening at which nothing goes in is no firing. */
  @Test
  void everyTextFollowsTheUnit() throws IOException {
    Path file = folder.resolve("unit.db");
    Store.open(file, Clock.systemUTC()).close();
    Path demo = Path.of("src", "main", "resources", "demo", "logs", "2026-11-20.csv");
    String log = run("--log " + demo + " --unit F --keep --store " + file).out();
    String kept = Run.of("pieces", "--kept", "--unit", "F", "--store", file.toString()).out();
    String expected = run("--unit F").out();
    assertThat(expected).contains("at 1508 °F");
    for (String page : List.of(log, kept, expected)) {
      assertThat(page).contains(" °F").doesNotContain("°C").doesNotContainPattern("\\d K\\b");
    }
  }

  @Test
  void theLastOpeningIsNoPiece() throws IOException {
    JsonNode firings =
        json("--log " + Path.of("src", "main", "resources", "demo", "logs", "2026-11-20.csv"))
            .at("/sessions/0/firings");
    assertThat(firings).hasSize(12);
    assertThat(firings.get(11).get("staySeconds").asDouble()).isEqualTo(90);
  }

  @Test
  void whatIsMissingIsSaid() {
    assertThat(Run.of("pieces").err())
        .isEqualToIgnoringNewLines("--work: it is missing; expected a work file of kind enamel.");
    assertThat(run("--keep").err()).startsWith("--keep: there is no log");
    assertThat(run("--piece x").err()).startsWith("--piece: it chooses from what was kept");
  }

  /** Without a log: the piece on its own clock, the window in order, and a drawing. */
  @Test
  void whatToExpectOfAPieceIsToldAndDrawn() throws IOException {
    Path plot = folder.resolve("piece.svg");
    JsonNode root = json("--plot " + plot);
    JsonNode expected = root.get("expected");

    assertThat(expected.get("workingCelsius").asDouble()).isEqualTo(820);
    assertThat(expected.get("earliestSeconds").asDouble())
        .isLessThan(expected.get("likelySeconds").asDouble());
    assertThat(expected.get("likelySeconds").asDouble())
        .isLessThan(expected.get("latestSeconds").asDouble());
    assertThat(expected.get("curve").size()).isGreaterThan(20);
    double before = -1;
    for (JsonNode row : expected.get("curve")) {
      assertThat(row.get("seconds").asDouble()).isGreaterThan(before);
      assertThat(row.get("lowCelsius").asDouble())
          .isLessThanOrEqualTo(row.get("highCelsius").asDouble());
      before = row.get("seconds").asDouble();
    }
    assertThat(root.get("outcomes").findValuesAsText("code"))
        .contains("pull-window", "piece-heat", "enamel-fit", "door-recovery", "test-tile");
    assertThat(Files.readString(plot)).contains("<svg", "take it out");
    assertThat(run("").out()).contains("From the door's shutting, at 820 °C", "time in the kiln");
  }

  @Test
  void aWorkThatIsNoEnamelIsRefused() {
    Run run =
        Run.of(
            "pieces",
            "--work",
            Studio.work("harbour-burnout").toString(),
            "--kiln",
            Studio.kiln("buoy").toString(),
            "--log",
            log.toString());

    assertThat(run.code()).isEqualTo(Answer.WRONG_INPUT);
    assertThat(run.err()).contains("expected kind: enamel");
  }
}
