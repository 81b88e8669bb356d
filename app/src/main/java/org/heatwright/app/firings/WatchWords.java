package org.heatwright.app.firings;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.Ending;
import org.heatwright.app.report.SeenWords;
import org.heatwright.app.report.WhenWords;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.inspect.Wording;
import org.heatwright.learn.RunningFiring;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;

/** A watched firing in plain words: what now, what next, what to do. */
public final class WatchWords {

  /** Something to do is told as due from this long before the earliest it can be, s. */
  private static final double SOON_SECONDS = 300;

  private final Watch watch;
  private final Instant now;
  private final WhenWords when;
  private final Ending ending;

  public WatchWords(Watch watch, Instant now) {
    this.watch = watch;
    this.now = now;
    this.when = new WhenWords(Optional.of(watch.start()));
    this.ending = watch.card().timing().ending();
  }

  /** What the kiln should be doing. */
  public String whatNow() {
    double seconds = watch.seconds(now);
    int number = watch.segment(now);
    int all = watch.schedule().segments().size();
    if (number == 0) {
      return "Waiting: heat begins %s, in %s."
          .formatted(when.full(0), HourMinute.words(minutes(-seconds)));
    }
    if (number > all) {
      if (watch.surelyEnded(now)) {
        return "The program has ended.";
      }
      return ending.isTold()
          ? "The program should have ended, or does so soon."
          : "The program should have ended, if the kiln got there: look at the kiln.";
    }
    Segment segment = watch.schedule().segments().get(number - 1);
    SegmentForecast expected = watch.forecast().segments().get(number - 1);
    String which = "Segment %d of %d: ".formatted(number, all);
    String target = degrees(segment.target().celsius());
    Band arrives = expected.arrivedSeconds().orElse(expected.reachedSeconds());
    if (seconds < arrives.median() || segment.hold().isZero() || !Ending.hasMedian(expected)) {
      return which + "on the way to %s%s.".formatted(target, there(expected));
    }
    return which
        + (Ending.isTold(expected)
            ? "holding %s until %s.".formatted(target, clock(expected.endSeconds()))
            : "holding %s until %s, if it got there."
                .formatted(target, earliest(expected.endSeconds())));
  }

  /** When a target is reached; when a simulation gave up is no such time. */
  private String there(SegmentForecast expected) {
    if (Ending.isTold(expected)) {
      return expected
          .arrivedSeconds()
          .map(arrives -> ", there " + clock(arrives))
          .orElse("; it may not get there before the program goes on");
    }
    String from =
        SegmentForecast.hasLow(expected.reachedShare())
            ? ", there " + earliest(expected.arrivedSeconds().orElse(expected.reachedSeconds()))
            : "";
    return from
        + (Ending.hasMedian(expected)
            ? "; it may never get there"
            : "; most likely it never gets there");
  }

  /** What the display should say now; empty where it cannot be told. */
  public Optional<String> display() {
    return watch
        .displayCelsius(now)
        .map(
            band -> {
              String low = number(Math.floor(value(band.low())));
              String high = number(Math.ceil(value(band.high())));
              String unit = " " + watch.unit().symbol();
              return low.equals(high) ? low + unit : low + " to " + high + unit;
            });
  }

  /** What a person has to do now, and by when it must be done. */
  public List<String> due() {
    double seconds = watch.seconds(now);
    List<String> due = new ArrayList<>();
    for (Card.Act act : watch.card().moments()) {
      boolean open = seconds <= act.seconds().high() + (act.actNow() ? SOON_SECONDS : 0);
      if (open && seconds >= act.seconds().low() - SOON_SECONDS) {
        due.add(
            Wording.capital(act.what())
                + ": "
                + (act.deadline()
                    ? when.clock(when.minuteBefore(act.seconds().low()))
                    : ending.isTold() ? clock(act.seconds()) : earliest(act.seconds()))
                + ".");
      }
    }
    return due;
  }

  /** What comes next that needs a person; empty where nothing does any more. */
  public Optional<String> next() {
    double seconds = watch.seconds(now);
    return watch.card().moments().stream()
        .filter(act -> seconds < act.seconds().low() - SOON_SECONDS)
        .findFirst()
        .map(
            act ->
                Wording.capital(act.what())
                    + ": "
                    + (act.deadline()
                        ? act.at(when)
                        : ending.isTold()
                            ? days(act.seconds())
                            : when.day(act.seconds().low()) + " " + earliest(act.seconds()))
                    + ".");
  }

  /** What is ready when; empty where that is not sure. */
  public Optional<Ready> ready() {
    return watch
        .ready()
        .map(
            ready ->
                new Ready(
                    ready.what(),
                    clock(ready.fromSeconds()),
                    when.day(ready.fromSeconds().median())));
  }

  /**
   * @param what is ready
   * @param window from when to when it will be
   * @param day on what day
   */
  public record Ready(String what, String window, String day) {}

  /**
   * Whether the moment has come at which a person sees how it came out; never by the clock where
   * hardly any case ends.
   */
  public boolean resultIsDue() {
    return watch
        .ready()
        .map(ready -> ready.fromSeconds().low())
        .or(ending::earliestSeconds)
        .filter(from -> watch.seconds(now) >= from)
        .isPresent();
  }

  /** What the readings mean; empty without any since the program began. */
  public Optional<String> verdict() {
    return watch
        .update()
        .map(update -> SeenWords.words(update, watch.unit(), Optional.of(watch.plan())));
  }

  /** Whether the readings are what they should be; empty without any. */
  public Optional<Boolean> normal() {
    return watch.update().map(update -> update.verdict() == RunningFiring.Verdict.NORMAL);
  }

  private String clock(Band band) {
    String low = when.clock(band.low());
    String high = when.clock(band.high());
    return low.equals(high) ? low : when.band(band);
  }

  /** Where there may be no late end. */
  private String earliest(Band band) {
    return when.clock(when.minuteBefore(band.low())) + " at the earliest";
  }

  private String days(Band band) {
    String day = when.day(band.median());
    return day + " " + clock(band);
  }

  private String degrees(double celsius) {
    return number(Math.rint(value(celsius))) + " " + watch.unit().symbol();
  }

  private double value(double celsius) {
    return watch.unit().value(Temperature.ofCelsius(celsius));
  }

  private static String number(double value) {
    return "%.0f".formatted(value);
  }

  private static Duration minutes(double seconds) {
    return Duration.ofMinutes(Math.max(1, Math.round(seconds / 60)));
  }
}
