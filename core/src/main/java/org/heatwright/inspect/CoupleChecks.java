package org.heatwright.inspect;

import static org.heatwright.inspect.Walk.finding;

import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.material.Origin;
import org.heatwright.schedule.Schedule;
import org.heatwright.sensing.Drift;
import org.heatwright.sensing.FiringTolerance;
import org.heatwright.sensing.MeltCheck;
import org.heatwright.sensing.ThermocoupleType;
import org.heatwright.sensing.ToleranceClass;
import org.heatwright.units.TemperatureUnit;

/** What the display of this kiln is worth in this firing. */
final class CoupleChecks {

  /** The class of a couple that nobody asked about. Source: practice. */
  private static final ToleranceClass USUAL_CLASS = ToleranceClass.CLASS_2;

  private CoupleChecks() {}

  static Finding find(Kiln kiln, Schedule schedule) {
    Thermocouple couple = kiln.thermocouple();
    ThermocoupleType type = ThermocoupleType.valueOf(String.valueOf(couple.type()));
    ToleranceClass toleranceClass = couple.toleranceClass().orElse(USUAL_CLASS);
    FiringTolerance tolerance = FiringTolerance.of(schedule, type, toleranceClass);
    TemperatureUnit unit = schedule.unit();
    String usual =
        couple.toleranceClass().isPresent()
            ? ""
            : " (The kiln's description names no class; class 2 is the usual one.)";
    return finding(
        Severity.NOTE,
        "couple-tolerance",
        "%s; %s.%s %s"
            .formatted(
                tolerance.clause(unit),
                known(kiln, unit, tolerance.peak().tolerance().isPresent()),
                usual,
                Drift.caution(type)),
        Origin.read(
            "%s as sensor makers print it, not the standard itself; use: %s"
                .formatted(toleranceClass.standard(), Drift.origin(type).words())));
  }

  /** What is known of the offset, or how to learn it. */
  private static String known(Kiln kiln, TemperatureUnit unit, boolean vouchedFor) {
    double kelvins = kiln.thermocouple().offset().kelvins();
    if (kelvins != 0) {
      return "the kiln's description counts on the display being %s %s %s"
          .formatted(
              Wording.number(Math.abs(unit.value(kiln.thermocouple().offset()))),
              unit.differenceSymbol(),
              kelvins > 0 ? "high" : "low");
    }
    String judge =
        kiln.limit().compareTo(MeltCheck.KILN_ABOVE) > 0
            ? "a melt check (heatwright offset)"
            : "a trusted couple beside it (heatwright offset)";
    return judge + (vouchedFor ? " tells by how much" : " tells how far it is off");
  }
}
