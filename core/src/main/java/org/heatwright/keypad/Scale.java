package org.heatwright.keypad;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.heatwright.units.TemperatureUnit;

/**
 * Everything one field can read, from its lowest to its highest position: what up and down keys or
 * a knob walk along.
 */
final class Scale {

  private final List<String> texts;
  private final int leastNumber;

  private Scale(List<String> texts, int leastNumber) {
    this.texts = List.copyOf(texts);
    this.leastNumber = leastNumber;
  }

  static Scale of(Keypad keypad, KeyedValue.Kind kind, TemperatureUnit unit) {
    Optional<Special> mark = kind == keypad.order().get(0) ? keypad.end().mark() : Optional.empty();
    return switch (kind) {
      case RATE -> {
        Keypad.Range range = keypad.rateRange(unit);
        yield of(
            range,
            range::text,
            keypad.rate().cooling() == Keypad.Cooling.NEGATIVE,
            keypad.rate().fastest(),
            mark);
      }
      case TARGET -> {
        Keypad.Range range = keypad.targetRange(unit);
        yield of(range, range::text, false, Optional.empty(), mark);
      }
      case HOLD -> {
        Keypad.HoldField hold = keypad.hold();
        yield of(
            hold.range(), m -> hold.form().text(m, hold.decimals()), false, hold.endless(), mark);
      }
      case DELAY -> {
        Keypad.DelayField delay = keypad.delay().orElseThrow();
        yield of(
            delay.range(),
            m -> delay.form().text(m, delay.decimals()),
            false,
            Optional.empty(),
            Optional.empty());
      }
      case END -> numbers(keypad.segments());
    };
  }

  /** 1 to {@code count}: slots, numbers of segments. */
  static Scale numbers(int count) {
    return new Scale(IntStream.rangeClosed(1, count).mapToObj(Integer::toString).toList(), 0);
  }

  private static Scale of(
      Keypad.Range range,
      Function<BigDecimal, String> text,
      boolean signed,
      Optional<Special> inner,
      Optional<Special> outer) {
    List<String> texts = new ArrayList<>();
    int count = range.count();
    if (signed) {
      for (int i = count - 1; i >= 0; i--) {
        texts.add("-" + text.apply(range.value(i)));
      }
    }
    add(texts, outer, Special.Place.BELOW_LEAST);
    add(texts, inner, Special.Place.BELOW_LEAST);
    int least = texts.size();
    for (int i = 0; i < count; i++) {
      texts.add(text.apply(range.value(i)));
    }
    add(texts, inner, Special.Place.ABOVE_GREATEST);
    add(texts, outer, Special.Place.ABOVE_GREATEST);
    return new Scale(texts, least);
  }

  private static void add(List<String> texts, Optional<Special> special, Special.Place place) {
    special.filter(s -> s.place() == place).ifPresent(s -> texts.add(s.shows()));
  }

  int size() {
    return texts.size();
  }

  String text(int position) {
    return texts.get(position);
  }

  /** The least ordinary number. */
  int leastNumber() {
    return leastNumber;
  }

  OptionalInt positionOf(String text) {
    int position = texts.indexOf(text);
    return position < 0 ? OptionalInt.empty() : OptionalInt.of(position);
  }
}
