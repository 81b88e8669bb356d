package org.heatwright.keypad.keying;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.Words;
import org.heatwright.keypad.machine.KeyAction;

/**
 * Instructions as texts: {@code up} is a tap, {@code next 2 s} kept down so long, {@code 7} a
 * digit, {@code turn 3} clicks to the right (to the left if negative), {@code spin 12} the same
 * spun, {@code until 732} whatever keys lead there. Read, not written: {@code 730} for three digits
 * and {@code 3 x up} for three taps.
 */
public final class KeyText {

  private static final Pattern TIMES = Pattern.compile("(\\d{1,3}) ?x (.+)");
  private static final Pattern HELD = Pattern.compile("([a-z]+) (\\d{1,2}(?:\\.\\d+)?) ?s");
  private static final Pattern TURNED = Pattern.compile("(turn|spin) (-?\\d{1,4})");
  private static final Pattern DIGITS = Pattern.compile("\\d{1,8}");
  private static final Pattern UNTIL = Pattern.compile("until (\\S+)");

  private KeyText() {}

  /** One instruction. */
  public static String write(Instruction instruction) {
    if (instruction instanceof Instruction.Until until) {
      return "until " + until.shows();
    }
    KeyAction action = ((Instruction.Press) instruction).action();
    if (action instanceof KeyAction.Digit digit) {
      return Integer.toString(digit.digit());
    }
    if (action instanceof KeyAction.Turn turn) {
      return (turn.spun() ? "spin " : "turn ") + turn.clicks();
    }
    String word = action.press().key().word();
    return action instanceof KeyAction.Hold hold
        ? word + " " + Words.number(hold.seconds()) + " s"
        : word;
  }

  /**
   * What a text says.
   *
   * @throws IllegalArgumentException in one sentence, if it says nothing
   */
  public static List<Instruction> read(String text) {
    String plain = text.strip();
    Matcher times = TIMES.matcher(plain);
    if (times.matches()) {
      List<Instruction> once = read(times.group(2));
      List<Instruction> all = new ArrayList<>();
      for (int i = 0; i < Integer.parseInt(times.group(1)); i++) {
        all.addAll(once);
      }
      return all;
    }
    if (DIGITS.matcher(plain).matches()) {
      return plain.chars().mapToObj(c -> press(new KeyAction.Digit(c - '0'))).toList();
    }
    Matcher until = UNTIL.matcher(plain);
    if (until.matches()) {
      return List.of(new Instruction.Until(until.group(1)));
    }
    Matcher turned = TURNED.matcher(plain);
    if (turned.matches()) {
      return List.of(
          press(
              new KeyAction.Turn(
                  Integer.parseInt(turned.group(2)), turned.group(1).equals("spin"))));
    }
    Matcher held = HELD.matcher(plain);
    if (held.matches()) {
      return List.of(
          press(new KeyAction.Hold(key(held.group(1)), Double.parseDouble(held.group(2)))));
    }
    return List.of(press(new KeyAction.Tap(key(plain))));
  }

  private static Instruction press(KeyAction action) {
    return new Instruction.Press(action);
  }

  private static Key key(String word) {
    return Key.ofWord(word)
        .filter(key -> key != Key.DIGITS && key != Key.TURN)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "\"%s\" is no key; expected a key such as up or next, one kept down (next 2 s), digits (730), turn 3, spin 12 or until 732."
                        .formatted(word)));
  }
}
