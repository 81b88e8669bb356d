package org.heatwright.app.cli;

import org.heatwright.app.files.YamlText;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** A schedule in short words. */
final class ScheduleWords {

  private ScheduleWords() {}

  /** "120 °C/h to 150 °C, hold 2 h", "fastest to 820 °C". */
  static String segment(Segment segment, TemperatureUnit unit) {
    String way =
        segment
            .ramp()
            .rate()
            .map(rate -> number(unit.value(rate)) + " " + unit.symbol() + "/h to ")
            .orElse("fastest to ");
    String hold = segment.hold().isZero() ? "" : ", hold " + HourMinute.words(segment.hold());
    return way + temperature(segment.target(), unit) + hold;
  }

  static String temperature(Temperature temperature, TemperatureUnit unit) {
    return number(unit.value(temperature)) + " " + unit.symbol();
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

  private static String number(double value) {
    return YamlText.number(Math.rint(value * 10) / 10);
  }
}
