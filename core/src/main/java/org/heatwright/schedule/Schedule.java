package org.heatwright.schedule;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * A firing schedule: a small immutable value.
 *
 * @param name what people call it, not blank
 * @param unit the unit its file, card and keypad show; the targets themselves carry no unit
 * @param segments one or more, in order
 * @param startDelay how long the controller waits before the first segment, whole minutes
 * @param atEnd what happens after the last segment
 */
public record Schedule(
    String name, TemperatureUnit unit, List<Segment> segments, Duration startDelay, AtEnd atEnd) {

  public Schedule {
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(startDelay, "startDelay");
    Objects.requireNonNull(atEnd, "atEnd");
    segments = List.copyOf(segments);
    if (name.isBlank() || segments.isEmpty()) {
      throw new IllegalArgumentException(
          "The schedule (name '%s', %d segments) needs a name and at least one segment."
              .formatted(name, segments.size()));
    }
    HourMinute.requireWholeMinutes("start delay", startDelay);
  }

  /** A schedule that starts at once and ends with the elements off. */
  public static Schedule of(String name, TemperatureUnit unit, List<Segment> segments) {
    return new Schedule(name, unit, segments, Duration.ZERO, AtEnd.OFF);
  }

  public Schedule withSegments(List<Segment> newSegments) {
    return new Schedule(name, unit, newSegments, startDelay, atEnd);
  }

  public Schedule withStartDelay(Duration newStartDelay) {
    return new Schedule(name, unit, segments, newStartDelay, atEnd);
  }

  public Schedule withUnit(TemperatureUnit newUnit) {
    return new Schedule(name, newUnit, segments, startDelay, atEnd);
  }

  public Schedule withName(String newName) {
    return new Schedule(newName, unit, segments, startDelay, atEnd);
  }

  /** The highest target. */
  public Temperature peak() {
    return segments.stream().map(Segment::target).max(Temperature::compareTo).orElseThrow();
  }

  /** Where the setpoint stands when segment {@code index} (0-based) begins. */
  public Temperature setpointBefore(int index, Temperature start) {
    return index == 0 ? start : segments.get(index - 1).target();
  }

  /**
   * The time on paper: every ramp exactly at its rate from {@code start}, every hold as written,
   * <i>fastest</i> ramps counted as nothing, the start delay left out.
   */
  public NominalTime nominalTime(Temperature start) {
    Duration total = Duration.ZERO;
    boolean complete = true;
    for (int i = 0; i < segments.size(); i++) {
      Segment segment = segments.get(i);
      var ramp = segment.ramp().nominalTime(segment.target().minus(setpointBefore(i, start)));
      complete &= ramp.isPresent();
      total = total.plus(ramp.orElse(Duration.ZERO)).plus(segment.hold());
    }
    return new NominalTime(total, complete);
  }

  /**
   * @param total the sum of what paper can know
   * @param complete false when a <i>fastest</i> ramp leaves part of the time to the kiln
   */
  public record NominalTime(Duration total, boolean complete) {}
}
