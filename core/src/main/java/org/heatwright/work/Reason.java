package org.heatwright.work;

import java.util.Objects;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.units.TemperatureUnit;

/**
 * Why a number of a composed schedule is what it is.
 *
 * @param segment 1-based segment; 0 for the whole schedule
 * @param part which number of the segment
 * @param purpose what the segment is for, e.g. "dry", "wax out", "carbon out", "settle at pour
 *     temperature"
 * @param value the number with its unit
 * @param rule the rule in a sentence
 * @param range what practice ranges over, or empty
 * @param origin where the rule comes from
 */
public record Reason(
    int segment,
    Part part,
    String purpose,
    String value,
    String rule,
    String range,
    Origin origin) {

  /** The numbers of a schedule. */
  public enum Part {
    RATE,
    TARGET,
    HOLD,
    END
  }

  public Reason {
    Objects.requireNonNull(part, "part");
    Objects.requireNonNull(purpose, "purpose");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(range, "range");
    Objects.requireNonNull(origin, "origin");
  }

  /** The same in another unit; its source is told in its own. */
  Reason in(TemperatureUnit unit) {
    return new Reason(
        segment, part, purpose, value, Wording.in(rule, unit), Wording.in(range, unit), origin);
  }
}
