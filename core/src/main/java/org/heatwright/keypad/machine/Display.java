package org.heatwright.keypad.machine;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.units.TemperatureUnit;

/**
 * What a display shows.
 *
 * @param label the mark of the value's place; empty if the keypad marks nothing
 * @param value the value or message; empty while it shows the kiln's temperature
 * @param sign the sign of the unit in force, where it is shown
 * @param words our words for where it stands: "segment 2 target"
 */
public record Display(String label, String value, Optional<TemperatureUnit> sign, String words) {

  public Display {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(sign, "sign");
    Objects.requireNonNull(words, "words");
  }
}
