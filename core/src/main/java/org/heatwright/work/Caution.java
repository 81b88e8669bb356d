package org.heatwright.work;

import java.util.Objects;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.units.TemperatureUnit;

/**
 * A danger or a limit to know before the heat.
 *
 * @param code short stable name in kebab-case, e.g. "burnout-fumes"
 * @param message one or two plain sentences: what would happen, what to do
 * @param origin where it comes from
 */
public record Caution(String code, String message, Origin origin) {

  public Caution {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(message, "message");
    Objects.requireNonNull(origin, "origin");
  }

  /** The same in another unit; its source is told in its own. */
  Caution in(TemperatureUnit unit) {
    return new Caution(code, Wording.in(message, unit), origin);
  }
}
