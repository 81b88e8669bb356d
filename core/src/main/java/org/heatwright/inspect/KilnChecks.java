package org.heatwright.inspect;

import static org.heatwright.inspect.Walk.finding;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.heatwright.keypad.FitNote;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.kiln.Circuit;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.schedule.Schedule;

/** What the nameplate, the circuit and the keypad say against a schedule. */
final class KilnChecks {

  /** A load of so long counts as continuous. */
  private static final Duration CONTINUOUS = Duration.ofHours(3);

  private KilnChecks() {}

  static List<Finding> find(Kiln kiln, Walk walk, Schedule schedule) {
    List<Finding> findings = new ArrayList<>();
    for (Walk.Step step : walk.steps()) {
      if (step.segment().target().compareTo(kiln.limit()) > 0) {
        findings.add(
            finding(
                Severity.STOP,
                "above-kiln-limit",
                step,
                "The target %s is above the limit of %s, %s: elements and lining would suffer. Lower the target or use a hotter kiln."
                    .formatted(
                        walk.target(step), kiln.name(), Wording.of(kiln.limit(), walk.unit())),
                Origin.own("kiln description")));
      }
    }
    kiln.circuit().ifPresent(circuit -> onCircuit(kiln, circuit, walk, schedule, findings));
    return findings;
  }

  private static void onCircuit(
      Kiln kiln, Circuit circuit, Walk walk, Schedule schedule, List<Finding> findings) {
    double amperes = kiln.element().suppliedAmperes();
    if (amperes > circuit.limitAmperes()) {
      findings.add(
          finding(
              Severity.STOP,
              "circuit-overloaded",
              "At full power %s draws %s A, more than the %s A of circuit %s: its breaker trips, perhaps only in the night. Use a bigger circuit."
                  .formatted(
                      kiln.name(),
                      Wording.number(amperes),
                      Wording.number(circuit.limitAmperes()),
                      circuit.name()),
              Origin.derived("rated power at the supply's voltage")));
    } else if (amperes > circuit.continuousAmperes()
        && walk.steps().stream().anyMatch(s -> s.rises())
        && schedule.nominalTime(walk.steps().get(0).from()).total().compareTo(CONTINUOUS) >= 0) {
      findings.add(
          finding(
              Severity.NOTE,
              "circuit-near-limit",
              "At full power %s draws %s A, over 80 %% of the %s A of circuit %s for three hours or more. US-style practice wants a %s for that; your local code decides. Run nothing else on it."
                  .formatted(
                      kiln.name(),
                      Wording.number(amperes),
                      Wording.number(circuit.limitAmperes()),
                      circuit.name(),
                      biggerCircuit(amperes)),
              Origin.read("electrical pages on the US rule for continuous loads (80 %)")));
    }
  }

  private static String biggerCircuit(double amperes) {
    OptionalDouble breaker = Circuit.breakerForContinuousLoadAmperes(amperes);
    return breaker.isPresent()
        ? "circuit of %s A".formatted(Wording.number(breaker.getAsDouble()))
        : "bigger circuit";
  }

  /** The keypad's own words on what it cannot express, rounds or wants set. */
  static List<Finding> find(Keypad keypad, Schedule schedule) {
    return KeypadFit.fit(schedule, keypad).notes().stream().map(KilnChecks::fitFinding).toList();
  }

  private static Finding fitFinding(FitNote note) {
    return new Finding(
        switch (note.kind()) {
          case REFUSED -> Severity.STOP;
          case LIMITED -> Severity.WARN;
          case ROUNDED, CONVERTED, TOLD -> Severity.NOTE;
        },
        switch (note.kind()) {
          case REFUSED -> "keypad-refuses";
          case LIMITED -> "keypad-limits";
          case ROUNDED -> "keypad-rounds";
          case CONVERTED -> "keypad-converts";
          case TOLD -> "keypad-tells";
        },
        note.segment(),
        note.message(),
        Origin.own("keypad description"));
  }
}
