package org.heatwright.keypad;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.units.TemperatureUnit;

/**
 * What displayed texts mean on one keypad.
 *
 * @param keypad whose display
 * @param unit the unit in force
 */
record Meanings(Keypad keypad, TemperatureUnit unit) {

  /** What a text means in a field, if it means exactly one thing there. */
  Optional<Meaning> of(KeyedValue.Kind kind, String text) {
    Optional<Special> mark =
        keypad.end().mark().filter(m -> kind == KeyedValue.Kind.END || kind == keypad.markField());
    Optional<Special> special =
        switch (kind) {
          case RATE, TIME -> keypad.rate().fastest().filter(s -> Texts.same(s.shows(), text));
          case HOLD -> keypad.hold().endless().filter(s -> Texts.same(s.shows(), text));
          default -> Optional.empty();
        };
    special = special.or(() -> mark.filter(m -> Texts.same(m.shows(), text)));
    if (special.isPresent()) {
      return special.map(Meaning::of);
    }
    return switch (kind) {
      case TIME -> keypad.rate().time().flatMap(f -> f.minutes(Texts.clean(text))).map(Meaning::of);
      case UNIT -> keypad.units().asked().flatMap(a -> a.unit(text)).map(Meaning::of);
      case HOLD -> keypad.hold().form().minutes(Texts.clean(text)).map(Meaning::of);
      case DELAY ->
          keypad.delay().flatMap(d -> d.form().minutes(Texts.clean(text))).map(Meaning::of);
      case TARGET -> Texts.number(withoutUnit(text)).map(Meaning::of);
      default -> Texts.number(text).map(Meaning::of);
    };
  }

  /** A target may be read back with its unit, if it is the one in force. */
  private String withoutUnit(String text) {
    String folded = Texts.folded(text);
    String letter = unit.letter().toLowerCase(Locale.ROOT);
    return folded.matches(".*\\d°?" + letter)
        ? folded.substring(0, folded.length() - 1).replace("°", "")
        : text;
  }

  /** What a text means: a number, or one of the keypad's special values. */
  record Meaning(Optional<BigDecimal> number, String special) {

    static Meaning of(BigDecimal number) {
      return new Meaning(Optional.of(number.stripTrailingZeros()), "");
    }

    static Meaning of(TemperatureUnit unit) {
      return new Meaning(Optional.empty(), unit.name());
    }

    static Meaning of(Special special) {
      return new Meaning(Optional.empty(), Texts.folded(special.shows()));
    }
  }
}
