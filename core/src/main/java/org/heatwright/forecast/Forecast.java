package org.heatwright.forecast;

import java.util.List;
import java.util.Optional;

/**
 * What will happen when a kiln runs a schedule, as far as Heatwright can know.
 *
 * @param schedule name of the schedule
 * @param kiln name of the kiln
 * @param segments one entry a segment, in order
 * @param endSeconds when the program ends, s from its start
 * @param energyKilowattHours energy until then, kWh
 * @param meanWatts energy by time: the mean power of the median draw between grid points is in the
 *     trace; this is the overall mean, W
 * @param work places inside the work; empty for an empty kiln
 * @param trace the curves
 * @param inside what happens inside the moulds, one entry a kind; empty without moulds
 * @param pieces what other work that is followed does, one entry a kind
 */
public record Forecast(
    String schedule,
    String kiln,
    List<SegmentForecast> segments,
    Band endSeconds,
    Band energyKilowattHours,
    double meanWatts,
    List<WorkForecast> work,
    ForecastTrace trace,
    List<InsideForecast> inside,
    List<PieceForecast> pieces) {

  public Forecast {
    segments = List.copyOf(segments);
    work = List.copyOf(work);
    inside = List.copyOf(inside);
    pieces = List.copyOf(pieces);
  }

  /**
   * When all of the work is ready, s from the program's start: the slowest core rules. Empty for an
   * empty kiln, or if part of the work does not get ready in every draw.
   */
  public Optional<Band> workReadySeconds() {
    if (work.isEmpty() || work.stream().anyMatch(w -> w.readySeconds().isEmpty())) {
      return Optional.empty();
    }
    double low = 0;
    double median = 0;
    double high = 0;
    for (WorkForecast place : work) {
      Band ready = place.readySeconds().orElseThrow();
      low = Math.max(low, ready.low());
      median = Math.max(median, ready.median());
      high = Math.max(high, ready.high());
    }
    return Optional.of(new Band(low, median, high));
  }

  /** Whether every draw reaches every target. */
  public boolean reachesEveryTarget() {
    return segments.stream().allMatch(s -> s.reachedShare() == 1);
  }

  /** In how many of the draws the program gets to its last target and so ends, 0 to 1. */
  public double endsShare() {
    return segments.get(segments.size() - 1).reachedShare();
  }
}
