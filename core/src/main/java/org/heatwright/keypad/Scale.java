package org.heatwright.keypad;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.heatwright.units.TemperatureUnit;

/**
 * Everything one field can read, from its lowest to its highest position: what up and down keys or
 * a knob walk along.
 */
public final class Scale {

  private final List<String> texts;
  private final int leastNumber;
  private final Map<String, Integer> positions = new HashMap<>();
  private final Map<String, String> typedSpecials = new HashMap<>();

  private Scale(List<String> texts, int leastNumber, List<Special> specials) {
    this.texts = List.copyOf(texts);
    this.leastNumber = leastNumber;
    for (int i = 0; i < texts.size(); i++) {
      positions.putIfAbsent(texts.get(i), i);
    }
    for (Special special : specials) {
      special.typed().ifPresent(typed -> typedSpecials.put(typed, special.shows()));
    }
  }

  /**
   * Everything a field can read while {@code unit} is in force.
   *
   * @param kind a field that the keypad has; END is the number of segments
   */
  public static Scale of(Keypad keypad, KeyedValue.Kind kind, TemperatureUnit unit) {
    Optional<Special> mark = kind == keypad.markField() ? keypad.end().mark() : Optional.empty();
    return switch (kind) {
      case RATE, TIME -> {
        Keypad.Range range = keypad.rateRange(unit);
        yield of(
            range,
            n -> keypad.rate().text(range, n),
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
            keypad.holdRange(),
            m -> hold.form().text(m, hold.decimals()),
            false,
            hold.endless(),
            mark);
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
      case UNIT -> {
        Keypad.UnitPrompt asked = keypad.units().asked().orElseThrow();
        yield new Scale(
            List.of(asked.text(asked.lower()), asked.text(asked.lower().other())), 0, List.of());
      }
      case END -> numbers(keypad.segments());
    };
  }

  /** 1 to {@code count}: slots, numbers of segments. */
  public static Scale numbers(int count) {
    return new Scale(
        IntStream.rangeClosed(1, count).mapToObj(Integer::toString).toList(), 0, List.of());
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
    return new Scale(texts, least, Stream.concat(inner.stream(), outer.stream()).toList());
  }

  private static void add(List<String> texts, Optional<Special> special, Special.Place place) {
    special.filter(s -> s.place() == place).ifPresent(s -> texts.add(s.shows()));
  }

  public int size() {
    return texts.size();
  }

  public String text(int position) {
    return texts.get(position);
  }

  /** The least ordinary number. */
  public int leastNumber() {
    return leastNumber;
  }

  public OptionalInt positionOf(String text) {
    Integer position = positions.get(text);
    return position == null ? OptionalInt.empty() : OptionalInt.of(position);
  }

  /**
   * The keys that type a text: digits, {@code -} and {@code .}. Without a point key the digits fill
   * up from the right, so points are not typed; leading zeros never are.
   */
  public static String typed(String text, boolean pointKey) {
    String typed = pointKey ? text.replace(":", "") : text.replace(".", "").replace(":", "");
    String sign = typed.startsWith("-") ? "-" : "";
    int from = sign.length();
    while (from < typed.length() - 1
        && typed.charAt(from) == '0'
        && Character.isDigit(typed.charAt(from + 1))) {
      from++;
    }
    return sign + typed.substring(from);
  }

  /** What the typed keys make, if they make one of this field's values. */
  public Optional<String> ofTyped(String keys, boolean pointKey) {
    String plain = typed(keys, pointKey);
    if (typedSpecials.containsKey(plain)) {
      return Optional.ofNullable(typedSpecials.get(plain));
    }
    if (positions.containsKey(plain)) {
      return Optional.of(plain);
    }
    for (String text : texts) {
      if (text.length() >= plain.length() && typed(text, pointKey).equals(plain)) {
        return Optional.of(text);
      }
    }
    return Optional.empty();
  }
}
