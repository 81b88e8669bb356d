package org.heatwright.keypad;

import java.util.List;
import java.util.Objects;

/** How a value is made on this keypad. The set of kinds is closed. */
public sealed interface Entry {

  /** What happens at an end of the scale. */
  enum AtLimit {
    /** The value stays at the end. */
    STOP,
    /** A step from the end lands on the other end; a longer one stops at the end first. */
    WRAP
  }

  /**
   * Up and down keys. A press moves one step at once; a key kept down repeats in stages.
   *
   * @param repeat stages in order of time; empty if the keys do not repeat
   * @param atLeast what happens below the least value
   * @param atGreatest what happens above the greatest value
   */
  record StepKeys(List<RepeatStage> repeat, AtLimit atLeast, AtLimit atGreatest) implements Entry {

    public StepKeys {
      repeat = List.copyOf(repeat);
      Objects.requireNonNull(atLeast, "atLeast");
      Objects.requireNonNull(atGreatest, "atGreatest");
      for (int i = 1; i < repeat.size(); i++) {
        if (!(repeat.get(i).afterSeconds() > repeat.get(i - 1).afterSeconds())) {
          throw new IllegalArgumentException(
              "Repeat stage %d begins after %s s, but the one before it after %s s: stages must follow each other."
                  .formatted(
                      i + 1, repeat.get(i).afterSeconds(), repeat.get(i - 1).afterSeconds()));
        }
      }
    }
  }

  /**
   * One stage of a key that is kept down.
   *
   * @param afterSeconds when it begins, s from the press, above zero
   * @param stepsPerTick steps of the field a tick moves, 1 to 1000
   * @param ticksPerSecond ticks a second, above zero, at most 100
   */
  record RepeatStage(double afterSeconds, int stepsPerTick, double ticksPerSecond) {

    public RepeatStage {
      if (!(afterSeconds > 0 && afterSeconds <= 60)
          || stepsPerTick < 1
          || stepsPerTick > 1000
          || !(ticksPerSecond > 0 && ticksPerSecond <= 100)) {
        throw new IllegalArgumentException(
            "A repeat stage (after %s s, %d steps a tick, %s ticks a second) must begin after 0 to 60 s, move 1 to 1000 steps a tick and tick up to 100 times a second."
                .formatted(afterSeconds, stepsPerTick, ticksPerSecond));
      }
    }
  }

  /**
   * Digits, then the accepting key. What is typed replaces what was there.
   *
   * @param pointKey whether the point of a decimal or h.mm value is a key of its own; if not, the
   *     digits fill the display from the right and the point stands still
   */
  record DigitKeys(boolean pointKey) implements Entry {}

  /**
   * A knob: a coarse variant of step keys.
   *
   * @param clicksPerTurn clicks in one turn, 4 to 100
   * @param fastSteps steps of the field a click moves when the knob is spun, 1 if spinning makes no
   *     difference
   * @param atLeast what happens below the least value
   * @param atGreatest what happens above the greatest value
   */
  record Knob(int clicksPerTurn, int fastSteps, AtLimit atLeast, AtLimit atGreatest)
      implements Entry {

    public Knob {
      Objects.requireNonNull(atLeast, "atLeast");
      Objects.requireNonNull(atGreatest, "atGreatest");
      if (clicksPerTurn < 4 || clicksPerTurn > 100 || fastSteps < 1 || fastSteps > 1000) {
        throw new IllegalArgumentException(
            "A knob has 4 to 100 clicks a turn (%d) and 1 to 1000 steps a click when spun (%d)."
                .formatted(clicksPerTurn, fastSteps));
      }
    }
  }
}
