package org.heatwright.keypad;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;

/**
 * How to key a program: one line a prompt, with what the display shows before, what to press and
 * what it must show after, each value by the quickest way that forgives a late release.
 */
public final class KeyingPlanner {

  private KeyingPlanner() {}

  /**
   * @param program what to key; must fit
   * @param keypad the keypad it was fitted to
   * @param slot 1 to the keypad's slots
   * @param held what the slot holds now, if that is known: unchanged values are then only confirmed
   * @throws IllegalArgumentException if the program does not fit or there is no such slot
   */
  public static KeyingSheet plan(
      FittedProgram program, Keypad keypad, int slot, Optional<Schedule> held) {
    program.requireFits();
    if (slot < 1 || slot > keypad.slots()) {
      throw new IllegalArgumentException(
          "There is no slot %d: the keypad has slots 1 to %d.".formatted(slot, keypad.slots()));
    }
    return new Planning(program, keypad, slot, held).sheet();
  }

  /** One sheet in the making; used once, by one thread. */
  private static final class Planning {

    private static final String NOT_KNOWN = "what was stored";

    private final FittedProgram program;
    private final Keypad keypad;
    private final int slot;
    private final Optional<FittedProgram> held;
    private final KeyingTimes times = KeyingTimes.OCCASIONAL;
    private final Map<KeyedValue.Kind, Scale> scales = new EnumMap<>(KeyedValue.Kind.class);
    private final List<KeyingStep> steps = new ArrayList<>();
    private double seconds;

    Planning(FittedProgram program, Keypad keypad, int slot, Optional<Schedule> held) {
      this.program = program;
      this.keypad = keypad;
      this.slot = slot;
      // A slot that was keyed in the other unit may or may not have been converted: not known.
      this.held =
          held.filter(h -> keypad.unitFor(h.unit()) == program.unit())
              .map(h -> KeypadFit.fit(h, keypad))
              .filter(FittedProgram::fits);
    }

    KeyingSheet sheet() {
      unit();
      gesture(
          "open programming",
          "idle: the kiln's temperature",
          keypad.gestures().open(),
          keypad.slots() > 1 ? "a slot number" : firstPrompt(),
          "");
      chooseSlot("choose the slot", firstPrompt());
      for (KeyedValue value : program.values()) {
        value(value);
      }
      save();
      review();
      return new KeyingSheet(
          slot, steps, KeyingTimes.duration(seconds), KeyingTimes.ORIGIN.words());
    }

    private String firstPrompt() {
      KeyedValue first = program.values().get(0);
      return label(first);
    }

    private void unit() {
      TemperatureUnit unit = program.unit();
      UnitTrap trap = UnitTrap.of(program, keypad);
      String worst =
          trap.worst().map(t -> " Segment %d: %s".formatted(t.segment(), t.meaning())).orElse("");
      if (!keypad.units().switchable()) {
        if (trap.springs()) {
          step(
              "unit in force",
              "",
              "nothing; key the numbers of this sheet, not those of the schedule",
              unit.symbol(),
              "The keypad would take the schedule's numbers as well." + worst);
        }
        return;
      }
      String where =
          keypad.units().shownAt().stream()
              .sorted()
              .map(p -> p.name().toLowerCase(Locale.ROOT))
              .collect(Collectors.joining(" or "));
      String look = where.isEmpty() ? "" : "look at the unit (" + where + " display); ";
      String settle =
          trap.needsUnitCheck()
              ? "settle the unit by the cold kiln's reading against a thermometer; "
              : "";
      seconds += times.seconds(0, 1);
      step(
          "unit in force",
          "",
          look + settle + "if it is " + unit.other().symbol() + ", switch it first",
          unit.symbol(),
          trap.springs()
              ? "The keypad would take these numbers in the other unit as well." + worst
              : "every number of this sheet is in it");
    }

