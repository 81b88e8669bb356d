package org.heatwright.schedule;

import java.time.Duration;
import java.util.Optional;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.TemperatureChange;

/** How a segment gets to its target. The set of kinds is closed: a controller can do only these. */
public sealed interface Ramp {

  /** The rate, or empty for {@link Fastest}. */
  Optional<HeatingRate> rate();

  /** The time the ramp takes on paper, or empty where only the kiln can tell. */
  default Optional<Duration> nominalTime(TemperatureChange way) {
    return rate().map(r -> r.timeFor(way));
  }

  static Ramp at(HeatingRate rate) {
    return new AtRate(rate);
  }

  static Ramp fastest() {
    return Fastest.RAMP;
  }

  /** The setpoint moves at a rate; up or down follows from the target. */
  record AtRate(HeatingRate heatingRate) implements Ramp {
    @Override
    public Optional<HeatingRate> rate() {
      return Optional.of(heatingRate);
    }
  }

  /** Full power up, or unforced cooling down. */
  enum Fastest implements Ramp {
    RAMP;

    @Override
    public Optional<HeatingRate> rate() {
      return Optional.empty();
    }
  }
}
