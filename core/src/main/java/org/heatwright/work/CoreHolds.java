package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.heatwright.forecast.Forecaster;
import org.heatwright.mould.BodySolver;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.mould.Mould;
import org.heatwright.mould.MouldFiring;
import org.heatwright.mould.Surroundings;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;

/**
 * Holds as long as the slowest core needs, in a chamber that follows the schedule: the mould solved
 * in its section, with the investment at the slow end of what it may be. What a particular kiln
 * makes of it is the forecast's business.
 */
class CoreHolds {

  /** Investment may conduct this much less than the table says. Source: estimate. */
  private static final double SLOW_CONDUCTION = 0.8;

  /** A core is not waited for longer than this, h. Our choice: a night is only so long. */
  private static final int LONGEST_HOURS = 8;

  /** Steam of a planned firing, of what practice's fastest drives off at a time. Our choice. */
  private static final double STEAM_SHARE = 0.8;

  private static final double ROOM_CELSIUS = 20;

  /** Within some minutes of the converged answer (tested): holds are whole quarters of an hour. */
  private static final BodySolver.Accuracy COARSE = new BodySolver.Accuracy(0.4, 4, 0);

  /** Where the last ten kelvins count. */
  private static final BodySolver.Accuracy FINE = new BodySolver.Accuracy(1, 0.3, 0);

  private final BurnoutWork work;
  private final BinderRules rules;

  CoreHolds(BurnoutWork work) {
    this.work = work;
    rules = BinderRules.of(work.investment());
  }

  /** A ramp and a hold of the chamber. */
  record Leg(HeatingRate rate, Temperature target, Duration hold) {

    Leg holding(Duration newHold) {
      return new Leg(rate, target, newHold);
    }

    double rampSeconds(double from) {
      return Math.abs(target.celsius() - from) / rate.kelvinsPerHour() * 3600;
    }
  }

  /**
   * The drying hold, and what it leaves.
   *
   * @param hold how long
   * @param leftShare share of the free water still in the wettest mould when it ends
   * @param dry when the last of it has gone at that temperature, from the start of the hold; empty
   *     if it takes longer than we look
   */
  record DryHold(Duration hold, double leftShare, Optional<Duration> dry) {}

  /**
   * The shortest hold, in quarters of an hour, after which the next ramp drives off clearly less
   * steam at a time than the fastest drying of practice; by some rules, after which no free water
   * is left at all. At least that of {@code dry}.
   *
   * @param fixed whether the hold is not to be changed
   */
  DryHold drying(Leg dry, boolean fixed, Leg next) {
    double arrives = dry.rampSeconds(ROOM_CELSIUS);
    List<MouldFiring> held =
        work.moulds().stream()
            .map(
                each ->
                    fired(
                        each.mould(),
                        List.of(dry.holding(Duration.ofHours(LONGEST_HOURS))),
                        SLOW_CONDUCTION))
            .toList();
    double gone = held.stream().mapToDouble(MouldFiring::drySeconds).max().orElseThrow();
    Optional<Duration> through =
        Double.isFinite(gone)
            ? Optional.of(Duration.ofSeconds(Math.max(0, Math.round(gone - arrives))))
            : Optional.empty();
    Duration hold =
        fixed
            ? dry.hold()
            : rules.driesThrough()
                ? longer(dry.hold(), holdUntil(through))
                : longest(
                    dry.hold(),
                    each -> {
                      double most = STEAM_SHARE * fastest(each.mould()).steamKilogramsPerSecond();
                      return shortest(
                          dry.hold(),
                          tried -> steam(each, List.of(dry.holding(tried), next)) <= most);
                    });
    double left =
        held.stream()
            .mapToDouble(firing -> firing.waterShareAt(arrives + hold.toSeconds()))
            .max()
            .orElseThrow();
    return new DryHold(hold, left, through);
  }

  private static Duration holdUntil(Optional<Duration> through) {
    return through
        .map(hold -> RoundNumbers.quarterUp(hold.toSeconds() / 3600.0))
        .orElse(Duration.ofHours(LONGEST_HOURS));
  }

  /** The most steam that leaves a mould at a time, kg/s. */
  private double steam(PatternedMould each, List<Leg> legs) {
    return BurnoutMeasures.of(fired(each.mould(), legs, 1)).steamKilogramsPerSecond();
  }

