package org.heatwright.app.report;

import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;

/**
 * Chooses the times at which a look at the display tells most.
 *
 * <p>Round clock times, up to eight. The first hours and the waking hours get more of them than the
 * night: a look must be possible, and early looks still help. Around each, the time with the
 * narrower band is taken: where the display may be anywhere (a full-power ramp, the swing after it)
 * a reading tells little.
 */
final class DisplayTimes {

  /** Most rows a card prints. */
  static final int MOST_ROWS = 8;

  private static final double HOUR = 3600;
  private static final double MINUTE = 60;

  /** Looks in the first two hours count double, at night (23:00 to 06:00) a third. */
  private static final double EARLY_WEIGHT = 2;

  private static final double NIGHT_WEIGHT = 0.33;
  private static final LocalTime NIGHT_FROM = LocalTime.of(23, 0);
  private static final LocalTime NIGHT_TO = LocalTime.of(6, 0);

  /** A band up to this wide is as good as any, K. */
  private static final double NARROW_KELVINS = 16;

  private DisplayTimes() {}

  static List<Card.DisplayRow> choose(Forecast forecast, Optional<ZonedDateTime> start) {
    double end = forecast.endSeconds().low();
    double step = step(end);
    List<Double> times = candidates(start, end, step);
    if (times.isEmpty()) {
      times = List.of(end / 2); // over within a minute
    }
    double[] reach = new double[times.size()];
    double sum = 0;
    for (int i = 0; i < reach.length; i++) {
      sum += weight(times.get(i), start);
      reach[i] = sum;
    }
    int rows = Math.min(MOST_ROWS, times.size());
    List<Card.DisplayRow> chosen = new ArrayList<>();
    int next = 0;
    for (int row = 0; row < rows; row++) {
      int from = next;
      int lastAllowed = times.size() - (rows - row);
      double until = sum * (row + 1) / rows;
      int to = from;
      while (to < lastAllowed && reach[to + 1] <= until + 1e-9) {
        to++;
      }
      int best = best(forecast, times, from, to);
      chosen.add(row(forecast, times.get(best)));
      next = Math.max(best, to) + 1;
    }
    return chosen;
  }

  /** The narrowest band in a stretch; among equals, the one nearest its middle. */
  private static int best(Forecast forecast, List<Double> times, int from, int to) {
    int best = from;
    double least = Double.POSITIVE_INFINITY;
    double middle = (from + to) / 2.0;
    for (int i = from; i <= to; i++) {
      Band band = row(forecast, times.get(i)).displayCelsius();
      double cost =
          Math.max(NARROW_KELVINS, band.high() - band.low())
              + 4 * Math.abs(i - middle) / (to - from + 1);
      if (cost < least) {
        least = cost;
        best = i;
      }
    }
    return best;
  }

  private static Card.DisplayRow row(Forecast forecast, double seconds) {
    return new Card.DisplayRow(seconds, forecast.trace().displayCelsiusAt(seconds));
  }

  private static double step(double endSeconds) {
    if (endSeconds >= 4 * HOUR) {
      return 15 * MINUTE;
    }
    return endSeconds >= 1.5 * HOUR ? 5 * MINUTE : MINUTE;
  }

  /** Round times by the clock, or since the start; not within the first step, when all is cold. */
  private static List<Double> candidates(
      Optional<ZonedDateTime> start, double endSeconds, double stepSeconds) {
    double past =
        start
            .map(s -> (s.toLocalTime().toNanoOfDay() / 1e9) % stepSeconds)
            .orElse(0.0); // seconds since the last round time
    List<Double> times = new ArrayList<>();
    for (double at = stepSeconds - past; at <= endSeconds; at += stepSeconds) {
      if (at >= stepSeconds) {
        times.add(at);
      }
    }
    return times;
  }

  private static double weight(double seconds, Optional<ZonedDateTime> start) {
    double weight = seconds <= 2 * HOUR ? EARLY_WEIGHT : 1;
    return start
        .map(s -> s.plusSeconds(Math.round(seconds)).toLocalTime())
        .filter(t -> !t.isBefore(NIGHT_FROM) || t.isBefore(NIGHT_TO))
        .map(t -> weight * NIGHT_WEIGHT)
        .orElse(weight);
  }
}
