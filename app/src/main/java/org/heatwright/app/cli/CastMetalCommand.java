package org.heatwright.app.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.MetalAsk;
import org.heatwright.app.json.CastMetalJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(CastMetalJson.class)
@Command(
    name = "metal",
    description = {
      "How much metal to melt for a pattern of wax or resin, or for a volume, with sprues and button, as a value and a range.",
      "Your own density goes first."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast metal --alloy sterling-925 --wax-g 5",
      "  heatwright cast metal --alloy 14k-white-gold --resin-g 2.1 --method gravity",
      "  heatwright cast metal --mix Au=750,Pd=130,Ag=120 --volume-mm3 840 \\",
      "      --without-sprues",
      "  heatwright cast metal --density-g-cm3 15.4 --wax-g 3.2 --button-percent 15"
    })
final class CastMetalCommand implements Callable<Integer> {

  @Option(
      names = "--alloy",
      paramLabel = "A",
      description = "Such as sterling-925 or 14k-red-gold.")
  private Optional<String> alloyName;

  @Option(
      names = "--mix",
      paramLabel = "M",
      description = "Your own alloy by parts: Au=750,Ag=125,Cu=125.")
  private Optional<String> mixText;

  @Option(
      names = "--density-g-cm3",
      paramLabel = "D",
      description = "Your own density of the metal; goes before any other.")
  private Optional<Double> ownDensity;

  @Option(names = "--wax-g", paramLabel = "G", description = "Mass of the wax pattern.")
  private Optional<Double> waxGrams;

  @Option(names = "--resin-g", paramLabel = "G", description = "Mass of the resin pattern.")
  private Optional<Double> resinGrams;

  @Option(names = "--volume-cm3", paramLabel = "V", description = "Volume to cast instead, cm³.")
  private Optional<Double> cubicCentimetres;

  @Option(names = "--volume-mm3", paramLabel = "V", description = "The same in mm³.")
  private Optional<Double> cubicMillimetres;

  @Option(
      names = "--pattern-density-g-cm3",
      paramLabel = "D",
      description = "Your own density of wax or resin (wax 0.95, resin 1.09).")
  private Optional<Double> patternDensity;

  @Option(
      names = "--method",
      paramLabel = "M",
      defaultValue = "vacuum",
      description = "vacuum, centrifugal or gravity: sets the button.")
  private String methodWord;

  @Option(
      names = "--button-percent",
      paramLabel = "P",
      description = "Your own allowance for the button.")
  private Optional<Double> buttonPercent;

  @Option(
      names = "--without-sprues",
      description = "The pieces alone were weighed: adds 10 to 30 %% for sprues.")
  private boolean withoutSprues;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastMetalCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    MetalAsk.Answer metal =
        new MetalAsk(
                alloyName,
                mixText,
                ownDensity,
                waxGrams,
                resinGrams,
                cubicCentimetres,
                cubicMillimetres,
                patternDensity,
                methodWord,
                buttonPercent,
                withoutSprues)
            .answer();
    answer.give(surroundings, CastMetalJson.of(metal), CastPage.of(metal.words()));
    return Answer.DONE;
  }
}
