package org.heatwright.learn;

import java.time.LocalDate;
import java.util.Objects;

/**
 * A watched firing and its day.
 *
 * @param date of its start, in the kiln's own zone; what happened to the kiln on that day is taken
 *     to have happened before it
 * @param firing what was seen
 */
public record DatedFiring(LocalDate date, LoggedFiring firing) {
  public DatedFiring {
    Objects.requireNonNull(date, "date");
    Objects.requireNonNull(firing, "firing");
  }
}
