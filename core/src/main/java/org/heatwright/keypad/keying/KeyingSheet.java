package org.heatwright.keypad.keying;

import java.time.Duration;
import java.util.List;

/**
 * What to press, prompt by prompt.
 *
 * @param slot the program slot it is for, 1-based
 * @param steps in order
 * @param keying about how long keying and saving take
 * @param byHand about how long all of it takes, looking at the unit and reading back included
 * @param timesOrigin where the times come from
 */
public record KeyingSheet(
    int slot, List<KeyingStep> steps, Duration keying, Duration byHand, String timesOrigin) {

  public KeyingSheet {
    steps = List.copyOf(steps);
  }
}
