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
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.keypad.ReadbackReport.VerdictKind;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.keypad.register.Role;
import org.heatwright.units.TemperatureUnit;

/** Asks what the keypad shows, without showing the plan, and says what came of it. */
final class ReadbackDesk {

  private static final int SPARE_QUESTIONS = 3;

  /** A dropped segment leaves three values empty. */
  private static final int MOST_EMPTY = 3;

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
    int empty = Readback.questions(firing.program(), firing.keypad()).size() - values.size();
    if (empty > MOST_EMPTY) {
      return new Answered(
          reading(firing, typed, Optional.empty(), Optional.of(tooEmpty(empty))),
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
    Page.Verdict verdict = verdict(report);
    Page.Reading reading =
        reading(
            firing,
            typed,
            Optional.of(report),
            Optional.of(
                shown.slot().isEmpty() && report.outcome() != Outcome.NOT_PROVEN
                    ? slotOpen(verdict)
                    : verdict));
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
                        q.label().equals(q.words()) ? q.words() : q.label() + ", " + q.words(),
                        typed.getOrDefault(field(q), ""),
                        report.map(r -> mark(r, q)).orElse(""),
                        report.map(r -> remark(r, q)).orElse("")))
            .toList();
    return new Page.Reading(
        firing.keypad().name(),
        new Page.Ask(
            "shown-slot",
            "Program slot on the display",
            slot,
            report.isEmpty() ? "" : rightSlot ? "right" : "wrong",
            ""),
        showsSign(firing.keypad())
            ? Optional.of(typed.getOrDefault("shown-sign", ""))
            : Optional.empty(),
        asks,
        firing.keypad().units().switchable()
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

  /** Comparing an empty form would only tell the plan. */
  private static Page.Verdict tooEmpty(int empty) {
    return new Page.Verdict(
        false,
        "Not compared yet",
        "%d values are empty. Type what the display shows; leave a field empty only if the display does not show that value."
            .formatted(empty),
        List.of(),
        List.of());
  }

  /** Right values in an unknown slot prove nothing of the slot that will be started. */
  private static Page.Verdict slotOpen(Page.Verdict values) {
    return new Page.Verdict(
        false,
        "Values right, slot open",
        "Type the number of the slot that the display shows, then compare again.",
        values.more(),
        values.figures());
  }

  private static Page.Verdict verdict(ReadbackReport report) {
    List<Page.Fact> figures =
        report.figures().stream()
            .map(
                f ->
                    new Page.Fact(
                        f.name(),
                        f.agrees()
                            ? f.planned() + ", agrees"
                            : "planned %s, shown %s".formatted(f.planned(), f.shown())))
            .toList();
    List<String> more = new ArrayList<>(report.findings());
    report.verdicts().forEach(v -> more.remove(v.message())); // stands beside its field
    report.unproven().forEach(u -> more.add("Not shown by this check: " + u));
    if (report.outcome() == Outcome.NOT_PROVEN) {
      String correction =
          report.correction().orElse("Go through the review again from its first value.");
      more.removeIf(correction::equals);
      return new Page.Verdict(false, "Not yet", correction, more, figures);
    }
    if (report.outcome() == Outcome.UNIT_OPEN) {
      return new Page.Verdict(
          false,
          "Values right, unit open",
          "Settle the unit below: a cold kiln's display against a thermometer beside it.",
          more,
          figures);
    }
    return new Page.Verdict(
        true,
        "Keyed as planned",
        "Every value the review shows is the plan's. It counts until the power is cut, the slot or"
            + " the unit is changed, or somebody else fires the kiln.",
        more,
        figures);
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
    Optional<Double> display = number(typed.getOrDefault("cold-display", ""));
    Optional<Double> thermometer = number(typed.getOrDefault("cold-thermometer", ""));
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
    return Stream.of("cold-display", "cold-thermometer")
        .map(field -> typed.getOrDefault(field, "").strip())
        .filter(text -> !text.isEmpty() && number(text).isEmpty())
        .findFirst()
        .map(text -> "“%s” is no temperature: type the number alone, such as 19.".formatted(text))
        .orElse("");
  }

  private static Optional<Double> number(String text) {
    String stripped = text.strip().replace(',', '.');
    return stripped.matches("-?\\d{1,4}(\\.\\d{1,2})?")
        ? Optional.of(Double.valueOf(stripped))
        : Optional.empty();
  }

  private static boolean showsSign(Keypad keypad) {
    return keypad.units().shownAt().contains(Keypad.UnitSetting.ShownAt.REVIEW);
  }

  /** The questions, and room for values that a slot with too many segments would show. */
  private static List<ReadbackQuestion> asked(Firing firing) {
    List<ReadbackQuestion> asked =
        new ArrayList<>(Readback.questions(firing.program(), firing.keypad()));
    for (int i = 0; i < SPARE_QUESTIONS; i++) {
      String label = "value %d, if there is one more".formatted(asked.size() + 1);
      asked.add(new ReadbackQuestion(asked.size() + 1, label, label));
    }
    return asked;
  }

  private static String field(ReadbackQuestion question) {
    return "shown" + question.position();
  }
}
