package org.heatwright.work.casting;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.heatwright.material.Origin;

/**
 * A composition by mass.
 *
 * @param shares share of each metal, above zero, their sum one
 * @param origin where it comes from
 */
public record Mix(Map<Metal, Double> shares, Origin origin) {

  private static final double SUM_NOISE = 1e-9;

  public Mix {
    Objects.requireNonNull(origin, "origin");
    double sum = 0;
    for (Map.Entry<Metal, Double> part : shares.entrySet()) {
      if (!(part.getValue() > 0 && part.getValue() <= 1 + SUM_NOISE)) {
        throw new IllegalArgumentException(
            "The part of %s must be above zero and not above the whole."
                .formatted(part.getKey().words()));
      }
      sum += part.getValue();
    }
    if (!(Math.abs(sum - 1) <= SUM_NOISE)) {
      throw new IllegalArgumentException(
          "The parts of a composition must sum to the whole, not to %s of it.".formatted(sum));
    }
    shares = Collections.unmodifiableMap(new EnumMap<>(shares));
  }

  /** Parts by mass in any unit (grams, thousandths): brought to shares of their sum. */
  public static Mix ofParts(Map<Metal, Double> parts, Origin origin) {
    double sum = parts.values().stream().mapToDouble(Double::doubleValue).sum();
    if (!(sum > 0 && sum < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException("A composition needs parts above zero.");
    }
    Map<Metal, Double> shares = new EnumMap<>(Metal.class);
    parts.forEach((metal, part) -> shares.put(metal, part / sum));
    return new Mix(shares, origin);
  }

  /** The metal alone. */
  static Mix pure(Metal metal) {
    return new Mix(Map.of(metal, 1.0), Origin.derived("pure"));
  }

  /**
   * Density if volumes add, kg/m³: {@code 1/rho = sum w_i/rho_i}. Real alloys are off by a percent
   * or so; castings with pores by more.
   */
  public double kilogramsPerCubicMetre() {
    double cubicMetresPerKilogram = 0;
    for (Map.Entry<Metal, Double> part : shares.entrySet()) {
      cubicMetresPerKilogram += part.getValue() / part.getKey().kilogramsPerCubicMetre();
    }
    return 1 / cubicMetresPerKilogram;
  }

  /** Share of one metal, 0 to 1. */
  public double share(Metal metal) {
    return shares.getOrDefault(metal, 0.0);
  }

  /** "Au 583 Ag 104 Cu 313": thousandths by mass. */
  public String words() {
    return shares.entrySet().stream()
        .map(e -> "%s %s".formatted(e.getKey().symbol(), Math.round(e.getValue() * 1000)))
        .collect(Collectors.joining(" "));
  }
}
