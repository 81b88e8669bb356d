package org.heatwright.keypad.register;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.schedule.Schedule;

/**
 * Which program is in which slot of one kiln's keypad, and whether that is proven: what follows
 * from everything that was told. Immutable; nothing here knows what time it is.
 */
public final class SlotRegister {

  private final Keypad keypad;
  private final List<SlotEvent> events;
  private final Rules rules;

  private SlotRegister(Keypad keypad, List<SlotEvent> events) {
    this.keypad = Objects.requireNonNull(keypad, "keypad");
    this.events = List.copyOf(events);
    Rules last = Rules.USUAL;
    for (SlotEvent event : events) {
      if (event instanceof SlotEvent.RulesSet set) {
        last = set.rules();
      }
    }
    this.rules = last;
  }

  /**
   * @param keypad the keypad as it is described now
   * @param events everything that was told, in the order it was told
   */
  public static SlotRegister of(Keypad keypad, List<SlotEvent> events) {
    return new SlotRegister(keypad, events);
  }

  public Keypad keypad() {
    return keypad;
  }

  public Rules rules() {
    return rules;
  }

  /** Everything that was told, oldest first. */
  public List<SlotEvent> history() {
    return events;
  }

  /**
   * @param slot 1 to the keypad's slots
   */
  public SlotState slot(int slot) {
    if (slot < 1 || slot > keypad.slots()) {
      throw new IllegalArgumentException(
          "There is no slot %d: the keypad has slots 1 to %d.".formatted(slot, keypad.slots()));
    }
    return SlotState.of(slot, events);
  }

  /** All slots, in order. */
  public List<SlotState> slots() {
    return IntStream.rangeClosed(1, keypad.slots()).mapToObj(this::slot).toList();
  }

  /** Whether what a slot holds is still proven at a moment. */
  public Standing standing(int slot, Instant now) {
    return standing(slot(slot), now);
  }

  /** As the other, of a state of this register. */
  public Standing standing(SlotState state, Instant now) {
    if (state.proof().isEmpty()) {
      return Standing.NEVER;
    }
    Proof proof = state.proof().get();
    Optional<Ending> ended = state.ended();
    Instant old = proof.at().plus(Duration.ofDays(rules.goodForDays()));
    if (ended.isEmpty() && !proof.keypad().equals(keypad)) {
      ended = Optional.of(new Ending(Cause.DESCRIBED_ANEW, now));
    }
    if (ended.isEmpty() && proof.at().isAfter(now)) {
      ended = Optional.of(new Ending(Cause.CLOCK, now));
    }
    if (ended.isEmpty() && now.isAfter(old)) {
      ended = Optional.of(new Ending(Cause.AGE, old));
    }
    return new Standing(Optional.of(proof), ended);
  }

  /** What a slot holds, if nothing happened that puts it in doubt: a start for keying less. */
  public Optional<Schedule> held(int slot) {
    return slot(slot).contents().certain();
  }

  /**
   * What to know before a program is keyed into a slot.
   *
   * @param plan what is to be keyed
   * @param called what people call it
   * @param now the moment
   * @param zone for dates
   */
  public List<SlotWarning> beforeKeying(
      int slot, FittedProgram plan, String called, Instant now, ZoneId zone) {
    SlotState state = slot(slot);
    List<SlotWarning> warnings = new ArrayList<>();
    LocalDate today = now.atZone(zone).toLocalDate();
    boolean same = state.contents().program().filter(held -> isSame(held, plan)).isPresent();
    state.need().ifPresent(need -> needed(slot, need, same, today, warnings));
    if (same) {
      samePlan(state, now, zone, warnings);
      return warnings;
    }
    overwritten(state, called, now, zone, warnings);
    elsewhere(slot, plan, now, warnings);
    return warnings;
  }

