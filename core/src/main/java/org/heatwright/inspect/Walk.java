package org.heatwright.inspect;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.heatwright.material.Origin;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** A schedule's segments one after another, each with where its setpoint comes from. */
final class Walk {

  /** Where a kiln starts if nobody says otherwise. */
  private static final Temperature USUAL_ROOM = Temperature.ofCelsius(20);

  private final Schedule schedule;
  private final List<Step> steps = new ArrayList<>();

  /**
   * @param number 1-based
   */
  record Step(int number, Temperature from, Segment segment) {

    /** The way to go, K: above zero is up. */
    double wayKelvins() {
      return segment.target().celsius() - from.celsius();
    }

    boolean rises() {
      return wayKelvins() > 0;
    }

    /** Time on paper within a range: the part of the ramp that lies in it, and the hold. */
    Duration timeWithin(TemperatureRange range) {
      double kelvins = range.kelvinsOfWay(from, segment.target());
      double rampSeconds =
          segment.ramp().rate().map(r -> kelvins / r.kelvinsPerHour() * 3600).orElse(0.0);
      Duration hold = range.contains(segment.target()) ? segment.hold() : Duration.ZERO;
      return hold.plusSeconds(Math.round(rampSeconds));
    }
  }

  Walk(Inspection inspection) {
    schedule = inspection.schedule();
    Temperature from = inspection.kiln().map(k -> k.room()).orElse(USUAL_ROOM);
    for (Segment segment : schedule.segments()) {
      steps.add(new Step(steps.size() + 1, from, segment));
      from = segment.target();
    }
  }

  List<Step> steps() {
    return steps;
  }

  Step last() {
    return steps.get(steps.size() - 1);
  }

  TemperatureUnit unit() {
    return schedule.unit();
  }

  String target(Step step) {
    return Wording.of(step.segment().target(), unit());
  }

  static Finding finding(Severity severity, String code, Step step, String message, Origin origin) {
    return new Finding(severity, code, OptionalInt.of(step.number()), message, origin);
  }

  static Finding finding(Severity severity, String code, String message, Origin origin) {
    return new Finding(severity, code, OptionalInt.empty(), message, origin);
  }
}
