package org.heatwright.app.files;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.ProgramLimits;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/** {@code schedule.yaml}. Targets and rates are in the unit the file names. */
public final class ScheduleFile {

  /** No studio kiln goes there; a number above it is a slip. */
  static final double MAX_TARGET_CELSIUS = 2000;

  static final double MAX_RATE = 100_000;

  private ScheduleFile() {}

  public static Schedule read(String text, String fileName) {
    YamlMap file =
        YamlFile.read(text, fileName, FileKind.SCHEDULE)
            .only("name", "unit", "segments", "start-delay", "at-end");
    String name = file.required("name").text();
    TemperatureUnit unit = unit(file.required("unit"));
    List<YamlValue> items = file.required("segments").filledList();
    List<Segment> segments = items.stream().map(s -> segment(s, unit)).toList();
    ProgramLimits.beyond(segments)
        .ifPresent(
            beyond -> {
              YamlValue item = items.get(beyond.segment() - 1);
              throw InputException.at(
                  fileName,
                  item.line(),
                  "with %s the program comes to %s; expected %s."
                      .formatted(item.path(), beyond.what(), beyond.expected()));
            });
    return new Schedule(
        name,
        unit,
        segments,
        file.optional("start-delay").map(YamlValue::hourMinute).orElse(Duration.ZERO),
        file.optional("at-end").map(v -> v.oneOf(AtEnd.class)).orElse(AtEnd.OFF));
  }

  public static String write(Schedule schedule) {
    TemperatureUnit unit = schedule.unit();
    StringBuilder out = new StringBuilder();
    out.append("name: ").append(YamlText.text(schedule.name())).append('\n');
    out.append("unit: ").append(unit.letter()).append('\n');
    out.append("segments:\n");
    for (Segment segment : schedule.segments()) {
      Map<String, String> entries = new LinkedHashMap<>();
      entries.put(
          "rate", segment.ramp().rate().map(r -> YamlText.number(unit.value(r))).orElse("fastest"));
      entries.put("target", YamlText.number(unit.value(segment.target())));
      entries.put("hold", duration(segment.hold()));
      out.append("  - ").append(YamlText.flow(entries)).append('\n');
    }
    out.append("start-delay: ").append(duration(schedule.startDelay())).append('\n');
    out.append("at-end: ").append(YamlValue.word(schedule.atEnd())).append('\n');
    return out.toString();
  }

  private static Segment segment(YamlValue value, TemperatureUnit unit) {
    YamlMap map = value.map("rate", "target", "hold");
    YamlValue target = map.required("target");
    double lowest = unit == TemperatureUnit.CELSIUS ? 0 : 32;
    double highest = unit == TemperatureUnit.CELSIUS ? MAX_TARGET_CELSIUS : 3632;
    double degrees = target.between(lowest, highest, unit.symbol());
    return new Segment(
        ramp(map.required("rate"), unit),
        unit.temperature(degrees),
        map.optional("hold").map(YamlValue::hourMinute).orElse(Duration.ZERO));
  }

  private static Ramp ramp(YamlValue value, TemperatureUnit unit) {
    if (value.isWord("fastest")) {
      return Ramp.fastest();
    }
    String expected = "%s an hour, at most %s, or the word fastest";
    double degreesPerHour =
        value.above0(expected.formatted(unit.symbol(), YamlText.number(MAX_RATE)));
    if (degreesPerHour > MAX_RATE) {
      throw value.wrong(
          "at most %s %s an hour".formatted(YamlText.number(MAX_RATE), unit.symbol()));
    }
    return value.build(() -> Ramp.at(unit.rate(degreesPerHour)));
  }

  private static TemperatureUnit unit(YamlValue value) {
    return value.oneOf(List.of("C", "F")).equals("C")
        ? TemperatureUnit.CELSIUS
        : TemperatureUnit.FAHRENHEIT;
  }

  private static String duration(Duration duration) {
    return YamlText.quoted(HourMinute.format(duration));
  }
}
