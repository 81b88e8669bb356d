package org.heatwright.app.report;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.DoorCost;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * Says what an open door costs the moulds that stay.
 *
 * @param cost what the draws say
 * @param unit degrees people read
 * @param when says moments
 */
public record DoorWords(DoorCost cost, TemperatureUnit unit, WhenWords when) {

  /** One idea a sentence; the last says how long to wait before the next mould is drawn. */
  public List<String> sentences() {
    List<String> lines = new ArrayList<>();
    lines.add(
        "To draw one with the door open for %.0f s at %s: the display falls by %s%s."
            .formatted(
                cost.openSeconds(),
                when.full(cost.atSeconds()),
                fall(cost.displayFallKelvins()),
                cost.displayBackSeconds()
                    .map(b -> " and is back after %s".formatted(minutes(b)))
                    .orElse(" and may not be back before the program ends")));
    for (DoorCost.Mould mould : cost.moulds()) {
      lines.add(
          "Mould %d that stays: its face falls by %s, its core by %s; %s."
              .formatted(
                  mould.mould(),
                  fall(mould.faceFallKelvins()),
                  fall(mould.coreFallKelvins()),
                  mould
                      .evenSeconds()
                      .map(b -> b.high() > 0 ? "even again after " + minutes(b) : "even throughout")
                      .orElse("not even again in every case before the program ends")));
    }
    return lines;
  }

  private String fall(Band kelvins) {
    if (kelvins.high() < 1) {
      return "less than 1 " + unit.differenceSymbol();
    }
    return "%.0f %s (%.0f to %.0f)"
        .formatted(
            value(kelvins.median()),
            unit.differenceSymbol(),
            value(kelvins.low()),
            value(kelvins.high()));
  }

  private double value(double kelvins) {
    return unit.value(TemperatureChange.ofKelvins(kelvins));
  }

  private static String minutes(Band seconds) {
    return "%.0f min (%.0f to %.0f)"
        .formatted(
            Math.ceil(seconds.median() / 60),
            Math.ceil(seconds.low() / 60),
            Math.ceil(seconds.high() / 60));
  }
}
