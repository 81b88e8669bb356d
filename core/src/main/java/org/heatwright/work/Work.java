package org.heatwright.work;

import java.time.LocalDateTime;
import java.util.Optional;

/** What is to be fired and what must happen to it. The set of kinds is closed. */
public sealed interface Work permits BurnoutWork, EnamelWork, GlassWork, HeatTreatWork, SinterWork {

  /** The name files use: "burnout", "enamel", "heat-treat", "sinter", "glass". */
  String kind();

  /** When it must be ready, in the local time of the kiln's zone, if a person said so. */
  Optional<LocalDateTime> readyBy();
}
