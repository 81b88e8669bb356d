package org.heatwright.work.casting;

import java.util.List;
import java.util.Objects;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * A temperature that is proposed, and what it rests on.
 *
 * @param value the studio's own where there is one
 * @param range from the lowest to the highest of the sources that speak for this work
 * @param rows every source, the studio's own first, disagreement left as it is
 * @param why how the value comes out of the rows
 */
public record Proposal(
    Temperature value, TemperatureRange range, List<TemperatureRow> rows, String why) {

  public Proposal {
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(range, "range");
    Objects.requireNonNull(why, "why");
    rows = List.copyOf(rows);
  }

  /** Whether the value is the studio's own. */
  public boolean own() {
    return rows.get(0).origin().kind() == Origin.Kind.OWN;
  }
}
