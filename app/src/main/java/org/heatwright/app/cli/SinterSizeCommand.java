package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.heatwright.app.api.Answers;
import org.heatwright.app.casting.CastInput;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.LikelyJson;
import org.heatwright.app.json.SinterSizeJson;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.Temperature;
import org.heatwright.work.SinterWork;
import org.heatwright.work.sinter.Clay;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.Clays;
import org.heatwright.work.sinter.CurveBelief;
import org.heatwright.work.sinter.Likely;
import org.heatwright.work.sinter.RingSize;
import org.heatwright.work.sinter.Shrinkage;
import org.heatwright.work.sinter.SinterHeat;
import org.heatwright.work.sinter.TestFiring;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(SinterSizeJson.class)
@Command(
    name = "size",
    description = {
      "The size to make in bone-dry clay for a wanted size after the firing, as a range: by the clay's usual shrinkage, by strips of yours (tests in a work file), or by a shrinkage you measured."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright sinter size --clay fine-silver --ring-us 7",
      "  heatwright sinter size --clay copper --wanted-mm 30 --celsius 930 --hold 3:00",
      "  heatwright sinter size --work rings.yaml --ring-around-mm 54",
      "  heatwright sinter size --clay bronze --wanted-mm 30 --shrinkage-percent 18"
    })
final class SinterSizeCommand implements Callable<Integer> {

  @Option(names = "--clay", paramLabel = "C", description = "The clay, e.g. fine-silver.")
  private Optional<String> clayWord;

  @Option(
      names = "--work",
      paramLabel = "W",
      description = "Work file of the clay, with your strips.")
  private Optional<Path> workPath;

  @Option(names = "--wanted-mm", paramLabel = "S", description = "Wanted size after the firing.")
  private Optional<Double> wantedMillimetres;

  @Option(names = "--ring-us", paramLabel = "N", description = "Wanted ring, US size 0 to 20.")
  private Optional<Double> usSize;

  @Option(
      names = "--ring-around-mm",
      paramLabel = "S",
      description = "Wanted ring, inner circumference.")
  private Optional<Double> aroundMillimetres;

  @Option(
      names = "--celsius",
      paramLabel = "T",
      description = "Firing temperature (the clay's strongest firing).")
  private Optional<Double> celsius;

  @Option(names = "--hold", paramLabel = "H:MM", description = "Its hold.")
  private Optional<String> hold;

