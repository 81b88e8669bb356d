package org.heatwright.app.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.PowderAsk;
import org.heatwright.app.json.CastPowderJson;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(CastPowderJson.class)
@Command(
    name = "powder",
    description = {
      "Powder and water for one mould or several, from their size, what is in them and the water to powder ratio.",
      "Begin the next size with --diameter-mm."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast powder --diameter-mm 75 --height-mm 100 --wax-g 20",
      "  heatwright cast powder --diameter-mm 90 --height-mm 150 --count 3 --wax-g 14 \\",
      "      --diameter-mm 63 --height-mm 63 --resin-g 6 --water-powder 0.38",
      "  heatwright cast powder --diameter-mm 75 --height-mm 100 --litres-per-kg 0.79"
    })
final class CastPowderCommand implements Callable<Integer> {

  /** One size of mould. */
  static final class Size {
    @Option(
        names = "--diameter-mm",
        required = true,
        paramLabel = "D",
        description = "Outside the ring.")
    private double diameterMillimetres;

    @Option(names = "--height-mm", required = true, paramLabel = "H", description = "Height.")
    private double heightMillimetres;

    @Option(names = "--wall-mm", paramLabel = "W", description = "Thickness of the ring (0).")
    private @Nullable Double wallMillimetres;

    @Option(names = "--count", paramLabel = "N", description = "How many of this size (1).")
    private @Nullable Integer count;

    @Option(names = "--wax-g", paramLabel = "G", description = "Wax in each, with its sprue.")
    private @Nullable Double waxGrams;

    @Option(names = "--resin-g", paramLabel = "G", description = "Resin in each, beside the wax.")
    private @Nullable Double resinGrams;

    private PowderAsk.Size asked() {
      return new PowderAsk.Size(
          diameterMillimetres,
          heightMillimetres,
          Optional.ofNullable(wallMillimetres).orElse(0.0),
          Optional.ofNullable(count).orElse(1),
          Optional.ofNullable(waxGrams),
          Optional.ofNullable(resinGrams));
    }
  }

  @ArgGroup(exclusive = false, multiplicity = "1..*", heading = "Each size of mould:%n")
  private List<Size> sizes = new ArrayList<>();

  @Option(
      names = "--water-powder",
      paramLabel = "R",
      defaultValue = "0.40",
      description = "Water to powder by mass (0.40); the data sheet goes first.")
  private double waterPowder;

  @Option(
      names = "--waste-percent",
      paramLabel = "P",
      defaultValue = "5",
      description = "Left in the bowl, percent of the mould (5).")
  private double wastePercent;

  @Option(
      names = "--litres-per-kg",
      paramLabel = "L",
      description = "Slurry from a kilogram of your powder, by its data sheet.")
  private Optional<Double> litresPerKilogram;

  @Option(
      names = "--scale-g",
      paramLabel = "G",
      defaultValue = "1",
      description = "Step of your scale, grams (1).")
  private double scaleGrams;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastPowderCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    PowderAsk.Answer powder =
        new PowderAsk(
                sizes.stream().map(Size::asked).toList(),
                waterPowder,
                wastePercent,
                litresPerKilogram,
                scaleGrams)
            .answer();
    answer.give(surroundings, CastPowderJson.of(powder), CastPage.of(powder.words()));
    return Answer.DONE;
  }
}
