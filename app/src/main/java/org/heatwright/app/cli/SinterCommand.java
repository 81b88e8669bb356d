package org.heatwright.app.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "sinter",
    description = {
      "Metal clay: sizes before the firing, and what measured strips teach.",
      "heatwright sinter COMMAND --help says more."
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright sinter size --clay fine-silver --ring-us 7",
      "  heatwright sinter size --work rings.yaml --wanted-mm 24",
      "  heatwright sinter fit rings.yaml"
    })
final class SinterCommand {

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private SinterCommand() {}

  static CommandLine line(Surroundings surroundings) {
    return new CommandLine(new SinterCommand())
        .addSubcommand(new SinterSizeCommand(surroundings))
        .addSubcommand(new SinterFitCommand(surroundings));
  }
}
