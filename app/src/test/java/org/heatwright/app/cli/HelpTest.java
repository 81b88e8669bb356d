package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

class HelpTest {

  private static final List<String> LATER = List.of("improve", "day", "watch");

  @ParameterizedTest
  @ValueSource(
      strings = {
        "demo",
        "serve",
        "compose",
        "inspect",
        "forecast",
        "inside",
        "keypad",
        "keypad new",
        "keypad check",
        "keying",
        "readback",
        "slots",
        "slots list",
        "slots put",
        "slots prove",
        "slots learn",
        "slots tell",
        "card",
        "rehearse",
        "send",
        "scan",
        "learn",
        "log",
        "log import",
        "health",
        "pieces",
        "why",
        "body",
        "couple",
        "offset",
        "heatwork",
        "cast",
        "cast metal",
        "cast powder",
        "cast fineness",
        "cast size",
        "cast pour",
        "cast order",
        "sinter",
        "sinter size",
        "sinter fit",
        "completion"
      })
  void everyCommandHasHelpWithExamplesIn80Columns(String command) {
    Run run = Run.of((Object[]) (command + " --help").split(" "));

    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("Usage: heatwright " + command).contains("Examples:");
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    assertThat(run.err()).isEmpty();
    assertThat(run.out()).doesNotContain("\u001b");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "compose",
        "inspect",
        "forecast",
        "inside",
        "keying",
        "readback",
        "slots list",
        "slots put",
        "slots prove",
        "slots learn",
        "slots tell",
        "card",
        "rehearse",
        "send",
        "scan",
        "log import",
        "health",
        "pieces",
        "why",
        "body",
        "couple",
        "offset",
        "heatwork",
        "cast metal",
        "cast powder",
        "cast fineness",
        "cast size",
        "cast pour",
        "cast order"
      })
  void everyAnsweringCommandHasJson(String command) {
    assertThat(Run.of((Object[]) (command + " --help").split(" ")).out()).contains("--json");
  }

  @Test
  void theRootTellsCommandsExitCodesAndCompletion() {
    Run run = Run.of("--help");

    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("Exit codes: 0 done; 1").contains("heatwright completion");
    assertThat(run.out().lines().map(line -> line.strip().split(" ")[0]))
        .doesNotContainAnyElementsOf(LATER);
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void withoutACommandTheUsageIsShownAsAnError() {
    Run run = Run.of();

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("Usage: heatwright");
  }

  @Test
  void theVersionIsOneLine() {
    assertThat(Run.of("--version").out()).matches("heatwright \\S.*\\R");
  }

  @Test
  void completionKnowsCommandsAndOptions() {
    Run run = Run.of("completion");

    assertThat(run.code()).isZero();
    assertThat(run.out()).contains("complete -F").contains("forecast").contains("--ready-by");
  }

  /** Lists of commands show the first element of a description: it is a whole sentence. */
  @Test
  void everySummaryIsAWholeSentence() {
    List<String> cut = new ArrayList<>();
    summaries(Cli.commandLine(Surroundings.ofProcess()), cut);
    assertThat(cut).isEmpty();
    assertThat(Run.of("--help").out().replaceAll("\\s+", " "))
        .contains("since when, and whether it is proven; kept in your own store.");
  }

  private static void summaries(CommandLine line, List<String> cut) {
    for (CommandLine command : line.getSubcommands().values()) {
      String first = command.getCommandSpec().usageMessage().description()[0];
      if (!first.endsWith(".")) {
        cut.add(command.getCommandName() + ": " + first);
      }
      summaries(command, cut);
    }
  }
}
