package org.heatwright.app.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * The log of one firing of a kiln on the shelf, with what ran; all of it the text its owner
 * brought.
 *
 * @param id UUID as text
 * @param name what people call the firing
 * @param date when it was fired
 * @param csv the log
 * @param schedule what ran, YAML
 * @param firing what was so on that day, YAML; empty for a usual day and an empty kiln
 * @param part what it has had in what was learned of the kiln
 * @param missedKelvins by how much the last fit missed its display, root mean square, K; empty
 *     before
 * @param added when it was brought, to the millisecond
 */
public record FiringLog(
    String id,
    String name,
    LocalDate date,
    String csv,
    String schedule,
    String firing,
    Part part,
    OptionalDouble missedKelvins,
    Instant added) {

  /** What a log has had in what was learned. */
  public enum Part {
    /** Nothing was learned since it was brought. */
    NEW,
    /** What is known rests on it. */
    TAUGHT,
    /** The fit could not explain it and left it out. */
    ODD,
    /** A person put it aside. */
    ASIDE;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
