package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.work.heatwork.HeatWorkComparison;

/**
 * What {@code heatwork --json} prints. {@code cases} has the one asked for first, then how it
 * changes with the activation energy or the glass; with a kiln also the firings' likely span.
 */
public record HeatworkJson(
    String first,
    String second,
    double referenceCelsius,
    String law,
    String curves,
    List<CaseJson> cases,
    List<String> notes) {

  /**
   * One assumption.
   *
   * @param name what is assumed
   * @param firstMinutes the first, minutes at the reference
   * @param secondMinutes the second
   * @param ratio second over first; null where the first does nothing that counts
   * @param holdMinutes the hold of {@code holdSegment} in the second that makes it even; null where
   *     none does
   */
  public record CaseJson(
      String name,
      double activationKilojoulesPerMole,
      double firstMinutes,
      double secondMinutes,
      Optional<Double> ratio,
      int holdSegment,
      Optional<Double> holdMinutes) {

    public static CaseJson of(String name, HeatWorkComparison comparison) {
      double ratio = comparison.secondToFirstRatio();
      OptionalDouble hold = comparison.holdSeconds();
      return new CaseJson(
          name,
          comparison.activationJoulesPerMole() / 1000,
          comparison.firstSeconds() / 60,
          comparison.secondSeconds() / 60,
          Double.isFinite(ratio) ? Optional.of(ratio) : Optional.empty(),
          comparison.holdSegment(),
          hold.isPresent() ? Optional.of(hold.getAsDouble() / 60) : Optional.empty());
    }
  }
}
