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
import org.heatwright.keypad.ReadbackReport.VerdictKind;
import org.heatwright.keypad.ReadbackWords;
import org.heatwright.keypad.Shown;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.units.TemperatureUnit;

/**
 * The blind read-back in words: what is asked, and what comes of the answers. Until they are
 * compared, nothing that is asked tells the plan.
 */
final class ReadbackTalk {

  private final Keypad keypad;
  private final FittedProgram program;
  private final int slot;

  ReadbackTalk(Keypad keypad, FittedProgram program, int slot) {
    this.keypad = keypad;
    this.program = program;
    this.slot = slot;
  }

  /**
   * In display order: {@code values} to type, whether {@code digits} are all that each needs, and
   * whether a unit sign and the unit are asked.
   */
  Map<String, Object> questions() {
    List<Object> values = new ArrayList<>();
    List<Object> digits = new ArrayList<>();
    for (ReadbackQuestion question : ReadbackWords.asked(program, keypad)) {
      values.add(ReadbackWords.label(question));
      digits.add(question.digits());
    }
    return KeypadText.map(
        "values",
        values,
        "digits",
        digits,
        "sign",
        keypad.units().asksSign(),
        "switchable",
        keypad.units().coldKilnTells());
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
    Optional<ReadbackWords.Told> empty = ReadbackWords.tooEmpty(program, keypad, shown.size());
    if (empty.isPresent()) {
      return verdict(empty.orElseThrow(), List.of(), List.of(), "");
    }
    Optional<String> cold =
        ReadbackWords.noTemperature(List.of(typed.text("display"), typed.text("thermometer")));
    if (cold.isPresent()) {
      return verdict(
          new ReadbackWords.Told(
              ReadbackWords.Kind.OPEN, "Not compared yet", cold.orElseThrow(), List.of()),
          List.of(),
          List.of(),
          "");
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
      figures.add(KeypadText.map("label", figure.name(), "text", ReadbackWords.text(figure)));
    }
    List<Object> marks = new ArrayList<>();
    for (int i = 1; i <= asked; i++) {
      marks.add(mark(report, i));
    }
    return verdict(
        ReadbackWords.told(report, keypad, shownSlot.isPresent()),
        figures,
        marks,
        shownSlot.isPresent() && shownSlot.getAsInt() == slot ? "right" : "wrong");
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
      ReadbackWords.Told told, List<Object> figures, List<Object> marks, String slotMark) {
    String kind =
        switch (told.kind()) {
          case RIGHT -> "right";
          case OPEN -> "open";
          case WRONG -> "wrong";
        };
    return KeypadText.map(
        "kind",
        kind,
        "head",
        told.head(),
        "correction",
        told.correction(),
        "more",
        told.more(),
        "figures",
        figures,
        "marks",
        marks,
        "slot",
        slotMark);
  }

  private static Optional<UnitCheck.Result> unitCheck(Fields typed) {
    Optional<Double> display = ReadbackWords.degrees(typed.text("display"));
    Optional<Double> thermometer = ReadbackWords.degrees(typed.text("thermometer"));
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
