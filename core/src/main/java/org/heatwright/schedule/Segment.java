package org.heatwright.schedule;

import java.time.Duration;
import java.util.Objects;
import org.heatwright.units.Temperature;

/**
 * One step of a schedule: go to the target, then stay there.
 *
 * @param ramp how to get there
 * @param target where to go
 * @param hold how long to stay, whole minutes, zero or more; may exceed 24 h
 */
public record Segment(Ramp ramp, Temperature target, Duration hold) {

  public Segment {
    Objects.requireNonNull(ramp, "ramp");
    Objects.requireNonNull(target, "target");
    Objects.requireNonNull(hold, "hold");
    HourMinute.requireWholeMinutes("hold", hold);
  }

  public Segment withTarget(Temperature newTarget) {
    return new Segment(ramp, newTarget, hold);
  }

  public Segment withRamp(Ramp newRamp) {
    return new Segment(newRamp, target, hold);
  }

  public Segment withHold(Duration newHold) {
    return new Segment(ramp, target, newHold);
  }
}
