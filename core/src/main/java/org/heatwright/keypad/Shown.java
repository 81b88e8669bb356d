package org.heatwright.keypad;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.units.TemperatureUnit;

/**
 * What the display showed in its review.
 *
 * @param slot the slot reviewed, if it was told
 * @param unit the unit sign on the display, if it shows one
 * @param values in display order
 */
public record Shown(OptionalInt slot, Optional<TemperatureUnit> unit, List<Value> values) {

  public Shown {
    Objects.requireNonNull(slot, "slot");
    Objects.requireNonNull(unit, "unit");
    values = List.copyOf(values);
  }

  /**
   * @param at label on the display, or its 1-based position
   * @param text exactly as displayed
   */
  public record Value(String at, String text) {

    public Value {
      Objects.requireNonNull(at, "at");
      Objects.requireNonNull(text, "text");
    }
  }
}
