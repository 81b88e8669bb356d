package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.YamlValue;
import org.heatwright.keypad.ReadbackReport;

/** What {@code readback --json} prints; {@code outcome} is proven, unit-open or not-proven. */
public record ReadbackJson(
    String schedule,
    String keypad,
    String outcome,
    List<VerdictJson> verdicts,
    List<String> findings,
    Optional<String> correction,
    List<FigureJson> checkFigures,
    List<String> unproven) {

  /** About one value. */
  public record VerdictJson(
      int position,
      String place,
      String expected,
      String shown,
      String kind,
      String message,
      Optional<String> correction) {}

  /** A check figure of the plan beside the one of what was shown. */
  public record FigureJson(String name, String planned, String shown, boolean agrees) {}

  /** The record of a read-back. */
  public static ReadbackJson of(String schedule, String keypad, ReadbackReport report) {
    return new ReadbackJson(
        schedule,
        keypad,
        YamlValue.word(report.outcome()),
        report.verdicts().stream()
            .map(
                v ->
                    new VerdictJson(
                        v.position(),
                        v.place(),
                        v.expected(),
                        v.shown(),
                        YamlValue.word(v.kind()),
                        v.message(),
                        v.correction()))
            .toList(),
        report.findings(),
        report.correction(),
        report.figures().stream()
            .map(f -> new FigureJson(f.name(), f.planned(), f.shown(), f.agrees()))
            .toList(),
        report.unproven());
  }
}
