package org.heatwright.app.json;

import java.util.List;
import org.heatwright.inspect.Finding;
import org.heatwright.schedule.Schedule;

/** What {@code inspect --json} prints. */
public record InspectJson(String schedule, List<FindingJson> findings) {
  public static InspectJson of(Schedule schedule, List<Finding> findings) {
    return new InspectJson(schedule.name(), FindingJson.of(findings));
  }
}