    private void chooseSlot(String prompt, String showsAfter) {
      if (keypad.slots() == 1) {
        return;
      }
      Scale slots = Scale.numbers(keypad.slots());
      String text = Integer.toString(slot);
      Moves.Move move = move(slots, text, Optional.empty(), Optional.empty());
      seconds += move.seconds() + times.seconds(1, 1);
      step(prompt, "a slot number", andAccept(move.words()), showsAfter, "slot " + text);
    }

    private void value(KeyedValue value) {
      Optional<String> before = shownBefore(value);
      seconds += times.seconds(1, 1);
      String press;
      if (before.filter(value.digits()::equals).isPresent()) {
        press = "just " + accept();
      } else {
        Moves.Move move =
            move(scale(value), value.digits(), before, special(value).flatMap(Special::typed));
        seconds += move.seconds();
        press = andAccept(move.words());
      }
      step(label(value), before.orElse(NOT_KNOWN), press, value.digits(), value.meaning());
    }

    private Moves.Move move(
        Scale scale, String text, Optional<String> before, Optional<String> typed) {
      if (keypad.entry() instanceof Entry.DigitKeys digits) {
        return Moves.typing(keys(typed.orElse(text), digits.pointKey()), times);
      }
      int to =
          scale
              .positionOf(text)
              .orElseThrow(
                  () ->
                      new IllegalArgumentException(
                          "The value %s is not one this keypad can make; fit the schedule to this keypad."
                              .formatted(text)));
      Moves moves = new Moves(keypad.entry(), scale, times);
      OptionalInt from = before.map(scale::positionOf).orElseGet(OptionalInt::empty);
      return from.isPresent() ? moves.between(from.getAsInt(), to) : moves.fromUnknown(to);
    }

    /** The keys that type a text; without a point key the digits fill up from the right. */
    private static List<String> keys(String text, boolean pointKey) {
      String typed = pointKey ? text.replace(":", "") : text.replaceAll("[.:]", "");
      String sign = typed.startsWith("-") ? "-" : "";
      String digits = typed.substring(sign.length()).replaceFirst("^0+(?=\\d)", "");
      return (sign + digits)
          .chars()
          .mapToObj(
              c ->
                  c == '-'
                      ? Key.MINUS.word()
                      : c == '.' ? Key.POINT.word() : String.valueOf((char) c))
          .toList();
    }

    private Scale scale(KeyedValue value) {
      KeyedValue.Kind kind =
          value.kind() == KeyedValue.Kind.END && value.segment() > 0
              ? keypad.order().get(0)
              : value.kind();
      return scales.computeIfAbsent(kind, k -> Scale.of(keypad, k, program.unit()));
    }

    /** The special value that a keyed value is, if it is one. */
    private Optional<Special> special(KeyedValue value) {
      Optional<Special> candidate =
          switch (value.kind()) {
            case RATE -> keypad.rate().fastest();
            case HOLD -> keypad.hold().endless();
            case END -> keypad.end().mark();
            default -> Optional.empty();
          };
      return candidate.filter(s -> s.shows().equals(value.digits()));
    }

    /** What the display shows when the prompt comes up, if that can be known. */
    private Optional<String> shownBefore(KeyedValue value) {
      if (keypad.starts() == Keypad.FieldStart.STORED) {
        return held.flatMap(h -> stored(h, value));
      }
      Scale scale = scale(value);
      KeyedValue.Kind kind =
          value.kind() == KeyedValue.Kind.END && value.segment() > 0
              ? keypad.order().get(0)
              : value.kind();
      Optional<String> start =
          switch (kind) {
            case RATE -> keypad.rate().start().map(keypad.rateRange(program.unit())::text);
            case TARGET -> keypad.target().start().map(keypad.targetRange(program.unit())::text);
            case HOLD ->
                keypad
                    .hold()
                    .startMinutes()
                    .map(m -> keypad.hold().form().text(m, keypad.hold().decimals()));
            case DELAY ->
                keypad
                    .delay()
                    .flatMap(d -> d.startMinutes().map(m -> d.form().text(m, d.decimals())));
            case END -> Optional.empty();
          };
      return Optional.of(start.orElseGet(() -> scale.text(scale.leastNumber())));
    }