  private void needed(
      int slot, Need need, boolean same, LocalDate today, List<SlotWarning> warnings) {
    if (same) {
      return; // the needed program is the one to key
    }
    if (need.on(today)) {
      warnings.add(
          new SlotWarning(
              SlotWarning.Level.STOP,
              "Slot %d is needed%s (%s): do not overwrite it; choose another slot."
                  .formatted(
                      slot,
                      need.until().map(d -> " until " + DayWords.day(d)).orElse(""),
                      need.what())));
    } else {
      warnings.add(
          new SlotWarning(
              SlotWarning.Level.NOTE,
              "Slot %d was needed until %s (%s); that day has passed."
                  .formatted(slot, need.until().map(DayWords::day).orElse(""), need.what())));
    }
  }

  private void samePlan(SlotState state, Instant now, ZoneId zone, List<SlotWarning> warnings) {
    String name = state.contents().program().orElseThrow().name();
    Standing standing = standing(state, now);
    if (state.contents().doubt().isPresent()) {
      warnings.add(
          new SlotWarning(
              SlotWarning.Level.NOTE,
              "Slot %d held this program (“%s”), but %s: read it back first, it may need no key."
                  .formatted(state.slot(), name, state.contents().doubt().get().cause().words())));
    } else {
      warnings.add(
          new SlotWarning(
              SlotWarning.Level.NOTE,
              "Slot %d already holds this program (“%s”). %s %s"
                  .formatted(
                      state.slot(),
                      name,
                      standing.sentence(now, zone),
                      standing.kind() == Standing.Kind.GOOD
                          ? "Nothing needs keying."
                          : "Read it back instead of keying it.")));
    }
  }

  private void overwritten(
      SlotState state, String called, Instant now, ZoneId zone, List<SlotWarning> warnings) {
    Holding contents = state.contents();
    if (contents.program().isEmpty()) {
      warnings.add(
          new SlotWarning(
              SlotWarning.Level.WARN,
              "What slot %d holds is not known, and keying overwrites it. Read it once to learn it, if anybody may need it."
                  .formatted(state.slot())));
      return;
    }
    String name = contents.program().get().name();
    if (contents.doubt().isPresent()) {
      Ending doubt = contents.doubt().get();
      warnings.add(
          new SlotWarning(
              SlotWarning.Level.WARN,
              "Slot %d held “%s” until %s (%s); what it holds now is not known, and keying “%s” overwrites it."
                  .formatted(
                      state.slot(),
                      name,
                      DayWords.day(doubt.at(), zone),
                      doubt.cause().words(),
                      called)));
      return;
    }
    Standing standing = standing(state, now);
    warnings.add(
        new SlotWarning(
            standing.kind() == Standing.Kind.GOOD ? SlotWarning.Level.NOTE : SlotWarning.Level.WARN,
            "Slot %d holds “%s” since %s, and keying “%s” overwrites it. %s The register keeps its values."
                .formatted(
                    state.slot(),
                    name,
                    contents.since().map(at -> DayWords.day(at, zone)).orElse("an unknown day"),
                    called,
                    standing.sentence(now, zone))));
  }

  /** Where else the plan already is, proven. */
  private void elsewhere(int slot, FittedProgram plan, Instant now, List<SlotWarning> warnings) {
    for (SlotState other : slots()) {
      if (other.slot() != slot
          && other.contents().certain().filter(held -> isSame(held, plan)).isPresent()
          && standing(other, now).kind() == Standing.Kind.GOOD) {
        warnings.add(
            new SlotWarning(
                SlotWarning.Level.NOTE,
                "Slot %d already holds this program, proven: nothing needs keying there."
                    .formatted(other.slot())));
        return;
      }
    }
  }

  /** Whether a slot with this program shows the very values of the plan. */
  private boolean isSame(Schedule held, FittedProgram plan) {
    FittedProgram fitted = KeypadFit.fit(held, keypad);
    return fitted.fits() && fitted.unit() == plan.unit() && fitted.values().equals(plan.values());
  }
}
