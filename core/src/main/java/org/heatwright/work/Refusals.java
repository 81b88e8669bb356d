package org.heatwright.work;

import java.util.function.Predicate;
import org.heatwright.kiln.Kiln;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** What several kinds of work are refused for. */
final class Refusals {

  private Refusals() {}

  /**
   * A piece lies flat: its longest side may lie across the floor's corners, not beyond.
   *
   * @throws WorkRefusedException if it does not fit
   */
  static void pieceTooLong(double longestMetres, Kiln kiln) {
    double across = kiln.chamber().acrossMetres();
    if (longestMetres > across) {
      throw new WorkRefusedException(
          "A piece of %.0f mm does not fit into %s, which is %.0f mm inside from corner to corner."
              .formatted(longestMetres * 1000, kiln.name(), across * 1000));
    }
  }

  /**
   * " (1500 reads like °F: 1500 °F is 816 °C)", where a refused number of °C would do in °F; else
   * nothing.
   */
  static String fahrenheitHint(
      Temperature refused, TemperatureUnit unit, Predicate<Temperature> wouldDo) {
    Temperature meant = unit.other().temperature(unit.value(refused));
    return unit == TemperatureUnit.CELSIUS && wouldDo.test(meant)
        ? " (%.0f reads like °F: %.0f °F is %.0f °C)"
            .formatted(refused.celsius(), refused.celsius(), meant.celsius())
        : "";
  }
}
