package org.heatwright.work;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Demands;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;

/**
 * A schedule made for a piece of work, with all that belongs to it. What the rules say in °C is
 * told in the schedule's unit.
 *
 * @param kind of the work, as {@link Work#kind()} names it
 * @param schedule what to fire
 * @param reasons why each number is what it is, by segment
 * @param demands what the work asks of any schedule
 * @param charge what will stand in the kiln
 * @param cautions what to know before the heat
 * @param moments when to act and what can be changed until when
 * @param judge what the firing does to the pieces
 */
public record Composition(
    String kind,
    Schedule schedule,
    List<Reason> reasons,
    Demands demands,
    Charge charge,
    List<Caution> cautions,
    List<Moment> moments,
    PieceJudge judge) {

  public Composition {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(schedule, "schedule");
    TemperatureUnit unit = schedule.unit();
    reasons = reasons.stream().map(reason -> reason.in(unit)).toList();
    Objects.requireNonNull(demands, "demands");
    Objects.requireNonNull(charge, "charge");
    cautions = cautions.stream().map(caution -> caution.in(unit)).toList();
    moments = moments.stream().map(moment -> moment.in(unit)).toList();
    Objects.requireNonNull(judge, "judge");
  }

  /** What a person may find when the kiln is opened. */
  public List<Found> findable() {
    return Found.after(kind);
  }

  /** The same, told in another unit. */
  public Composition withUnit(TemperatureUnit unit) {
    return new Composition(
        kind, schedule.withUnit(unit), reasons, demands, charge, cautions, moments, judge);
  }

  /** The same, to be asked about one schedule: see {@link PieceJudge#settledFor}. */
  public Composition settledFor(Schedule run) {
    return new Composition(
        kind, schedule, reasons, demands, charge, cautions, moments, judge.settledFor(run));
  }

  /**
   * What the firing does to the pieces by a forecast of this composition's charge. That may take a
   * second: ask once for each forecast and hand the answer on.
   */
  public List<Outcome> outcomes(Schedule run, Forecast forecast) {
    return forecast.pieces().size() == charge.followed().size()
        ? judge.outcomes(run, forecast.pieces()).stream()
            .map(outcome -> outcome.in(run.unit()))
            .toList()
        : List.of();
  }

  /**
   * When the work is ready by a forecast of this schedule: the cores of moulds that are in it, or
   * else what the first moment of kind READY says.
   */
  public StartPlanner.Ready ready(Forecast forecast) {
    if (!forecast.work().isEmpty()) {
      return StartPlanner.ready(forecast);
    }
    return moments.stream()
        .filter(moment -> moment.kind() == Moment.Kind.READY)
        .findFirst()
        .filter(moment -> moment.segment() <= forecast.segments().size())
        .map(
            moment ->
                new StartPlanner.Ready(
                    moment.what(),
                    moment.hasBand(forecast) ? seconds(moment, forecast) : Optional.empty()))
        .orElseGet(() -> StartPlanner.ready(forecast));
  }

  /**
   * When one of the moments comes, s from the program's start. Work that is not in moulds is ready
   * no sooner than its judge says. Empty where that cannot be told.
   */
  public Optional<Band> seconds(Moment moment, Forecast forecast) {
    Optional<Band> reached = moment.seconds(forecast);
    return moment.kind() == Moment.Kind.READY && forecast.work().isEmpty()
        ? judge.ready(forecast, reached)
        : reached;
  }
}
