package org.heatwright.app.files;

import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;

/**
 * What was so on the day of a firing.
 *
 * @param conditions room, start, vent, supply, known disturbances
 * @param load what stood in the kiln; empty where the file does not say
 */
public record Firing(FiringConditions conditions, Optional<Charge> load) {

  /** A usual day, load unknown. */
  public static Firing usual() {
    return new Firing(FiringConditions.usual(), Optional.empty());
  }
}
