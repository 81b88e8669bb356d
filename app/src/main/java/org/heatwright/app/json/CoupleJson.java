package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import org.heatwright.sensing.ThermocoupleType;
import org.heatwright.sensing.ToleranceClass;
import org.heatwright.units.Temperature;

/**
 * What {@code couple --json} prints. {@code millivolts} is what a meter at the terminals finds;
 * {@code toleranceKelvin} is for new wire, either way, null where the class says nothing.
 */
public record CoupleJson(
    String type,
    double celsius,
    double millivolts,
    Optional<Double> toleranceKelvin,
    double coldJunctionCelsius,
    String toleranceClass,
    List<String> notes) {

  public static CoupleJson of(
      ThermocoupleType type,
      Temperature junction,
      double millivolts,
      Optional<Double> toleranceKelvin,
      Temperature coldJunction,
      ToleranceClass toleranceClass,
      List<String> notes) {
    return new CoupleJson(
        type.name(),
        junction.celsius(),
        millivolts,
        toleranceKelvin,
        coldJunction.celsius(),
        toleranceClass.word(),
        notes);
  }
}
