package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.heatwright.app.demo.DemoStudio;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HealthCommandTest {

  private static final Path LOGS = Path.of("src/main/resources/demo/logs");

  @TempDir private Path dir;

  private static Run health(List<DemoStudio.Logged> logs, Object... more) {
    List<Object> words = new ArrayList<>(List.of("health", Studio.kiln("anchor")));
    for (DemoStudio.Logged log : logs) {
      words.add("--log");
      words.add(LOGS.resolve(log.file() + ".csv"));
      words.add("--schedule");
      words.add(LOGS.resolve(log.schedule() + ".yaml"));
    }
    words.addAll(List.of(more));
    return Run.of(words.toArray());
  }

  /** The invented logs come from a kiln simulated apart whose power falls by 4 %. */
  @Test
  void followsTheDemoKilnOverItsLogsAndDrawsIt() throws IOException {
    Path plot = dir.resolve("anchor.svg");
    Run run = health(DemoStudio.LOGS, "--json", "--plot", plot);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    JsonNode root = new ObjectMapper().readTree(run.out());
    assertThat(root.get("points")).hasSize(3 * DemoStudio.LOGS.size());
    JsonNode last = root.get("points").get(DemoStudio.LOGS.size() - 1);
    assertThat(last.get("aspect").asText()).isEqualTo("power");
    assertThat(last.get("date").asText()).isEqualTo("2026-11-14");
    assertThat(last.get("since").asText()).isEqualTo("2026-09-05");
    assertThat(last.get("relative").get("low").asDouble()).isLessThan(0.96);
    assertThat(last.get("relative").get("high").asDouble()).isBetween(0.96, 1.02);
    JsonNode finding = root.get("findings").get(0);
    assertThat(finding.get("concern").asText()).isIn("none", "changed");
    assertThat(finding.get("sentence").asText()).contains("5 September 2026");
    assertThat(Files.readString(plot)).contains("Health of Anchor over time", "Full power");
  }

  @Test
  void theTextIsOfEightyColumnsWithALineAFiring() {
    Run run = health(DemoStudio.LOGS.subList(0, 2));
    assertThat(run.code()).isZero();
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(run.out()).contains("Anchor, 2 firings", "5 Sep 2026", "26 Sep 2026");
  }

  @Test
  void aLogWithoutADateIsAskedForOne() throws IOException {
    Path undated = dir.resolve("undated.csv");
    Files.writeString(undated, "time_s,chamber_c\n0,20\n600,120\n");
    Path schedule = LOGS.resolve("dry-run.yaml");
    Object[] words = {
      "health",
      Studio.kiln("anchor"),
      "--log",
      undated,
      "--schedule",
      schedule,
      "--log",
      LOGS.resolve("2026-09-05.csv"),
      "--schedule",
      schedule
    };
    Run run = Run.of(words);
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("undated.csv", "no date", "--date 2026-05-01");
  }

  @Test
  void datesThatCannotBeAreTold() {
    List<DemoStudio.Logged> two = DemoStudio.LOGS.subList(0, 2);
    Run none = health(two, "--date", "May", "--date", "2026-09-26");
    assertThat(none.code()).isEqualTo(2);
    assertThat(none.err()).contains("\"May\" is no date", "2026-05-01");
    Run other = health(two, "--date", "2026-09-06", "--date", "2026-09-26");
    assertThat(other.code()).isEqualTo(2);
    assertThat(other.err()).contains("its rows are of 2026-09-05, but --date says 2026-09-06");
    Run few = health(two, "--date", "2026-09-05");
    assertThat(few.code()).isEqualTo(2);
    assertThat(few.err()).contains("--date", "given 1 times for 2 logs");
    Run one = health(DemoStudio.LOGS.subList(0, 1));
    assertThat(one.code()).isEqualTo(2);
    assertThat(one.err()).contains("two firings or more");
  }
}
