package org.heatwright.keypad.register;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.heatwright.schedule.Schedule;

/**
 * What a slot holds, as far as anybody told.
 *
 * @param known how it became known first
 * @param program what it holds, or held before {@code doubt}; empty if nobody ever told
 * @param since since when that program is there; empty if nobody ever told
 * @param by who keyed it, or first read it
 * @param doubt what happened since, so that it may hold something else now
 * @param notShown of a program that was read without a plan: what its review does not show
 */
public record Holding(
    Known known,
    Optional<Schedule> program,
    Optional<Instant> since,
    Optional<Role> by,
    Optional<Ending> doubt,
    List<String> notShown) {

  /** Nobody told. */
  static final Holding UNKNOWN =
      new Holding(
          Known.NOT,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          List.of());

  public Holding {
    notShown = List.copyOf(notShown);
  }

  static Holding of(Known known, SlotEvent event, Schedule program, List<String> notShown) {
    return new Holding(
        known,
        Optional.of(program),
        Optional.of(event.at()),
        Optional.of(event.by()),
        Optional.empty(),
        notShown);
  }

  /** What it holds value for value, as far as anybody told: nothing while anything is in doubt. */
  public Optional<Schedule> certain() {
    return doubt.isPresent() || !notShown.isEmpty() ? Optional.empty() : program;
  }

  Holding doubted(Ending ending) {
    return program.isEmpty() || doubt.isPresent()
        ? this
        : new Holding(known, program, since, by, Optional.of(ending), notShown);
  }

  /** The same program, all doubt gone. */
  Holding proven() {
    return new Holding(known, program, since, by, Optional.empty(), List.of());
  }

  /** How it is known what a slot holds. */
  public enum Known {
    /** It is not. */
    NOT,
    /** Somebody says that they keyed it. */
    KEYED,
    /** Somebody read it once, without a plan; one reading can be misread. */
    LEARNED,
    /** Nobody said that they keyed it, but it was read back against a plan and was the plan. */
    READ_BACK
  }
}
