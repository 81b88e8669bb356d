package org.heatwright.forecast;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.schedule.HourMinute;

/**
 * Puts a forecast on the clock. A delay is elapsed time and a ready-by is a wall time, so
 * everything is counted in instants and shown in the zone's local time.
 */
public final class StartPlanner {

  private StartPlanner() {}

  /**
   * A local time made unambiguous.
   *
   * @param time the earlier of two where the clocks go back; the moment of the change where the
   *     clocks go forward over it
   * @param notes says so; empty for a usual time
   */
  public record LocalChoice(ZonedDateTime time, List<String> notes) {
    public LocalChoice {
      notes = List.copyOf(notes);
    }
  }

  /**
   * What is ready, and when.
   *
   * @param what in words: "the work", "the kiln for the first piece"
   * @param seconds s from the program's start; empty if that does not happen in every case
   */
  public record Ready(String what, Optional<Band> seconds) {}

  /** The instant that a local time means; never later than a person can have meant. */
  public static LocalChoice atLocal(LocalDateTime local, ZoneId zone) {
    List<ZonedDateTime> instants = instants(local, zone);
    if (instants.size() == 1) {
      return new LocalChoice(instants.get(0), List.of());
    }
    if (instants.isEmpty()) {
      ZonedDateTime moment = change(local, zone);
      return new LocalChoice(
          moment, List.of("%s. Taken as %s.".formatted(odd(local, zone), ClockWords.time(moment))));
    }
    ZonedDateTime first = instants.get(0);
    return new LocalChoice(
        first,
        List.of(
            "%s. Taken as the first (UTC%s)."
                .formatted(odd(local, zone), ClockWords.offset(first))));
  }

  /**
   * The instants at which a zone's clock shows a local time: none in an hour that is missing, two,
   * the earlier first, in one that comes twice.
   */
  public static List<ZonedDateTime> instants(LocalDateTime local, ZoneId zone) {
    return zone.getRules().getValidOffsets(local).stream()
        .map(offset -> ZonedDateTime.ofLocal(local, zone, offset))
        .toList();
  }

  /** When the clocks change over a local time that is missing or comes twice. */
  public static ZonedDateTime change(LocalDateTime local, ZoneId zone) {
    return zone.getRules().getTransition(local).getInstant().atZone(zone);
  }

  /**
   * The last day's local time that a clock has shown by {@code latest}, or that it left out by
   * then.
   *
   * @param local the first day that is tried, with the time of day
   */
  public static LocalDateTime lastShown(LocalDateTime local, ZonedDateTime latest) {
    ZoneId zone = latest.getZone();
    List<ZonedDateTime> instants = instants(local, zone);
    ZonedDateTime first = instants.isEmpty() ? change(local, zone) : instants.get(0);
    return first.isAfter(latest) ? lastShown(local.minusDays(1), latest) : local;
  }

  /** What is odd about a local time that is missing or comes twice: a clause without its stop. */
  public static String odd(LocalDateTime local, ZoneId zone) {
    String asked = ClockWords.moment(local.atZone(ZoneOffset.UTC));
    ZoneOffsetTransition change = zone.getRules().getTransition(local);
    return change.isGap()
        ? "%s does not exist in %s: the clocks go forward from %s to %s"
            .formatted(
                asked,
                zone.getId(),
                change.getDateTimeBefore().toLocalTime(),
                change.getDateTimeAfter().toLocalTime())
        : "%s comes twice in %s, because the clocks go back".formatted(asked, zone.getId());
  }

  /** What follows from a start. */
  public static StartPlan startingAt(Forecast forecast, ZonedDateTime start) {
    return plan(forecast, ready(forecast), start, Optional.empty(), List.of(), true);
  }

  /** As the other {@code startingAt}, ready as the forecast itself can tell. */
  public static StartPlan startingAt(Forecast forecast, ZonedDateTime start, ZonedDateTime now) {
    return startingAt(forecast, ready(forecast), start, now);
  }

  /** What follows from a start, and the delay to set now for it. */
  public static StartPlan startingAt(
      Forecast forecast, Ready ready, ZonedDateTime start, ZonedDateTime now) {
    Duration wait = Duration.between(now, start);
    List<String> notes = new ArrayList<>();
    Optional<Duration> delay = Optional.empty();
    if (wait.isNegative()) {
      notes.add("That start is %s ago.".formatted(HourMinute.words(wait.negated())));
    } else {
      delay = Optional.of(Duration.ofMinutes(wait.toMinutes()));
    }
    return plan(forecast, ready, start, delay, notes, true);
  }

  /** As the other {@code readyBy}, ready as the forecast itself can tell. */
  public static Optional<StartPlan> readyBy(
      Forecast forecast, ZonedDateTime readyBy, ZonedDateTime now) {
    return readyBy(forecast, ready(forecast), readyBy, now);
  }

