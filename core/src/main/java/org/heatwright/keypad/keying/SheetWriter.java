package org.heatwright.keypad.keying;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Place;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeypadMachine;

/** Writes the way through a keypad as lines for a person; used once, by one thread. */
final class SheetWriter {

  private static final String NOT_KNOWN = "what was stored";

  private final FittedProgram program;
  private final Keypad keypad;
  private final int slot;
  private final Hand hand;
  private final KeyingTimes times;
  private final List<Place> places;
  private final List<KeyingStep> steps = new ArrayList<>();
  private double keyingSeconds;
  private double otherSeconds;

  SheetWriter(FittedProgram program, int slot, Hand hand) {
    this.program = program;
    this.keypad = hand.machine().keypad();
    this.slot = slot;
    this.hand = hand;
    this.times = hand.times();
    this.places = keypad.places();
  }

  KeyingSheet sheet() {
    return new KeyingSheet(
        slot,
        steps,
        KeyingTimes.duration(keyingSeconds),
        KeyingTimes.duration(keyingSeconds + otherSeconds),
        KeyingTimes.ORIGIN.words());
  }

  /** Something to know. */
  void tell(String prompt, String press, String after, String meaning) {
    step(KeyingStep.Kind.LOOK, prompt, "", press, after, meaning, List.of(), List.of());
  }

  /** Something to look at. */
  void look(String prompt, String press, String after, String meaning) {
    otherSeconds += times.seconds(0, 1);
    tell(prompt, press, after, meaning);
  }

  /** From the idle display to the program stored. */
  void keyed(List<KeyingSearch.Edge> way) {
    keyingSeconds +=
        lead(
            "open programming",
            KeypadMachine.IDLE_WORDS,
            keypad.gestures().open(),
            keypad.slots() > 1 ? KeypadMachine.SLOT_WORDS : "",
            "");
    keyingSeconds += chooseSlot("choose the slot");
    boolean saved = keypad.programming().commits() != Keypad.Commits.ACCEPTING;
    int walked = 0;
    for (KeyingSearch.Edge edge : way) {
      keyingSeconds += edge.seconds();
      if (edge.about() == KeyingSearch.About.WALK && isList()) {
        walked += direction(edge.go().get(0));
        continue;
      }
      switch (edge.about()) {
        case WALK -> back(edge);
        case VALUE -> value(edge, walked);
        case SAVE -> save();
        case START -> start();
        case STOP ->
            stepOf(
                "stop",
                "",
                keypad.gestures().stop(),
                KeypadMachine.IDLE_WORDS,
                "the program stays stored");
        case LEAVE -> {
          if (!saved) {
            nothingToSave();
            saved = true;
          }
          stepOf(
              "leave",
              "",
              keypad.gestures().leave(),
              KeypadMachine.IDLE_WORDS,
              "only what is saved is left");
        }
      }
      walked = 0;
    }
    if (walked != 0) {
      stepOf(
          "leave",
          "",
          walkWords(walked),
          walk(walked),
          KeypadMachine.IDLE_WORDS,
          "past the last value");
    }
    if (!saved) {
      nothingToSave();
    }
  }

  private boolean isList() {
    return keypad.programming().navigation() == Keypad.Navigation.LIST;
  }

  private static int direction(KeyAction action) {
    return action instanceof KeyAction.Turn turn
        ? turn.clicks()
        : action.press().key() == Key.DOWN ? 1 : -1;
  }

  private void back(KeyingSearch.Edge edge) {
    stepOf(
        "back from " + label(edge.place().getAsInt()),
        "",
        keypad.gestures().previous(),
        "",
        "the value before");
  }

  private void value(KeyingSearch.Edge edge, int walked) {
    int place = edge.place().getAsInt();
    Optional<KeyedValue> planned =
        program.values().stream()
            .filter(v -> places.indexOf(Place.of(v, keypad)) == place)
            .findFirst();
    if (planned.isEmpty()) {
      stepOf(
          "pass " + label(place),
          edge.before().orElse(NOT_KNOWN),
          "just " + accept(),
          edge.go(),
          "",
          "this segment is not run: it does not matter what it reads here");
      return;
    }
    KeyedValue value = planned.orElseThrow();
    List<Instruction> make = new ArrayList<>();
    List<String> words = new ArrayList<>();
    if (walked != 0) {
      make.addAll(presses(walk(walked)));
      words.add(
          walkWords(walked) + " to " + keypad.label(value.segment(), places.get(place).kind()));
    }
    if (isList()) {
      make.add(new Instruction.Press(edge.go().get(0)));
      words.add(accept());
    }
    edge.move()
        .ifPresent(
            move -> {
              words.add(move.words());
              make.addAll(
                  move.actions().isEmpty()
                      ? List.of(new Instruction.Until(value.digits()))
                      : presses(move.actions()));
            });
    words.add(words.isEmpty() ? "just " + accept() : accept());
    step(
        KeyingStep.Kind.VALUE,
        label(place),
        edge.before().orElse(NOT_KNOWN),
        String.join(", then ", words),
        value.digits(),
        value.meaning(),
        make,
        presses(edge.go()));
  }

