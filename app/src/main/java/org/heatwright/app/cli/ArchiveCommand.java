package org.heatwright.app.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "archive",
    description = "Everything of your store as one file: to keep, or to move to another machine.",
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright archive save studio.zip", "  heatwright archive bring studio.zip"})
final class ArchiveCommand {

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private ArchiveCommand() {}

  static CommandLine line(Surroundings surroundings) {
    return new CommandLine(new ArchiveCommand())
        .addSubcommand(new ArchiveSaveCommand(surroundings))
        .addSubcommand(new ArchiveBringCommand(surroundings));
  }
}
