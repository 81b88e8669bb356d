package org.heatwright.inspect;

import static org.heatwright.inspect.Walk.finding;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;

/** What is odd about a schedule whatever it is for. */
final class ScheduleChecks {

  /** Nearer than a keypad's step, two targets are the same. */
  private static final double SAME_KELVINS = 0.5;

  /** A hold from which minutes may have been keyed as hours. {@code estimate:} */
  private static final Duration LONG_HOLD = Duration.ofHours(12);

  private ScheduleChecks() {}

  static List<Finding> find(Walk walk, Optional<Duration> longestHold) {
    List<Finding> findings = new ArrayList<>();
    for (Walk.Step step : walk.steps()) {
      if (Math.abs(step.wayKelvins()) < SAME_KELVINS && !goesOnHolding(walk, step, longestHold)) {
        findings.add(
            finding(
                Severity.WARN,
                "goes-nowhere",
                step,
                step.segment().hold().isZero()
                    ? "Segment %d goes to %s, where the kiln already is, and holds no time: it does nothing. Is it left over, or is the target wrong?"
                        .formatted(step.number(), walk.target(step))
                    : "Segment %d goes to %s, where the kiln already is: its ramp means nothing and it only holds %s longer. Is the target right, or was it keyed twice?"
                        .formatted(
                            step.number(),
                            walk.target(step),
                            HourMinute.words(step.segment().hold())),
                Origin.derived("targets of this schedule")));
      } else if (step.segment().target().compareTo(walk.steps().get(0).from()) < 0) {
        findings.add(
            finding(
                Severity.WARN,
                "below-room",
                step,
                "The kiln never cools to %s, which is colder than the room, so the program would not end. Raise the target or leave the segment out."
                    .formatted(walk.target(step)),
                Origin.derived("room temperature")));
      }
      if (step.segment().hold().compareTo(LONG_HOLD) >= 0) {
        findings.add(
            finding(
                Severity.NOTE,
                "long-hold",
                step,
                "The hold at %s is %s. Hours are easily keyed for minutes: is that meant?"
                    .formatted(walk.target(step), HourMinute.words(step.segment().hold())),
                Origin.read("a pottery blog on 20 minutes keyed as 20 hours")));
      }
    }
    return findings;
  }

  /** The keypad cannot write a hold this long in one segment. */
  private static boolean goesOnHolding(Walk walk, Walk.Step step, Optional<Duration> longestHold) {
    return step.number() > 1
        && longestHold
            .filter(
                longest ->
                    walk.steps().get(step.number() - 2).segment().hold().compareTo(longest) >= 0)
            .isPresent();
  }
}
