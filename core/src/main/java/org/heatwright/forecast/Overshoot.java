package org.heatwright.forecast;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.kiln.FiringRun;

/**
 * How far a display goes beyond a target while it is held: by how much it shoots over, and how far
 * it falls back. What the kiln is (its power, its lag, its controller, the swing of its switch) and
 * how well it is known is all in it, because it is read from the draws of a forecast.
 *
 * @param above the highest display of the hold above the target, K; below zero where it never gets
 *     there
 * @param below the lowest display of the hold once it has arrived, under the target, K; below zero
 *     where it stays above
 */
public record Overshoot(Band above, Band below) {

  public Overshoot {
    Objects.requireNonNull(above, "above");
    Objects.requireNonNull(below, "below");
  }

  /**
   * Of one segment, over the draws.
   *
   * @param runs the draws
   * @param segment 0-based
   * @param targetCelsius its target, °C
   * @param withinKelvins a display so near has arrived, K
   * @param horizon how far to look, s
   * @param kept whether the target is kept beyond the segment's end
   * @return empty where nothing is held
   */
  static Optional<Overshoot> of(
      List<FiringRun> runs,
      int segment,
      double targetCelsius,
      double withinKelvins,
      double horizon,
      boolean kept) {
    double[] above = new double[runs.size()];
    double[] below = new double[runs.size()];
    for (int r = 0; r < above.length; r++) {
      FiringRun run = runs.get(r);
      double from = run.segments().get(segment).reachedSeconds();
      double to = kept ? horizon : Math.min(horizon, run.segments().get(segment).endSeconds());
      if (!(to - from > 0)) {
        return Optional.empty();
      }
      // A display that swings may touch its target on the way up, before anything is held.
      double came = run.arrivalSeconds(segment, targetCelsius, withinKelvins, to);
      double arrived = Math.max(from, Math.min(to, came));
      above[r] = run.highestReadingCelsius(from, to) - targetCelsius;
      below[r] = targetCelsius - run.lowestReadingCelsius(arrived, to);
    }
    return Optional.of(new Overshoot(Band.of(above), Band.of(below)));
  }
}
