package org.heatwright.pocket;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.heatwright.keypad.Entry;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.machine.Contents;
import org.heatwright.keypad.machine.Display;
import org.heatwright.keypad.machine.KeyAction;
import org.heatwright.keypad.machine.KeyJudge;
import org.heatwright.keypad.machine.KeypadMachine;
import org.heatwright.keypad.machine.MachineState;
import org.heatwright.keypad.machine.Where;
import org.heatwright.units.TemperatureUnit;

/**
 * The rehearsal in words: the drawn keys, what the display shows, and what is to say of each key.
 * Keeps the states that were gone through, so that a key can be taken back. Used by one thread.
 */
final class RehearsalTalk {

  private final Keypad keypad;
  private final FittedProgram program;
  private final int slot;
  private final KeypadMachine machine;
  private final KeyJudge judge;
  private final Map<Integer, Contents> slots;
  private final List<MachineState> states = new ArrayList<>();
  private Optional<Wrong> firstWrong = Optional.empty();

  RehearsalTalk(Keypad keypad, FittedProgram program, int slot, Optional<FittedProgram> held) {
    this.keypad = keypad;
    this.program = program;
    this.slot = slot;
    this.machine = new KeypadMachine(keypad);
    this.slots =
        held.isPresent() && held.orElseThrow().unit() == program.unit()
            ? Map.of(slot, Contents.of(held.orElseThrow(), keypad, machine.blank(program.unit())))
            : Map.of();
    this.judge = new KeyJudge(machine, program, slot);
    restart();
  }

  /** From the idle display, the slot as it is told or blank, the unit as it must be. */
  Map<String, Object> restart() {
    states.clear();
    states.add(machine.idle(slots, program.unit()));
    return shown(
        "start",
        "",
        "Press a key as you would at the kiln; keep it down where the sheet says hold.");
  }

  /** The keys by our own words, in the order in which they are drawn, three a row. */
  List<Object> keys() {
    List<Object> keys = new ArrayList<>();
    Set<Key> left = EnumSet.copyOf(keypad.keys());
    if (left.remove(Key.DIGITS)) {
      for (int digit = 1; digit <= 9; digit++) {
        keys.add(digit(digit));
      }
      first(keys, left, Key.MINUS, Key.CLEAR, Key.BACK);
      keys.add(digit(0));
      first(keys, left, Key.POINT, keypad.accept());
    }
    if (left.remove(Key.TURN)) {
      keys.add(KeypadText.map("kind", "turn", "clicks", -1, "words", "turn left"));
      first(keys, left, Key.PUSH);
      keys.add(KeypadText.map("kind", "turn", "clicks", 1, "words", "turn right"));
    }
    left.forEach(key -> keys.add(key(key)));
    return keys;
  }

  /** The first of these that the keypad has. */
  private static void first(List<Object> keys, Set<Key> left, Key... wanted) {
    for (Key key : wanted) {
      if (left.remove(key)) {
        keys.add(key(key));
        return;
      }
    }
  }

  private static Map<String, Object> key(Key key) {
    String words =
        switch (key) {
          case MINUS -> "− sign";
          case POINT -> ". point";
          case PUSH -> "push knob";
          default -> key.word();
        };
    return KeypadText.map("kind", "key", "key", key.name(), "words", words);
  }

  private static Map<String, Object> digit(int digit) {
    return KeypadText.map("kind", "digit", "digit", digit, "words", String.valueOf(digit));
  }

  /** As it stands. */
  Map<String, Object> now() {
    return said("fine", "");
  }

  /** What one action leads to, and what is to say of it. */
  Map<String, Object> press(Fields from) {
    KeyAction action = action(from);
    MachineState before = last();
    MachineState after = machine.press(before, action);
    Optional<String> wrong = judge.wrong(before, action, after);
    states.add(after);
    if (firstWrong.isEmpty() && wrong.isPresent()) {
      firstWrong =
          Optional.of(
              new Wrong(
                  states.size() - 1, "key " + (states.size() - 1) + ", " + wrong.orElseThrow()));
      return said("wrong", "");
    }
    boolean takes = before.where() instanceof Where.Value value && value.open() && isAccept(action);
    return said(after.equals(before) && !takes ? "nothing" : "fine", "");
  }

