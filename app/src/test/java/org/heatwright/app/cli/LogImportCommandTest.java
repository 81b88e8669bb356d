package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.heatwright.app.files.LogFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LogImportCommandTest {

  private static final String LOG =
      "Date;Time;Temp 1;Temp 2\n"
          + "03/04/26;10:00;20,5;68,0\n"
          + "03/04/26;10:05;120,5;212,0\n"
          + "03/04/26;10:10;220,5;392,0\n";

  @TempDir private Path dir;

  private Path log(String text) throws IOException {
    return Files.writeString(dir.resolve("tuesday.csv"), text);
  }

  @Test
  void whatWasRecognisedIsToldWithItsGuesses() throws IOException {
    Run run = Run.of("log", "import", log(LOG), "--store", dir.resolve("none.db"));

    assertThat(run.code()).isZero();
    assertThat(run.out())
        .startsWith(
            "tuesday.csv: 3 rows over 10 min, from 21 to 221 °C; it begins 2026-04-03 10:00")
        .contains("separator     semicolon (sure)")
        .contains("date-order    day-month-year (guess): 03/04/26: day first or month first")
        .contains("Fits too: month-day-year.")
        .contains("not used      Temp 2");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(dir.resolve("none.db")).doesNotExist();
  }

  /** Another firing's log that stands under the name is kept; the file that is read is refused. */
  @Test
  void anotherLogIsKept() throws IOException {
    String before = "time_s,chamber_c\n0,20\n60,21\n";
    Path out = Files.writeString(dir.resolve("out.csv"), before);
    Object[] words = {"log", "import", log(LOG), "--store", dir.resolve("none.db"), "--out", out};
    Run run = Run.of(words);
    assertThat(run.code()).isZero();
    assertThat(run.out().replaceAll("\\s+", "")).contains("iskeptas" + out + "~.");
    assertThat(Path.of(out + "~")).hasContent(before);
    assertThat(Run.of(words).out()).doesNotContain("is kept as");
    Run own = Run.of("log", "import", out, "--store", dir.resolve("none.db"), "--out", out);
    assertThat(own.code()).isEqualTo(2);
    assertThat(own.err()).startsWith("--out: " + out + " is the file that FILE reads");
  }

  @Test
  void correctionsAreRememberedForTheNextFileOfTheForm() throws IOException {
    Path store = dir.resolve("studio.db");
    Path out = dir.resolve("out.csv");
    Run first =
        Run.of(
            "log",
            "import",
            log(LOG),
            "--store",
            store,
            "--remember",
            "--out",
            out,
            "--set",
            "chamber=Temp 2",
            "--set",
            "unit=fahrenheit",
            "--set",
            "date-order=month-day-year");
    assertThat(first.err()).isEmpty();
    LogFile.Log written = LogFile.read(Files.readString(out), "out.csv");
    assertThat(written.rows())
        .extracting(LogFile.Row::chamberCelsius)
        .containsExactly(20.0, 100.0, 200.0);
    assertThat(written.localStart().map(Object::toString)).contains("2026-03-04T10:00");

    Path next = log(LOG.replace("03/04/26", "03/05/26").replace("68,0", "50,0"));
    JsonNode json =
        new ObjectMapper()
            .readTree(Run.of("log", "import", next, "--store", store, "--json").out());
    assertThat(json.get("remembered").asBoolean()).isTrue();
    assertThat(json.get("localStart").asText()).isEqualTo("2026-03-05T10:00");
    assertThat(json.get("preview").get(0).get("chamberCelsius").asDouble()).isEqualTo(10);
    assertThat(json.get("decisions").findValuesAsText("topic")).contains("unit", "chamber");

    Run fresh = Run.of("log", "import", next, "--store", store, "--fresh");
    assertThat(fresh.out()).contains("from 21 to 221 °C").doesNotContain("earlier file");
  }

  @Test
  void aMistakeIsOneSentence() throws IOException {
    Run run =
        Run.of("log", "import", log(LOG + "03/04/26;10:15;3x,5;1\n"), "--store", dir.resolve("n"));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .startsWith("tuesday.csv, line 5: \"3x,5\" in column \"Temp 1\" is no number")
        .hasLineCount(1);
  }

  @Test
  void whatIsThereAndIsNoLogIsNotReplaced() throws IOException {
    Path out = Files.writeString(dir.resolve("notes.txt"), "my notes");
    Run run = Run.of("log", "import", log(LOG), "--out", out, "--store", dir.resolve("n"));
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("is not a log of ours");
    assertThat(Files.readString(out)).isEqualTo("my notes");
  }
}
