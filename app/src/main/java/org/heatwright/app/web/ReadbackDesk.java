package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.ReadbackReport;
import org.heatwright.keypad.ReadbackReport.VerdictKind;
import org.heatwright.keypad.ReadbackWords;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.keypad.register.Role;
import org.heatwright.units.TemperatureUnit;

/** Asks what the keypad shows, without showing the plan, and says what came of it. */
final class ReadbackDesk {

  private ReadbackDesk() {}

  /** The questions alone. */
  static Page.Reading ask(Firing firing) {
    return reading(firing, Map.of(), Optional.empty(), Optional.empty());
  }

  /**
   * What came of an answer.
   *
   * @param shown what the display showed
   * @param unitCheck the cold kiln's reading, if it was made
   * @param compared false if too little was typed to compare
   */
  record Answered(
      Page.Reading reading, Shown shown, Optional<UnitCheck.Result> unitCheck, boolean compared) {}

  /** The questions with what was typed, and the answer. */
  static Page.Reading answer(Firing firing, Map<String, String> typed) {
    return answered(firing, typed).reading();
  }

  /** As {@link #answer}, with what it rests on. */
  static Answered answered(Firing firing, Map<String, String> typed) {
    List<Shown.Value> values = new ArrayList<>();
    for (ReadbackQuestion question : asked(firing)) {
      String text = typed.getOrDefault(field(question), "").strip();
      if (!text.isEmpty()) {
        values.add(new Shown.Value(Integer.toString(question.position()), text));
      }
    }
    Optional<ReadbackWords.Told> empty =
        ReadbackWords.tooEmpty(firing.program(), firing.keypad(), values.size());
    if (empty.isPresent()) {
      return new Answered(
          reading(firing, typed, Optional.empty(), empty.map(told -> verdict(told, List.of()))),
          new Shown(OptionalInt.empty(), Optional.empty(), values),
          Optional.empty(),
          false);
    }
    String slot = typed.getOrDefault("shown-slot", "").strip();
    Shown shown =
        new Shown(
            slot.matches("\\d{1,3}") ? OptionalInt.of(Integer.parseInt(slot)) : OptionalInt.empty(),
            TemperatureUnit.ofLetter(typed.getOrDefault("shown-sign", "")),
            values);
    ReadbackReport report =
        Readback.compare(
            firing.program(),
            firing.keypad(),
            shown,
            OptionalInt.of(firing.slot()),
            unitCheck(typed));
    Page.Reading reading =
        reading(
            firing,
            typed,
            Optional.of(report),
            Optional.of(
                verdict(
                    ReadbackWords.told(report, firing.keypad(), shown.slot().isPresent()),
                    report.figures())));
    return new Answered(reading, shown, unitCheck(typed), true);
  }

  private static Page.Reading reading(
      Firing firing,
      Map<String, String> typed,
      Optional<ReadbackReport> report,
      Optional<Page.Verdict> verdict) {
    String slot = typed.getOrDefault("shown-slot", "").strip();
    boolean rightSlot = slot.equals(Integer.toString(firing.slot()));
    List<Page.Ask> asks =
        asked(firing).stream()
            .map(
                q ->
                    new Page.Ask(
                        field(q),
                        ReadbackWords.label(q),
                        typed.getOrDefault(field(q), ""),
                        report.map(r -> mark(r, q)).orElse(""),
                        report.map(r -> remark(r, q)).orElse(""),
                        q.digits()))
            .toList();
    return new Page.Reading(
        firing.keypad().name(),
        new Page.Ask(
            "shown-slot",
            "Program slot on the display",
            slot,
            report.isEmpty() ? "" : rightSlot ? "right" : "wrong",
            "",
            true),
        showsSign(firing.keypad())
            ? Optional.of(typed.getOrDefault("shown-sign", ""))
            : Optional.empty(),
        asks,
        firing.keypad().units().coldKilnTells()
            ? Optional.of(
                new Page.ColdKiln(
                    typed.containsKey("overnight"),
                    typed.getOrDefault("cold-display", ""),
                    typed.getOrDefault("cold-thermometer", ""),
                    typed.getOrDefault("cold-unit", "C"),
                    noTemperature(typed)))
            : Optional.empty(),
        verdict,
        SlotsDesk.roles(),
        typed.getOrDefault("role", Role.MAKER.word()),
        SlotsDesk.address(firing.choices().kiln(), firing.choices().keypad()),
        "");
  }

  private static Page.Verdict verdict(
      ReadbackWords.Told told, List<ReadbackReport.Figure> figures) {
    return new Page.Verdict(
        told.kind() == ReadbackWords.Kind.RIGHT,
        told.head(),
        told.correction(),
        told.more(),
        figures.stream().map(f -> new Page.Fact(f.name(), ReadbackWords.text(f))).toList());
  }

  private static String mark(ReadbackReport report, ReadbackQuestion question) {
    return at(report, question)
        .map(v -> v.kind() == VerdictKind.MATCH ? "right" : "wrong")
        .orElse("");
  }

  private static String remark(ReadbackReport report, ReadbackQuestion question) {
    return at(report, question)
        .filter(v -> v.kind() != VerdictKind.MATCH)
        .map(ReadbackReport.Verdict::message)
        .orElse("");
  }

  private static Optional<ReadbackReport.Verdict> at(
      ReadbackReport report, ReadbackQuestion question) {
    return report.verdicts().stream().filter(v -> v.position() == question.position()).findFirst();
  }

  private static Optional<UnitCheck.Result> unitCheck(Map<String, String> typed) {
    Optional<Double> display = ReadbackWords.degrees(typed.getOrDefault("cold-display", ""));
    Optional<Double> thermometer =
        ReadbackWords.degrees(typed.getOrDefault("cold-thermometer", ""));
    if (display.isEmpty() || thermometer.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        UnitCheck.judge(
            display.get(),
            thermometer.get(),
            TemperatureUnit.ofLetter(typed.getOrDefault("cold-unit", "C"))
                .orElse(TemperatureUnit.CELSIUS),
            typed.containsKey("overnight")));
  }

  /** Says which of the two readings is no number; empty if all is well. */
  private static String noTemperature(Map<String, String> typed) {
    return ReadbackWords.noTemperature(
            Stream.of("cold-display", "cold-thermometer")
                .map(field -> typed.getOrDefault(field, ""))
                .toList())
        .orElse("");
  }

  private static boolean showsSign(Keypad keypad) {
    return keypad.units().asksSign();
  }

  private static List<ReadbackQuestion> asked(Firing firing) {
    return ReadbackWords.asked(firing.program(), firing.keypad());
  }

  private static String field(ReadbackQuestion question) {
    return "shown" + question.position();
  }
}
