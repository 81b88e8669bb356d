package org.heatwright.app.json;

import org.heatwright.work.casting.Spread;

/** A usual value between the ends that sources or practice give, in the unit of its key. */
public record SpreadJson(double low, double usual, double high) {
  static SpreadJson of(Spread spread) {
    return new SpreadJson(spread.low(), spread.usual(), spread.high());
  }

  /** Kilograms as grams. */
  static SpreadJson thousandfold(Spread spread) {
    return of(spread.times(1000));
  }
}
