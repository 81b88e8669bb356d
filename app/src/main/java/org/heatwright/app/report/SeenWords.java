package org.heatwright.app.report;

import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.StartPlan;
import org.heatwright.inspect.Wording;
import org.heatwright.learn.RunningFiring;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.TemperatureUnit;

/** What a person read off the display while a firing ran: what it means. */
public final class SeenWords {

  private SeenWords() {}

  /**
   * The verdict in plain words: what it means, and what to do.
   *
   * @param plan when the program began, and so when the work is ready by the clock
   */
  public static String words(
      RunningFiring.Update update, TemperatureUnit unit, Optional<StartPlan> plan) {
    RunningFiring.Judged last = update.last();
    Band expected = last.expectedCelsius();
    String read =
        "%s after %s, where %s to %s was expected"
            .formatted(
                Wording.whole(last.celsius(), unit),
                HourMinute.words(Duration.ofSeconds(Math.round(last.seconds()))),
                Wording.whole(Math.floor(expected.low()), unit),
                Wording.whole(Math.ceil(expected.high()), unit));
    int outside = (int) update.readings().stream().filter(judged -> !judged.inside()).count();
    if (update.readings().size() > 1) {
      read +=
          outside == 0
              ? "; all %d readings were".formatted(update.readings().size())
              : "; of %d readings %d were not".formatted(update.readings().size(), outside);
    }
    String moved =
        RunningFiring.movedSeconds(update).map(seconds -> moved(update, seconds, plan)).orElse("");
    return switch (update.verdict()) {
      case NORMAL -> "Normal: %s. %s".formatted(read, moved);
      case BEHIND ->
          "Behind: %s. %s If it goes on falling back: door or vent open, supply low, an element open."
              .formatted(read, moved);
      case AHEAD -> "Ahead: %s. %s".formatted(read, moved);
      case NOT_HEATING ->
          "Not heating: %s. The delay is still running, or it was not started, or the sensor is out."
                  .formatted(read)
              + " Look at the kiln; the forecast is left as it was.";
      case ODD ->
          last.farAbove()
              ? "Far too hot: %s. Switch the kiln off at the mains and leave it shut: a relay that sticks, another program or slot, the sensor."
                      .formatted(read)
                  + " If it was hot when it started, say so; the forecast is left as it was."
              : "Odd: %s. No likely kiln shows this: another program or slot, a door, a mains cut, the sensor."
                      .formatted(read)
                  + " Look at the kiln; the forecast is left as it was.";
    };
  }

  /** "The pour moves to 10:35, 12 min later." */
  private static String moved(
      RunningFiring.Update update, double seconds, Optional<StartPlan> plan) {
    String what = update.forecast().work().isEmpty() ? "The ready time" : "The pour";
    long minutes = Math.round(seconds / 60);
    Optional<ZonedDateTime> likely =
        plan.flatMap(StartPlan::ready)
            .map(window -> window.likely().plusSeconds(30).truncatedTo(ChronoUnit.MINUTES));
    if (minutes == 0) {
      return likely
          .map(time -> "%s stays at %s.".formatted(what, ClockWords.time(time)))
          .orElse("%s stays.".formatted(what));
    }
    String by = "%d min %s".formatted(Math.abs(minutes), minutes > 0 ? "later" : "earlier");
    return likely
        .map(time -> "%s moves to %s, %s.".formatted(what, ClockWords.time(time), by))
        .orElse("%s moves: %s.".formatted(what, by));
  }
}