  @Option(
      names = "--shrinkage-percent",
      paramLabel = "P",
      description = "Your own, linear, bone dry to fired.")
  private Optional<Double> shrinkagePercent;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  SinterSizeCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Optional<SinterWork> work = workPath.map(SinterInput::work);
    Clay clay = clay(work);
    Map<String, Optional<Double>> options = CastInput.options();
    options.put("--wanted-mm", wantedMillimetres);
    options.put("--ring-us", usSize);
    options.put("--ring-around-mm", aroundMillimetres);
    Map.Entry<String, Double> given = CastInput.oneOf(options);
    double wanted =
        CastInput.blaming(
            given.getKey(),
            () ->
                switch (given.getKey()) {
                  case "--ring-us" -> RingSize.ofUsMetres(given.getValue());
                  case "--ring-around-mm" ->
                      RingSize.ofCircumferenceMetres(given.getValue() / 1000);
                  default -> given.getValue() / 1000;
                });
    boolean ring = !given.getKey().equals("--wanted-mm");
    ClayFacts facts = Clays.of(clay);
    Optional<CurveBelief> belief =
        work.map(SinterWork::belief).orElseGet(() -> CurveBelief.of(facts, List.of()));
    Likely shrinkage = shrinkage(facts, belief);
    Likely make = shrinkage.map(share -> Shrinkage.beforeMetres(wanted, share));
    List<String> notes = notes(facts, belief, ring, make);
    Page page = new Page();
    page.line(
        "For %s mm%s in metal make it %s mm (%s to %s)%s, bone dry."
            .formatted(
                tenth(wanted * 1000),
                ring ? " inside" : "",
                tenth(make.median() * 1000),
                tenth(make.low() * 1000),
                tenth(make.high() * 1000),
                ring ? " inside" : ""));
    page.line(
        "Linear shrinkage %s %% (%s to %s)."
            .formatted(
                tenth(shrinkage.median() * 100),
                tenth(shrinkage.low() * 100),
                tenth(shrinkage.high() * 100)));
    notes.forEach(page::line);
    answer.give(
        surroundings,
        new SinterSizeJson(
            clay.word(),
            wanted * 1000,
            LikelyJson.of(make.map(metres -> 1000 * metres)),
            LikelyJson.of(shrinkage.map(share -> 100 * share)),
            belief.map(CurveBelief::tests).orElse(0),
            notes),
        page);
    return Answer.DONE;
  }

  private Clay clay(Optional<SinterWork> work) {
    if (clayWord.isPresent() == work.isPresent()) {
      throw InputException.in(
          "--clay",
          work.isPresent()
              ? "--work names the clay too; keep one of the two."
              : "not given; expected one of --clay, --work.");
    }
    return work.map(SinterWork::clay)
        .orElseGet(
            () ->
                Arrays.stream(Clay.values())
                    .filter(clay -> clay.word().equals(clayWord.orElseThrow()))
                    .findFirst()
                    .orElseThrow(
                        () ->
                            InputException.in(
                                "--clay",
                                "\"%s\" is not known; expected one of %s."
                                    .formatted(
                                        clayWord.orElseThrow(),
                                        Arrays.stream(Clay.values())
                                            .map(Clay::word)
                                            .collect(Collectors.joining(", "))))));
  }

  private Likely shrinkage(ClayFacts facts, Optional<CurveBelief> belief) {
    if (shrinkagePercent.isPresent()) {
      double share = CastInput.percent("--shrinkage-percent", shrinkagePercent.get());
      if (share > 0.5) {
        throw InputException.in(
            "--shrinkage-percent",
            "\"%s\" is not possible; expected 0 to 50 percent."
                .formatted(CastInput.typed(shrinkagePercent.get())));
      }
      return Likely.exactly(share);
    }
    if (celsius.isPresent() != hold.isPresent()) {
      throw InputException.in(
          celsius.isPresent() ? "--hold" : "--celsius",
          "not given; a firing needs both --celsius and --hold.");
    }
    if (belief.isPresent()) {
      SinterHeat heat =
          celsius
              .map(
                  t ->
                      SinterHeat.rampAndHold(
                          TestFiring.USUAL_RATE, temperature(t), duration(hold.orElseThrow())))
              .orElseGet(() -> facts.best().heat());
      return belief.get().shrinkage(heat);
    }
    ClayFacts.ShrinkageRange range = facts.shrinkage();
    return new Likely(
        range.lowShare(), (range.lowShare() + range.highShare()) / 2, range.highShare());
  }

  private static Temperature temperature(double celsius) {
    if (!(celsius >= 400 && celsius <= 1100)) {
      throw InputException.in(
          "--celsius",
          "\"%s\" is not possible; expected 400 to 1100 °C.".formatted(CastInput.typed(celsius)));
    }
    return Temperature.ofCelsius(celsius);
  }

  private static Duration duration(String text) {
    return HourMinute.parse(text)
        .orElseThrow(
            () ->
                InputException.in(
                    "--hold", "\"%s\" is no time; expected h:mm such as 2:00.".formatted(text)));
  }

  private List<String> notes(
      ClayFacts facts, Optional<CurveBelief> belief, boolean ring, Likely make) {
    String source;
    if (shrinkagePercent.isPresent()) {
      source = "By your own shrinkage; pieces of one firing still differ by about a point.";
    } else if (belief.isEmpty()) {
      source =
          "By the clay's usual shrinkage (%s): measure a strip before and after to narrow it."
              .formatted(facts.shrinkage().origin().words());
    } else if (belief.get().tests() == 0) {
      source =
          "By published ranges alone (shrinkage: %s): measure a strip before and after and add it under tests in a work file."
              .formatted(facts.shrinkage().origin().words());
    } else {
      source =
          "By %d of your strips from %d clearly different firing%s."
              .formatted(
                  belief.get().tests(),
                  belief.get().firings(),
                  belief.get().firings() == 1 ? "" : "s");
    }
    String shape =
        ring
            ? "As a US size the dry ring is %s to %s. A ring fired on a plug comes out at the plug; filing inside takes more."
                .formatted(
                    tenth(RingSize.usOfMetres(make.low())), tenth(RingSize.usOfMetres(make.high())))
            : "Wet clay shrinks besides while it dries; thin and thick parts shrink unequally.";
    return List.of(source, shape);
  }

  private static String tenth(double value) {
    return YamlText.number(Math.rint(value * 10) / 10);
  }
}
