package org.heatwright.keypad;

import java.util.Objects;

/**
 * Where a value stands in a program.
 *
 * @param segment 1-based; 0 for the whole program
 * @param kind which field; END is the number of segments
 */
public record Place(int segment, KeyedValue.Kind kind) {

  public Place {
    Objects.requireNonNull(kind, "kind");
  }

  /** Where a value is keyed: the mark of an unused segment is keyed at one of its fields. */
  public static Place of(KeyedValue value, Keypad keypad) {
    return value.kind() == KeyedValue.Kind.END && value.segment() > 0
        ? new Place(value.segment(), keypad.markField())
        : new Place(value.segment(), value.kind());
  }

  /** "segment 2 target". */
  public String words() {
    return KeyedValue.place(segment, kind);
  }
}
