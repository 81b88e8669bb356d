package org.heatwright.keypad;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What a keypad would show of a program, changed or not. */
record ReviewPlan(
    Keypad keypad,
    Optional<String> unit,
    Optional<String> delay,
    List<Map<KeyedValue.Kind, String>> segments) {

  static ReviewPlan of(FittedProgram program, Keypad keypad) {
    List<Map<KeyedValue.Kind, String>> segments = new ArrayList<>();
    Optional<String> delay = Optional.empty();
    Optional<String> unit = Optional.empty();
    for (KeyedValue value : program.values()) {
      if (value.kind() == KeyedValue.Kind.DELAY) {
        delay = Optional.of(value.digits());
      } else if (value.kind() == KeyedValue.Kind.UNIT) {
        unit = Optional.of(value.digits());
      } else if (value.kind() != KeyedValue.Kind.END) {
        if (segments.size() < value.segment()) {
          segments.add(new EnumMap<>(KeyedValue.Kind.class));
        }
        segments.get(value.segment() - 1).put(value.kind(), value.digits());
      }
    }
    return new ReviewPlan(keypad, unit, delay, segments);
  }

  ReviewPlan without(int segment) {
    List<Map<KeyedValue.Kind, String>> fewer = new ArrayList<>(segments);
    fewer.remove(segment - 1);
    return new ReviewPlan(keypad, unit, delay, fewer);
  }

  /** With a segment that may hold anything, so that it becomes number {@code segment}. */
  ReviewPlan with(int segment) {
    List<Map<KeyedValue.Kind, String>> more = new ArrayList<>(segments);
    more.add(segment - 1, Map.of());
    return new ReviewPlan(keypad, unit, delay, more);
  }

  List<Item> items() {
    Keypad.Review review = keypad.review();
    List<Item> items = new ArrayList<>();
    if (unitShown(keypad, Keypad.Position.FIRST)) {
      unit.ifPresent(u -> items.add(new Item(0, KeyedValue.Kind.UNIT, Optional.of(u))));
    }
    if (review.delay() == Keypad.Position.FIRST) {
      delay.ifPresent(d -> items.add(new Item(0, KeyedValue.Kind.DELAY, Optional.of(d))));
    }
    if (keypad.end().by() == Keypad.EndRule.By.COUNT) {
      items.add(new Item(0, KeyedValue.Kind.END, Optional.of(Integer.toString(segments.size()))));
    }
    for (int i = 0; i < segments.size(); i++) {
      for (KeyedValue.Kind kind : review.order()) {
        items.add(new Item(i + 1, kind, Optional.ofNullable(segments.get(i).get(kind))));
      }
    }
    if (review.unused()) {
      int last =
          keypad.end().by() == Keypad.EndRule.By.EVERY_UNUSED
              ? keypad.segments()
              : Math.min(segments.size() + 1, keypad.segments());
      for (int segment = segments.size() + 1; segment <= last; segment++) {
        for (KeyedValue.Kind kind : beforeMark(keypad)) {
          items.add(new Item(segment, kind, Optional.empty(), true));
        }
        items.add(new Item(segment, KeyedValue.Kind.END, keypad.end().mark().map(Special::shows)));
      }
    }
    if (review.delay() == Keypad.Position.LAST) {
      delay.ifPresent(d -> items.add(new Item(0, KeyedValue.Kind.DELAY, Optional.of(d))));
    }
    if (unitShown(keypad, Keypad.Position.LAST)) {
      unit.ifPresent(u -> items.add(new Item(0, KeyedValue.Kind.UNIT, Optional.of(u))));
    }
    return items;
  }

  static boolean unitShown(Keypad keypad, Keypad.Position position) {
    return keypad.units().asked().filter(a -> a.review() == position).isPresent();
  }

  /** What the review shows of an unused segment before its mark: whatever stands there. */
  static List<KeyedValue.Kind> beforeMark(Keypad keypad) {
    List<KeyedValue.Kind> order = keypad.review().order();
    return keypad.markField() == keypad.order().get(0)
        ? List.of()
        : order.subList(0, order.indexOf(keypad.markField()));
  }

  /** What the display marks a place with during the review; our words if it marks nothing. */
  static String label(Keypad keypad, int segment, KeyedValue.Kind kind) {
    boolean unused = kind == KeyedValue.Kind.END && segment > 0;
    if (!unused) {
      return keypad.label(segment, kind);
    }
    KeyedValue.Kind shownAt = markShown(keypad);
    String label = keypad.label(segment, shownAt);
    return label.equals(KeyedValue.place(segment, shownAt)) ? words(keypad, segment, kind) : label;
  }

  /** Our words for a place; blind, because "unused" would tell how many segments there are. */
  static String words(Keypad keypad, int segment, KeyedValue.Kind kind) {
    if (kind != KeyedValue.Kind.END || segment == 0) {
      return KeyedValue.place(segment, kind);
    }
    return keypad.markField() == keypad.order().get(0)
        ? "segment %d, first value".formatted(segment)
        : KeyedValue.place(segment, keypad.markField());
  }

  /** Everything a person may call a place. */
  static Set<String> names(Keypad keypad, int segment, KeyedValue.Kind kind) {
    Set<String> names = new LinkedHashSet<>();
    names.add(label(keypad, segment, kind));
    names.add(words(keypad, segment, kind));
    names.add(KeyedValue.place(segment, kind));
    if (kind == KeyedValue.Kind.END && segment > 0) {
      names.add(KeyedValue.place(segment, markShown(keypad)));
    }
    return names;
  }

  /** Where the review shows the mark: in its first value, or in the one that it is keyed at. */
  private static KeyedValue.Kind markShown(Keypad keypad) {
    List<KeyedValue.Kind> order = keypad.review().order();
    if (keypad.markField() != keypad.order().get(0)) {
      return keypad.markField();
    }
    return order.isEmpty() ? keypad.order().get(0) : order.get(0);
  }

  /**
   * A value that a review shows.
   *
   * @param segment 1-based; 0 for the whole program
   * @param kind which field
   * @param text what it reads; empty for a segment that is not the plan's, where it may read
   *     anything
   * @param unused whether it is a value of an unused segment before its mark: no matter what it is
   */
  record Item(int segment, KeyedValue.Kind kind, Optional<String> text, boolean unused) {

    Item(int segment, KeyedValue.Kind kind, Optional<String> text) {
      this(segment, kind, text, false);
    }
  }

  /** Whether a field of this kind can read nothing but digits with a point or colon. */
  static boolean digits(Keypad keypad, KeyedValue.Kind kind) {
    Optional<Special> mark = keypad.end().mark();
    return switch (kind) {
      case RATE, TIME ->
          keypad.rate().cooling() != Keypad.Cooling.NEGATIVE
              && digits(keypad.rate().fastest())
              && digits(mark);
      case TARGET -> digits(mark);
      case HOLD -> digits(keypad.hold().endless()) && digits(mark);
      case DELAY -> true;
      // As the field that holds the mark: another answer would tell which segment is unused.
      case END -> mark.isEmpty() || digits(keypad, keypad.markField());
      case UNIT -> false;
    };
  }

  private static boolean digits(Optional<Special> special) {
    return special.map(s -> s.shows().matches("[\\d.:]+")).orElse(true);
  }
}
