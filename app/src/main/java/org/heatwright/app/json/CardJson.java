package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.report.Ending;
import org.heatwright.forecast.StartPlan;
import org.heatwright.inspect.Finding;

/** What {@code card --json} prints: where the card is, and what it says about time and danger. */
public record CardJson(
    String schedule,
    String kiln,
    String card,
    Optional<String> calendar,
    Optional<StartJson> start,
    List<FindingJson> findings) {

  /** The record of a written card. */
  public static CardJson of(
      String schedule,
      String kiln,
      String card,
      Optional<String> calendar,
      Optional<StartPlan> start,
      Ending ending,
      List<Finding> findings) {
    return new CardJson(
        schedule,
        kiln,
        card,
        calendar,
        start.map(s -> StartJson.of(s, ending)),
        FindingJson.of(findings));
  }
}
