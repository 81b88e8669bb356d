package org.heatwright.pocket;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.keypad.CheckFigures;
import org.heatwright.keypad.FitNote;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** A fitted program on its way into the page and back, whole. */
final class ProgramText {

  private ProgramText() {}

  static Map<String, Object> write(FittedProgram program) {
    List<Object> values = new ArrayList<>();
    for (KeyedValue value : program.values()) {
      values.add(
          KeypadText.map(
              "segment", value.segment(),
              "kind", value.kind().name(),
              "digits", value.digits(),
              "meaning", value.meaning()));
    }
    List<Object> notes = new ArrayList<>();
    for (FitNote note : program.notes()) {
      notes.add(
          KeypadText.map(
              "kind", note.kind().name(),
              "segment", note.segment().orElse(0),
              "message", note.message()));
    }
    CheckFigures figures = program.checkFigures();
    return KeypadText.map(
        "requested",
        schedule(program.requested()),
        "expressible",
        schedule(program.expressible()),
        "unit",
        program.unit().name(),
        "values",
        values,
        "notes",
        notes,
        "segments",
        figures.segments(),
        "sumOfTargets",
        figures.sumOfTargets(),
        "totalMinutes",
        figures.totalMinutes(),
        "firstUnused",
        figures.firstUnused(),
        "minutesOnPaper",
        figures.minutesOnPaper(),
        "fits",
        program.fits());
  }

  static FittedProgram read(Fields from) {
    List<KeyedValue> values = new ArrayList<>();
    for (Fields value : from.maps("values")) {
      values.add(
          new KeyedValue(
              value.whole("segment"),
              value.word("kind", KeyedValue.Kind.values()),
              value.text("digits"),
              value.text("meaning")));
    }
    List<FitNote> notes = new ArrayList<>();
    for (Fields note : from.maps("notes")) {
      int segment = note.whole("segment");
      notes.add(
          new FitNote(
              note.word("kind", FitNote.Kind.values()),
              segment == 0 ? OptionalInt.empty() : OptionalInt.of(segment),
              note.text("message")));
    }
    return new FittedProgram(
        schedule(from.map("requested")),
        schedule(from.map("expressible")),
        from.word("unit", TemperatureUnit.values()),
        values,
        notes,
        new CheckFigures(
            from.whole("segments"),
            from.number("sumOfTargets"),
            from.whole("totalMinutes"),
            from.text("firstUnused"),
            from.whole("minutesOnPaper")),
        from.flag("fits"));
  }

  private static Map<String, Object> schedule(Schedule schedule) {
    List<Object> segments = new ArrayList<>();
    for (Segment segment : schedule.segments()) {
      segments.add(
          KeypadText.map(
              "kelvinsPerHour", segment.ramp().rate().map(HeatingRate::kelvinsPerHour),
              "celsius", segment.target().celsius(),
              "holdMinutes", segment.hold().toMinutes()));
    }
    return KeypadText.map(
        "name", schedule.name(),
        "unit", schedule.unit().name(),
        "delayMinutes", schedule.startDelay().toMinutes(),
        "atEnd", schedule.atEnd().name(),
        "segments", segments);
  }

  private static Schedule schedule(Fields from) {
    List<Segment> segments = new ArrayList<>();
    for (Fields segment : from.maps("segments")) {
      Optional<String> rate = segment.optional("kelvinsPerHour");
      segments.add(
          new Segment(
              rate.isPresent()
                  ? Ramp.at(new HeatingRate(Double.parseDouble(rate.orElseThrow())))
                  : Ramp.fastest(),
              new Temperature(segment.number("celsius")),
              Duration.ofMinutes(segment.whole("holdMinutes"))));
    }
    return new Schedule(
        from.text("name"),
        from.word("unit", TemperatureUnit.values()),
        segments,
        Duration.ofMinutes(from.whole("delayMinutes")),
        from.word("atEnd", AtEnd.values()));
  }
}
