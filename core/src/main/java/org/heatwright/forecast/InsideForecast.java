package org.heatwright.forecast;

import static org.heatwright.numerics.NormalSteps.NINE_IN_TEN;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.heatwright.mould.BurnoutMeasures;
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

  /**
   * How sure the boiling point in a mould is, standard deviation, K: it falls by a kelvin in 300 m
   * of height and with air in the pores, and rises with the steam's pressure in them. Our estimate.
   */
  private static final double BOILING_KELVINS = 2;

  /**
   * The core at a time, °C: while there is water, no surer than its boiling point, in proportion as
   * the core comes near it.
   */
  public Band centreCelsiusAt(double second) {
    Band band = band(draw -> draw.centreCelsiusAt(second));
    double start = draws.get(0).centreCelsius(0);
    boolean wet = draws.stream().anyMatch(draw -> draw.waterShareAt(second) > 0);
    if (!wet || start >= BurnoutMeasures.BOILING_CELSIUS) {
      return band;
    }
    double near = (band.median() - start) / (BurnoutMeasures.BOILING_CELSIUS - start);
    double more = NINE_IN_TEN * BOILING_KELVINS * Math.max(0, Math.min(1, near));
    return new Band(
        band.median() - Math.hypot(band.median() - band.low(), more),
        band.median(),
        band.median() + Math.hypot(band.high() - band.median(), more));
  }

  /** The outer face at a time, °C. */
  public Band surfaceCelsiusAt(double second) {
    return band(draw -> draw.surfaceCelsiusAt(second));
  }

  /** What each draw's firing did to the mould. */
  public List<BurnoutMeasures> measures() {
    return draws.stream().map(BurnoutMeasures::of).toList();
  }

  /** The band of a measure; empty where some draw has none, as of a boil that never ends. */
  public static Optional<Band> band(
      List<BurnoutMeasures> measures, ToDoubleFunction<BurnoutMeasures> value) {
    return Band.ofFinite(measures.stream().mapToDouble(value).toArray());
  }

  /** Likely end of the program, s; infinite where no draw ends it. */
  public double endSeconds() {
    double[] ends = days.stream().mapToDouble(Day::endSeconds).sorted().toArray();
    return ends[(ends.length - 1) / 2];
  }

  /** The draw whose core is in the middle at a time. */
  public MouldFiring middle(double second) {
    return draws.stream()
        .sorted(Comparator.comparingDouble(draw -> draw.centreCelsiusAt(second)))
        .skip(draws.size() / 2)
        .findFirst()
        .orElseThrow();
  }
}
