package org.heatwright.app.json;

import org.heatwright.work.sinter.Likely;

/** A median between a 5th and a 95th percentile, in the unit of its key. */
public record LikelyJson(double low, double median, double high) {
  public static LikelyJson of(Likely likely) {
    return new LikelyJson(likely.low(), likely.median(), likely.high());
  }
}
