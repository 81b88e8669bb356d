package org.heatwright.keypad;

import org.heatwright.schedule.Schedule;

/** What a keypad can express of a schedule. */
public final class KeypadFit {

  private KeypadFit() {}

  public static FittedProgram fit(Schedule schedule, Keypad keypad) {
    throw new UnsupportedOperationException("lands next");
  }
}
