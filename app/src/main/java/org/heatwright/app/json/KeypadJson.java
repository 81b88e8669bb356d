package org.heatwright.app.json;

import java.util.List;
import org.heatwright.app.describe.KeypadWords;
import org.heatwright.keypad.Keypad;

/** What {@code keypad check --json} prints: a description in words. */
public record KeypadJson(String keypad, List<String> facts, List<StateJson> states) {

  /** What keys do in one state. */
  public record StateJson(String state, List<KeyJson> keys) {}

  /** A key and what it does. */
  public record KeyJson(String key, String does) {}

  /** The record of a description. */
  public static KeypadJson of(Keypad keypad) {
    return new KeypadJson(
        keypad.name(),
        KeypadWords.facts(keypad),
        KeypadWords.keys(keypad).stream()
            .map(
                s ->
                    new StateJson(
                        s.state(),
                        s.keys().stream().map(k -> new KeyJson(k.key(), k.does())).toList()))
            .toList());
  }
}
