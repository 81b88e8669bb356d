package org.heatwright.forecast;

import java.util.Optional;

/**
 * When one segment is reached and ends.
 *
 * @param index 1-based, as people count
 * @param reachedSeconds when its hold's clock starts, s from the program's start
 * @param arrivedSeconds when the display first comes within a few kelvins of the target; later than
 *     {@code reachedSeconds} where the hold's clock does not wait for it; empty if in more than
 *     about one draw of twenty it does not before the segment ends
 * @param endSeconds when the segment ends, s from the program's start
 * @param saturatedSeconds how long the elements are fully on, on the way to its target, median, s
 * @param behindSeconds how much later than on paper the target is reached, median, s; zero for
 *     <i>fastest</i>
 * @param reachedShare share of the ensemble that reaches the target at all, 0 to 1
 * @param overshoot how far the display goes beyond the target while it is held; empty where nothing
 *     is held
 */
public record SegmentForecast(
    int index,
    Band reachedSeconds,
    Optional<Band> arrivedSeconds,
    Band endSeconds,
    double saturatedSeconds,
    double behindSeconds,
    double reachedShare,
    Optional<Overshoot> overshoot) {

  /** A band is nine in ten: where more than one draw of twenty has no time, there is none. */
  private static final double BAND_SHARE = 0.95;

  /** Where fewer get there the median is no time either. */
  private static final double MEDIAN_SHARE = 0.5;

  /** Where fewer get there, not even the low end of a band is a time. */
  private static final double LOW_SHARE = 0.05;

  /** Whether so many draws get somewhere that a band of their times is one. */
  public static boolean hasBand(double share) {
    return share >= BAND_SHARE;
  }

  /** Whether so many draws get somewhere that their times have a middle. */
  public static boolean hasMedian(double share) {
    return share >= MEDIAN_SHARE;
  }

  /** Whether so many draws get somewhere that the low end of their times is one. */
  public static boolean hasLow(double share) {
    return share > LOW_SHARE;
  }

  /** A segment of which nothing is told about its hold. */
  public SegmentForecast(
      int index,
      Band reachedSeconds,
      Optional<Band> arrivedSeconds,
      Band endSeconds,
      double saturatedSeconds,
      double behindSeconds,
      double reachedShare) {
    this(
        index,
        reachedSeconds,
        arrivedSeconds,
        endSeconds,
        saturatedSeconds,
        behindSeconds,
        reachedShare,
        Optional.empty());
  }
}