  /** What the fastest schedule of practice for its size does inside a mould. */
  BurnoutMeasures fastest(Mould mould) {
    double millimetres = mould.diameterMetres() * 1000;
    List<Leg> legs = new ArrayList<>();
    legs.add(
        new Leg(
            rules.fastestWetRise(millimetres),
            rules.dry().value(),
            rules.leastDryTime(millimetres)));
    rules.restsAbove(rules.dry().value(), millimetres).stream()
        .limit(1)
        .map(
            rest ->
                new Leg(
                    rules.fastestCristobaliteRise(millimetres),
                    rest.target().value(),
                    rest.hold().value()))
        .forEach(legs::add);
    legs.add(new Leg(rules.fastestQuartzRise(), rules.top(), rules.topHold(millimetres)));
    return BurnoutMeasures.of(fired(mould, legs, 1));
  }

  /** The shortest top hold in which every core burns out: at least that of {@code top}. */
  Duration top(List<Leg> before, Leg top) {
    return longest(
        top.hold(),
        each -> {
          double wanted = BurnoutRules.burn(each.pattern()).toSeconds();
          return shortest(
              top.hold(),
              tried -> {
                List<Leg> legs = new ArrayList<>(before);
                legs.add(top.holding(tried));
                MouldFiring firing = fired(each.mould(), legs, SLOW_CONDUCTION);
                return BurnoutMeasures.of(firing).burnSeconds() >= wanted;
              });
        });
  }

  /**
   * The shortest soak after which every mould is at the pour temperature all through: at least that
   * of {@code pour}.
   */
  Duration soak(Temperature top, Leg pour) {
    double ramp = pour.rampSeconds(top.celsius());
    Leg longest = pour.holding(Duration.ofHours(LONGEST_HOURS));
    return longest(
        pour.hold(),
        each -> {
          MouldFiring firing =
              MouldFiring.of(
                  setting(each.mould(), SLOW_CONDUCTION),
                  top,
                  chamber(top.celsius(), List.of(longest)),
                  FINE);
          double even =
              firing.staysWithinSeconds(
                  pour.target().celsius() - Forecaster.READY_WITHIN_KELVINS,
                  pour.target().celsius() + Forecaster.READY_WITHIN_KELVINS,
                  ramp + longest.hold().toSeconds());
          double needed = Math.min(Math.max(0, even - ramp), longest.hold().toSeconds());
          return RoundNumbers.quarterUp(needed / 3600);
        });
  }

  /** What the neediest mould needs, at least so long. */
  private Duration longest(Duration least, Function<PatternedMould, Duration> needed) {
    return work.moulds().stream().map(needed).reduce(least, CoreHolds::longer);
  }

  private MouldFiring fired(Mould mould, List<Leg> legs, double conduction) {
    return MouldFiring.of(
        setting(mould, conduction),
        Temperature.ofCelsius(ROOM_CELSIUS),
        chamber(ROOM_CELSIUS, legs),
        COARSE);
  }

  private MouldFiring.Setting setting(Mould mould, double conduction) {
    return new MouldFiring.Setting(mould, work.investment(), conduction, 1, 1, 1);
  }

  private static Surroundings chamber(double from, List<Leg> legs) {
    List<Double> points = new ArrayList<>(List.of(0.0, from));
    double now = 0;
    double celsius = from;
    for (Leg leg : legs) {
      double ramp = leg.rampSeconds(celsius);
      celsius = leg.target().celsius();
      if (ramp > 0) {
        now += ramp;
        points.add(now);
        points.add(celsius);
      }
      if (!leg.hold().isZero()) {
        now += leg.hold().toSeconds();
        points.add(now);
        points.add(celsius);
      }
    }
    return Surroundings.points(points.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** Bisection over quarters of an hour; the longest if none is long enough. */
  private static Duration shortest(Duration least, Predicate<Duration> enough) {
    if (enough.test(least)) {
      return least;
    }
    long low = least.toMinutes() / 15;
    long high = LONGEST_HOURS * 4L;
    if (high <= low) {
      return least;
    }
    while (high - low > 1) {
      long middle = (low + high) / 2;
      if (enough.test(Duration.ofMinutes(15 * middle))) {
        high = middle;
      } else {
        low = middle;
      }
    }
    return Duration.ofMinutes(15 * high);
  }

  static Duration longer(Duration a, Duration b) {
    return a.compareTo(b) >= 0 ? a : b;
  }
}
