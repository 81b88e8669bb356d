package org.heatwright.work.causes;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;

/** What an inspection found, as clues: of the plan before the firing, of what ran after it. */
public final class InspectedFacts {

  private static final Set<String> HOT =
      Set.of(
          "above-work-limit",
          "near-work-limit",
          "binder-limit-inside",
          "overshoot-over-window",
          "overshoot-out-of-window",
          "above-kiln-limit",
          "hottest",
          "solidus",
          "devitrification");

  private static final Set<String> SHORT =
      Set.of(
          "core-not-burnt-out",
          "no-pour-soak",
          "short-pour-soak",
          "not-at-pour-temperature",
          "short-top-hold",
          "short-soak",
          "short-sintering",
          "short-dry-hold",
          "work-not-dry",
          "work-not-ready",
          "hold-counts-while-heating",
          "target-not-reached",
          "time-at-heat",
          "density",
          "strength",
          "binder",
          "time-at-temperature",
          "piece-heat",
          "flow",
          "slump");

  private static final Set<String> FAST =
      Set.of(
          "wet-ramp-too-fast",
          "inversion-too-fast",
          "faster-than-data-sheet",
          "steam-too-fast",
          "core-boils",
          "core-lags-boiling",
          "core-lags-cristobalite",
          "core-lags-quartz",
          "wax-burns-before-it-runs",
          "glass-cracks",
          "heating-tension",
          "binder-too-fast");

  private static final Set<String> COOLS_FAST =
      Set.of(
          "cools-too-fast",
          "cold-glass-cools-too-fast",
          "short-anneal-soak",
          "anneal-soak",
          "left-stress",
          "slow-range-difference");

  private InspectedFacts() {}

  /** What was found in the plan before it was fired; what was not found is known not to be so. */
  public static Facts ofPlan(List<Finding> findings) {
    Facts facts = Facts.none();
    facts = told(facts, Clue.PLAN_HOT, findings, HOT, "The plan's inspection said: ");
    facts = told(facts, Clue.PLAN_SHORT, findings, SHORT, "The plan's inspection said: ");
    facts = told(facts, Clue.PLAN_FAST, findings, FAST, "The plan's inspection said: ");
    return told(facts, Clue.PLAN_COOLS_FAST, findings, COOLS_FAST, "The plan's inspection said: ");
  }

  /** What is found in what ran, judged by what the display said. */
  public static Facts ofWhatRan(List<Finding> findings) {
    Facts facts = Facts.none();
    facts = told(facts, Clue.INSIDE_HOT, findings, HOT, "By the readings: ");
    facts = told(facts, Clue.INSIDE_SHORT, findings, SHORT, "By the readings: ");
    Facts fast = told(facts, Clue.INSIDE_STRAINED, findings, FAST, "By the readings: ");
    boolean strained = fast.of(Clue.INSIDE_STRAINED).map(Facts.Fact::isSo).orElse(false);
    return strained
        ? fast
        : told(facts, Clue.INSIDE_STRAINED, findings, COOLS_FAST, "By the readings: ");
  }

  private static Facts told(
      Facts facts, Clue clue, List<Finding> findings, Set<String> codes, String lead) {
    Optional<Finding> first =
        findings.stream()
            .filter(f -> f.severity() != Severity.NOTE && codes.contains(f.code()))
            .findFirst();
    return first
        .map(f -> facts.with(clue, true, lead + f.message()))
        .orElseGet(() -> facts.with(clue, false, capital(clue)));
  }

  private static String capital(Clue clue) {
    return org.heatwright.inspect.Wording.capital(clue.words(false)) + ".";
  }
}
