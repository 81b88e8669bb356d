package org.heatwright.app.casting;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.files.YamlText;
import org.heatwright.work.casting.Shrinkage;
import org.heatwright.work.casting.Spread;

/**
 * Size of a pattern for a casting, or of the casting from a pattern: one of the two is given.
 *
 * @param shrinkagePercent the studio's own, linear
 */
public record SizeAsk(
    Optional<Double> wantedMillimetres,
    Optional<Double> patternMillimetres,
    Optional<Double> shrinkagePercent) {

  /** What comes of it. */
  public record Answer(
      Spread patternMetres,
      Spread castMetres,
      Shrinkage shrinkage,
      String headline,
      List<String> notes) {

    public CastAnswer words() {
      return new CastAnswer(
          headline,
          List.of("factor " + range(shrinkage.factor(), 10_000, "")),
          List.of(),
          notes,
          List.of());
    }
  }

  /** Works it out. */
  public Answer answer() {
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
    Spread exactly = Spread.exactly(metres);
    Spread other =
        CastInput.blaming(
            given.getKey(),
            () -> wanted ? shrinkage.patternMetres(metres) : shrinkage.castMetres(metres));
    return new Answer(
        wanted ? other : exactly,
        wanted ? exactly : other,
        shrinkage,
        (wanted ? "For %s mm in metal make the pattern %s." : "A pattern of %s mm comes out at %s.")
            .formatted(YamlText.number(given.getValue()), range(other.times(1000), 100, " mm")),
        List.of(
            shrinkagePercent.isPresent()
                ? "By your own shrinkage."
                : "Shrinkage of 1.5 %% is a start (1 to 2; %s): measure a casting of yours against its pattern."
                    .formatted(Shrinkage.USUAL_ORIGIN.words()),
            "Filing and polishing take more; long thin parts and heavy ones shrink unequally."));
  }

  private static String range(Spread spread, double perUnit, String unit) {
    String usual = CastWords.rounded(spread.usual(), perUnit) + unit;
    return spread.low() == spread.high()
        ? usual
        : "%s (%s to %s)"
            .formatted(
                usual,
                CastWords.rounded(spread.low(), perUnit),
                CastWords.rounded(spread.high(), perUnit));
  }
}