    /** What the slot holds at a place; the end mark and a segment's first field share one place. */
    private Optional<String> stored(FittedProgram stored, KeyedValue value) {
      KeyedValue.Kind first = keypad.order().get(0);
      return stored.values().stream()
          .filter(
              v ->
                  v.segment() == value.segment()
                      && (v.kind() == value.kind()
                          || (v.segment() > 0
                              && (v.kind() == KeyedValue.Kind.END && value.kind() == first
                                  || v.kind() == first && value.kind() == KeyedValue.Kind.END))))
          .map(KeyedValue::digits)
          .findFirst();
    }

    private void save() {
      Keypad.Gestures gestures = keypad.gestures();
      String empty =
          program.checkFigures().segments() < keypad.segments() && keypad.end().mark().isPresent()
              ? "the first unused segment must read " + program.checkFigures().firstUnused()
              : "";
      if (gestures.commit().isEmpty()) {
        step("save", "", "nothing: each value is stored as it is accepted", "", empty);
      } else {
        String before =
            gestures.discardsAfterSeconds().isPresent()
                ? "do not wait: after %d s untouched all is thrown away"
                    .formatted(gestures.discardsAfterSeconds().getAsInt())
                : "";
        gesture("save", before, gestures.commit(), gestures.committed().orElse(""), empty);
      }
      if (!gestures.leave().isEmpty()) {
        gesture(
            "leave",
            "",
            gestures.leave(),
            "idle: the kiln's temperature",
            "only what is saved is left");
      }
    }

    private void review() {
      gesture(
          "review",
          "idle: the kiln's temperature",
          keypad.gestures().review(),
          keypad.slots() > 1 ? "a slot number" : "the first value",
          "a program counts as keyed only when it has been read back");
      chooseSlot("choose the slot again", "the first value");
      int count = Readback.questions(program, keypad).size();
      // Reading one value and stepping on: a prompt and a key.
      seconds += times.seconds(count, count);
      step(
          "read back",
          "the first value",
          "read all %d values off the display, %s after each%s"
              .formatted(
                  count,
                  accept(),
                  keypad.review().keysEdit()
                      ? "; touch no other key, it would change the value"
                      : ""),
          "",
          "write down what is shown, then compare; do not read from this sheet");
    }

    private void gesture(
        String prompt, String before, Gesture gesture, String after, String meaning) {
      seconds +=
          times.seconds(gesture.presses().size(), 1)
              + gesture.presses().stream().mapToDouble(Gesture.Press::holdSeconds).sum();
      step(prompt, before, gesture.words(), after, meaning);
    }

    private void step(String prompt, String before, String press, String after, String meaning) {
      steps.add(new KeyingStep(steps.size() + 1, prompt, before, press, after, meaning));
    }

    private String label(KeyedValue value) {
      String label =
          value.kind() == KeyedValue.Kind.END && value.segment() > 0
              ? markLabel(value)
              : keypad.label(value.segment(), value.kind());
      return label.equals(value.place()) ? label : "%s (%s)".formatted(label, value.place());
    }

    /** The end mark is keyed at the first field of the unused segment. */
    private String markLabel(KeyedValue value) {
      KeyedValue.Kind first = keypad.order().get(0);
      String label = keypad.label(value.segment(), first);
      return label.equals(KeyedValue.place(value.segment(), first)) ? value.place() : label;
    }

    private String accept() {
      return Gesture.of(keypad.accept()).words();
    }

    private String andAccept(String words) {
      return words.isEmpty() ? "just " + accept() : words + ", then " + accept();
    }
  }
}
