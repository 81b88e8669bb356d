package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoupleCommandTest {

  private static JsonNode json(Object... args) throws JsonProcessingException {
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

  /** Printed tables of NIST Monograph 175. */
  @ParameterizedTest
  @CsvSource({
    "K, 800, 33.275",
    "S, 1000, 9.587",
    "R, 1000, 10.506",
    "N, 800, 28.455",
    "J, 500, 27.393",
    "B, 1000, 4.834",
    "E, 500, 37.005",
    "T, 200, 9.288",
    "k, -40, -1.527"
  })
  void aTemperatureGivesThePrintedEmfAndBack(String type, String celsius, double millivolts)
      throws JsonProcessingException {
    JsonNode forth = json("couple", "--type", type, "--celsius", celsius, "--json");
    assertThat(forth.get("millivolts").doubleValue()).isCloseTo(millivolts, within(0.0005));
    assertThat(forth.get("celsius").doubleValue()).isEqualTo(Double.parseDouble(celsius));

    JsonNode back = json("couple", "--type", type, "--millivolt", millivolts, "--json");
    assertThat(back.get("celsius").doubleValue())
        .isCloseTo(Double.parseDouble(celsius), within(0.06));
    assertThat(back.get("millivolts").doubleValue()).isEqualTo(millivolts);
  }

  /** IEC 60584-1 class 2 and 1, as sensor makers print them. */
  @Test
  void theToleranceIsThatOfTheClass() throws JsonProcessingException {
    JsonNode usual = json("couple", "--type", "K", "--celsius", "800", "--json");
    assertThat(usual.get("toleranceKelvin").doubleValue()).isEqualTo(6.0);
    assertThat(usual.get("toleranceClass").textValue()).isEqualTo("2");
    assertThat(
            json("couple", "--type", "K", "--celsius", "800", "--class", "1", "--json")
                .get("toleranceKelvin")
                .doubleValue())
        .isEqualTo(3.2);
  }

  @Test
  void whereTheClassEndsThereIsNoToleranceAndANote() throws JsonProcessingException {
    JsonNode answer = json("couple", "--type", "K", "--celsius", "1300", "--json");
    assertThat(answer.get("toleranceKelvin").isNull()).isTrue();
    assertThat(answer.get("notes").get(0).textValue())
        .isEqualTo(
            "No tolerance: class 2 (IEC 60584-1) covers type K from -40 °C to 1200 °C only.");
  }

  /** CHK-F2: computed apart from the printed coefficients. */
  @Test
  void theColdJunctionIsCompensatedInEmf() throws JsonProcessingException {
    JsonNode answer =
        json("couple", "--type", "K", "--millivolt", "30", "--cold-junction", "25", "--json");
    assertThat(answer.get("celsius").doubleValue()).isCloseTo(744.8617, within(0.5001e-4));
    assertThat(answer.get("millivolts").doubleValue()).isEqualTo(30);
    assertThat(answer.get("coldJunctionCelsius").doubleValue()).isEqualTo(25);
    assertThat(
            json("couple", "--type", "K", "--celsius", "800", "--cold-junction", "25", "--json")
                .get("millivolts")
                .doubleValue())
        .isCloseTo(32.2751, within(0.5001e-4));
  }

  @Test
  void thePageIsPlain() {
    assertThat(Run.of("couple", "--type", "K", "--celsius", "800").out())
        .isEqualTo(
            """
            Type K, terminals at 0 °C: 800 °C gives 33.275 mV.
            New wire of class 2 (IEC 60584-1) may be off by 6 K either way there; used wire
            may be further off.
            """);
    assertThat(
            Run.of("couple", "--type", "K", "--millivolt", "33.275", "--cold-junction", "0").out())
        .startsWith("Type K, terminals at 0 °C: 33.275 mV means 799.99 °C.\n");
  }

  @Test
  void whatIsWrongIsToldInOneSentence() {
    refused(
        "--type: \"X\" is not known; expected B, E, J, K, N, R, S or T.",
        "couple",
        "--type",
        "X",
        "--celsius",
        "800");
    refused(
        "--class: \"4\" is not known; expected 1, 2, 3, standard, special.",
        "couple",
        "--type",
        "K",
        "--celsius",
        "800",
        "--class",
        "4");
    refused(
        "--class: type S has no class 3; expected one of 1, 2, standard, special.",
        "couple",
        "--type",
        "S",
        "--celsius",
        "800",
        "--class",
        "3");
    refused(
        "--celsius: neither this nor --millivolt is given; expected one of the two.",
        "couple",
        "--type",
        "K");
    refused(
        "--millivolt: --celsius is given too; keep one of the two.",
        "couple",
        "--type",
        "K",
        "--celsius",
        "800",
        "--millivolt",
        "33");
    refused(
        "--celsius: Type K is defined from -270 °C to 1372 °C, and its junction is at 1400 °C.",
        "couple",
        "--type",
        "K",
        "--celsius",
        "1400");
    refused(
        "--cold-junction: Type B is defined from 0 °C to 1820 °C, and its cold junction is at -5 °C.",
        "couple",
        "--type",
        "B",
        "--millivolt",
        "3",
        "--cold-junction",
        "-5");
    refused(
        "--millivolt: Type B can be read from 0.291 mV (250 °C) to 13.82 mV (1820 °C), its curve being"
            + " flat and turning below; 0.1 mV, the cold junction's share included, is outside.",
        "couple",
        "--type",
        "B",
        "--millivolt",
        "0.1");
  }
}
