package org.heatwright.keypad.machine;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import org.heatwright.keypad.Keypad;
import org.heatwright.units.TemperatureUnit;

/** A stored number after the unit was switched on a keypad that converts. */
final class ConvertedText {

  private ConvertedText() {}

  /**
   * @param text what was stored
   * @param point whether it is a temperature, not a change of one
   * @param from its unit
   * @param range the field's range in the other unit
   * @return the nearest number there; empty if the text is no number
   */
  static Optional<String> of(String text, boolean point, TemperatureUnit from, Keypad.Range range) {
    if (!text.chars().allMatch(c -> Character.isDigit(c) || c == '.' || c == '-')
        || text.chars().noneMatch(Character::isDigit)) {
      return Optional.empty();
    }
    double number = Double.parseDouble(text);
    double there =
        point
            ? from.other().value(from.temperature(number))
            : from.other().value(from.change(number));
    BigDecimal clipped = BigDecimal.valueOf(Math.abs(there)).max(range.min()).min(range.greatest());
    BigDecimal steps = clipped.subtract(range.min()).divide(range.step(), 0, RoundingMode.HALF_UP);
    BigDecimal nearest = range.min().add(range.step().multiply(steps)).min(range.greatest());
    return Optional.of((there < 0 && !point ? "-" : "") + range.text(nearest));
  }
}
