package org.heatwright.keypad;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Was it keyed right?
 *
 * @param outcome proven, or not and why
 * @param verdicts one for each value of the plan that the review shows, then the extra ones
 * @param findings what went wrong as a whole, in words; empty if all match
 * @param correction the one thing to key now, if something is wrong
 * @param figures check figures of the plan beside those of what was shown
 * @param unproven what this read-back cannot show, in words; empty only if it shows all
 */
public record ReadbackReport(
    Outcome outcome,
    List<Verdict> verdicts,
    List<String> findings,
    Optional<String> correction,
    List<Figure> figures,
    List<String> unproven) {

  public ReadbackReport {
    Objects.requireNonNull(outcome, "outcome");
    verdicts = List.copyOf(verdicts);
    findings = List.copyOf(findings);
    Objects.requireNonNull(correction, "correction");
    figures = List.copyOf(figures);
    unproven = List.copyOf(unproven);
  }

  /** What the read-back shows. */
  public enum Outcome {
    /** Every value that the review shows is the plan's; {@code unproven} says what it does not. */
    PROVEN,
    /** Every value shown is the plan's, but the unit in force must still be settled. */
    UNIT_OPEN,
    /** Something is wrong, missing, extra or swapped. */
    NOT_PROVEN
  }

  /**
   * About one value.
   *
   * @param position 1-based, in display order
   * @param place "segment 2 target"
   * @param expected what it must read; empty text for an extra value
   * @param shown what it reads; empty text for a missing one
   * @param kind the verdict
   * @param message in words
   * @param correction what to key here, if it is wrong
   */
  public record Verdict(
      int position,
      String place,
      String expected,
      String shown,
      VerdictKind kind,
      String message,
      Optional<String> correction) {}

  /** What is so about one value. */
  public enum VerdictKind {
    MATCH,
    WRONG,
    /** Not shown though the review must show it, or its segment is not in the slot. */
    MISSING,
    /** Shown though the plan has no such value. */
    EXTRA,
    /** Right in itself but at another place, because a segment before it is missing or extra. */
    MOVED,
    /** Two unequal values, or two segments, have changed places. */
    SWAPPED,
    /** The plan's value in the other unit. */
    WRONG_UNIT,
    /** Hours where minutes belong, or the reverse. */
    HOURS_FOR_MINUTES,
    /** The text means nothing, or more than one thing, in this keypad's form. */
    UNREADABLE
  }

  /**
   * A check figure.
   *
   * @param name "sum of targets"
   * @param planned of the plan
   * @param shown of what the display showed; "?" where it cannot be told
   * @param agrees whether they are the same
   */
  public record Figure(String name, String planned, String shown, boolean agrees) {}
}
