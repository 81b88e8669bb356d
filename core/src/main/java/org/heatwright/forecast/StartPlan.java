package org.heatwright.forecast;

import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/**
 * When to start and what follows from it, on the clock.
 *
 * @param start when the program's first segment begins
 * @param delayToSet elapsed time from now to the start, whole minutes, rounded down so that it is
 *     never late; empty where no "now" was given
 * @param readyWhat what is ready: the work, or the kiln at its last target
 * @param ready when, from the 5th to the 95th percentile; empty if it is not in every case
 * @param end when the program ends
 * @param inTime whether it is ready by the time asked for, nine times in ten or better; true if
 *     none was asked for
 * @param notes what a person must know about these times: clocks that change, what cannot be met
 */
public record StartPlan(
    ZonedDateTime start,
    Optional<Duration> delayToSet,
    String readyWhat,
    Optional<Window> ready,
    Window end,
    boolean inTime,
    List<String> notes) {

  public StartPlan {
    notes = List.copyOf(notes);
  }

  /**
   * A time with its spread.
   *
   * @param from 5th percentile
   * @param likely median
   * @param until 95th percentile
   */
  public record Window(ZonedDateTime from, ZonedDateTime likely, ZonedDateTime until) {

    static Window after(ZonedDateTime start, Band seconds) {
      return new Window(
          plus(start, seconds.low()), plus(start, seconds.median()), plus(start, seconds.high()));
    }

    /** "08:40 to 09:05 Thursday 3 December". */
    public String words() {
      return ClockWords.window(from, until);
    }
  }

  /** The clock time that many seconds after the program's start. */
  public ZonedDateTime at(double secondsFromStart) {
    return plus(start, secondsFromStart);
  }

  private static ZonedDateTime plus(ZonedDateTime time, double seconds) {
    return time.plus(Duration.ofMillis(Math.round(seconds * 1000)));
  }
}
