package org.heatwright.app.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.SizeAsk;
import org.heatwright.app.json.CastSizeJson;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(CastSizeJson.class)
@Command(
    name = "size",
    description = {
      "The size of a pattern for a casting of a wanted size, or of the casting from a pattern: linear shrinkage of wax, mould and metal together."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast size --wanted-mm 18.2",
      "  heatwright cast size --pattern-mm 20 --shrinkage-percent 1.8"
    })
final class CastSizeCommand implements Callable<Integer> {

  @Option(names = "--wanted-mm", paramLabel = "S", description = "Wanted size of the casting.")
  private Optional<Double> wantedMillimetres;

  @Option(
      names = "--pattern-mm",
      paramLabel = "S",
      description = "Size of the pattern, for the casting's.")
  private Optional<Double> patternMillimetres;

  @Option(
      names = "--shrinkage-percent",
      paramLabel = "P",
      description = "Your own, measured on your castings (1.5; 1 to 2).")
  private Optional<Double> shrinkagePercent;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastSizeCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    SizeAsk.Answer size =
        new SizeAsk(wantedMillimetres, patternMillimetres, shrinkagePercent).answer();
    answer.give(surroundings, CastSizeJson.of(size), CastPage.of(size.words()));
    return Answer.DONE;
  }
}
