package org.heatwright.app.cli;

import org.heatwright.inspect.Wording;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/** A schedule in short words. */
final class ScheduleWords {

  private ScheduleWords() {}

  /** "120 °C/h to 150 °C, hold 2 h", "fastest to 820 °C". */
  static String segment(Segment segment, TemperatureUnit unit) {
    String hold = segment.hold().isZero() ? "" : ", hold " + HourMinute.words(segment.hold());
    return Wording.of(segment.ramp(), unit) + " to " + Wording.of(segment.target(), unit) + hold;
  }

  /** One line a segment, then what happens at the end. */
  static void print(Schedule schedule, Page page) {
    int index = 0;
    for (Segment segment : schedule.segments()) {
      index++;
      page.hanging("%3d  ".formatted(index), segment(segment, schedule.unit()));
    }
    page.hanging(
        "     ",
        schedule.atEnd() == AtEnd.KEEP
            ? "then the last target is kept until a person stops it"
            : "then the elements go off");
  }
}
