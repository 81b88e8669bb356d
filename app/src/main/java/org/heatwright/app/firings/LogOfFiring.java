package org.heatwright.app.firings;

import java.time.Duration;
import java.util.Optional;
import org.heatwright.forecast.Forecast;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.HourMinute;

/** Whether a log is of the firing that it is said to be of. */
public final class LogOfFiring {

  /** A log that begins later says too little of the heating up, s. Our choice. */
  private static final double LATEST_BEGIN_SECONDS = 3600;

  /** Forecasts from the nameplate are far surer than this, K. Our choice. */
  private static final double STRANGE_KELVINS = 150;

  private LogOfFiring() {}

  /**
   * Why it is not: a log of something else would tell of an inside that never was.
   *
   * @param forecast of the schedule in the kiln
   * @param readings of the log, s from the program's start
   * @return a sentence without its full stop; empty if nothing speaks against it
   */
  public static Optional<String> strange(Forecast forecast, Readings readings) {
    if (readings.second(0) > LATEST_BEGIN_SECONDS) {
      return Optional.of(
          "it begins %s after the program's start, by where its display fits best"
              .formatted(
                  HourMinute.words(Duration.ofMinutes(Math.round(readings.second(0) / 60)))));
    }
    double[] grid = forecast.trace().seconds();
    double sum = 0;
    int count = 0;
    for (int i = 0; i < readings.size(); i++) {
      double second = readings.second(i);
      if (second >= 0 && second <= grid[grid.length - 1]) {
        sum += Math.abs(readings.celsius(i) - forecast.trace().displayCelsiusAt(second).median());
        count++;
      }
    }
    if (count > 0 && sum / count > STRANGE_KELVINS) {
      return Optional.of(
          "on average its display is %.0f K off the forecast, so that it is not of this schedule in this kiln"
              .formatted(sum / count));
    }
    return Optional.empty();
  }
}
