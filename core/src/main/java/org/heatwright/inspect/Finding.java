package org.heatwright.inspect;

import java.util.Objects;
import java.util.OptionalInt;
import org.heatwright.material.Origin;
import org.heatwright.units.TemperatureUnit;

/**
 * A remark about a schedule, for the person at the kiln.
 *
 * @param severity how much it matters
 * @param code short stable name in kebab-case, e.g. "above-kiln-limit"
 * @param segment 1-based segment it is about, if one
 * @param message one or two plain sentences: what would happen, what to do
 * @param origin where the rule behind it comes from
 */
public record Finding(
    Severity severity, String code, OptionalInt segment, String message, Origin origin) {

  public Finding {
    Objects.requireNonNull(severity, "severity");
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(segment, "segment");
    Objects.requireNonNull(message, "message");
    Objects.requireNonNull(origin, "origin");
  }

  /** The same in another unit; its source is told in its own. */
  Finding in(TemperatureUnit unit) {
    return new Finding(severity, code, segment, Wording.in(message, unit), origin);
  }
}
