package org.heatwright.app.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "completion",
    description = "Prints a script that completes commands and options in bash and zsh.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  source <(heatwright completion)",
      "  heatwright completion > ~/.local/share/bash-completion/completions/heatwright"
    })
final class CompletionCommand implements Callable<Integer> {

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private final Surroundings surroundings;

  CompletionCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    surroundings.out().print(AutoComplete.bash("heatwright", Cli.commandLine(surroundings)));
    return Answer.DONE;
  }
}
