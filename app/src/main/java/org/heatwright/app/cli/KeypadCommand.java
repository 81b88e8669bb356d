package org.heatwright.app.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "keypad",
    description = {
      "Describes a keypad by answering questions, and reads a description back in words.",
      "heatwright keypad COMMAND --help says more."
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright keypad new -o keypad.yaml", "  heatwright keypad check keypad.yaml"})
final class KeypadCommand {

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private KeypadCommand() {}

  static CommandLine line(Surroundings surroundings) {
    return new CommandLine(new KeypadCommand())
        .addSubcommand(new KeypadNewCommand(surroundings))
        .addSubcommand(new KeypadCheckCommand(surroundings));
  }
}
