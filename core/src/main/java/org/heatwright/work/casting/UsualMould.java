package org.heatwright.work.casting;

import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * Temperature of a gypsum-bonded mould at the pour where nothing is known but the metal.
 *
 * @param usual what is planned without a value of the studio's own
 * @param range what practice ranges over
 * @param origin where the numbers come from
 */
public record UsualMould(Temperature usual, TemperatureRange range, Origin origin) {

  /** The usual value of a family; none for metals that gypsum does not bear or that we know not. */
  public static Optional<UsualMould> of(AlloyFamily family) {
    return switch (family) {
      case WHITE_GOLD -> Optional.of(celsius(650, 593, 704, Sources.KARAT_CASTING));
      case GOLD -> Optional.of(celsius(540, 427, 704, Sources.KARAT_CASTING));
      case SILVER ->
          Optional.of(
              celsius(
                  500,
                  400,
                  675,
                  Origin.read("several bench-forum values, which differ by 100 K and more")));
      case BRONZE, BRASS -> Optional.of(celsius(540, 480, 600, Origin.practice()));
      case PLATINUM, OTHER -> Optional.empty();
    };
  }

  private static UsualMould celsius(
      double usualCelsius, double fromCelsius, double toCelsius, Origin origin) {
    return new UsualMould(
        Temperature.ofCelsius(usualCelsius),
        TemperatureRange.ofCelsius(fromCelsius, toCelsius),
        origin);
  }
}
