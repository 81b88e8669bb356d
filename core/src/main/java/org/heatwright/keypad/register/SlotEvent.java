package org.heatwright.keypad.register;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.schedule.Schedule;

/** Something that happened at a keypad, as a person told it. */
public sealed interface SlotEvent {

  /** When it was told. */
  Instant at();

  /** Who told it. */
  Role by();

  /** Whether it has to do with a slot. */
  boolean concerns(int slot);

  /** Something at one slot. */
  sealed interface OfSlot extends SlotEvent {
    int slot();

    @Override
    default boolean concerns(int asked) {
      return asked == slot();
    }
  }

  /** Something at the whole keypad. */
  sealed interface OfAll extends SlotEvent {
    @Override
    default boolean concerns(int asked) {
      return true;
    }
  }

  /**
   * A program was keyed in, so somebody says.
   *
   * @param program as the keypad expresses it
   */
  record Keyed(Instant at, Role by, int slot, Schedule program) implements OfSlot {
    public Keyed {
      Objects.requireNonNull(program, "program");
    }
  }

  /** A slot was read back against a plan, whatever came of it. */
  record ReadBack(Instant at, Role by, Evidence evidence) implements OfSlot {
    public ReadBack {
      Objects.requireNonNull(evidence, "evidence");
    }

    @Override
    public int slot() {
      return evidence.slot();
    }

    public Optional<Proof> proof() {
      return Proof.of(evidence, at, by);
    }
  }

  /**
   * A slot was read once, without a plan, to learn what it holds.
   *
   * @param program what its review shows
   * @param notShown what it does not show, a sentence each
   */
  record Learned(Instant at, Role by, int slot, Schedule program, List<String> notShown)
      implements OfSlot {
    public Learned {
      notShown = List.copyOf(notShown);
    }
  }

  /** Values were changed at the keypad; to what, nobody told. */
  record Edited(Instant at, Role by, int slot) implements OfSlot {}

  /** The slot's program was run to its end, or stopped. */
  record Ran(Instant at, Role by, int slot) implements OfSlot {}

  /**
   * Somebody needs the slot's program.
   *
   * @param what for, not blank
   * @param until the last day; empty for good
   */
  record Protected(Instant at, Role by, int slot, String what, Optional<LocalDate> until)
      implements OfSlot {
    public Protected {
      Objects.requireNonNull(until, "until");
      if (what.isBlank()) {
        throw new IllegalArgumentException("What is the program needed for?");
      }
    }
  }

  /** Nobody needs the slot's program any more. */
  record Released(Instant at, Role by, int slot) implements OfSlot {}

  record UnitSwitched(Instant at, Role by) implements OfAll {}

  record PowerCut(Instant at, Role by) implements OfAll {}

  record FiredByOther(Instant at, Role by) implements OfAll {}

  /** The keypad was replaced, or reset to what it came with. */
  record Reset(Instant at, Role by) implements OfAll {}

  /** From now on other rules hold. */
  record RulesSet(Instant at, Role by, Rules rules) implements OfAll {
    public RulesSet {
      Objects.requireNonNull(rules, "rules");
    }
  }
}
