package org.heatwright.app.report;

import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.SegmentForecast;

/**
 * Whether the end of a program, or of a segment, can be told. Where a kiln does not reach a target
 * the program waits for ever, and a forecast's times are only when the simulation gave up.
 *
 * @param seconds when it ends, s from the program's start
 * @param share of the cases that the forecast tried in which it ends, 0 to 1
 */
public record Ending(Band seconds, double share) {

  /** A band is nine in ten: where more than one case of twenty has no time, there is none. */
  private static final double LEAST_SHARE = 0.95;

  /** Where fewer get there the median is no time either. */
  private static final double MEDIAN_SHARE = 0.5;

  public static Ending of(Forecast forecast) {
    SegmentForecast last = forecast.segments().get(forecast.segments().size() - 1);
    return new Ending(forecast.endSeconds(), last.reachedShare());
  }

  /** Whether a segment's times can be told. */
  public static boolean isTold(SegmentForecast segment) {
    return segment.reachedShare() >= LEAST_SHARE;
  }

  /** Whether a segment's times have a middle at least, which programs may take. */
  public static boolean hasMedian(SegmentForecast segment) {
    return segment.reachedShare() >= MEDIAN_SHARE;
  }

  /** Whether its time has a middle at least. */
  public boolean hasMedian() {
    return share >= MEDIAN_SHARE;
  }

  /** Whether its time can be told. */
  public boolean isTold() {
    return share >= LEAST_SHARE;
  }

  /** In place of a time: "may never end". */
  public String briefly() {
    return share > 0 ? "may never end" : "never ends";
  }

  /** How many do not end: "in 16 of 100 cases". */
  public String cases() {
    return share > 0
        ? "in %.0f of 100 cases".formatted(Math.max(1, Math.rint((1 - share) * 100)))
        : "in every case";
  }

  /** In place of a sentence that tells the end. */
  public String sentence() {
    return share > 0
        ? "No end can be promised: %s that the forecast tried, the kiln does not reach a target and the program never goes on."
            .formatted(cases())
        : "It never ends: the kiln does not reach a target and the program does not go on.";
  }
}
