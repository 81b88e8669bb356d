package org.heatwright.kiln;

import java.util.List;
import java.util.Optional;
import org.heatwright.units.Temperature;

/**
 * What is so on the day of a firing, apart from the load.
 *
 * @param room room temperature; empty: the kiln's usual one, less certain
 * @param start temperature inside the kiln at the start; empty: the room's
 * @param ventOpen whether a vent stands open
 * @param supplyVolts measured supply, V; empty: the nameplate's, less certain
 * @param disturbances known door openings and mains cuts, seconds from the program's start
 */
public record FiringConditions(
    Optional<Temperature> room,
    Optional<Temperature> start,
    boolean ventOpen,
    Optional<Double> supplyVolts,
    List<Disturbance> disturbances) {

  public FiringConditions {
    disturbances = List.copyOf(disturbances);
  }

  /** Nothing known beyond the kiln's nameplate. */
  public static FiringConditions usual() {
    return new FiringConditions(
        Optional.empty(), Optional.empty(), false, Optional.empty(), List.of());
  }

  /**
   * Something that happens to the kiln for a while.
   *
   * @param kind what happens
   * @param atSeconds when it begins, s from the program's start, zero or more
   * @param lengthSeconds how long it lasts, s, above zero
   */
  public record Disturbance(Kind kind, double atSeconds, double lengthSeconds) {
    /** The kinds of disturbance. */
    public enum Kind {
      DOOR_OPEN,
      MAINS_OFF
    }

    public Disturbance {
      if (!(atSeconds >= 0) || !(lengthSeconds > 0)) {
        throw new IllegalArgumentException(
            "The disturbance (at %s s for %s s) must begin at zero or later and last a while."
                .formatted(atSeconds, lengthSeconds));
      }
    }
  }
}
