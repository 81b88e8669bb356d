package org.heatwright.app.json;

import java.util.List;
import org.heatwright.app.casting.SizeAsk;

/** What {@code cast size --json} prints; sizes in millimetres, shrinkage linear. */
public record CastSizeJson(
    SpreadJson patternMillimetres,
    SpreadJson castMillimetres,
    SpreadJson factor,
    SpreadJson shrinkagePercent,
    List<String> notes) {

  public static CastSizeJson of(SizeAsk.Answer answer) {
    return new CastSizeJson(
        SpreadJson.thousandfold(answer.patternMetres()),
        SpreadJson.thousandfold(answer.castMetres()),
        SpreadJson.of(answer.shrinkage().factor()),
        SpreadJson.of(answer.shrinkage().linearShare().times(100)),
        answer.notes());
  }
}
