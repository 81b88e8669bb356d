package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.heatwright.app.files.WorkFile;
import org.heatwright.work.BurnoutWork;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ValuesCommandTest {

  private static final String POWDER =
      """
      values-for: investment
      source: the sheet in its drum
      binder: gypsum
      data-sheet: {max-celsius: 700, fastest-rise-k-per-h: 150}
      """;

  @TempDir private Path dir;
  private Path powder;

  @BeforeEach
  void write() throws IOException {
    powder = Files.writeString(dir.resolve("powder.yaml"), POWDER);
  }

  @Test
  void valuesAreReadInEitherUnit() {
    assertThat(Run.of("values", powder).out())
        .contains("powder, Investment, from: the sheet in its drum")
        .contains("bonded by: gypsum", "never above: 700 °C", "rises at most: 150 °C/h");
    assertThat(Run.of("values", powder, "--unit", "F").out())
        .contains("never above: 1292 °F", "rises at most: 270 °F/h");
  }

  @Test
  void theyAreGivenToPrograms() throws IOException {
    JsonNode root = new ObjectMapper().readTree(Run.of("values", powder, "--json").out());

    assertThat(root.fieldNames()).toIterable().containsExactly("name", "of", "source", "values");
    assertThat(root.get("of").asText()).isEqualTo("investment");
    assertThat(root.get("values").get(1).get("key").asText()).isEqualTo("data-sheet.max-celsius");
    assertThat(root.get("values").get(1).get("value").asText()).isEqualTo("700");
  }

  @Test
  void aWorkTakesThem() throws IOException {
    Path work = Files.copy(Studio.work("harbour-burnout"), dir.resolve("work.yaml"));
    String before = Files.readString(work);

    Run run = Run.of("values", powder, "--work", work, "-o", work);

    assertThat(run.err()).isEmpty();
    assertThat(run.out()).contains("Written to", "What was there is kept as");
    BurnoutWork with = (BurnoutWork) WorkFile.read(Files.readString(work), "w");
    assertThat(with.dataSheet().max().orElseThrow().celsius()).isEqualTo(700);
    assertThat(with.moulds()).isEqualTo(((BurnoutWork) WorkFile.read(before, "w")).moulds());
    assertThat(dir.resolve("work.yaml~")).hasContent(before);
  }

  @Test
  void whatDoesNotGoTogetherIsTold() {
    Run alone = Run.of("values", powder, "-o", dir.resolve("x.yaml"));
    assertThat(alone.err()).contains("--work: --output is given without it");
    Run other =
        Run.of("values", powder, "--work", Studio.work("glass-disc"), "-o", dir.resolve("x"));
    assertThat(other.code()).isEqualTo(2);
    assertThat(other.err())
        .contains(
            "glass-disc.yaml: it takes no values of investment; they go into a work of kind burnout.");
    assertThat(dir.resolve("x")).doesNotExist();
    assertThat(Run.of("values", Studio.work("glass-disc")).err())
        .contains("this looks like a work file; a file of your own values is expected.");
  }
}
