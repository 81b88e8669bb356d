package org.heatwright.app.json;

import java.util.List;
import org.heatwright.app.files.YamlValue;
import org.heatwright.inspect.Finding;
import org.heatwright.work.Composition;

/** What {@code compose --json} prints: the schedule, why, and what to know and do. */
public record ComposeJson(
    ScheduleJson schedule,
    List<ReasonJson> reasons,
    List<CautionJson> cautions,
    List<MomentJson> moments,
    List<FindingJson> findings) {

  /** {@code segment} 0 is the whole schedule; {@code part} is rate, target, hold or end. */
  public record ReasonJson(
      int segment,
      String part,
      String purpose,
      String value,
      String rule,
      String range,
      String origin) {}

  /** What to know before the heat. */
  public record CautionJson(String code, String message, String origin) {}

  /** Something to do, tied to a place in the schedule. */
  public record MomentJson(
      String kind, String anchor, int segment, long afterSeconds, String what, String why) {}

  /** The record of a composition and of what an inspection of it found. */
  public static ComposeJson of(Composition composition, List<Finding> findings) {
    return new ComposeJson(
        ScheduleJson.of(composition.schedule()),
        composition.reasons().stream()
            .map(
                r ->
                    new ReasonJson(
                        r.segment(),
                        YamlValue.word(r.part()),
                        r.purpose(),
                        r.value(),
                        r.rule(),
                        r.range(),
                        r.origin().words()))
            .toList(),
        composition.cautions().stream()
            .map(c -> new CautionJson(c.code(), c.message(), c.origin().words()))
            .toList(),
        composition.moments().stream()
            .map(
                m ->
                    new MomentJson(
                        YamlValue.word(m.kind()),
                        YamlValue.word(m.anchor()),
                        m.segment(),
                        m.after().toSeconds(),
                        m.what(),
                        m.why()))
            .toList(),
        FindingJson.of(findings));
  }
}
