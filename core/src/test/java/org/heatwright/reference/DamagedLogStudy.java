package org.heatwright.reference;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;

/** Forecasts of a random kiln from a clean log and from damaged copies of it. */
final class DamagedLogStudy {

  /**
   * What a log led to.
   *
   * @param told the corrections
   * @param forecast of another firing
   * @param truthSeconds when that ended
   * @param truthKilowattHours what it took
   */
  record Outcome(
      List<String> told,
      Lesson lesson,
      Forecast forecast,
      double truthSeconds,
      double truthKilowattHours) {

    double end() {
      return forecast.endSeconds().median();
    }

    boolean holds() {
      return truthSeconds >= forecast.endSeconds().low() - 10
          && truthSeconds <= forecast.endSeconds().high() + 10;
    }
  }

  private final long seed;
  private final RichKiln rich;
  private final Kiln kiln;
  private final Schedule seen;
  private final Schedule next;
  private final FiringConditions seenDay;
  private final FiringConditions nextDay;
  private final RichFiring truth;
  private final Map<Boolean, RichFiring> firings = new java.util.HashMap<>();
  private final Map<DamagedLog, Outcome> outcomes = new EnumMap<>(DamagedLog.class);

  DamagedLogStudy(long seed) {
    this.seed = seed;
    this.rich = KilnPopulation.draw(seed);
    this.kiln = rich.nameplate();
    SchedulePopulation.Family[] families = SchedulePopulation.Family.values();
    SchedulePopulation.Family first =
        seed % 3 != 1 ? SchedulePopulation.Family.SATURATED : families[(int) (seed / 3 % 3)];
    this.seen = SchedulePopulation.draw(first, rich, seed + 1000);
    this.next = SchedulePopulation.draw(SchedulePopulation.Family.SATURATED, rich, seed + 2000);
    this.seenDay = SchedulePopulation.conditions(seed + 1000);
    this.nextDay = SchedulePopulation.conditions(seed + 2000);
    this.truth =
        rich.fire(
            next,
            nextDay,
            0,
            Optional.empty(),
            seed + 7,
            SchedulePopulation.untilSecond(next, rich));
  }

  Schedule seen() {
    return seen;
  }

  private RichFiring firing(boolean warm) {
    return firings.computeIfAbsent(
        warm,
        w ->
            rich.fire(
                seen,
                day(w),
                0,
                Optional.empty(),
                seed + 3,
                SchedulePopulation.untilSecond(seen, rich)));
  }

  private FiringConditions day(boolean startStated) {
    return new FiringConditions(
        seenDay.room(),
        startStated
            ? Optional.of(Temperature.ofCelsius(DamagedLog.WARM_CELSIUS))
            : Optional.empty(),
        seenDay.ventOpen(),
        seenDay.supplyVolts(),
        seenDay.disturbances());
  }

  /** What the product makes of the log: {@code stated} tells it what is damaged otherwise. */
  LoggedFiring logged(DamagedLog damage) {
    RichFiring firing = firing(damage.warm());
    double end = firing.programEndSeconds();
    double until = Double.isFinite(end) ? end + 3600 : 30_000;
    Readings readings = damage.of(firing, until, seed).readings();
    return new LoggedFiring(damage.name(), seen, day(false), Charge.empty(), readings);
  }

  Outcome of(DamagedLog damage) {
    return outcomes.computeIfAbsent(
        damage,
        d -> {
          LogAlignment aligned = LogAlignment.of(kiln, logged(d));
          return outcome(aligned.told(), aligned.firing());
        });
  }

  /** The clean log of a warm start that is stated, or of the cold one. */
  Outcome clean(DamagedLog damage) {
    if (!damage.warm()) {
      return of(DamagedLog.CLEAN);
    }
    LoggedFiring stated = logged(DamagedLog.WARM);
    return outcome(
        List.of(), new LoggedFiring("stated", seen, day(true), Charge.empty(), stated.readings()));
  }

  private Outcome outcome(List<String> told, LoggedFiring firing) {
    Lesson lesson = KilnLearner.learn(kiln, List.of(firing));
    Kiln known = kiln.withLearned(ForecastStudy.learned(lesson));
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(next, known, Charge.empty()).withConditions(nextDay));
    return new Outcome(
        told, lesson, forecast, truth.programEndSeconds(), truth.energyJoules() / 3.6e6);
  }

  public static void main(String[] arguments) {
    long from = Long.parseLong(arguments[0]);
    long to = Long.parseLong(arguments[1]);
    List<DamagedLog> damages = new ArrayList<>();
    for (int i = 2; i < arguments.length; i++) {
      damages.add(DamagedLog.valueOf(arguments[i]));
    }
    if (damages.isEmpty()) {
      damages.addAll(List.of(DamagedLog.values()));
    }
    for (long seed = from; seed < to; seed++) {
      DamagedLogStudy study = new DamagedLogStudy(seed);
      for (DamagedLog damage : damages) {
        long began = System.nanoTime();
        Outcome o = study.of(damage);
        double seconds = (System.nanoTime() - began) / 1e9;
        Outcome clean = study.clean(damage);
        double off = o.end() - clean.end();
        System.out.printf(
            "%d %-13s %s off %5.0f s (%5.2f %%) end %6.0f band %6.0f..%6.0f truth %6.0f %s fit %5.1f"
                + " K energy %.2f/%.2f kWh %.2f s %s%n",
            seed,
            damage,
            Math.abs(off) <= Math.max(120, 0.01 * clean.end()) ? "ok " : "OFF",
            off,
            100 * off / clean.end(),
            o.end(),
            o.forecast().endSeconds().low(),
            o.forecast().endSeconds().high(),
            o.truthSeconds(),
            o.holds() ? "in " : "OUT",
            o.lesson().misfitKelvins(0),
            o.forecast().energyKilowattHours().median(),
            o.truthKilowattHours(),
            seconds,
            o.told());
      }
    }
  }
}
