package org.heatwright.sensing;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/**
 * What a tolerance class means for one firing: how far the truth may be from each target with a new
 * couple. Drift, the controller and where the tip is come on top.
 *
 * @param targets one a segment, in order
 */
public record FiringTolerance(
    ThermocoupleType type, ToleranceClass toleranceClass, List<AtTarget> targets) {

  /**
   * @param segment 1-based
   * @param target what the display shows
   * @param tolerance either way, K; empty where the class says nothing
   */
  public record AtTarget(int segment, Temperature target, Optional<TemperatureChange> tolerance) {

    /** The coolest that the couple can be when the display shows the target. */
    public Optional<Temperature> coolest() {
      return tolerance.map(t -> target.plus(TemperatureChange.ofKelvins(-t.kelvins())));
    }

    /** The hottest that the couple can be when the display shows the target. */
    public Optional<Temperature> hottest() {
      return tolerance.map(target::plus);
    }
  }

  public FiringTolerance {
    Objects.requireNonNull(type, "type");
    Objects.requireNonNull(toleranceClass, "toleranceClass");
    targets = List.copyOf(targets);
    if (targets.isEmpty()) {
      throw new IllegalArgumentException("A firing has at least one target.");
    }
  }

  public static FiringTolerance of(
      Schedule schedule, ThermocoupleType type, ToleranceClass toleranceClass) {
    List<AtTarget> targets = new ArrayList<>();
    for (int i = 0; i < schedule.segments().size(); i++) {
      Temperature target = schedule.segments().get(i).target();
      OptionalDouble kelvins = ToleranceClass.toleranceKelvin(type, toleranceClass, target);
      targets.add(
          new AtTarget(
              i + 1,
              target,
              kelvins.isPresent()
                  ? Optional.of(TemperatureChange.ofKelvins(kelvins.getAsDouble()))
                  : Optional.empty()));
    }
    return new FiringTolerance(type, toleranceClass, targets);
  }

  /** The widest tolerance of the firing; empty where the class says nothing about any target. */
  public Optional<TemperatureChange> widest() {
    return targets.stream()
        .flatMap(target -> target.tolerance().stream())
        .max(TemperatureChange::compareTo);
  }

  /** The hottest target. */
  public AtTarget peak() {
    return targets.stream().max((a, b) -> a.target().compareTo(b.target())).orElseThrow();
  }

  /**
   * How far a new couple may be off at the hottest target, a clause without its full stop, in the
   * unit that the display shows: "A class 2 type K couple may be 6 K off at 800 °C".
   */
  public String clause(TemperatureUnit unit) {
    String at = number(unit.value(peak().target())) + " " + unit.symbol();
    return peak()
        .tolerance()
        .map(
            tolerance ->
                "A %s type %s couple may be %s %s off at %s"
                    .formatted(
                        toleranceClass.words(),
                        type,
                        number(roundedUp(unit.value(tolerance))),
                        unit.differenceSymbol(),
                        at))
        .orElseGet(
            () ->
                "No %s couple of type %s is vouched for at %s"
                    .formatted(toleranceClass.words(), type, at));
  }

  /** To whole degrees from one on; never less than the class says. */
  private static double roundedUp(double value) {
    return value < 1 ? value : Math.ceil(value - 1e-6);
  }

  /** One sentence about the hottest target, in the unit that the display shows. */
  public String sentence(TemperatureUnit unit) {
    AtTarget peak = peak();
    String shown = number(unit.value(peak.target())) + " " + unit.symbol();
    return peak.tolerance()
        .map(
            tolerance ->
                "When a new %s type %s shows %s, it is between %s and %s %s (%s K either way); used wire may be further off."
                    .formatted(
                        toleranceClass.words(),
                        type,
                        shown,
                        number(unit.value(peak.coolest().orElseThrow())),
                        number(unit.value(peak.hottest().orElseThrow())),
                        unit.symbol(),
                        number(tolerance.kelvins())))
        .orElseGet(
            () ->
                "%s %s says nothing about type %s at %s."
                    .formatted(toleranceClass.standard(), toleranceClass.words(), type, shown));
  }

  private static String number(double value) {
    return Words.oneDecimal(value);
  }
}
