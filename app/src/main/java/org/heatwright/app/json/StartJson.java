package org.heatwright.app.json;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.report.Ending;
import org.heatwright.forecast.StartPlan;

/** A plan on the clock; times are ISO 8601 with their offset from UTC. */
public record StartJson(
    String start,
    Optional<Long> delayToSetSeconds,
    String readyWhat,
    Optional<WindowJson> ready,
    Optional<WindowJson> end,
    boolean inTime,
    List<String> notes) {

  /** Low and high are the 5th and the 95th percentile. */
  public record WindowJson(String low, String median, String high) {
    static WindowJson of(StartPlan.Window window) {
      DateTimeFormatter iso = DateTimeFormatter.ISO_OFFSET_DATE_TIME;
      return new WindowJson(
          iso.format(window.from()), iso.format(window.likely()), iso.format(window.until()));
    }
  }

  static StartJson of(StartPlan plan, Ending ending) {
    return new StartJson(
        DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(plan.start()),
        plan.delayToSet().map(delay -> delay.toSeconds()),
        plan.readyWhat(),
        plan.ready().map(WindowJson::of),
        ending.hasMedian() ? Optional.of(WindowJson.of(plan.end())) : Optional.empty(),
        plan.inTime(),
        plan.notes());
  }
}
