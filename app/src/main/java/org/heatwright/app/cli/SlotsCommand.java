package org.heatwright.app.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "slots",
    description = {
      "Which program is in which slot of a kiln's keypad, since when, and whether it is proven; kept in your own store.",
      "heatwright slots COMMAND --help says more."
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright slots list --kiln Anchor --keypad Gull --print register.pdf",
      "  heatwright slots put burnout.yaml --kiln Anchor --slot 3 --by maker",
      "  heatwright slots prove burnout.yaml --shown shown.yaml --kiln Anchor --by student",
      "  heatwright slots tell power-cut --kiln Anchor --by maker"
    })
final class SlotsCommand {

  /** Description of {@code --by}. */
  static final String ROLES = "Who: maker, teacher, student, technician or other.";

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private SlotsCommand() {}

  static CommandLine line(Surroundings surroundings) {
    return new CommandLine(new SlotsCommand())
        .addSubcommand(new SlotsListCommand(surroundings))
        .addSubcommand(new SlotsPutCommand(surroundings))
        .addSubcommand(new SlotsProveCommand(surroundings))
        .addSubcommand(new SlotsLearnCommand(surroundings))
        .addSubcommand(new SlotsTellCommand(surroundings));
  }
}
