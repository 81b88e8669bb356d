package org.heatwright.app.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "log",
    description = {
      "Logs of other loggers. heatwright log COMMAND --help says more.",
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright log import tuesday.csv --out tuesday-log.csv"})
final class LogCommand {

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private LogCommand() {}

  static CommandLine line(Surroundings surroundings) {
    return new CommandLine(new LogCommand()).addSubcommand(new LogImportCommand(surroundings));
  }
}
