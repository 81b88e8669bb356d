package org.heatwright.work;

import java.util.Objects;
import org.heatwright.material.Origin;

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
}