  private String walkWords(int walked) {
    int steps = Math.abs(walked);
    if (keypad.entry() instanceof Entry.Knob) {
      return "turn the knob %d %s %s"
          .formatted(steps, steps == 1 ? "click" : "clicks", walked > 0 ? "right" : "left");
    }
    return "press %s %s"
        .formatted(
            walked > 0 ? "down" : "up",
            steps == 1 ? "once" : steps == 2 ? "twice" : steps + " times");
  }

  private List<KeyAction> walk(int walked) {
    if (keypad.entry() instanceof Entry.Knob) {
      return List.of(new KeyAction.Turn(walked, false));
    }
    Key key = walked > 0 ? Key.DOWN : Key.UP;
    return Collections.nCopies(Math.abs(walked), new KeyAction.Tap(key));
  }

  private String emptyWords() {
    return program.checkFigures().segments() < keypad.segments() && keypad.end().mark().isPresent()
        ? "the first unused segment must read " + program.checkFigures().firstUnused()
        : "";
  }

  private void nothingToSave() {
    tell("save", "nothing: each value is stored as it is accepted", "", emptyWords());
  }

  private void save() {
    Keypad.Gestures gestures = keypad.gestures();
    String before =
        gestures.discardsAfterSeconds().isPresent()
            ? "do not wait: after %d s untouched all is thrown away"
                .formatted(gestures.discardsAfterSeconds().getAsInt())
            : "";
    stepOf("save", before, gestures.commit(), gestures.committed().orElse(""), emptyWords());
  }

  private void start() {
    String stop =
        keypad.gestures().stop().isEmpty()
            ? "stop it at once"
            : "then " + keypad.gestures().stop().words() + " at once";
    String delay =
        program.expressible().startDelay().isZero() ? "" : " the start delay should run first, but";
    String empty = emptyWords();
    stepOf(
        "save by starting",
        "the kiln empty and its door shut, a person beside it",
        keypad.gestures().start(),
        "",
        "this keypad stores only what it starts, so this can heat:%s stand by, %s%s"
            .formatted(delay, stop, empty.isEmpty() ? "" : "; " + empty));
  }

  /** What follows keying: the review, read blind. */
  void review() {
    otherSeconds +=
        lead(
            "review",
            KeypadMachine.IDLE_WORDS,
            keypad.gestures().review(),
            keypad.slots() > 1 ? KeypadMachine.SLOT_WORDS : "the first value",
            "a program counts as keyed only when it has been read back");
    otherSeconds += chooseSlot("choose the slot again");
    int count = Readback.questions(program, keypad).size();
    // Reading one value and stepping on: a prompt and a key.
    otherSeconds += times.seconds(count, count);
    step(
        KeyingStep.Kind.LOOK,
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
        "write down what is shown, then compare; do not read from this sheet",
        List.of(),
        List.of());
  }

  private double chooseSlot(String prompt) {
    if (keypad.slots() == 1) {
      return 0;
    }
    String text = Integer.toString(slot);
    Moves.Move move =
        keypad.entry() instanceof Entry.DigitKeys
            ? Moves.typing(text, times)
            : hand.atSlots().fromUnknown(slot - 1);
    step(
        KeyingStep.Kind.VALUE,
        prompt,
        KeypadMachine.SLOT_WORDS,
        move.words() + ", then " + accept(),
        text,
        "slot " + text,
        move.actions().isEmpty() ? List.of(new Instruction.Until(text)) : presses(move.actions()),
        presses(KeyingSearch.actions(Gesture.of(keypad.accept()))));
    return move.seconds() + times.seconds(1, 1);
  }

  private double lead(String prompt, String before, Gesture gesture, String after, String meaning) {
    stepOf(prompt, before, gesture, after, meaning);
    return times.seconds(gesture.presses().size(), 1)
        + gesture.presses().stream().mapToDouble(Gesture.Press::holdSeconds).sum();
  }

  private void stepOf(String prompt, String before, Gesture gesture, String after, String meaning) {
    stepOf(prompt, before, gesture.words(), KeyingSearch.actions(gesture), after, meaning);
  }

  private void stepOf(
      String prompt,
      String before,
      String press,
      List<KeyAction> go,
      String after,
      String meaning) {
    step(KeyingStep.Kind.LEAD, prompt, before, press, after, meaning, List.of(), presses(go));
  }

  private void step(
      KeyingStep.Kind kind,
      String prompt,
      String before,
      String press,
      String after,
      String meaning,
      List<Instruction> make,
      List<Instruction> go) {
    steps.add(
        new KeyingStep(steps.size() + 1, kind, prompt, before, press, after, meaning, make, go));
  }

  private static List<Instruction> presses(List<KeyAction> actions) {
    return actions.stream().map(a -> (Instruction) new Instruction.Press(a)).toList();
  }

  /** What the display marks a place with, and our words; for an unused segment its own words. */
  private String label(int place) {
    Place at = places.get(place);
    Optional<KeyedValue> value =
        program.values().stream()
            .filter(v -> places.indexOf(Place.of(v, keypad)) == place)
            .findFirst();
    String words = value.map(KeyedValue::place).orElse(at.words());
    String label = keypad.label(at.segment(), at.kind());
    return label.equals(at.words()) ? words : "%s (%s)".formatted(label, words);
  }

  private String accept() {
    return Gesture.of(keypad.accept()).words();
  }
}
