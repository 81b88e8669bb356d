package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.app.files.YamlValue;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;

/** A schedule in kelvins and degrees Celsius; {@code unit} is what its file and keypad show. */
public record ScheduleJson(
    String name, String unit, List<SegmentJson> segments, long startDelaySeconds, String atEnd) {

  /** {@code kelvinsPerHour} is null for <i>fastest</i>. */
  public record SegmentJson(
      int index, Optional<Double> kelvinsPerHour, double targetCelsius, long holdSeconds) {}

  /** The record of a schedule. */
  public static ScheduleJson of(Schedule schedule) {
    return new ScheduleJson(
        schedule.name(),
        schedule.unit().letter(),
        IntStream.range(0, schedule.segments().size())
            .mapToObj(i -> segment(i + 1, schedule.segments().get(i)))
            .toList(),
        schedule.startDelay().toSeconds(),
        YamlValue.word(schedule.atEnd()));
  }

  private static SegmentJson segment(int index, Segment segment) {
    return new SegmentJson(
        index,
        segment.ramp().rate().map(rate -> rate.kelvinsPerHour()),
        segment.target().celsius(),
        segment.hold().toSeconds());
  }
}
