package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HeatworkCommandTest {

  @TempDir private Path dir;
  private Path hot;
  private Path mild;

  @BeforeEach
  void writeSchedules() throws IOException {
    hot = write("hot", "{rate: 500, target: 900, hold: \"0:00\"}");
    mild = write("mild", "{rate: 500, target: 860, hold: \"0:10\"}");
  }

  private Path write(String name, String segments) throws IOException {
    return Files.writeString(
        dir.resolve(name + ".yaml"),
        "name: %s\nunit: C\nsegments: [%s]\n".formatted(name, segments));
  }

  private static JsonNode json(Object... args) throws IOException {
    Run run = Run.of(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return new ObjectMapper().readTree(run.out());
  }

  private static void refused(String sentence, Object... args) {
    Run run = Run.of(args);
    assertThat(run.err()).isEqualTo(sentence + System.lineSeparator());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
  }

  /** CHK-H2: 500 K/h to 900 °C, Q 185: 6.742778 min, and 7.066998 with 1/T. */
  @Test
  void tellsARampAsMinutesAtItsTop() throws IOException {
    JsonNode plain = json("heatwork", hot, mild, "--activation", "185", "--json");
    assertThat(plain.get("referenceCelsius").doubleValue()).isEqualTo(900);
    JsonNode first = plain.get("cases").get(0);
    assertThat(first.get("firstMinutes").doubleValue()).isCloseTo(6.742778, within(5e-7));
    assertThat(first.get("activationKilojoulesPerMole").doubleValue()).isEqualTo(185);
    assertThat(plain.get("cases")).hasSize(3);
    JsonNode sintering =
        json("heatwork", hot, mild, "--activation", "185", "--weighting", "sintering", "--json");
    assertThat(sintering.get("cases").get(0).get("firstMinutes").doubleValue())
        .isCloseTo(7.066998, within(5e-7));
  }

  /** The hold it proposes, put into B, makes the ratio one. */
  @Test
  void theProposedHoldMakesItEven() throws IOException {
    double hold =
        json("heatwork", hot, mild, "--activation", "185", "--json")
            .get("cases")
            .get(0)
            .get("holdMinutes")
            .doubleValue();
    Path even =
        write("even", "{rate: 500, target: 860, hold: \"0:%02d\"}".formatted(Math.round(hold)));
    double ratio =
        json("heatwork", hot, even, "--activation", "185", "--json")
            .get("cases")
            .get(0)
            .get("ratio")
            .doubleValue();
    assertThat(ratio).isCloseTo(1, within(0.06));
    Run words = Run.of("heatwork", hot, mild, "--activation", "185");
    assertThat(words.out())
        .contains("Heat-work as time at 900 °C, by Q 185 kJ/mol.")
        .contains("A  hot: 6.7 min")
        .contains("Even with a hold of")
        .contains("Q 148 kJ/mol")
        .contains("Q 222 kJ/mol")
        .contains("Test pieces");
    assertThat(words.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void aGlassFlowsByItsViscosity() throws IOException {
    JsonNode flow = json("heatwork", hot, mild, "--glass", "float", "--at", "850", "--json");
    assertThat(flow.get("law").asText()).isEqualTo("glass");
    assertThat(flow.get("cases")).hasSize(3);
    assertThat(flow.get("cases").get(0).get("activationKilojoulesPerMole").doubleValue())
        .isBetween(260.0, 320.0);
    JsonNode own =
        json("heatwork", hot, mild, "--glass", Studio.work("glass-slab"), "--at", "800", "--json");
    assertThat(own.get("cases").get(0).get("firstMinutes").doubleValue()).isPositive();
  }

  /** In a kiln the curve lags and overshoots: near the paper, not the same. */
  @Test
  void inAKilnTheForecastIsCompared() throws IOException {
    JsonNode kiln =
        json("heatwork", hot, mild, "--activation", "185", "--kiln", Studio.kiln("buoy"), "--json");
    assertThat(kiln.get("curves").asText()).isEqualTo("kiln");
    assertThat(kiln.get("notes").get(0).asText()).startsWith("By the display of Buoy, empty: A ");
    double minutes = kiln.get("cases").get(0).get("firstMinutes").doubleValue();
    assertThat(minutes).isBetween(3.0, 60.0);
  }

  @Test
  void whatIsWrongIsToldInASentence() throws IOException {
    refused(
        "--activation: neither this nor --glass is given; expected one of the two.",
        "heatwork",
        hot,
        mild);
    refused(
        "--activation: --glass is given too; keep one of the two.",
        "heatwork",
        hot,
        mild,
        "--activation",
        "185",
        "--glass",
        "float");
    refused(
        "--activation: 185000 is not a number from 20 to 1000 (kJ/mol).",
        "heatwork",
        hot,
        mild,
        "--activation",
        "185000");
    refused(
        "--weighting: \"heavy\" is not known; expected plain or sintering.",
        "heatwork",
        hot,
        mild,
        "--activation",
        "185",
        "--weighting",
        "heavy");
    refused(
        "--glass: \"bottle\" is not known; expected float, soft-art, unknown or a work file (.yaml).",
        "heatwork",
        hot,
        mild,
        "--glass",
        "bottle");
    refused(
        "--at: At 200.0 °C the glass is rigid (T0 is 246.1 °C).",
        "heatwork",
        hot,
        mild,
        "--glass",
        "float",
        "--at",
        "200");
    Path fast = write("fast", "{rate: fastest, target: 800}");
    refused(
        "--fastest: Segment 1 of fast goes as fast as the kiln can, which paper cannot know. Say what it comes to, or give --kiln.",
        "heatwork",
        fast,
        mild,
        "--activation",
        "185");
    assertThat(Run.of("heatwork", fast, mild, "--activation", "185", "--fastest", "600").code())
        .isZero();
    refused(
        "--from: the kiln knows that; leave it out beside --kiln.",
        "heatwork",
        hot,
        mild,
        "--activation",
        "185",
        "--from",
        "30",
        "--kiln",
        Studio.kiln("buoy"));
    refused(
        "--glass: %s is of kind enamel; expected glass.".formatted(Studio.work("evening-enamel")),
        "heatwork",
        hot,
        mild,
        "--glass",
        Studio.work("evening-enamel"));
  }
}
