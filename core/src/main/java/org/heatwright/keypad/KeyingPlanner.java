package org.heatwright.keypad;

import java.util.Optional;
import org.heatwright.schedule.Schedule;

/** How to key a program. */
public final class KeyingPlanner {

  private KeyingPlanner() {}

  public static KeyingSheet plan(
      FittedProgram program, Keypad keypad, int slot, Optional<Schedule> held) {
    throw new UnsupportedOperationException("lands next");
  }
}
