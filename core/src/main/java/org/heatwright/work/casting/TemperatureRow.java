package org.heatwright.work.casting;

import java.util.Objects;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;

/**
 * What one source says of a temperature.
 *
 * @param about what it speaks of, e.g. "light sections, vacuum"
 * @param range one value is a range of no width
 * @param counts whether it speaks for this work and enters the proposed value
 * @param origin the source
 */
public record TemperatureRow(String about, TemperatureRange range, boolean counts, Origin origin) {

  public TemperatureRow {
    Objects.requireNonNull(about, "about");
    Objects.requireNonNull(range, "range");
    Objects.requireNonNull(origin, "origin");
  }

  static TemperatureRow ofCelsius(
      String about, double fromCelsius, double toCelsius, boolean counts, Origin origin) {
    return new TemperatureRow(
        about, TemperatureRange.ofCelsius(fromCelsius, toCelsius), counts, origin);
  }

  TemperatureRow counting(boolean now) {
    return new TemperatureRow(about, range, now, origin);
  }
}
