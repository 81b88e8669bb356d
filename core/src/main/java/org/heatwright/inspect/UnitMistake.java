package org.heatwright.inspect;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * Numbers that make no sense in the schedule's unit but do in the other one. What makes sense for
 * the work is never taken for a mistake.
 */
final class UnitMistake {

  static final String CODE = "unit-mistaken";

  /** No small kiln with wire elements goes beyond. {@code estimate:} */
  private static final Temperature ANY_KILN = Temperature.ofCelsius(1350);

  /** A target below is no firing, so reading a number so is no cure. {@code estimate:} */
  private static final Temperature LEAST_TARGET = Temperature.ofCelsius(60);

  /**
   * Below this peak a schedule without known work is not asked about its unit. {@code estimate:}
   */
  private static final Temperature LEAST_PEAK = Temperature.ofCelsius(200);

  private static final Origin ARITHMETIC = Origin.derived("conversion between °C and °F");

  private UnitMistake() {}

  static List<Finding> find(Inspection inspection, Walk walk) {
    Temperature ceiling = ceiling(inspection);
    TemperatureUnit unit = walk.unit();
    List<Finding> findings = new ArrayList<>();
    for (Walk.Step step : walk.steps()) {
      Temperature meant = step.segment().target();
      Temperature other = inOtherUnit(meant, unit);
      TemperatureRange sensible = sensible(inspection, walk, step, ceiling);
      boolean senseless = meant.compareTo(ceiling) > 0 || !sensible.contains(meant);
      if (senseless && sensible.contains(other) && other.compareTo(ceiling) <= 0) {
        findings.add(
            Walk.finding(Severity.STOP, CODE, step, message(inspection, meant, unit), ARITHMETIC));
      }
    }
    if (findings.isEmpty() && inspection.demands().isEmpty()) {
      unproven(walk, inspection.schedule().peak(), ceiling).ifPresent(findings::add);
    }
    return findings;
  }

  private static String message(Inspection inspection, Temperature meant, TemperatureUnit unit) {
    String number = Wording.number(unit.value(meant));
    TemperatureUnit other = unit.other();
    return "%s reads like %s: %s %s is %s, but the schedule is in %s, where it means %s%s. Settle the unit before anything is keyed."
        .formatted(
            number,
            other.symbol(),
            number,
            other.symbol(),
            whole(inOtherUnit(meant, unit), unit),
            unit.symbol(),
            whole(meant, TemperatureUnit.CELSIUS),
            inspection.demands().map(d -> ", no temperature for this " + d.work()).orElse(""));
  }

  private static Optional<Finding> unproven(Walk walk, Temperature peak, Temperature ceiling) {
    Temperature other = inOtherUnit(peak, walk.unit());
    boolean bothFit =
        other.compareTo(LEAST_PEAK) >= 0
            && other.compareTo(ceiling) <= 0
            && peak.compareTo(LEAST_PEAK) >= 0
            && peak.compareTo(ceiling) <= 0;
    if (!bothFit) {
      return Optional.empty();
    }
    String number = Wording.number(walk.unit().value(peak));
    return Optional.of(
        Walk.finding(
            Severity.NOTE,
            "unit-unproven",
            "The peak %s makes sense in both units (%s °C, or %s °F which is %s). Read the cold kiln's display against a thermometer to know which one the keypad is in, or name the work."
                .formatted(
                    number,
                    number,
                    number,
                    whole(
                        TemperatureUnit.FAHRENHEIT.temperature(walk.unit().value(peak)),
                        TemperatureUnit.CELSIUS)),
            ARITHMETIC));
  }

  private static String whole(Temperature temperature, TemperatureUnit unit) {
    return "%.0f %s".formatted(unit.value(temperature), unit.symbol());
  }

  private static TemperatureRange sensible(
      Inspection inspection, Walk walk, Walk.Step step, Temperature ceiling) {
    if (inspection.demands().isPresent()) {
      Demands demands = inspection.demands().get();
      if (demands.pourSoak().isPresent() && step == walk.last() && walk.steps().size() > 1) {
        return demands.last();
      }
      if (step.segment().target().equals(inspection.schedule().peak())) {
        return demands.peak();
      }
      if (step == walk.last()) {
        return demands.last(); // what a kiln is opened at is no firing temperature
      }
    }
    return new TemperatureRange(
        LEAST_TARGET, ceiling.compareTo(LEAST_TARGET) > 0 ? ceiling : LEAST_TARGET);
  }

  private static Temperature ceiling(Inspection inspection) {
    Temperature ceiling = ANY_KILN;
    if (inspection.kiln().isPresent()) {
      ceiling = inspection.kiln().get().limit();
    }
    Optional<Temperature> works =
        inspection.demands().flatMap(Demands::firmCeiling).map(Demands.Ceiling::limit);
    return works.isPresent() && works.get().compareTo(ceiling) < 0 ? works.get() : ceiling;
  }

  private static Temperature inOtherUnit(Temperature meant, TemperatureUnit unit) {
    double number = unit.value(meant);
    // A Fahrenheit number far below zero is below absolute zero in Celsius; it is no target.
    return unit.other()
        .temperature(Math.max(number, unit.other().value(Temperature.ofCelsius(-200))));
  }
}
