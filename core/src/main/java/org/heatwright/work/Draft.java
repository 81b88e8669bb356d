package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * A schedule in the making: each step with its purpose and the reasons for its three numbers.
 *
 * @param steps in order, not empty
 */
record Draft(List<Step> steps) {

  Draft {
    steps = List.copyOf(steps);
  }

  /** Why one number is what it is. */
  record Why(String rule, String range, Origin origin) {}

  /** One segment with its reasons. */
  record Step(
      String purpose,
      Ramp ramp,
      Why rampWhy,
      Temperature target,
      Why targetWhy,
      Duration hold,
      Why holdWhy) {

    Step withHold(Duration newHold) {
      return new Step(purpose, ramp, rampWhy, target, targetWhy, newHold, holdWhy);
    }

    Step withRamp(Ramp newRamp, Why newWhy) {
      return new Step(purpose, newRamp, newWhy, target, targetWhy, hold, holdWhy);
    }
  }

  Schedule schedule(String name, TemperatureUnit unit) {
    return Schedule.of(
        name, unit, steps.stream().map(s -> new Segment(s.ramp(), s.target(), s.hold())).toList());
  }

  /** A draft as the keypad will run it. */
  record Fitted(Draft draft, Schedule schedule) {

    List<Reason> reasons() {
      List<Reason> reasons = new ArrayList<>();
      for (int i = 0; i < draft.steps().size(); i++) {
        Step step = draft.steps().get(i);
        Segment runs = schedule.segments().get(i);
        TemperatureUnit unit = schedule.unit();
        reasons.add(
            reason(
                i,
                Reason.Part.RATE,
                step,
                Wording.of(runs.ramp(), unit),
                step.rampWhy(),
                !runs.ramp().equals(step.ramp())));
        reasons.add(
            reason(
                i,
                Reason.Part.TARGET,
                step,
                Wording.of(runs.target(), unit),
                step.targetWhy(),
                !runs.target().equals(step.target())));
        reasons.add(
            reason(
                i,
                Reason.Part.HOLD,
                step,
                HourMinute.words(runs.hold()),
                step.holdWhy(),
                !runs.hold().equals(step.hold())));
      }
      return reasons;
    }

    private static Reason reason(
        int index, Reason.Part part, Step step, String value, Why why, boolean changed) {
      String rule = changed ? why.rule() + " Rounded to what the keypad can do." : why.rule();
      return new Reason(index + 1, part, step.purpose(), value, rule, why.range(), why.origin());
    }
  }

  /**
   * The first of several drafts that the keypad can express, as it expresses it; a hold it cannot
   * write in one piece is split, or made whole hours. Without a keypad the first draft; if none
   * fits, the last, which inspection will refuse with the keypad's own words.
   */
  static Fitted firstThatFits(
      List<Draft> drafts, String name, TemperatureUnit unit, Optional<Keypad> keypad) {
    if (keypad.isEmpty()) {
      return new Fitted(drafts.get(0), drafts.get(0).schedule(name, unit));
    }
    Duration longest = keypad.get().hold().max();
    for (Draft draft : drafts) {
      Draft wholeHours = draft.withWholeHours();
      for (Draft variant :
          List.of(draft, draft.split(longest), wholeHours, wholeHours.split(longest))) {
        FittedProgram program = KeypadFit.fit(variant.schedule(name, unit), keypad.get());
        if (program.fits()) {
          return new Fitted(variant, program.expressible());
        }
      }
    }
    Draft last = drafts.get(drafts.size() - 1);
    return new Fitted(last, last.schedule(name, unit));
  }

  /** Every hold longer than the longest becomes several at the same target. */
  Draft split(Duration longest) {
    List<Step> split = new ArrayList<>();
    for (Step step : steps) {
      Duration left = step.hold();
      while (left.compareTo(longest) > 0) {
        split.add(step.withHold(longest));
        left = left.minus(longest);
      }
      split.add(step.withHold(left));
    }
    return new Draft(split);
  }

  /** Every hold becomes whole hours, never shorter. */
  private Draft withWholeHours() {
    return new Draft(
        steps.stream()
            .map(s -> s.withHold(Duration.ofHours((s.hold().toMinutes() + 59) / 60)))
            .toList());
  }
}
