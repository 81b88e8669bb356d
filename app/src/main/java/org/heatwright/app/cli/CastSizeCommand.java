package org.heatwright.app.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.CastSizeJson;
import org.heatwright.work.casting.Shrinkage;
import org.heatwright.work.casting.Spread;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Command(
    name = "size",
    description = {
      "The size of a pattern for a casting of a wanted size, or of the casting from a",
      "pattern: linear shrinkage of wax, mould and metal together."
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
    Shrinkage shrinkage =
        shrinkagePercent
            .map(
                p ->
                    CastInput.blaming(
                        "--shrinkage-percent",
                        () -> Shrinkage.of(CastInput.percent("--shrinkage-percent", p))))
            .orElse(Shrinkage.USUAL);
    Map<String, Optional<Double>> options = CastInput.options();
    options.put("--wanted-mm", wantedMillimetres);
    options.put("--pattern-mm", patternMillimetres);
    Map.Entry<String, Double> given = CastInput.oneOf(options);
    double metres = given.getValue() / 1000;
    boolean wanted = given.getKey().equals("--wanted-mm");
    Spread pattern =
        wanted
            ? CastInput.blaming("--wanted-mm", () -> shrinkage.patternMetres(metres))
            : Spread.exactly(metres);
    Spread cast =
        wanted
            ? Spread.exactly(metres)
            : CastInput.blaming("--pattern-mm", () -> shrinkage.castMetres(metres));
    List<String> notes =
        List.of(
            shrinkagePercent.isPresent()
                ? "By your own shrinkage."
                : "Shrinkage of 1.5 %% is a start (1 to 2; %s): measure a casting of yours against its pattern."
                    .formatted(Shrinkage.USUAL_ORIGIN.words()),
            "Filing and polishing take more; long thin parts and heavy ones shrink unequally.");
    Page page = new Page();
    page.line(
        wanted
            ? "For %s mm in metal make the pattern %s."
                .formatted(YamlText.number(given.getValue()), millimetres(pattern))
            : "A pattern of %s mm comes out at %s."
                .formatted(YamlText.number(given.getValue()), millimetres(cast)));
    page.hanging("  ", "factor %s".formatted(range(shrinkage.factor(), 10_000)));
    page.blank();
    notes.forEach(note -> page.hanging("note  ", note));
    answer.give(
        surroundings,
        CastSizeJson.of(pattern, cast, shrinkage.factor(), shrinkage.linearShare(), notes),
        page);
    return Answer.DONE;
  }

  private static String millimetres(Spread metres) {
    Spread mm = metres.times(1000);
    return mm.low() == mm.high()
        ? rounded(mm.usual(), 100) + " mm"
        : "%s mm (%s to %s)"
            .formatted(rounded(mm.usual(), 100), rounded(mm.low(), 100), rounded(mm.high(), 100));
  }

  private static String range(Spread spread, double perUnit) {
    return spread.low() == spread.high()
        ? rounded(spread.usual(), perUnit)
        : "%s (%s to %s)"
            .formatted(
                rounded(spread.usual(), perUnit),
                rounded(spread.low(), perUnit),
                rounded(spread.high(), perUnit));
  }

  private static String rounded(double value, double perUnit) {
    return YamlText.number(Math.rint(value * perUnit) / perUnit);
  }
}
