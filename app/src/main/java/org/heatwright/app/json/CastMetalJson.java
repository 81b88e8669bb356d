package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.casting.MetalAsk;
import org.heatwright.work.casting.MetalNeed;
import org.heatwright.work.casting.Troy;
import org.heatwright.work.casting.UsedMetal;

/**
 * What {@code cast metal --json} prints. {@code densities} are every source's, {@code
 * metalGramsPerCubicCentimetre} what was computed with; {@code patternGramsPerCubicCentimetre} is
 * null where a volume was given.
 */
public record CastMetalJson(
    String metal,
    String method,
    SpreadJson totalGrams,
    SpreadJson castGrams,
    SpreadJson buttonGrams,
    double totalTroyOunces,
    double totalPennyweights,
    SpreadJson usedMetalAtMostGrams,
    SpreadJson metalGramsPerCubicCentimetre,
    Optional<SpreadJson> patternGramsPerCubicCentimetre,
    List<DensityJson> densities,
    List<String> notes,
    List<RemarkJson> cautions) {

  /** One source's density of the metal. */
  public record DensityJson(String how, double gramsPerCubicCentimetre, String origin) {}

  public static CastMetalJson of(MetalAsk.Answer answer) {
    MetalNeed need = answer.need();
    return new CastMetalJson(
        answer.metal(),
        answer.method().word(),
        SpreadJson.thousandfold(need.totalKilograms()),
        SpreadJson.thousandfold(need.castKilograms()),
        SpreadJson.thousandfold(need.buttonKilograms()),
        Troy.ounces(need.totalKilograms().usual()),
        Troy.pennyweights(need.totalKilograms().usual()),
        SpreadJson.thousandfold(UsedMetal.atMostKilograms(need.totalKilograms().usual())),
        SpreadJson.of(answer.metalDensity().times(1e-3)),
        answer.patternDensity().map(d -> SpreadJson.of(d.times(1e-3))),
        answer.densities().stream()
            .map(
                d ->
                    new DensityJson(d.how(), d.kilogramsPerCubicMetre() / 1000, d.origin().words()))
            .toList(),
        answer.notes(),
        RemarkJson.of(answer.cautions()));
  }
}
