package org.heatwright.keypad;

import java.util.Objects;

/**
 * Figures a person can check by eye, because no keypad can fake them.
 *
 * @param segments how many
 * @param sumOfTargets of the numbers as shown, in the unit in force
 * @param totalMinutes of all holds that are shown as a time, min; an endless one counts nothing
 * @param firstUnused what the first unused segment must read; says so in words if there is none
 * @param minutesOnPaper holds and ramps at their rates from a cold kiln of 20 °C, <i>fastest</i>
 *     ramps counted as nothing, min
 */
public record CheckFigures(
    int segments, double sumOfTargets, long totalMinutes, String firstUnused, long minutesOnPaper) {

  public CheckFigures {
    Objects.requireNonNull(firstUnused, "firstUnused");
    if (!Double.isFinite(sumOfTargets)) {
      throw new IllegalArgumentException(
          "The sum of targets (%s) must be finite.".formatted(sumOfTargets));
    }
  }
}
