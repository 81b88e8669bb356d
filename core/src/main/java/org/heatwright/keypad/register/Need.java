package org.heatwright.keypad.register;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;

/**
 * That somebody needs a slot's program.
 *
 * @param what for
 * @param until the last day; empty for good
 * @param since when it was told
 * @param by who told it
 */
public record Need(String what, Optional<LocalDate> until, Instant since, Role by) {

  public boolean on(LocalDate day) {
    return until.map(last -> !day.isAfter(last)).orElse(true);
  }
}
