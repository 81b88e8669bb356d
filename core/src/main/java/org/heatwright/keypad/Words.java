package org.heatwright.keypad;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** How keypads and their sheets write numbers for people. */
public final class Words {

  private Words() {}

  /** Without trailing zeros: 3, 0.5, 1349.6. */
  public static String number(BigDecimal value) {
    BigDecimal stripped = value.stripTrailingZeros();
    return (stripped.scale() < 0 ? stripped.setScale(0) : stripped).toPlainString();
  }

  /** To at most two decimals, without trailing zeros. */
  public static String number(double value) {
    return number(BigDecimal.valueOf(value).setScale(2, RoundingMode.HALF_UP));
  }

  /** "732.2 °C". */
  public static String temperature(Temperature temperature, TemperatureUnit unit) {
    return number(BigDecimal.valueOf(unit.value(temperature)).setScale(1, RoundingMode.HALF_UP))
        + " "
        + unit.symbol();
  }
}
