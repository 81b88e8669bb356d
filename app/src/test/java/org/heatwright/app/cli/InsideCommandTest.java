package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class InsideCommandTest {

  private static final Path M1 = Path.of("src/test/resources/example-kilns/k1-m1");

  @TempDir private Path dir;

  private static Run inside(Object... more) {
    List<Object> all =
        new ArrayList<>(
            List.of(
                "inside",
                M1.resolve("schedule.yaml"),
                "--kiln",
                M1.resolve("kiln.yaml"),
                "--firing",
                M1.resolve("firing.yaml")));
    all.addAll(List.of(more));
    return Run.of(all.toArray());
  }

  /** The core of this firing is known: it boils from 1:19 h and has left boiling at 3:11 h. */
  @Test
  void theLogTellsWhatTheCoreDidAndCurvesAreWritten() throws IOException {
    Path section = dir.resolve("section.png");
    Path curves = dir.resolve("curves.svg");
    Path trace = dir.resolve("inside.csv");
    Run run =
        inside(
            "--log",
            M1.resolve("log.csv"),
            "--at",
            "+3:00",
            "--plot",
            section,
            "--curves",
            curves,
            "--trace",
            trace);

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains(
            "from what the display said",
            "begins to boil",
            "where wax has run",
            "Most steam",
            "cristobalite")
        .contains("At +3:00 h the core is at", "It is wet, or too cool")
        .contains("Written to " + section, "Written to " + trace);
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(ImageIO.read(section.toFile()).getWidth()).isGreaterThan(800);
    assertThat(Files.readString(curves)).contains("Largest difference inside", "core boils");
    List<String> rows = Files.readAllLines(trace);
    assertThat(rows.get(0))
        .isEqualTo("time_s,chamber_c,centre_low_c,centre_c,centre_high_c,surface_c,water_share");
    String[] first = rows.get(1).split(",");
    assertThat(Double.parseDouble(first[6])).isEqualTo(1);
    String[] last = rows.get(rows.size() - 1).split(",");
    assertThat(Double.parseDouble(last[6])).isZero();
  }

  @Test
  void aForecastTellsTheSameAndFahrenheitIsRead() throws IOException {
    JsonNode json = new ObjectMapper().readTree(inside("--json").out());
    JsonNode mould = json.get("moulds").get(0);

    assertThat(json.get("source").asText()).isEqualTo("forecast");
    double begins = mould.get("boilBeginsSeconds").get("median").asDouble();
    double ends = mould.get("boilEndsSeconds").get("median").asDouble();
    assertThat(begins).isBetween(3000.0, 6500.0);
    // 80 °C is passed a little before the core begins to boil at 95 °C.
    assertThat(mould.get("meltedCelsius").asDouble()).isEqualTo(80);
    assertThat(mould.get("meltedSeconds").get("median").asDouble())
        .isBetween(begins - 2000, begins);
    assertThat(ends).isBetween(10_000.0, 13_000.0);
    double air = mould.get("pour").get("airSeconds").asDouble();
    assertThat(mould.get("pour").get("cradleSeconds").asDouble()).isGreaterThan(air);
    assertThat(air).isGreaterThan(5);

    Path schedule =
        Files.writeString(
            dir.resolve("f.yaml"),
            "name: f\nunit: F\nsegments:\n  - {rate: 300, target: 400, hold: \"0:30\"}\n");
    Run run =
        Run.of(
            "inside",
            schedule,
            "--kiln",
            M1.resolve("kiln.yaml"),
            "--firing",
            M1.resolve("firing.yaml"),
            "--plot",
            dir.resolve("f.svg"));
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("not dry in every case", "°F");
    assertThat(Files.readString(dir.resolve("f.svg"))).contains("°F", "Cut through the axis");
  }

  @Test
  void withSeveralMouldsTheDoorsCostIsTold() throws IOException {
    Object[] three = {
      "inside",
      Studio.schedule("harbour-burnout"),
      "--kiln",
      Studio.kiln("capstan"),
      "--work",
      Studio.work("harbour-burnout"),
      "--json",
      "--door-s"
    };
    JsonNode brief = door(three, 10);
    JsonNode lengthy = door(three, 60);
    assertThat(lengthy.at("/displayFallKelvin/median").asDouble())
        .isGreaterThan(brief.at("/displayFallKelvin/median").asDouble());
    assertThat(lengthy.at("/stays/0/faceFallKelvin/median").asDouble())
        .isGreaterThan(lengthy.at("/stays/0/coreFallKelvin/median").asDouble());
    // One mould alone leaves nobody behind.
    assertThat(new ObjectMapper().readTree(inside("--json").out()).get("door").isNull()).isTrue();
    told(inside("--door-s", "0"), "--door-s", "expected 1 to 600");
  }

  private static JsonNode door(Object[] command, int seconds) throws IOException {
    List<Object> all = new ArrayList<>(List.of(command));
    all.add(seconds);
    return new ObjectMapper().readTree(Run.of(all.toArray()).out()).get("door");
  }

  @Test
  void wrongInputIsToldInASentence() {
    told(inside("--at", "+9:99"), "--at", "+H:MM");
    told(inside("--at", "12:30"), "--at", "give --start too");
    told(inside("--at", "+99:00"), "--at", "outside of what is known");
    told(inside("--mould", "2"), "--mould", "expected 1 to 1");
    told(inside("--pattern-mm", "31"), "--pattern-mm", "outside mould 1");
    told(inside("--plot", dir.resolve("a.gif")), "a.gif", ".svg or .png");
    told(
        Run.of("inside", M1.resolve("schedule.yaml"), "--kiln", M1.resolve("kiln.yaml")),
        "--work",
        "no moulds");
  }

  private static void told(Run run, String where, String what) {
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains(where).contains(what).doesNotContain("Exception");
    assertThat(run.err().strip().lines()).hasSize(1);
  }

  @Test
  void aLogOfSomethingElseIsRefused() throws IOException {
    Path kept = Files.writeString(dir.resolve("kept.csv"), rows(640));
    Run hot = inside("--log", kept);
    assertThat(hot.err()).startsWith("--log: on average its display is ").hasLineCount(1);
    assertThat(hot.code()).isEqualTo(2);
  }

  private static String rows(int celsius) {
    StringBuilder csv = new StringBuilder("time_s,chamber_c\n");
    for (int second = 0; second <= 36_000; second += 60) {
      csv.append(second).append(',').append(celsius).append('\n');
    }
    return csv.toString();
  }
}
