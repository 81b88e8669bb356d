package org.heatwright.keypad.register;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.ReadbackReport;
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.keypad.UnitCheck;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;

/**
 * That a slot held a program at one moment, as far as its keypad's review shows. It can be made
 * only from a read-back of that slot in which every value shown was the plan's and the unit was not
 * open.
 */
public final class Proof {

  private final Instant at;
  private final Role by;
  private final Evidence evidence;
  private final ReadbackReport report;
  private final TemperatureUnit unit;
  private final UnitGround unitGround;

  private Proof(Instant at, Role by, Evidence evidence, ReadbackReport report) {
    this.at = at;
    this.by = by;
    this.evidence = evidence;
    this.report = report;
    this.unit = evidence.program().unit();
    this.unitGround = ground(evidence, unit);
  }

  /**
   * @param at when it was read back
   * @param by who read it
   * @return empty if the read-back does not prove the program, or was of another slot
   */
  public static Optional<Proof> of(Evidence evidence, Instant at, Role by) {
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(by, "by");
    if (!evidence.ofItsSlot() || !evidence.program().fits()) {
      return Optional.empty();
    }
    ReadbackReport report = evidence.report();
    return report.outcome() == Outcome.PROVEN
        ? Optional.of(new Proof(at, by, evidence, report))
        : Optional.empty();
  }

  private static UnitGround ground(Evidence evidence, TemperatureUnit unit) {
    Keypad.UnitSetting units = evidence.keypad().units();
    if (!units.switchable()) {
      return UnitGround.FIXED;
    }
    if (units.asked().isPresent()) {
      return units.asked().orElseThrow().review() != Keypad.Position.HIDDEN
          ? UnitGround.PROGRAM
          : evidence.shown().unit().isPresent()
                  && (units.shownAt().contains(Keypad.UnitSetting.ShownAt.REVIEW)
                      || units.shownAt().contains(Keypad.UnitSetting.ShownAt.ENTRY))
              ? UnitGround.SIGN
              : UnitGround.REFUSED_IN_OTHER;
    }
    if (evidence.unitCheck().filter((UnitCheck.Result c) -> c.settles(unit)).isPresent()) {
      return UnitGround.COLD_KILN;
    }
    return evidence.shown().unit().isPresent() && !units.shownAt().isEmpty()
        ? UnitGround.SIGN
        : UnitGround.REFUSED_IN_OTHER;
  }

  public Instant at() {
    return at;
  }

  public Role by() {
    return by;
  }

  public int slot() {
    return evidence.slot();
  }

  /** What the slot held. */
  public Schedule program() {
    return evidence.planned();
  }

  /** The keypad as it was described when it was read. */
  public Keypad keypad() {
    return evidence.keypad();
  }

  /** The unit that the numbers are in. */
  public TemperatureUnit unit() {
    return unit;
  }

  public UnitGround unitGround() {
    return unitGround;
  }

  /** The values that were read and are the plan's: "segment 2 target 730", in display order. */
  public List<String> covers() {
    return report.verdicts().stream().map(v -> v.place() + " " + v.expected()).toList();
  }

  /** What this proof says nothing about, a sentence each. */
  public List<String> unproven() {
    return report.unproven();
  }

  /** Whether nothing is left open. */
  public boolean whole() {
    return report.unproven().isEmpty();
  }

  /** "proven", or only as far as the review shows. */
  public String words() {
    return whole() ? "proven" : "proven as far as its review shows";
  }
}
