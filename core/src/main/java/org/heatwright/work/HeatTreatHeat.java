package org.heatwright.work;

import java.time.Duration;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.heattreat.LowHeat;
import org.heatwright.work.heattreat.Practice;
import org.heatwright.work.heattreat.Practice.After;
import org.heatwright.work.heattreat.Practice.Medium;
import org.heatwright.work.heattreat.Practices;
import org.heatwright.work.heattreat.Treatment;

/**
 * One heat to be planned: the window for the piece, the plan within it and how long; practice, data
 * sheet and own values brought together.
 *
 * @param window what the piece must be in
 * @param plan what is planned, before the caps
 * @param fixed whether the plan is the person's own or a data sheet's number
 * @param planOrigin where the plan comes from
 * @param soak time at temperature in the piece
 * @param most longest time that practice names, if it does
 * @param soakOrigin where the time comes from
 * @param after what follows
 * @param beyond what happens above the window, a clause
 * @param below what happens below it, a clause
 * @param windowOrigin where the window comes from
 */
record HeatTreatHeat(
    TemperatureRange window,
    Temperature plan,
    boolean fixed,
    Origin planOrigin,
    Duration soak,
    Optional<Duration> most,
    Origin soakOrigin,
    After after,
    String beyond,
    String below,
    Origin windowOrigin) {

  /** Around a target that stands alone, K. Our estimate. */
  private static final double ALONE_KELVINS = 10;

  private static final After EITHER =
      new After(
          Medium.ANY,
          Optional.empty(),
          Optional.empty(),
          "let it cool as the work likes",
          Origin.practice());

  /** What is planned for a work, before caps and rounding. */
  static HeatTreatHeat of(HeatTreatWork work, TemperatureUnit unit) {
    Optional<HeatTreatHeat> practice =
        work.treatment().isLowHeat()
            ? LowHeat.of(work.treatment(), work.metal()).map(HeatTreatHeat::of)
            : practice(work).map(p -> of(p, work));
    Optional<Temperature> target = work.own().target().or(work.dataSheet()::top);
    Origin whose = Origin.own(work.own().target().isPresent() ? "work file" : "data sheet");
    Optional<Duration> soak = work.own().soak().or(work.dataSheet()::topHold);
    Origin whoseSoak = Origin.own(work.own().soak().isPresent() ? "work file" : "data sheet");
    Optional<TemperatureRange> window =
        work.own()
            .window()
            .or(() -> practice.map(HeatTreatHeat::window).filter(w -> holds(w, target)))
            .or(() -> target.map(HeatTreatHeat::about));
    Optional<Duration> time = soak.or(() -> practice.map(HeatTreatHeat::soak));
    if (window.isEmpty() || time.isEmpty()) {
      throw new WorkRefusedException(
          "No source of ours tells how %s is done: give target-celsius and soak, or the supplier's data sheet."
              .formatted(work.words()));
    }
    TemperatureRange range = window.get();
    if (target.isPresent() && !range.contains(target.get())) {
      throw new WorkRefusedException(
          "The target of %s lies outside the work's own window of %s to %s."
              .formatted(
                  Wording.of(target.get(), unit),
                  Wording.of(range.from(), unit),
                  Wording.of(range.to(), unit)));
    }
    Temperature plan =
        target
            .or(() -> practice.map(HeatTreatHeat::plan).filter(range::contains))
            .orElseGet(
                () -> Temperature.ofCelsius((range.from().celsius() + range.to().celsius()) / 2));
    boolean practiceWindow = practice.filter(p -> p.window().equals(range)).isPresent();
    return new HeatTreatHeat(
        range,
        plan,
        target.isPresent(),
        target.isPresent()
            ? whose
            : practiceWindow
                ? practice.get().windowOrigin()
                : Origin.derived("within the work's own window"),
        time.get(),
        practice.flatMap(HeatTreatHeat::most),
        soak.isPresent() ? whoseSoak : practice.map(HeatTreatHeat::soakOrigin).orElse(whoseSoak),
        practice.map(HeatTreatHeat::after).orElse(EITHER),
        practice.map(HeatTreatHeat::beyond).orElse("it is hotter than was meant"),
        practice.map(HeatTreatHeat::below).orElse("it is cooler than was meant"),
        practiceWindow
            ? practice.get().windowOrigin()
            : work.own().window().isPresent()
                ? Origin.own("work file")
                : Origin.estimate("%.0f K about the target".formatted(ALONE_KELVINS)));
  }

  private static boolean holds(TemperatureRange window, Optional<Temperature> target) {
    return target.map(window::contains).orElse(true);
  }

  private static TemperatureRange about(Temperature target) {
    return new TemperatureRange(
        HeatTreatRules.less(target, ALONE_KELVINS),
        target.plus(TemperatureChange.ofKelvins(ALONE_KELVINS)));
  }

  static Optional<Practice> practice(HeatTreatWork work) {
    if (work.isSolution()) {
      return Practices.solution(work.metal());
    }
    if (work.isAgeing()) {
      return Practices.age(work.metal());
    }
    return work.treatment() == Treatment.ANNEAL
        ? Practices.anneal(work.metal())
        : work.treatment() == Treatment.STRESS_RELIEF
            ? Practices.stressRelief(work.metal())
            : Optional.empty();
  }

  private static HeatTreatHeat of(Practice practice, HeatTreatWork work) {
    String beyond = "grains grow and the surface turns to orange peel";
    String below = "it stays hard";
    if (work.isSolution()) {
      beyond = "it sags, grains grow, and melting is near";
      below = "less goes into solution, so less hardness comes out";
    } else if (work.isAgeing()) {
      beyond = "it over-ages and turns soft again";
      below = "it takes longer or stays soft";
    } else if (work.treatment() == Treatment.STRESS_RELIEF) {
      beyond = "it softens";
      below = "the stresses stay";
    }
    return new HeatTreatHeat(
        new TemperatureRange(practice.low(), practice.high()),
        practice.plan(),
        false,
        practice.origin(),
        Duration.ofMinutes(practice.planMinutes()),
        Optional.of(Duration.ofMinutes(practice.mostMinutes())),
        practice.origin(),
        practice.after(),
        beyond,
        below,
        practice.origin());
  }

  private static HeatTreatHeat of(LowHeat heat) {
    return new HeatTreatHeat(
        new TemperatureRange(heat.low(), heat.high()),
        heat.plan(),
        false,
        heat.origin(),
        Duration.ofMinutes(heat.minutes()),
        Optional.empty(),
        Origin.estimate("time for the piece to even out"),
        EITHER,
        heat.beyond(),
        heat.below(),
        heat.origin());
  }
}
