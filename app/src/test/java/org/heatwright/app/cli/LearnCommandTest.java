package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.heatwright.app.files.KilnFile;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LearnCommandTest {

  private static final Path K1 = Path.of("src/test/resources/example-kilns/k1");

  @TempDir private Path dir;

  private Object[] learn(Object... more) {
    Object[] first = {
      "learn", K1.resolve("kiln.yaml"),
      "--log", K1.resolve("f3/log.csv"),
      "--schedule", K1.resolve("f3/schedule.yaml"),
      "--firing", K1.resolve("f3/firing.yaml")
    };
    Object[] all = java.util.Arrays.copyOf(first, first.length + more.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    return all;
  }

  @Test
  void writesAKilnThatForecastsNarrower() throws IOException {
    Path known = dir.resolve("known.yaml");
    Run run = Run.of(learn("-o", known));
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("learned from 1 firing").contains("Not told by these firings");

    double before = width(K1.resolve("kiln.yaml"));
    double after = width(known);
    // A log of the heating alone; what cooling tells is missing.
    assertThat(after).isLessThan(2.0 / 3 * before);
  }

  /** The same log given twice, under two names, is one firing. */
  @Test
  void theSameLogTwiceIsRefused() throws IOException {
    Path copy = Files.copy(K1.resolve("f3/log.csv"), dir.resolve("copy.csv"));
    Object[] twice = {
      "--log", copy,
      "--schedule", K1.resolve("f3/schedule.yaml"),
      "--firing", K1.resolve("f3/firing.yaml")
    };
    Run run = Run.of(learn(twice));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .isEqualTo(
            "--log: %s and %s are the same log; expected each firing once.%n"
                .formatted(K1.resolve("f3/log.csv"), copy));
    Object[] health = learn(twice);
    health[0] = "health";
    assertThat(Run.of(health).err()).contains("are the same log");
  }

  /** Nor is it another one when it is written anew: with dates, in °F, with a column more. */
  @Test
  void aLogThatIsWrittenAnewIsTheSame() throws IOException {
    String[] rows = Files.readString(K1.resolve("f3/log.csv")).strip().split("\\R");
    StringBuilder anew = new StringBuilder("time,chamber_f,event\n");
    for (String row : Arrays.asList(rows).subList(1, rows.length)) {
      String[] cells = row.split(",");
      double fahrenheit = 32 + 1.8 * Double.parseDouble(cells[1]);
      anew.append(
          "%s,%s,%n"
              .formatted(
                  Instant.parse("2026-11-14T17:00:00Z")
                      .plusMillis(Math.round(1000 * Double.parseDouble(cells[0]))),
                  Math.rint(100 * fahrenheit) / 100));
    }
    Path copy = Files.writeString(dir.resolve("anew.csv"), anew.toString());
    Run run =
        Run.of(
            learn(
                "--log", copy,
                "--schedule", K1.resolve("f3/schedule.yaml"),
                "--firing", K1.resolve("f3/firing.yaml")));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("anew.csv are the same log; expected each firing once.");
  }

  private static double width(Path kiln) throws IOException {
    Run run = Run.of("forecast", K1.resolve("f4/schedule.yaml"), "--kiln", kiln, "--json");
    JsonNode end = new ObjectMapper().readTree(run.out()).get("endSeconds");
    return end.get("high").asDouble() - end.get("low").asDouble();
  }

  @Test
  void whatItWritesReadsBackAsItWas() throws IOException {
    Path known = dir.resolve("known.yaml");
    Run.of(learn("-o", known));
    String text = Files.readString(known);
    var kiln = KilnFile.read(text, "known.yaml");
    assertThat(KilnFile.write(kiln)).isEqualTo(text);
    assertThat(kiln.learned().orElseThrow().firings()).isEqualTo(1);
    assertThat(kiln.beliefs().ignoranceFactor(KilnQuantity.FITTINGS)).isLessThan(0.6);
  }

  @Test
  void answersProgramsWithEveryQuantity() throws IOException {
    JsonNode json = new ObjectMapper().readTree(Run.of(learn("--json")).out());
    Map<String, JsonNode> quantities = new HashMap<>();
    json.get("quantities").forEach(q -> quantities.put(q.get("name").asText(), q));
    assertThat(quantities.keySet())
        .isEqualTo(
            Arrays.stream(KilnQuantity.values())
                .filter(KilnQuantity::learnable)
                .map(KilnQuantity::fileName)
                .collect(Collectors.toSet()));
    JsonNode fittings = quantities.get("fittings-j-per-k-m2");
    assertThat(fittings.get("told").asBoolean()).isTrue();
    assertThat(fittings.get("after").get("high").asDouble())
        .isLessThan(fittings.get("before").get("median").asDouble());
    // Nobody opened the door, and without a meter the power is still the nameplate's.
    assertThat(quantities.get("door-factor").get("told").asBoolean()).isFalse();
    assertThat(quantities.get("power-factor").get("told").asBoolean()).isFalse();
  }

  @Test
  void whatIsStillTheNameplatesIsSaid() throws IOException {
    String sentence = "No meter was logged: energy is as sure as the nameplate's power.";
    Run run = Run.of(learn());
    assertThat(run.out().replaceAll("\\s+", " ")).contains(sentence);
    JsonNode json = new ObjectMapper().readTree(Run.of(learn("--json")).out());
    assertThat(json.get("stillNameplate")).extracting(JsonNode::asText).contains(sentence);
  }

  /** The same log, 100 min late: the correction is told, and the kiln learned is about the same. */
  @Test
  void aLogThatStartsBeforeTheProgramIsCountedFromTheRise() throws IOException {
    StringBuilder late = new StringBuilder("time_s,chamber_c\n");
    String[] rows = Files.readString(K1.resolve("f3/log.csv")).strip().split("\\R");
    String first = rows[1].split(",")[1];
    for (int t = 0; t < 6000; t += 60) {
      late.append(t).append(',').append(first).append('\n');
    }
    for (String row : Arrays.asList(rows).subList(1, rows.length)) {
      String[] cells = row.split(",");
      late.append(6000 + Double.parseDouble(cells[0])).append(',').append(cells[1]).append('\n');
    }
    Path log = dir.resolve("late.csv");
    Files.writeString(log, late.toString());
    Object[] arguments = learn("--json");
    arguments[3] = log;
    JsonNode json = new ObjectMapper().readTree(Run.of(arguments).out());
    assertThat(json.get("notes").toString())
        .containsPattern("The log starts about 1 h (38|39|40|41|42) min before the program");
    JsonNode plain = new ObjectMapper().readTree(Run.of(learn("--json")).out());
    assertThat(json.get("firings").get(0).get("misfitKelvin").asDouble())
        .isLessThan(plain.get("firings").get(0).get("misfitKelvin").asDouble() + 2);
  }

  /** The demo's evening of brooches: what the door was opened for is told, and is no fault. */
  @Test
  void openingsOfAnEnamellingSessionAreTakenIntoAccountAndTold() {
    Path demo = Path.of("src/main/resources/demo");
    Run run =
        Run.of(
            "learn",
            demo.resolve("kilns/buoy.yaml"),
            "--log",
            demo.resolve("logs/2026-11-20.csv"),
            "--schedule",
            demo.resolve("logs/enamel-evening.yaml"));
    assertThat(run.code()).isZero();
    assertThat(run.out().replaceAll("\\s+", " "))
        .contains("13 openings of the door, told by the log, were taken into account.")
        .doesNotContain("kept out of what was learned");
  }

  @Test
  void anotherScheduleTeachesNothingAndIsToldInOneSentence() throws IOException {
    Path other = dir.resolve("other.yaml");
    Files.writeString(
        other,
        """
        name: other
        unit: C
        segments:
          - {rate: 30, target: 200, hold: "5:00"}
          - {rate: 30, target: 350, hold: "2:00"}
        """);
    Path known = dir.resolve("known.yaml");
    Object[] arguments = learn("-o", known);
    arguments[5] = other;
    Run run = Run.of(arguments);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .contains("log.csv")
        .contains("nothing was learned")
        .contains("Expected the schedule that ran")
        .doesNotContain("Exception");
    assertThat(run.err().strip().lines()).hasSize(1);
    assertThat(known).doesNotExist();
  }

  /** A sensor that is not plugged in, a single reading: nothing is made of it. */
  @Test
  void aLogThatTellsNothingTeachesNothing() throws IOException {
    String flat =
        IntStream.range(0, 200)
            .mapToObj(i -> "%d,%d%n".formatted(60 * i, 20 + i % 2))
            .collect(Collectors.joining("", "time_s,chamber_c\n", ""));
    assertTeachesNothing(flat, "stays between 20 and 21 °C");
    assertTeachesNothing("time_s,chamber_c\n600,220\n", "it has 1 reading");
  }

  private void assertTeachesNothing(String log, String why) throws IOException {
    Path silent = dir.resolve("silent.csv");
    Files.writeString(silent, log);
    Path known = dir.resolve("known.yaml");
    Object[] arguments = learn("-o", known);
    arguments[3] = silent;
    Run run = Run.of(arguments);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("silent.csv").contains(why).doesNotContain("Exception");
    assertThat(run.err().strip().lines()).hasSize(1);
    assertThat(known).doesNotExist();
  }

  @Test
  void oneScheduleForTwoLogsIsToldInOneSentence() {
    Run run = Run.of(learn("--log", K1.resolve("f4/log.csv")));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .contains("--schedule")
        .contains("given 1 times for 2 logs")
        .doesNotContain("Exception");
  }

  @Test
  void aLearnedPartThatIsNoneIsToldByLine() throws IOException {
    Path broken = dir.resolve("broken.yaml");
    Files.writeString(
        broken,
        Files.readString(K1.resolve("kiln.yaml"))
            + "learned: {engine: "
            + Learned.ENGINE
            + ", date: 2026-11-01, firings: 1, medians: {}, covariance: []}\n");
    Run run = Run.of("forecast", K1.resolve("f4/schedule.yaml"), "--kiln", broken);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("broken.yaml").contains("medians").doesNotContain("Exception");
  }
}
