package org.heatwright.work.casting;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;

/**
 * A time that runs against the work.
 *
 * @param code short stable name in kebab-case
 * @param what what takes the time, or what must be done within it
 * @param minutes from the shortest to the longest, if anything tells
 * @param advice what to do, in a sentence or two
 * @param origin where it comes from
 */
public record CastingClock(
    String code, String what, Optional<Spread> minutes, String advice, Origin origin) {

  public CastingClock {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(minutes, "minutes");
    Objects.requireNonNull(advice, "advice");
    Objects.requireNonNull(origin, "origin");
  }
}
