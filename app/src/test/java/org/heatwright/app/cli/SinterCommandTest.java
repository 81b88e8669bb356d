package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SinterCommandTest {

  private static final String STRIPS =
      """
      kind: sinter
      clay: fine-silver
      pieces: [{thickness-mm: 2, length-mm: 30}]
      tests:
        - {before-mm: 50, after-mm: 44.1, celsius: 900, hold: "2:00"}
        - {before-mm: 50, after-mm: 44.3, celsius: 900, hold: "2:00"}
        - {before-mm: 50, after-mm: 45.6, celsius: 650, hold: "0:30"}
      """;

  @TempDir private Path dir;

  private static JsonNode json(Run run) throws IOException {
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  /** US 7 is 17.3 mm (memory: jewellers' tables); 12 % leaves 17.32/0.88 = 19.68 mm to make. */
  @Test
  void aRingIsMadeLargerByItsShrinkage() throws IOException {
    JsonNode own =
        json(
            Run.of(
                "sinter",
                "size",
                "--clay",
                "fine-silver",
                "--ring-us",
                7,
                "--shrinkage-percent",
                12,
                "--json"));
    assertThat(own.at("/wantedMillimetres").doubleValue()).isCloseTo(17.32, within(0.005));
    assertThat(own.at("/makeMillimetres/median").doubleValue()).isCloseTo(19.68, within(0.005));
    JsonNode usual =
        json(Run.of("sinter", "size", "--clay", "fine-silver", "--ring-us", 7, "--json"));
    assertThat(usual.at("/shrinkagePercent/low").doubleValue()).isBetween(6.0, 10.0);
    assertThat(usual.at("/shrinkagePercent/high").doubleValue()).isBetween(13.0, 17.0);
    assertThat(usual.at("/makeMillimetres/low").doubleValue())
        .isLessThan(usual.at("/makeMillimetres/high").doubleValue() - 0.8);
    JsonNode bronze =
        json(Run.of("sinter", "size", "--clay", "bronze", "--wanted-mm", 30, "--json"));
    assertThat(bronze.at("/shrinkagePercent/high").doubleValue()).isEqualTo(25);
    assertThat(Run.of("sinter", "size", "--clay", "copper", "--ring-around-mm", 54).out())
        .startsWith("For 17.2 mm inside in metal make it ")
        .contains("published ranges alone");
  }

  @Test
  void ownStripsNarrowTheSize() throws IOException {
    Path work = Files.writeString(dir.resolve("strips.yaml"), STRIPS);
    JsonNode usual =
        json(Run.of("sinter", "size", "--clay", "fine-silver", "--wanted-mm", 20, "--json"));
    JsonNode own = json(Run.of("sinter", "size", "--work", work, "--wanted-mm", 20, "--json"));
    assertThat(width(own.at("/makeMillimetres")))
        .isLessThan(0.7 * width(usual.at("/makeMillimetres")));
    assertThat(own.at("/strips").intValue()).isEqualTo(3);
    JsonNode fit = json(Run.of("sinter", "fit", work, "--json"));
    assertThat(fit.at("/firings").intValue()).isEqualTo(2);
    assertThat(fit.at("/tellsActivation").booleanValue()).isFalse();
    assertThat(fit.at("/rows/5/shrinkagePercent/median").doubleValue()).isBetween(11.0, 12.5);
    assertThat(Run.of("sinter", "fit", work).out().replaceAll("\\s+", " "))
        .contains("3 strips from 2 clearly different firings", "the strips do not tell it");
  }

  private static double width(JsonNode range) {
    return range.get("high").doubleValue() - range.get("low").doubleValue();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          --wanted-mm 20 | --clay: not given; expected one of --clay, --work.
          --clay tin --wanted-mm 20 | --clay: "tin" is not known; expected one of fine-silver-low-fire, fine-silver, fine-silver-older, sterling, copper, bronze, bronze-low-fire.
          --clay copper --ring-us 30 | --ring-us: The US ring size (30.0) must be 0 to 20.
          --clay copper --wanted-mm 20 --celsius 900 | --hold: not given; a firing needs both --celsius and --hold.
          --clay copper --wanted-mm 20 --celsius 900 --hold two | --hold: "two" is no time; expected h:mm such as 2:00.
          --clay copper --wanted-mm 20 --shrinkage-percent 60 | --shrinkage-percent: "60" is not possible; expected 0 to 50 percent.
          """)
  void refusesWithOneSentence(String words, String sentence) {
    Object[] args = ("sinter size " + words).split(" ");
    Run run = Run.of(args);
    assertThat(run.err().strip()).endsWith(sentence);
    assertThat(run.code()).isEqualTo(2);
  }

  @Test
  void bronzeHasNoCurveToFit() throws IOException {
    Path work =
        Files.writeString(
            dir.resolve("bronze.yaml"),
            "kind: sinter\nclay: bronze\npieces: [{thickness-mm: 2, length-mm: 30}]\n");
    Run run = Run.of("sinter", "fit", work);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("has no sintering curve");
  }
}
