package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BodyCommandTest {

  /** A cylinder of constant properties under a film, stepped into 500 °C. */
  private static final String STEP =
      """
      shape: {diameter-mm: 80, height-mm: 110, bottom: exposed}
      material: {density-kg-m3: 1250, conductivity-w-mk: [[20, 0.5]], heat-capacity-j-kgk: [[20, 1000]]}
      surface: {emissivity: 0, convection-w-m2k: 25}
      start-celsius: 20
      surroundings: [[0, 500], [1, 500]]
      probes: [centre, mid-radius, surface, mean]
      report-every-s: 60
      """;

  @TempDir private Path dir;

  private Path file(String name, String text) throws IOException {
    return Files.writeString(dir.resolve(name), text);
  }

  /**
   * Reading at 3600 s of a body whose answer is the product of two analytic series, computed apart
   * from Heatwright (test data of the core, bodies/a.csv).
   */
  @Test
  void theTraceHasTheFourColumnsAndTheAnalyticAnswer() throws IOException {
    Path trace = dir.resolve("out.csv");
    Run run = Run.of("body", file("b.yaml", STEP), "--trace", trace);

    assertThat(run.code()).isZero();
    List<String> lines = Files.readAllLines(trace);
    assertThat(lines.get(0)).isEqualTo("time_s,centre_c,mid_radius_c,surface_c,mean_c");
    assertThat(lines.get(1)).isEqualTo("0,20,20,20,20");
    String[] hour = lines.get(61).split(",");
    assertThat(hour[0]).isEqualTo("3600");
    assertThat(Double.parseDouble(hour[1])).isCloseTo(459.6542, within(0.1));
    assertThat(Double.parseDouble(hour[2])).isCloseTo(465.8517, within(0.1));
    assertThat(Double.parseDouble(hour[3])).isCloseTo(481.6137, within(0.1));
    assertThat(Double.parseDouble(hour[4])).isCloseTo(477.3514, within(0.1));
  }

  /** Another program's reference has the same columns; its lines end otherwise. */
  @Test
  void aTraceReplacesNoReference() throws IOException {
    String text = "time_s,centre_c,mid_radius_c,surface_c,mean_c\n0,20,20,20,20\n";
    Path reference = file("reference.csv", text);
    Run run = Run.of("body", file("b.yaml", STEP), "--trace", reference);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("is not a trace; choose another name").hasLineCount(1);
    assertThat(reference).hasContent(text);
    Path trace = dir.resolve("out.csv");
    Run.of("body", file("b.yaml", STEP), "--trace", trace);
    assertThat(Run.of("body", file("b.yaml", STEP), "--trace", trace).code()).isZero();
  }

  /** Surroundings that only step tell no end: until the body has come to them, in whole hours. */
  @Test
  void aStepRunsUntilTheBodyHasComeToIt() throws IOException {
    JsonNode answer = json("body", file("b.yaml", STEP), "--json");

    assertThat(answer.get("endSeconds").doubleValue() % 3600).isZero();
    assertThat(answer.get("endSeconds").doubleValue()).isBetween(10_800.0, 21_600.0);
    JsonNode centre = answer.get("probes").get(0);
    assertThat(centre.get("probe").textValue()).isEqualTo("centre");
    assertThat(centre.get("atEndCelsius").doubleValue()).isCloseTo(500, within(0.006));
    assertThat(centre.get("celsius").size()).isEqualTo(answer.get("seconds").size());
  }

  @Test
  void probesOfOnesOwnComeBehindTheFour() throws IOException {
    Path trace = dir.resolve("out.csv");
    String text =
        STEP.replace(
                "probes: [centre, mid-radius, surface, mean]", "probes: [{r-mm: 12.5, z-mm: 80}]")
            + "end-s: 600\n";
    Run run = Run.of("body", file("b.yaml", text), "--trace", trace);

    assertThat(run.code()).isZero();
    assertThat(Files.readAllLines(trace).get(0))
        .isEqualTo("time_s,centre_c,mid_radius_c,surface_c,mean_c,r12_5_z80_c");
    assertThat(Files.readAllLines(trace)).hasSize(12);
    assertThat(run.out()).contains("r12.5-z80").doesNotContain("mid-radius");
  }

  @Test
  void aNamedMaterialSaysWhereItsNumbersComeFrom() throws IOException {
    String text =
        STEP.replaceFirst("material: .*", "material: gypsum-investment-40") + "end-s: 3600\n";
    Run run = Run.of("body", file("b.yaml", text));

    assertThat(run.out())
        .contains("gypsum-investment-40 (our estimate")
        .contains("conductivity may be off by 20 %");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void aMaterialFromAFileIsUsed() throws IOException {
    Path material =
        file(
            "m.yaml",
            "name: light powder\ndensity-kg-m3: 600\nconductivity-w-mk: 0.5\nheat-capacity-j-kgk: 1000\n");
    JsonNode answer =
        json("body", file("b.yaml", STEP + "end-s: 3600\n"), "--material", material, "--json");

    assertThat(answer.get("material").textValue()).isEqualTo("light powder");
    double volume = Math.PI / 4 * 0.08 * 0.08 * 0.11;
    double mean = answer.get("probes").get(3).get("atEndCelsius").doubleValue();
    assertThat(answer.get("heatTakenJoules").doubleValue())
        .isCloseTo(volume * 600 * 1000 * (mean - 20), within(1.0));
  }

  @Test
  void whatIsWrongIsToldInOneSentence() throws IOException {
    Run run = Run.of("body", file("b.yaml", STEP.replace("bottom: exposed", "botom: exposed")));

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).startsWith("b.yaml, line 1: ").contains("did you mean bottom?");
    assertThat(run.err().lines()).hasSize(1);
  }

  private static JsonNode json(Object... args) throws IOException {
    Run run = Run.of(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.fieldNames())
        .toIterable()
        .containsExactly(
            "material",
            "source",
            "endSeconds",
            "surroundingsAtEndCelsius",
            "heatTakenJoules",
            "hottestCelsius",
            "seconds",
            "probes",
            "trace");
    return root;
  }
}
