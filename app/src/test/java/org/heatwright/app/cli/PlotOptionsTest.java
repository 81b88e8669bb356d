package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlotOptionsTest {

  private static final Path K1 = Path.of("src/test/resources/example-kilns/k1");

  @TempDir private Path dir;

  private Run forecast(Object... more) {
    Object[] first = {
      "forecast", K1.resolve("f3/schedule.yaml"), "--kiln", K1.resolve("kiln.yaml"),
      "--firing", K1.resolve("f3/firing.yaml"), "--log", K1.resolve("f3/log.csv")
    };
    Object[] all = java.util.Arrays.copyOf(first, first.length + more.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    return Run.of(all);
  }

  private Run learn(Object... more) {
    Object[] first = {"learn", K1.resolve("kiln.yaml")};
    Object[] logs = {
      "--log", K1.resolve("f3/log.csv"), "--schedule", K1.resolve("f3/schedule.yaml"),
      "--log", K1.resolve("f4/log.csv"), "--schedule", K1.resolve("f4/schedule.yaml")
    };
    Object[] all = java.util.Arrays.copyOf(first, first.length + logs.length + more.length);
    System.arraycopy(logs, 0, all, first.length, logs.length);
    System.arraycopy(more, 0, all, first.length + logs.length, more.length);
    return Run.of(all);
  }

  /** A logger that was started half an hour before the program. */
  @Test
  void aLogThatBeganEarlierIsPutOnTheProgramsClock() throws IOException {
    List<String> rows = Files.readAllLines(K1.resolve("f3/log.csv"));
    List<String> late = new ArrayList<>(List.of("time_s,chamber_c"));
    for (int second = 0; second < 1800; second += 10) {
      late.add(second + "," + rows.get(1).split(",")[1]);
    }
    for (String row : rows.subList(1, rows.size())) {
      String[] cells = row.split(",");
      late.add((Integer.parseInt(cells[0]) + 1800) + "," + cells[1]);
    }
    Path log = Files.write(dir.resolve("late.csv"), late);
    String asIs = forecast().out();
    String shifted =
        Run.of(
                "forecast",
                K1.resolve("f3/schedule.yaml"),
                "--kiln",
                K1.resolve("kiln.yaml"),
                "--firing",
                K1.resolve("f3/firing.yaml"),
                "--log",
                log)
            .out();
    assertThat(shifted)
        .containsPattern("note  The log starts about (29|30) min before the program");
    // A minute off while the display climbs by 30 K a minute; half an hour off it would miss by
    // 300.
    assertThat(missed(shifted)).isCloseTo(missed(asIs), within(30.0));
  }

  private static double missed(String out) {
    Matcher kelvins = Pattern.compile("display was\\s+([0-9.]+)\\s+K\\s+from").matcher(out);
    assertThat(kelvins.find()).as(out).isTrue();
    return Double.parseDouble(kelvins.group(1));
  }

  @Test
  void aForecastIsDrawnWithItsLog() throws IOException {
    Path svg = dir.resolve("may.svg");
    Run run = forecast("--plot", svg);
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .containsPattern("The log: .*(of the readings|Every reading)")
        .contains("Written to " + svg);
    assertThat(Files.readString(svg))
        .contains("Log against forecast", "what the display said", "only the nameplate is known");
  }

  @Test
  void aPictureIsDrawnWithoutALogToo() throws IOException {
    Path png = dir.resolve("tonight.PNG");
    Run run =
        Run.of(
            "forecast",
            Studio.schedule("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "--plot",
            png,
            "--json");
    assertThat(run.err()).isEmpty();
    assertThat(ImageIO.read(png.toFile()).getWidth()).isGreaterThan(1000);
    JsonNode json = new ObjectMapper().readTree(run.out());
    assertThat(json.get("plot").asText()).isEqualTo(png.toString());
    assertThat(json.get("log").isNull()).isTrue();
  }

  @Test
  void programsReadHowWellTheForecastHeld() throws IOException {
    JsonNode log = new ObjectMapper().readTree(forecast("--json").out()).get("log");
    assertThat(log.get("readings").asInt()).isGreaterThan(50);
    assertThat(log.get("insideShare").asDouble()).isBetween(0.0, 1.0);
    assertThat(log.get("missedKelvin").asDouble()).isGreaterThan(0);
  }

  @Test
  void aLessonIsDrawnIntoItsFolder() throws IOException {
    Path folder = dir.resolve("plots");
    Run run = learn("--plots", folder, "--json");
    assertThat(run.err()).isEmpty();
    JsonNode json = new ObjectMapper().readTree(run.out());
    List<String> told = new java.util.ArrayList<>();
    json.get("plots").forEach(path -> told.add(Path.of(path.asText()).getFileName().toString()));
    // Both logs are called log.csv: the second has a number.
    assertThat(told)
        .containsExactly(
            "log-forecast.svg",
            "log-missed.svg",
            "log-2-forecast.svg",
            "log-2-missed.svg",
            "learned.svg");
    assertThat(told).allMatch(name -> Files.isRegularFile(folder.resolve(name)));
    assertThat(Files.readString(folder.resolve("learned.svg")))
        .contains("Full power", "what the nameplate lets one believe", "not told");
    assertThat(Files.readString(folder.resolve("log-forecast.svg")))
        .containsPattern("has learned from this log|was left out");
  }

  @Test
  void whatCannotBeWrittenIsToldInOneSentenceBeforeAnythingIsWorkedOut() throws IOException {
    assertTold(forecast("--plot", dir.resolve("may.gif")), "may.gif", "ends in .svg or .png");
    assertTold(forecast("--plot", dir.resolve("no/may.svg")), "may.svg", "no such folder");
    Path file = Files.writeString(dir.resolve("notes"), "mine");
    assertTold(learn("--plots", file), "notes", "cannot be made");
    assertTold(learn("--plots", dir.resolve("not/there")), "there", "cannot be made");
    Path taken = Files.createDirectory(dir.resolve("taken"));
    Files.writeString(taken.resolve("learned.svg"), "my own words");
    assertTold(learn("--plots", taken), "learned.svg", "is not an SVG drawing");
    assertThat(taken.resolve("log-forecast.svg")).doesNotExist();
  }

  private static void assertTold(Run run, String file, String words) {
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(file).contains(words).doesNotContain("Exception");
    assertThat(run.err().strip().lines()).hasSize(1);
  }
}
