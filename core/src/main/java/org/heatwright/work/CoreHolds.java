package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

  CoreHolds(BurnoutWork work) {
    this.work = work;
  }

  /** A ramp and a hold of the chamber. */
  record Leg(double kelvinsPerHour, double celsius, double holdSeconds) {
    static Leg of(HeatingRate rate, Temperature target, Duration hold) {
      return new Leg(rate.kelvinsPerHour(), target.celsius(), hold.toSeconds());
    }

    Leg holding(Duration hold) {
      return new Leg(kelvinsPerHour, celsius, hold.toSeconds());
    }

    double rampSeconds(double from) {
      return Math.abs(celsius - from) / kelvinsPerHour * 3600;
    }
  }

  /**
   * The drying hold, and what it leaves.
   *
   * @param hold how long
   * @param leftShare share of the free water still in the wettest mould when it ends
   * @param leftByRuleShare the same after the rule's hold
   * @param dry when the last of it has gone at that temperature, from the start of the hold; empty
   *     if it takes longer than we look
   */
  record DryHold(Duration hold, double leftShare, double leftByRuleShare, Optional<Duration> dry) {}

  /**
   * The shortest hold, in quarters of an hour, after which the next ramp drives off clearly less
   * steam at a time than the fastest drying of practice: at least the rule's.
   *
   * @param stated a hold that is not to be changed
   */
  DryHold drying(Leg dry, Optional<Duration> stated, Duration rule, Leg next) {
    Duration hold = stated.orElse(rule);
    double left = 0;
    double leftByRule = 0;
    Duration through = Duration.ZERO;
    boolean endless = false;
    for (PatternedMould each : work.moulds()) {
      if (stated.isEmpty()) {
        hold = longer(hold, shortest(rule, tried -> steamIsSlow(each, dry.holding(tried), next)));
      }
    }
    for (PatternedMould each : work.moulds()) {
      double arrives = dry.rampSeconds(ROOM_CELSIUS);
      MouldFiring held =
          fired(
              each.mould(), List.of(dry.holding(Duration.ofHours(LONGEST_HOURS))), SLOW_CONDUCTION);
      left = Math.max(left, held.waterShareAt(arrives + hold.toSeconds()));
      leftByRule = Math.max(leftByRule, held.waterShareAt(arrives + rule.toSeconds()));
      double gone = BurnoutMeasures.of(held).drySeconds();
      if (Double.isFinite(gone)) {
        through = longer(through, Duration.ofSeconds(Math.round(Math.max(0, gone - arrives))));
      } else {
        endless = true;
      }
    }
    return new DryHold(hold, left, leftByRule, endless ? Optional.empty() : Optional.of(through));
  }

  /** Whether no more steam leaves at a time than practice's fastest drying drives off. */
  private boolean steamIsSlow(PatternedMould each, Leg dry, Leg next) {
    double most =
        BurnoutMeasures.of(fired(each.mould(), List.of(dry, next), 1)).steamKilogramsPerSecond();
    return most <= STEAM_SHARE * fastest(each.mould()).steamKilogramsPerSecond();
  }

  /** What the fastest schedule of practice for its size does inside a mould. */
  BurnoutMeasures fastest(Mould mould) {
    double millimetres = mould.diameterMetres() * 1000;
    return BurnoutMeasures.of(
        fired(
            mould,
            List.of(
                Leg.of(
                    BurnoutRules.fastestWetRise(millimetres),
                    BurnoutRules.DRY,
                    BurnoutRules.leastDryTime(millimetres)),
                Leg.of(
                    BurnoutRules.fastestCristobaliteRise(millimetres),
                    BurnoutRules.WAX_OUT,
                    BurnoutRules.waxHold(millimetres)),
                Leg.of(
                    BurnoutRules.FASTEST_QUARTZ_RISE,
                    BurnoutRules.TOP,
                    BurnoutRules.topHold(millimetres))),
            1));
  }

  /** The shortest top hold in which every core burns out: at least the rule's. */
  Duration top(List<Leg> before, Leg top, Duration rule) {
    Duration hold = rule;
    for (PatternedMould each : work.moulds()) {
      double wanted = BurnoutRules.burn(each.pattern()).toSeconds();
      hold =
          longer(
              hold,
              shortest(
                  rule,
                  tried -> {
                    List<Leg> legs = new ArrayList<>(before);
                    legs.add(top.holding(tried));
                    MouldFiring firing = fired(each.mould(), legs, SLOW_CONDUCTION);
                    return BurnoutMeasures.of(firing).burnSeconds() >= wanted;
                  }));
    }
    return hold;
  }

  /** The shortest soak after which every mould is at the pour temperature all through. */
  Duration soak(Temperature top, Leg pour, Duration rule) {
    Duration hold = rule;
    for (PatternedMould each : work.moulds()) {
      double ramp = pour.rampSeconds(top.celsius());
      Leg longest = pour.holding(Duration.ofHours(LONGEST_HOURS));
      MouldFiring firing =
          MouldFiring.of(
              setting(each.mould(), SLOW_CONDUCTION),
              top,
              chamber(top.celsius(), List.of(longest)),
              Double.POSITIVE_INFINITY,
              FINE);
      double even =
          firing.staysWithinSeconds(
              pour.celsius() - Forecaster.READY_WITHIN_KELVINS,
              pour.celsius() + Forecaster.READY_WITHIN_KELVINS,
              ramp + longest.holdSeconds());
      double needed = Double.isFinite(even) ? Math.max(0, even - ramp) : longest.holdSeconds();
      hold = longer(hold, RoundNumbers.quarterUp(needed / 3600));
    }
    return hold;
  }

  private MouldFiring fired(Mould mould, List<Leg> legs, double conduction) {
    return MouldFiring.of(
        setting(mould, conduction),
        Temperature.ofCelsius(ROOM_CELSIUS),
        chamber(ROOM_CELSIUS, legs),
        Double.POSITIVE_INFINITY,
        COARSE);
  }

  private MouldFiring.Setting setting(Mould mould, double conduction) {
    return new MouldFiring.Setting(mould, work.investment(), Optional.empty(), conduction, 1, 1);
  }

  private static Surroundings chamber(double from, List<Leg> legs) {
    List<Double> points = new ArrayList<>(List.of(0.0, from));
    double now = 0;
    double celsius = from;
    for (Leg leg : legs) {
      double ramp = leg.rampSeconds(celsius);
      celsius = leg.celsius();
      if (ramp > 0) {
        now += ramp;
        points.add(now);
        points.add(celsius);
      }
      if (leg.holdSeconds() > 0) {
        now += leg.holdSeconds();
        points.add(now);
        points.add(celsius);
      }
    }
    return Surroundings.points(points.stream().mapToDouble(Double::doubleValue).toArray());
  }

  /** Bisection over quarters of an hour; the longest if none is long enough. */
  private static Duration shortest(Duration least, java.util.function.Predicate<Duration> enough) {
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

  private static Duration longer(Duration a, Duration b) {
    return a.compareTo(b) >= 0 ? a : b;
  }
}
