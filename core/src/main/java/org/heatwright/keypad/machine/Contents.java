package org.heatwright.keypad.machine;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.Place;

/**
 * What one slot holds: for every place of {@link Keypad#places()} the text that it shows.
 *
 * @param texts in the order of the places
 */
public record Contents(List<String> texts) {

  public Contents {
    texts = List.copyOf(texts);
  }

  /**
   * What a slot holds after a program was keyed over {@code before}.
   *
   * @throws IllegalArgumentException if the program does not fit
   */
  public static Contents of(FittedProgram program, Keypad keypad, Contents before) {
    program.requireFits();
    List<Place> places = keypad.places();
    List<String> texts = new ArrayList<>(before.texts);
    for (KeyedValue value : program.values()) {
      texts.set(places.indexOf(Place.of(value, keypad)), value.digits());
    }
    return new Contents(texts);
  }

  /** Whether every value of a program stands in its place. */
  public boolean holds(FittedProgram program, Keypad keypad) {
    List<Place> places = keypad.places();
    return program.values().stream()
        .allMatch(v -> texts.get(places.indexOf(Place.of(v, keypad))).equals(v.digits()));
  }

  /** With another text in one place. */
  public Contents with(int place, String text) {
    List<String> changed = new ArrayList<>(texts);
    changed.set(place, text);
    return new Contents(changed);
  }
}
