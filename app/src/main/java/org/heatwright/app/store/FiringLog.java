package org.heatwright.app.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
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
 * @param showed what the fit read from it
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
    Showed showed,
    Instant added) {

  /**
   * What a log showed when it was learned from.
   *
   * @param happened what went wrong in the firing, a sentence each
   * @param notShown what its display could not have shown, a sentence each
   */
  public record Showed(List<String> happened, List<String> notShown) {

    /** Of a log from which nothing was learned. */
    public static final Showed NOTHING = new Showed(List.of(), List.of());

    public Showed {
      happened = List.copyOf(happened);
      notShown = List.copyOf(notShown);
    }
  }

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

  /** The same log after something was learned with it or without it. */
  public FiringLog after(Part newPart, OptionalDouble missed, Showed read) {
    return new FiringLog(id, name, date, csv, schedule, firing, newPart, missed, read, added);
  }
}
