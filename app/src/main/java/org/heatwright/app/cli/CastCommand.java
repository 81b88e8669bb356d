package org.heatwright.app.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

@Command(
    name = "cast",
    description = {
      "Casting arithmetic: metal for a pattern, powder and water for moulds, alloying to a fineness, sizes with shrinkage, temperatures of a pour and their order.",
      "heatwright cast COMMAND --help says more."
    },
    synopsisSubcommandLabel = "COMMAND",
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast metal --alloy sterling-925 --wax-g 5",
      "  heatwright cast powder --diameter-mm 75 --height-mm 100 --wax-g 20",
      "  heatwright cast fineness --metal-g 100 --fineness 18k --to 585",
      "  heatwright cast size --wanted-mm 18.2",
      "  heatwright cast pour --alloy 14k-yellow-gold --thinnest-mm 1.2",
      "  heatwright cast order --mould lace --wants 630 --mould signet --wants 450 \\",
      "      --kiln-now 730 --fall-per-hour 150"
    })
final class CastCommand {

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  private CastCommand() {}

  static CommandLine line(Surroundings surroundings) {
    return new CommandLine(new CastCommand())
        .addSubcommand(new CastMetalCommand(surroundings))
        .addSubcommand(new CastPowderCommand(surroundings))
        .addSubcommand(new CastFinenessCommand(surroundings))
        .addSubcommand(new CastSizeCommand(surroundings))
        .addSubcommand(new CastPourCommand(surroundings))
        .addSubcommand(new CastOrderCommand(surroundings));
  }
}
