package org.heatwright.pocket;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.ReadbackReport;
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.keypad.ReadbackReport.VerdictKind;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.units.TemperatureUnit;

/**
 * The blind read-back in words: what is asked, and what comes of the answers. Until they are
 * compared, nothing that is asked tells the plan.
 */
final class ReadbackTalk {

  /** Room for values that a slot with too many segments would show. */
  private static final int SPARE_QUESTIONS = 3;

  /** A dropped segment leaves three values empty. */
  private static final int MOST_EMPTY = 3;

  private final Keypad keypad;
  private final FittedProgram program;
  private final int slot;

  ReadbackTalk(Keypad keypad, FittedProgram program, int slot) {
    this.keypad = keypad;
    this.program = program;
    this.slot = slot;
  }

  /** In display order: {@code values} to type, and whether a unit sign and the unit are asked. */
  Map<String, Object> questions() {
    List<Object> values = new ArrayList<>();
    for (ReadbackQuestion question : Readback.questions(program, keypad)) {
      values.add(
          question.label().equals(question.words())
              ? question.words()
              : question.label() + ", " + question.words());
    }
    for (int i = 0; i < SPARE_QUESTIONS; i++) {
      values.add("value " + (values.size() + 1) + ", if there is one more");
    }
    return KeypadText.map(
        "values",
        values,
        "sign",
        keypad.units().shownAt().contains(Keypad.UnitSetting.ShownAt.REVIEW),
        "switchable",
        keypad.units().switchable());
  }

  /**
   * @param typed {@code slot}, {@code values} in the order of the questions, {@code sign} (C, F or
   *     empty), and of the cold kiln {@code overnight}, {@code display}, {@code thermometer} and
   *     {@code thermometerUnit}; all texts as typed
   */
  Map<String, Object> answer(Fields typed) {
    List<String> texts = typed.texts("values");
    List<Shown.Value> shown = new ArrayList<>();
    for (int i = 0; i < texts.size(); i++) {
      String text = trimmed(texts.get(i));
      if (!text.isEmpty()) {
        shown.add(new Shown.Value(String.valueOf(i + 1), text));
      }
    }
    int empty = Readback.questions(program, keypad).size() - shown.size();
    if (empty > MOST_EMPTY) {
      return verdict(
          "open",
          "Not compared yet",
          empty
              + " values are empty. Type what the display shows; leave a field empty only if the"
              + " display does not show that value.",
          List.of(),
          List.of(),
          List.of(),
          "");
    }
    Optional<String> cold = coldWrong(typed);
    if (cold.isPresent()) {
      return verdict(
          "open", "Not compared yet", cold.orElseThrow(), List.of(), List.of(), List.of(), "");
    }
    String slotText = trimmed(typed.text("slot"));
    OptionalInt shownSlot = isWhole(slotText) ? parsed(slotText) : OptionalInt.empty();
    ReadbackReport report =
        Readback.compare(
            program,
            keypad,
            new Shown(shownSlot, TemperatureUnit.ofLetter(typed.text("sign")), shown),
            OptionalInt.of(slot),
            unitCheck(typed));
    return told(report, texts.size(), shownSlot);
  }

  private Map<String, Object> told(ReadbackReport report, int asked, OptionalInt shownSlot) {
    List<Object> figures = new ArrayList<>();
    for (ReadbackReport.Figure figure : report.figures()) {
      figures.add(
          KeypadText.map(
              "label",
              figure.name(),
              "text",
              figure.agrees()
                  ? figure.planned() + ", agrees"
                  : "planned " + figure.planned() + ", shown " + figure.shown()));
    }
    List<String> more = new ArrayList<>(report.findings());
    List<Object> marks = new ArrayList<>();
    for (int i = 1; i <= asked; i++) {
      marks.add(mark(report, i));
    }
    for (ReadbackReport.Verdict verdict : report.verdicts()) {
      more.remove(verdict.message()); // stands beside its field
    }
    for (String unproven : report.unproven()) {
      more.add("Not shown by this check: " + unproven);
    }
    String slotMark = shownSlot.isPresent() && shownSlot.getAsInt() == slot ? "right" : "wrong";
    if (report.outcome() == Outcome.NOT_PROVEN) {
      String correction =
          report.correction().orElse("Go through the review again from its first value.");
      more.remove(correction);
      return verdict("wrong", "Not yet", correction, more, figures, marks, slotMark);
    }
    if (shownSlot.isEmpty()) {
      // Right values in an unknown slot prove nothing of the slot that will be started.
      return verdict(
          "open",
          "Values right, slot open",
          "Type the number of the slot that the display shows, then compare again.",
          more,
          figures,
          marks,
          slotMark);
    }
    if (report.outcome() == Outcome.UNIT_OPEN) {
      return verdict(
          "open",
          "Values right, unit open",
          "Settle the unit below: a cold kiln's display against a thermometer beside it.",
          more,
          figures,
          marks,
          slotMark);
    }
    return verdict(
        "right",
        "Keyed as planned",
        "Every value the review shows is the plan's. It counts until the power is cut, the slot or"
            + " the unit is changed, or somebody else fires the kiln.",
        more,
        figures,
        marks,
        slotMark);
  }

  private static Map<String, Object> mark(ReadbackReport report, int position) {
    for (ReadbackReport.Verdict verdict : report.verdicts()) {
      if (verdict.position() == position) {
        boolean right = verdict.kind() == VerdictKind.MATCH;
        return KeypadText.map(
            "mark", right ? "right" : "wrong", "remark", right ? "" : verdict.message());
      }
    }
    return KeypadText.map("mark", "", "remark", "");
  }

  private static Map<String, Object> verdict(
      String kind,
      String head,
      String correction,
      List<String> more,
      List<Object> figures,
      List<Object> marks,
      String slotMark) {
    return KeypadText.map(
        "kind",
        kind,
        "head",
        head,
        "correction",
        correction,
        "more",
        more,
        "figures",
        figures,
        "marks",
        marks,
        "slot",
        slotMark);
  }

  private static Optional<UnitCheck.Result> unitCheck(Fields typed) {
    Optional<Double> display = degrees(typed.text("display"));
    Optional<Double> thermometer = degrees(typed.text("thermometer"));
    if (display.isEmpty() || thermometer.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        UnitCheck.judge(
            display.orElseThrow(),
            thermometer.orElseThrow(),
            TemperatureUnit.ofLetter(typed.text("thermometerUnit")).orElse(TemperatureUnit.CELSIUS),
            typed.flag("overnight")));
  }

  /** Says which of the two readings is no number; empty if all is well. */
  private static Optional<String> coldWrong(Fields typed) {
    for (String field : List.of("display", "thermometer")) {
      String text = trimmed(typed.text(field));
      if (!text.isEmpty() && degrees(text).isEmpty()) {
        return Optional.of("“" + text + "” is no temperature: type the number alone, such as 19.");
      }
    }
    return Optional.empty();
  }

  private static Optional<Double> degrees(String text) {
    String plain = trimmed(text).replace(',', '.');
    return plain.matches("-?\\d{1,4}(\\.\\d{1,2})?")
        ? Optional.of(Double.valueOf(plain))
        : Optional.empty();
  }

  /** What counts as a blank at an end differs between Java and a browser; this does not. */
  private static String trimmed(String text) {
    return text.replace('\u00a0', ' ').trim();
  }

  private static boolean isWhole(String text) {
    return text.matches("\\d{1,3}");
  }

  private static OptionalInt parsed(String text) {
    return OptionalInt.of(Integer.parseInt(text));
  }
}
