package org.heatwright.keypad;

import java.time.Duration;
import java.util.List;

/**
 * What to press, prompt by prompt.
 *
 * @param slot the program slot it is for, 1-based
 * @param steps in order
 * @param byHand about how long it takes
 * @param timesOrigin where the times come from
 */
public record KeyingSheet(int slot, List<KeyingStep> steps, Duration byHand, String timesOrigin) {

  public KeyingSheet {
    steps = List.copyOf(steps);
  }
}
