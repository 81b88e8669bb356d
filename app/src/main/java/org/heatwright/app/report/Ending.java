package org.heatwright.app.report;

import java.util.Optional;
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

  public static Ending of(Forecast forecast) {
    return new Ending(forecast.endSeconds(), forecast.endsShare());
  }

  /** Whether a segment's times can be told. */
  public static boolean isTold(SegmentForecast segment) {
    return SegmentForecast.hasBand(segment.reachedShare());
  }

  /** Whether a segment's times have a middle at least, which programs may take. */
  public static boolean hasMedian(SegmentForecast segment) {
    return SegmentForecast.hasMedian(segment.reachedShare());
  }

  /** Whether its time has a middle at least. */
  public boolean hasMedian() {
    return SegmentForecast.hasMedian(share);
  }

  /** From when on it may have ended; empty where hardly any case ends. */
  public Optional<Double> earliestSeconds() {
    return SegmentForecast.hasLow(share) ? Optional.of(seconds.low()) : Optional.empty();
  }

  /** Whether its time can be told. */
  public boolean isTold() {
    return SegmentForecast.hasBand(share);
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

  /** What a person must know who does not see the forecast; empty where the end can be told. */
  public Optional<String> warning() {
    return isTold()
        ? Optional.empty()
        : Optional.of(
            "This program %s: %s that the forecast tried the kiln does not reach a target, and then the program does not go on by itself. Somebody must be there to switch it off."
                .formatted(briefly(), cases()));
  }

  /** In place of a sentence that tells the end. */
  public String sentence() {
    return share > 0
        ? "No end can be promised: %s that the forecast tried, the kiln does not reach a target and the program never goes on."
            .formatted(cases())
        : "It never ends: the kiln does not reach a target and the program does not go on.";
  }
}