  /** Taking a value as it stands changes nothing that can be seen, and yet is a step. */
  private boolean isAccept(KeyAction action) {
    return action.press().key() == keypad.accept();
  }

  /** What the display would show if the action ended now; nothing is kept. */
  Map<String, Object> peek(Fields from) {
    return display(machine.press(last(), action(from)));
  }

  /** After the power was cut and came back. */
  Map<String, Object> powerCut() {
    states.add(machine.powerCut(last()));
    return said("cut", "The power was cut and came back; what was not stored is lost.");
  }

  /** After the keypad was left alone for as long as it waits. */
  Map<String, Object> untouched() {
    int seconds = discardsAfterSeconds();
    states.add(machine.untouched(last(), seconds));
    return said(
        "cut",
        "Left alone for "
            + seconds
            + " s: the keypad threw away what was not stored."
            + " Take that back to go on.");
  }

  /** How long it waits where it stands, s; zero if for ever. */
  private int discardsAfterSeconds() {
    int seconds = keypad.gestures().discardsAfterSeconds().orElse(0);
    return machine.untouched(last(), seconds).equals(last()) ? 0 : seconds;
  }

  /** As before the last action. */
  Map<String, Object> back() {
    if (states.size() > 1) {
      states.remove(states.size() - 1);
    }
    firstWrong = firstWrong.filter(w -> w.state() < states.size());
    return said("back", "The last key is taken back.");
  }

  private MachineState last() {
    return states.get(states.size() - 1);
  }

  /** What is graver is said: the first wrong key stays told until it is taken back. */
  private Map<String, Object> said(String kind, String says) {
    if (states.size() > 1 && judge.isDone(last())) {
      String all = "slot " + slot + " holds the plan. That is all there is to key.";
      return firstWrong.isEmpty()
          ? shown("done", "Keyed:", all)
          : shown("done", "Keyed in the end:", all + " First wrong was " + why());
    }
    if (firstWrong.isPresent()) {
      return shown(
          "wrong",
          kind.equals("wrong") ? "Wrong:" : "First wrong key:",
          why() + " Take keys back to there, or mend it and go on.");
    }
    return kind.equals("nothing")
        ? shown(kind, "", "That key does nothing here.")
        : shown(kind, "", says);
  }

  private String why() {
    return firstWrong.orElseThrow().why();
  }

  private Map<String, Object> shown(String kind, String head, String says) {
    return KeypadText.map(
        "display",
        display(last()),
        "kind",
        kind,
        "head",
        head,
        "says",
        says,
        "keys",
        states.size() - 1,
        "discards",
        discardsAfterSeconds());
  }

  /**
   * The first wrong key.
   *
   * @param state the state it led to, as an index
   * @param why in words, with its number
   */
  private record Wrong(int state, String why) {}

  private Map<String, Object> display(MachineState state) {
    Display display = machine.display(state);
    Optional<String> sign = display.sign().map(TemperatureUnit::symbol);
    return KeypadText.map(
        "label", display.label(),
        "value", display.value(),
        "sign", sign.orElse(""),
        "words", display.words());
  }

  private KeyAction action(Fields from) {
    return switch (from.text("kind")) {
      case "digit" -> new KeyAction.Digit(from.whole("digit"));
      case "turn" -> new KeyAction.Turn(from.whole("clicks"), spins(from));
      case "hold" ->
          new KeyAction.Hold(from.word("key", Key.values()), Math.min(60, from.number("seconds")));
      default -> new KeyAction.Tap(from.word("key", Key.values()));
    };
  }

  /** An action as {@link #press} takes it. */
  static Map<String, Object> written(KeyAction action) {
    if (action instanceof KeyAction.Digit digit) {
      return KeypadText.map("kind", "digit", "digit", digit.digit());
    }
    if (action instanceof KeyAction.Turn turn) {
      return KeypadText.map("kind", "turn", "clicks", turn.clicks(), "spun", turn.spun());
    }
    if (action instanceof KeyAction.Hold hold) {
      return KeypadText.map("kind", "hold", "key", hold.key().name(), "seconds", hold.seconds());
    }
    return KeypadText.map("kind", "tap", "key", action.press().key().name());
  }

  private boolean spins(Fields from) {
    return from.flag("spun") && keypad.entry() instanceof Entry.Knob;
  }
}
