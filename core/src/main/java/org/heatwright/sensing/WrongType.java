package org.heatwright.sensing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/**
 * What a controller shows when it takes its couple for another type, and the way back from what was
 * seen to what may be wrong.
 */
public final class WrongType {

  private WrongType() {}

  /**
   * @param truth the temperature at the couple, from something trusted (a melt check, a reference
   *     thermometer beside it)
   * @param shown what the display said then
   */
  public record Comparison(Temperature truth, Temperature shown) {}

  /**
   * A setting that explains what was seen.
   *
   * @param sensor the couple that is fitted
   * @param leadsReversed its two leads are swapped: the display falls as the kiln heats
   * @param largestMisfit the largest difference that stays unexplained, K, zero or more
   */
  public record Suspect(
      ThermocoupleType sensor, boolean leadsReversed, TemperatureChange largestMisfit) {

    /** One sentence for people. */
    public String sentence(ThermocoupleType setTo) {
      return leadsReversed
          ? "The leads of the type %s couple may be swapped (explains the readings to %s)."
              .formatted(sensor, Words.kelvins(largestMisfit))
          : "The controller is set to type %s, the couple may be type %s (explains the readings to %s)."
              .formatted(setTo, sensor, Words.kelvins(largestMisfit));
    }
  }

  /**
   * What the display shows: the emf of one type, cold junction and curve of another.
   *
   * @param sensor the couple that is fitted
   * @param setTo the type that the controller is set to
   * @param truth the temperature at the couple
   * @param coldJunction the temperature of the controller's terminals
   * @return empty where either function ends; the controller then shows a fault
   */
  public static Optional<Temperature> shown(
      ThermocoupleType sensor,
      ThermocoupleType setTo,
      Temperature truth,
      Temperature coldJunction) {
    return shown(sensor, setTo, truth, coldJunction, 1);
  }

  /** What the display shows when the leads of the right couple are swapped; empty as above. */
  public static Optional<Temperature> shownReversed(
      ThermocoupleType type, Temperature truth, Temperature coldJunction) {
    return shown(type, type, truth, coldJunction, -1);
  }

  private static Optional<Temperature> shown(
      ThermocoupleType sensor,
      ThermocoupleType setTo,
      Temperature truth,
      Temperature coldJunction,
      int sign) {
    if (!sensor.reaches(truth) || !sensor.reaches(coldJunction) || !setTo.reaches(coldJunction)) {
      return Optional.empty();
    }
    return setTo.read(
        sign * sensor.millivolts(truth, coldJunction) + setTo.millivolts(coldJunction));
  }

  /**
   * What may be wrong, the best explanation first. Nothing is suspected when the display is right
   * within {@code agreement}. One comparison is a hint, two far apart are nearly proof: only a
   * wrong type is off by its own amount at each.
   *
   * @param seen one or more comparisons
   * @param setTo the type that the controller is set to
   * @param coldJunction the temperature of the controller's terminals
   * @param agreement how well an explanation must fit every comparison, K, above zero: the
   *     reference thermometer's error and the couple's tolerance together
   */
  public static List<Suspect> suspects(
      List<Comparison> seen,
      ThermocoupleType setTo,
      Temperature coldJunction,
      TemperatureChange agreement) {
    if (seen.isEmpty() || !(agreement.kelvins() > 0)) {
      throw new IllegalArgumentException(
          "A diagnosis needs at least one comparison and an agreement above 0 K (%d, %s K)."
              .formatted(seen.size(), agreement.kelvins()));
    }
    List<Suspect> suspects = new ArrayList<>();
    for (ThermocoupleType sensor : ThermocoupleType.values()) {
      suspect(seen, sensor, setTo, coldJunction, 1).ifPresent(suspects::add);
    }
    suspect(seen, setTo, setTo, coldJunction, -1).ifPresent(suspects::add);
    suspects.removeIf(suspect -> suspect.largestMisfit().compareTo(agreement) > 0);
    boolean nothingWrong =
        suspects.stream().anyMatch(each -> each.sensor() == setTo && !each.leadsReversed());
    if (nothingWrong) {
      return List.of();
    }
    suspects.sort(Comparator.comparing(Suspect::largestMisfit));
    return List.copyOf(suspects);
  }

  private static Optional<Suspect> suspect(
      List<Comparison> seen,
      ThermocoupleType sensor,
      ThermocoupleType setTo,
      Temperature coldJunction,
      int sign) {
    double misfitKelvins = 0;
    for (Comparison each : seen) {
      Optional<Temperature> shown = shown(sensor, setTo, each.truth(), coldJunction, sign);
      if (shown.isEmpty()) {
        return Optional.empty();
      }
      misfitKelvins = Math.max(misfitKelvins, Math.abs(shown.get().minus(each.shown()).kelvins()));
    }
    return Optional.of(new Suspect(sensor, sign < 0, TemperatureChange.ofKelvins(misfitKelvins)));
  }
}
