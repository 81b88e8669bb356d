package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.PourAsk;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.CastPourJson;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.casting.PouringPlan;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(CastPourJson.class)
@Command(
    name = "pour",
    description = {
      "Temperatures of mould and metal for a pour: your own value first, then every source with its own row, a proposed value and why.",
      "And the clocks around the kiln, from mixing powder to breaking out."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright cast pour --alloy sterling-925 --thinnest-mm 1.2",
      "  heatwright cast pour --alloy 18k-white-gold --thinnest-mm 0.7 --unit F \\",
      "      --method centrifugal --my-mould 1250",
      "  heatwright cast pour --alloy 9k-yellow-gold --liquidus 890",
      "  heatwright cast pour --work work.yaml"
    })
final class CastPourCommand implements Callable<Integer> {

  @Option(
      names = "--alloy",
      paramLabel = "A",
      description = "Such as sterling-925 or 14k-yellow-gold.")
  private Optional<String> alloyName;

  @Option(
      names = "--work",
      paramLabel = "W",
      description = "Work file of a burnout: says what the other options leave out.")
  private Optional<Path> workPath;

  @Option(
      names = "--thinnest-mm",
      paramLabel = "T",
      description = "Thinnest section; on a mixed tree that of the lightest piece.")
  private Optional<Double> thinnestMillimetres;

  @Option(
      names = "--method",
      paramLabel = "M",
      description = "vacuum, centrifugal or gravity (vacuum).")
  private Optional<String> methodWord;

  @Option(
      names = "--binder",
      paramLabel = "B",
      description = "gypsum, phosphate or unknown (gypsum; platinum: phosphate).")
  private Optional<String> binderWord;

  @Option(
      names = "--my-mould",
      paramLabel = "T",
      description = "Your own mould temperature, in --unit.")
  private Optional<Double> ownMould;

  @Option(
      names = "--my-metal",
      paramLabel = "T",
      description = "Your own metal temperature, in --unit.")
  private Optional<Double> ownMetal;

  @Option(
      names = "--liquidus",
      paramLabel = "T",
      description = "Where your alloy is all liquid, in --unit.")
  private Optional<Double> liquidus;

  @Mixin private InUnit degrees;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CastPourCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    TemperatureUnit unit = degrees.unit();
    PourAsk given =
        new PourAsk(
            alloyName,
            thinnestMillimetres,
            methodWord,
            binderWord,
            ownMould,
            ownMetal,
            liquidus,
            unit);
    PouringPlan plan = workPath.map(path -> given.or(burnout(path))).orElse(given).plan();
    answer.give(surroundings, CastPourJson.of(plan), CastPage.of(PourAsk.words(plan, unit)));
    return Answer.DONE;
  }

  private static BurnoutWork burnout(Path path) {
    if (Input.work(path) instanceof BurnoutWork burnout) {
      return burnout;
    }
    throw InputException.in(path.toString(), "nothing is poured here; expected a burnout.");
  }
}
