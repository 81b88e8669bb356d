package org.heatwright.work.heattreat;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * One heat of a treatment as practice has it: temperatures of the piece and the time it stays
 * there.
 *
 * @param low the coolest that sources name
 * @param high the hottest that sources name
 * @param plan what we plan
 * @param leastMinutes shortest time in the piece that sources name
 * @param mostMinutes longest
 * @param planMinutes what we plan
 * @param after what follows the heat
 * @param origin where it comes from, disagreement included
 */
public record Practice(
    Temperature low,
    Temperature high,
    Temperature plan,
    int leastMinutes,
    int mostMinutes,
    int planMinutes,
    After after,
    Origin origin) {

  public Practice {
    Objects.requireNonNull(after, "after");
    Objects.requireNonNull(origin, "origin");
    if (low.compareTo(plan) > 0
        || plan.compareTo(high) > 0
        || !(0 <= leastMinutes && leastMinutes <= planMinutes && planMinutes <= mostMinutes)) {
      throw new IllegalArgumentException("The plan must lie within what practice ranges over.");
    }
  }

  static Practice of(
      double lowCelsius,
      double planCelsius,
      double highCelsius,
      int leastMinutes,
      int planMinutes,
      int mostMinutes,
      After after,
      Origin origin) {
    return new Practice(
        Temperature.ofCelsius(lowCelsius),
        Temperature.ofCelsius(highCelsius),
        Temperature.ofCelsius(planCelsius),
        leastMinutes,
        mostMinutes,
        planMinutes,
        after,
        origin);
  }

  /** Where the heat goes after the kiln. */
  public enum Medium {
    WATER,
    AIR,
    /** Either does. */
    ANY
  }

  /**
   * What follows the heat.
   *
   * @param medium water or air
   * @param above into water only while still above this
   * @param below into water only once below this
   * @param because why, a clause
   * @param origin where it comes from
   */
  public record After(
      Medium medium,
      Optional<Temperature> above,
      Optional<Temperature> below,
      String because,
      Origin origin) {

    public After {
      Objects.requireNonNull(medium, "medium");
      Objects.requireNonNull(because, "because");
      Objects.requireNonNull(origin, "origin");
      if (above.isPresent() && below.isPresent() && above.get().compareTo(below.get()) >= 0) {
        throw new IllegalArgumentException("Water must be entered above the one, below the other.");
      }
    }
  }
}