  /**
   * The latest safe start: ready-by minus the high end of ready, to the whole minute from now that
   * is not later. If that has passed, the plan starts now and says how late it will be. What is not
   * ready in every case is counted from the high end of the program; empty where that is no time
   * either, because the program may never end.
   */
  public static Optional<StartPlan> readyBy(
      Forecast forecast, Ready ready, ZonedDateTime readyBy, ZonedDateTime now) {
    Optional<Band> back = ready.seconds().or(() -> end(forecast));
    if (back.isEmpty()) {
      return Optional.empty();
    }
    Band counted = back.get();
    ZonedDateTime nowThere = now.withZoneSameInstant(readyBy.getZone());
    List<String> notes = new ArrayList<>();
    Instant latest = readyBy.toInstant().minusMillis((long) Math.ceil(counted.high() * 1000));
    long minutes = Math.floorDiv(Duration.between(nowThere.toInstant(), latest).toMillis(), 60_000);
    if (minutes >= 0) {
      Duration delay = Duration.ofMinutes(minutes);
      return Optional.of(
          plan(forecast, ready, nowThere.plus(delay), Optional.of(delay), notes, true));
    }
    StartPlan plan = plan(forecast, ready, nowThere, Optional.of(Duration.ZERO), List.of(), false);
    ZonedDateTime sure = plan.at(counted.high());
    notes.add(
        "Ready by %s cannot be promised: started now it is ready by %s, %s later."
            .formatted(
                ClockWords.moment(readyBy),
                ClockWords.moment(ClockWords.roundedUp(sure)),
                HourMinute.words(Duration.between(readyBy, ClockWords.roundedUp(sure)))));
    notes.addAll(plan.notes());
    return Optional.of(
        new StartPlan(
            plan.start(),
            plan.delayToSet(),
            plan.readyWhat(),
            plan.ready(),
            plan.end(),
            false,
            notes));
  }

  /** When the program ends; empty where in so many cases it never does that its band is none. */
  private static Optional<Band> end(Forecast forecast) {
    return SegmentForecast.hasBand(forecast.endsShare())
        ? Optional.of(forecast.endSeconds())
        : Optional.empty();
  }

  /**
   * What a forecast itself can tell: the work if there is any, else the kiln at its last target.
   */
  public static Ready ready(Forecast forecast) {
    return new Ready(
        forecast.work().isEmpty() ? "the kiln at its last target" : "the work",
        readySeconds(forecast));
  }

  /**
   * When a forecast is ready, s from the program's start: the work if there is any, else the kiln
   * at its last target. Empty if that does not happen in every case.
   */
  public static Optional<Band> readySeconds(Forecast forecast) {
    if (!forecast.work().isEmpty()) {
      return forecast.workReadySeconds();
    }
    SegmentForecast last = forecast.segments().get(forecast.segments().size() - 1);
    Band reached = last.reachedSeconds();
    return last.reachedShare() < 1
        ? Optional.empty()
        : last.arrivedSeconds()
            .map(
                arrived ->
                    new Band(
                        Math.max(reached.low(), arrived.low()),
                        Math.max(reached.median(), arrived.median()),
                        Math.max(reached.high(), arrived.high())));
  }

  private static StartPlan plan(
      Forecast forecast,
      Ready ready,
      ZonedDateTime start,
      Optional<Duration> delay,
      List<String> before,
      boolean inTime) {
    boolean hasWork = !forecast.work().isEmpty();
    List<String> notes = new ArrayList<>(before);
    if (ready.seconds().isEmpty()) {
      notes.add(
          hasWork
              ? "In some of the cases that the forecast tried the work is still more than %.0f °C"
                      .formatted(Forecaster.READY_WITHIN_KELVINS)
                  + " from the last target at the end: do not rely on a clock time. A longer last"
                  + " hold helps."
              : "The kiln does not reach its last target in every case that the forecast tried.");
    }
    StartPlan.Window end = StartPlan.Window.after(start, forecast.endSeconds());
    ZonedDateTime from = delay.map(start::minus).orElse(start);
    notes.addAll(changes(from, end.until()));
    return new StartPlan(
        start,
        delay,
        ready.what(),
        ready.seconds().map(seconds -> StartPlan.Window.after(start, seconds)),
        end,
        inTime && ready.seconds().isPresent(),
        notes);
  }

  /** One note for each time the clocks change in between. */
  private static List<String> changes(ZonedDateTime from, ZonedDateTime until) {
    List<String> notes = new ArrayList<>();
    Instant after = from.toInstant();
    while (true) {
      ZoneOffsetTransition change = from.getZone().getRules().nextTransition(after);
      if (change == null || change.getInstant().isAfter(until.toInstant())) {
        return notes;
      }
      after = change.getInstant();
      notes.add(
          "The clocks go %s from %s to %s on %s. The times here allow for it, a delay is elapsed"
                  .formatted(
                      change.isGap() ? "forward" : "back",
                      change.getDateTimeBefore().toLocalTime(),
                      change.getDateTimeAfter().toLocalTime(),
                      ClockWords.day(change.getDateTimeBefore().atZone(ZoneOffset.UTC)))
              + " time; a controller with a clock of its own may not follow.");
    }
  }
}
