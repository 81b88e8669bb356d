package org.heatwright.forecast;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.heatwright.mould.MouldFiring;

/**
 * What happens inside the moulds of one kind, in the axisymmetric section, in some of the
 * forecast's draws: their kilns, and materials as uncertain as they are.
 *
 * @param mould 1-based position in the list of moulds
 * @param draws one firing a draw, each from 0 s to the forecast's horizon; at least one
 * @param days the day of each draw
 */
public record InsideForecast(int mould, List<MouldFiring> draws, List<Day> days) {

  /**
   * What a draw's firing was like.
   *
   * @param endSeconds when the program ends, s from its start; infinite where it does not
   * @param aboveDisplayKelvins by how much the chamber is above the display at the last target, K
   */
  public record Day(double endSeconds, double aboveDisplayKelvins) {}

  public InsideForecast {
    draws = List.copyOf(draws);
    days = List.copyOf(days);
    if (draws.isEmpty() || draws.size() != days.size()) {
      throw new IllegalArgumentException(
          "A forecast of the inside needs at least one draw and a day for each (%d draws, %d days)."
              .formatted(draws.size(), days.size()));
    }
  }

  /** The band of something that every draw has. */
  public Band band(ToDoubleFunction<MouldFiring> value) {
    return Band.of(draws.stream().mapToDouble(value).toArray());
  }

  /** The core at a time, °C. */
  public Band centreCelsiusAt(double second) {
    return band(draw -> draw.centreCelsiusAt(second));
  }

  /** The outer face at a time, °C. */
  public Band surfaceCelsiusAt(double second) {
    return band(draw -> draw.surfaceCelsiusAt(second));
  }

  /** The draw whose core is in the middle at a time. */
  public MouldFiring middle(double second) {
    return draws.stream()
        .sorted(java.util.Comparator.comparingDouble(draw -> draw.centreCelsiusAt(second)))
        .skip(draws.size() / 2)
        .findFirst()
        .orElseThrow();
  }
}
