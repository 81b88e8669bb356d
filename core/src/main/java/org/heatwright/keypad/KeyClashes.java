package org.heatwright.keypad;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Keys that would mean two things in one state: nobody, and no machine, could tell which. */
final class KeyClashes {

  private static final double ANY_HOLD_SECONDS = 1;

  private KeyClashes() {}

  /** The first clash in a sentence, if there is one. */
  static Optional<String> first(
      Entry entry,
      Set<Key> keys,
      Key accept,
      Keypad.Programming programming,
      Keypad.Gestures gestures) {
    Map<String, Gesture> idle = new LinkedHashMap<>();
    idle.put("open", gestures.open());
    idle.put("review", gestures.review());
    idle.put("start", gestures.start());
    idle.put("switch-unit", gestures.switchUnit());
    Map<String, Gesture> entering = new LinkedHashMap<>();
    entering.put("accept", Gesture.of(accept));
    making(entry, keys).forEach(entering::put);
    entering.put("commit", gestures.commit());
    // The same keys may save first and then leave.
    if (!gestures.leave().equals(gestures.commit())) {
      entering.put("leave", gestures.leave());
    }
    entering.put("previous", gestures.previous());
    if (programming.commits() == Keypad.Commits.START) {
      entering.put("start", gestures.start());
    }
    return clash(idle, "on the idle display").or(() -> clash(entering, "while a value is keyed"));
  }

  /** What makes values, by what it is called in a sentence. */
  private static Map<String, Gesture> making(Entry entry, Set<Key> keys) {
    Map<String, Gesture> making = new LinkedHashMap<>();
    List<Key> used = new ArrayList<>();
    if (entry instanceof Entry.StepKeys steps) {
      used.addAll(List.of(Key.UP, Key.DOWN));
      if (!steps.repeat().isEmpty()) {
        making.put("up, kept down", Gesture.holding(Key.UP, ANY_HOLD_SECONDS));
        making.put("down, kept down", Gesture.holding(Key.DOWN, ANY_HOLD_SECONDS));
      }
    } else if (entry instanceof Entry.Knob) {
      used.add(Key.TURN);
    } else {
      used.addAll(List.of(Key.DIGITS, Key.POINT, Key.MINUS, Key.CLEAR));
    }
    used.stream().filter(keys::contains).forEach(key -> making.put(key.word(), Gesture.of(key)));
    return making;
  }

  private static Optional<String> clash(Map<String, Gesture> gestures, String where) {
    List<Map.Entry<String, Gesture>> all =
        gestures.entrySet().stream().filter(e -> !e.getValue().isEmpty()).toList();
    for (int i = 0; i < all.size(); i++) {
      for (int j = i + 1; j < all.size(); j++) {
        Gesture one = all.get(i).getValue();
        Gesture other = all.get(j).getValue();
        if (one.beginsAlike(other)) {
          return Optional.of(
              "%s, %s and %s cannot be told apart (%s; %s): change one of them."
                  .formatted(
                      Character.toUpperCase(where.charAt(0)) + where.substring(1),
                      all.get(i).getKey(),
                      all.get(j).getKey(),
                      one.words(),
                      other.words()));
        }
      }
    }
    return Optional.empty();
  }
}
