package org.heatwright.work;

import java.time.Duration;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;

/**
 * What the maker's data sheet of the investment or the enamel says. Whatever it names goes before
 * Heatwright's rule of practice; its own limit goes before everything it names.
 *
 * @param max never hotter than this
 * @param dry temperature of the drying hold of a mould
 * @param dryHold least drying hold
 * @param top burnout or firing temperature
 * @param topHold hold at that temperature
 * @param fastestRise fastest rise anywhere
 * @param fastestWetRise fastest rise while the mould is wet (below about 200 °C)
 * @param pourSoak least hold at the pour temperature
 */
public record DataSheet(
    Optional<Temperature> max,
    Optional<Temperature> dry,
    Optional<Duration> dryHold,
    Optional<Temperature> top,
    Optional<Duration> topHold,
    Optional<HeatingRate> fastestRise,
    Optional<HeatingRate> fastestWetRise,
    Optional<Duration> pourSoak) {

  private static final Duration LONGEST_HOLD = Duration.ofHours(48);

  public DataSheet {
    Objects.requireNonNull(fastestRise, "fastestRise");
    Objects.requireNonNull(fastestWetRise, "fastestWetRise");
    requireSensible("max", max, 100, 1400);
    requireSensible("dry", dry, 60, 350);
    requireSensible("top", top, 100, 1400);
    requireHold("dry hold", dryHold);
    requireHold("top hold", topHold);
    requireHold("pour soak", pourSoak);
  }

  /** A sheet that says nothing. */
  public static DataSheet none() {
    return new DataSheet(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  /** A sheet that names a limit and nothing else. */
  public static DataSheet ofMax(Temperature max) {
    return none().withMax(max);
  }

  public DataSheet withMax(Temperature newMax) {
    return new DataSheet(
        Optional.of(newMax), dry, dryHold, top, topHold, fastestRise, fastestWetRise, pourSoak);
  }

  public DataSheet withDry(Temperature newDry, Duration newDryHold) {
    return new DataSheet(
        max,
        Optional.of(newDry),
        Optional.of(newDryHold),
        top,
        topHold,
        fastestRise,
        fastestWetRise,
        pourSoak);
  }

  public DataSheet withTop(Temperature newTop, Duration newTopHold) {
    return new DataSheet(
        max,
        dry,
        dryHold,
        Optional.of(newTop),
        Optional.of(newTopHold),
        fastestRise,
        fastestWetRise,
        pourSoak);
  }

  public DataSheet withFastestRise(HeatingRate anywhere, HeatingRate wet) {
    return new DataSheet(
        max, dry, dryHold, top, topHold, Optional.of(anywhere), Optional.of(wet), pourSoak);
  }

  private static void requireSensible(
      String name, Optional<Temperature> value, double lowCelsius, double highCelsius) {
    value.ifPresent(
        t -> {
          if (!(t.celsius() >= lowCelsius && t.celsius() <= highCelsius)) {
            throw new IllegalArgumentException(
                "The data sheet's %s temperature (%s °C) must be %.0f to %.0f °C."
                    .formatted(name, t.celsius(), lowCelsius, highCelsius));
          }
        });
  }

  private static void requireHold(String name, Optional<Duration> hold) {
    hold.ifPresent(
        h -> {
          if (h.isNegative()
              || h.compareTo(LONGEST_HOLD) > 0
              || !h.equals(Duration.ofMinutes(h.toMinutes()))) {
            throw new IllegalArgumentException(
                "The data sheet's %s (%s) must be whole minutes, 0:00 to 48:00."
                    .formatted(name, h));
          }
        });
  }
}
