package org.heatwright.app.json;

import java.util.List;
import org.heatwright.work.casting.Spread;

/** What {@code cast size --json} prints; sizes in millimetres, shrinkage linear. */
public record CastSizeJson(
    SpreadJson patternMillimetres,
    SpreadJson castMillimetres,
    SpreadJson factor,
    SpreadJson shrinkagePercent,
    List<String> notes) {

  public static CastSizeJson of(
      Spread patternMetres,
      Spread castMetres,
      Spread factor,
      Spread linearShare,
      List<String> notes) {
    return new CastSizeJson(
        SpreadJson.thousandfold(patternMetres),
        SpreadJson.thousandfold(castMetres),
        SpreadJson.of(factor),
        SpreadJson.of(linearShare.times(100)),
        notes);
  }
}
