package org.heatwright.app.json;

import org.heatwright.forecast.Band;

/** A median between the 5th and the 95th percentile, in the unit of its key. */
public record BandJson(double low, double median, double high) {
  static BandJson of(Band band) {
    return new BandJson(band.low(), band.median(), band.high());
  }
}
