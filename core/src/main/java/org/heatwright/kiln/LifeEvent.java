package org.heatwright.kiln;

import java.time.LocalDate;

/** Something that changed the kiln for good: what was learned before may no longer hold. */
public record LifeEvent(LocalDate date, What what) {
  /** The kinds of change. */
  public enum What {
    ELEMENTS_REPLACED,
    THERMOCOUPLE_REPLACED,
    OFFSET_CHANGED,
    DOOR_RESEALED,
    NOTE
  }
}
