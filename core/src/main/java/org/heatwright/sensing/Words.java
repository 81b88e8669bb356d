package org.heatwright.sensing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/** Numbers as people read them. */
final class Words {

  private static final int MILLIVOLT_DECIMALS = 3; // as the published tables print them

  private Words() {}

  static String celsius(Temperature temperature) {
    return oneDecimal(temperature.celsius()) + " °C";
  }

  /** In the unit that is asked for: "961.8 °C", "1763.2 °F". */
  static String of(Temperature temperature, TemperatureUnit unit) {
    return oneDecimal(unit.value(temperature)) + " " + unit.symbol();
  }

  /** A difference: "3 K", "5.4 °F". */
  static String of(TemperatureChange change, TemperatureUnit unit) {
    return oneDecimal(unit.value(change)) + " " + unit.differenceSymbol();
  }

  static String kelvins(TemperatureChange change) {
    return oneDecimal(change.kelvins()) + " K";
  }

  static String millivolts(double millivolts) {
    return rounded(millivolts, MILLIVOLT_DECIMALS) + " mV";
  }

  static String oneDecimal(double value) {
    return rounded(value, 1);
  }

  private static String rounded(double value, int decimals) {
    BigDecimal number = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN);
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }
}
