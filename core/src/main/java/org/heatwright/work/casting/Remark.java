package org.heatwright.work.casting;

import java.util.Objects;
import org.heatwright.material.Origin;

/**
 * Something to know with a number: a danger, a contradiction, a limit.
 *
 * @param code short stable name in kebab-case, e.g. "silica-dust"
 * @param message one or two plain sentences
 * @param origin where it comes from
 */
public record Remark(String code, String message, Origin origin) {

  public Remark {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(message, "message");
    Objects.requireNonNull(origin, "origin");
  }
}
