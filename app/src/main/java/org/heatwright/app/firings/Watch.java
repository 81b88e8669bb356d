package org.heatwright.app.firings;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.CardBuilder;
import org.heatwright.app.report.Ending;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.Readings;
import org.heatwright.learn.RunningFiring;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.WorkRefusedException;

/**
 * A firing in the light of what its display said: forecast, verdict, what happens when.
 *
 * @param firing the record
 * @param schedule what runs
 * @param start when the program's first segment began, or will
 * @param forecast with the readings, where they are believed
 * @param seen what the display said since the program began; empty without any
 * @param update what the readings mean, where there are any
 * @param composition what the rules say of the work; empty where they refuse it now
 * @param card everything a card would say, by the clock
 * @param plan when what is ready
 */
public record Watch(
    FiringRecord firing,
    Schedule schedule,
    ZonedDateTime start,
    Forecast forecast,
    Optional<Readings> seen,
    Optional<RunningFiring.Update> update,
    Optional<Composition> composition,
    Card card,
    StartPlan plan) {

  /**
   * Works it out: a forecast, and a fit where there are readings; up to about a second.
   *
   * @param zone of a kiln that names none
   * @param forecasts makes a forecast, or has it
   * @throws org.heatwright.app.files.InputException if a kept text cannot be read any more
   */
  public static Watch of(
      FiringRecord firing, ZoneId zone, Function<ForecastRequest, Forecast> forecasts) {
    Kiln kiln = firing.kiln();
    Schedule schedule = firing.runs();
    ZonedDateTime start = firing.programStart(zone);
    Optional<Composition> composition = composition(firing, kiln);
    ForecastRequest request =
        ForecastRequest.of(
            schedule.withStartDelay(Duration.ZERO), // the same one as while it was planned
            kiln,
            composition.map(Composition::charge).orElse(Charge.empty()));
    Optional<Readings> seen = readings(firing, start);
    Optional<RunningFiring.Update> update = seen.map(s -> RunningFiring.update(request, s));
    Forecast forecast =
        update.map(RunningFiring.Update::forecast).orElseGet(() -> forecasts.apply(request));
    StartPlanner.Ready ready =
        composition.map(c -> c.ready(forecast)).orElseGet(() -> StartPlanner.ready(forecast));
    FittedProgram program = KeypadFit.fit(schedule, firing.keypad());
    CardBuilder card =
        program.fits()
            ? CardBuilder.of(program, firing.keypad(), kiln, forecast)
            : CardBuilder.of(schedule, kiln, forecast);
    composition.ifPresent(made -> card.composition(made, made.outcomes(schedule, forecast)));
    return new Watch(
        firing,
        schedule,
        start,
        forecast,
        seen,
        update,
        composition,
        card.slot(firing.entry().slot()).start(start, List.of()).build(),
        StartPlanner.startingAt(forecast, ready, start, start));
  }

  private static Optional<Composition> composition(FiringRecord firing, Kiln kiln) {
    try {
      return Optional.of(Composer.compose(firing.work(), kiln, Optional.of(firing.keypad())));
    } catch (WorkRefusedException rulesHaveChanged) {
      return Optional.empty();
    }
  }

  /** What the display said since the program began; of two for one second the later told. */
  private static Optional<Readings> readings(FiringRecord firing, ZonedDateTime start) {
    Map<Double, Double> rows = new TreeMap<>();
    for (FiringEntry.Told told : firing.all(Happening.SHOWN)) {
      double seconds = Duration.between(start.toInstant(), told.at()).toMillis() / 1000.0;
      if (seconds >= 0) {
        rows.put(seconds, told.celsius().orElseThrow());
      }
    }
    return rows.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Readings.of(
                rows.keySet().stream().mapToDouble(Double::doubleValue).toArray(),
                rows.values().stream().mapToDouble(Double::doubleValue).toArray()));
  }

  /** s from the program's start; below zero while a delay runs. */
  public double seconds(Instant now) {
    return Duration.between(start.toInstant(), now).toMillis() / 1000.0;
  }

  /**
   * Where the program is by the forecast's median: the segment, 1-based; 0 before, more after. One
   * that most likely never gets to its target is never left.
   */
  public int segment(Instant now) {
    double seconds = seconds(now);
    if (seconds < 0) {
      return 0;
    }
    for (SegmentForecast segment : forecast.segments()) {
      if (seconds < segment.endSeconds().median() || !Ending.hasMedian(segment)) {
        return segment.index();
      }
    }
    return forecast.segments().size() + 1;
  }

  /** Whether the program has ended by now, in nine of ten cases. */
  public boolean surelyEnded(Instant now) {
    Ending ending = card.timing().ending();
    return ending.isTold() && seconds(now) > ending.seconds().high();
  }

  /** What the display should say; empty before the program and after the forecast's end. */
  public Optional<Band> displayCelsius(Instant now) {
    double seconds = seconds(now);
    return seconds < 0 || seconds > forecast.endSeconds().low()
        ? Optional.empty()
        : Optional.of(forecast.trace().displayCelsiusAt(seconds));
  }

  /** When the work is ready, s from the program's start, where it surely is. */
  public Optional<Card.Ready> ready() {
    return card.timing().ready();
  }

  /** The unit of the display. */
  public TemperatureUnit unit() {
    return schedule.unit();
  }
}
