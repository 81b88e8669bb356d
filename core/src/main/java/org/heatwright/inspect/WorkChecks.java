package org.heatwright.inspect;

import static org.heatwright.inspect.Walk.finding;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.Demands.Ceiling;
import org.heatwright.inspect.Demands.PourSoak;
import org.heatwright.inspect.Demands.RateLimit;
import org.heatwright.inspect.Demands.TimeWithin;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** What the work says against a schedule. */
final class WorkChecks {

  /** A way shorter than this through a range is the edge of a neighbouring hold, K. */
  private static final double EDGE_KELVINS = 2;

  /** Keypads round and units convert; a hundredth is not a faster rate. */
  private static final double RATE_SLACK = 1.01;

  /** Twice the fast end of practice is no longer a matter of taste. {@code estimate:} */
  private static final double FAR_TOO_FAST = 2;

  /** Farther than this from the pour temperature, a schedule ends somewhere else, K. */
  private static final double AT_POUR_KELVINS = 25;

  private final Walk walk;
  private final Schedule schedule;
  private final Demands demands;
  private final List<Finding> findings = new ArrayList<>();

  private WorkChecks(Walk walk, Schedule schedule, Demands demands) {
    this.walk = walk;
    this.schedule = schedule;
    this.demands = demands;
  }

  static List<Finding> find(Walk walk, Schedule schedule, Demands demands) {
    WorkChecks checks = new WorkChecks(walk, schedule, demands);
    checks.ceilings();
    checks.rates();
    checks.times();
    demands.pourSoak().ifPresent(checks::pourSoak);
    demands.noReheat().ifPresent(checks::reheats);
    demands.startWait().ifPresent(checks::startWait);
    return checks.findings;
  }

  /** Of the ceilings a target passes, the gravest and lowest is told. */
  private void ceilings() {
    for (Walk.Step step : walk.steps()) {
      Optional<Ceiling> passed =
          demands.ceilings().stream()
              .filter(c -> step.segment().target().compareTo(c.limit()) > 0)
              .min(Comparator.comparing(Ceiling::beyond).thenComparing(Ceiling::limit));
      passed.ifPresent(
          c ->
              findings.add(
                  finding(
                      c.beyond(),
                      c.beyond() == Severity.STOP ? "above-work-limit" : "near-work-limit",
                      step,
                      "The target %s is above %s for %s: %s. Lower it."
                          .formatted(
                              walk.target(step),
                              Wording.of(c.limit(), walk.unit()),
                              c.what(),
                              c.consequence()),
                      c.origin())));
    }
  }

  private void rates() {
    for (Walk.Step step : walk.steps()) {
      for (RateLimit limit : demands.rateLimits()) {
        if (step.rises()
            && limit.range().kelvinsOfWay(step.from(), step.segment().target()) > EDGE_KELVINS) {
          rate(step, limit);
        }
      }
      for (RateLimit limit : demands.coolingLimits()) {
        if (!step.rises()
            && limit.range().kelvinsOfWay(step.from(), step.segment().target()) > EDGE_KELVINS) {
          rate(step, limit);
        }
      }
    }
    endsHot();
  }

  /** After the last segment the kiln cools as it likes. */
  private void endsHot() {
    Walk.Step last = walk.last();
    demands.coolingLimits().stream()
        .filter(limit -> limit.range().contains(last.segment().target()))
        .filter(
            limit ->
                last.segment().target().celsius() - limit.range().from().celsius() > EDGE_KELVINS)
        .findFirst()
        .ifPresent(
            limit ->
                findings.add(
                    finding(
                        Severity.WARN,
                        "ends-hot",
                        last,
                        "The schedule ends at %s, and from there to %s the kiln cools as it likes, maybe faster than %s: %s. Add a segment that cools it."
                            .formatted(
                                walk.target(last),
                                Wording.of(limit.range().from(), walk.unit()),
                                Wording.of(limit.most(), walk.unit()),
                                limit.consequence()),
                        limit.origin())));
  }

  private void rate(Walk.Step step, RateLimit limit) {
    Optional<HeatingRate> rate = step.segment().ramp().rate();
    if (rate.isPresent()
        && rate.get().kelvinsPerHour() <= limit.most().kelvinsPerHour() * RATE_SLACK) {
      return;
    }
    if (isHeldDrop(step, limit)) {
      return;
    }
    boolean far =
        rate.map(r -> r.kelvinsPerHour() > FAR_TOO_FAST * limit.most().kelvinsPerHour())
            .orElse(true);
    findings.add(
        finding(
            far ? limit.atFastest() : Severity.WARN,
            limit.code(),
            step,
            "The ramp to %s passes %s to %s at %s, faster than %s: %s. Slow it down.%s"
                .formatted(
                    walk.target(step),
                    Wording.of(limit.range().from(), walk.unit()),
                    Wording.of(limit.range().to(), walk.unit()),
                    rate.map(r -> Wording.of(r, walk.unit())).orElse("full power"),
                    Wording.of(limit.most(), walk.unit()),
                    limit.consequence(),
                    rate.map(r -> rateInOtherUnit(r, limit)).orElse("")),
            limit.origin()));
  }

  /** A small fall in one go, and then a hold as long as the slow fall would have taken. */
  private boolean isHeldDrop(Walk.Step step, RateLimit limit) {
    double kelvins = limit.range().kelvinsOfWay(step.from(), step.segment().target());
    if (step.rises() || kelvins > limit.dropKelvins() + EDGE_KELVINS) {
      return false;
    }
    Duration hold = Duration.ZERO;
    for (Walk.Step next : walk.steps().subList(step.number() - 1, walk.steps().size())) {
      if (!next.segment().target().equals(step.segment().target())) {
        break;
      }
      hold = hold.plus(next.segment().hold());
    }
    return kelvins <= limit.most().kelvinsPerHour() * RATE_SLACK * hold.toSeconds() / 3600;
  }

  /** A °F rate in a °C schedule is 1.8 times too fast. */
  private String rateInOtherUnit(HeatingRate rate, RateLimit limit) {
    if (walk.unit() != TemperatureUnit.CELSIUS) {
      return "";
    }
    HeatingRate other = TemperatureUnit.FAHRENHEIT.rate(rate.kelvinsPerHour());
    return other.kelvinsPerHour() > limit.most().kelvinsPerHour() * RATE_SLACK
        ? ""
        : " (If %s was meant in °F/h, that is %s.)"
            .formatted(
                Wording.number(rate.kelvinsPerHour()), Wording.of(other, TemperatureUnit.CELSIUS));
  }

  private void times() {
    for (TimeWithin demand : demands.timesWithin()) {
      Duration time = Duration.ZERO;
      for (Walk.Step step : walk.steps()) {
        time = time.plus(step.timeWithin(demand.range()));
      }
      if (time.compareTo(demand.atLeast()) < 0) {
        findings.add(
            finding(
                Severity.WARN,
                demand.code(),
                "The kiln spends only %s %s (%s), less than %s: %s. Hold longer there."
                    .formatted(
                        HourMinute.words(time),
                        words(demand.range()),
                        demand.purpose(),
                        HourMinute.words(demand.atLeast()),
                        demand.consequence()),
                demand.origin()));
      }
    }
  }

  private void pourSoak(PourSoak soak) {
    Walk.Step last = walk.last();
    if (!isAtPour(last, soak)) {
      findings.add(
          finding(
              Severity.WARN,
              "not-at-pour-temperature",
              last,
              "The schedule ends at %s, not at the pour temperature %s: the metal would freeze early or the casting come out porous. Add a last segment that goes there."
                  .formatted(walk.target(last), Wording.of(soak.target(), walk.unit())),
              soak.origin()));
      return;
    }
    Duration hold = holdAtPour(soak);
    if (schedule.atEnd() == AtEnd.KEEP || hold.compareTo(soak.atLeast()) >= 0) {
      return;
    }
    findings.add(
        finding(
            Severity.WARN,
            hold.isZero() ? "no-pour-soak" : "short-pour-soak",
            last,
            "%s at the pour temperature %s: the cores are still hotter than the kiln says, and hot moulds give porous castings. Hold at least %s before the first pour."
                .formatted(
                    hold.isZero() ? "No soak" : "Only " + HourMinute.words(hold),
                    walk.target(last),
                    HourMinute.words(soak.atLeast())),
            soak.origin()));
  }

  /** The holds of the last segments that are all at the pour temperature. */
  private Duration holdAtPour(PourSoak soak) {
    Duration hold = Duration.ZERO;
    List<Walk.Step> steps = walk.steps();
    for (int i = steps.size() - 1; i >= 0 && isAtPour(steps.get(i), soak); i--) {
      hold = hold.plus(steps.get(i).segment().hold());
    }
    return hold;
  }

  private static boolean isAtPour(Walk.Step step, PourSoak soak) {
    double away = Math.abs(step.segment().target().celsius() - soak.target().celsius());
    return away <= AT_POUR_KELVINS;
  }

  private void reheats(Demands.NoReheat rule) {
    boolean hasBeenAbove = false;
    boolean hasCooledBelow = false;
    for (Walk.Step step : walk.steps()) {
      Temperature target = step.segment().target();
      if (hasCooledBelow && step.rises()) {
        findings.add(
            finding(
                Severity.WARN,
                "reheat-after-cooling",
                step,
                "The schedule cools below %s and then climbs again to %s: %s. Cool only as far as the pour."
                    .formatted(
                        Wording.of(rule.below(), walk.unit()),
                        walk.target(step),
                        rule.consequence()),
                rule.origin()));
        return;
      }
      hasCooledBelow = hasBeenAbove && target.compareTo(rule.below()) < 0;
      hasBeenAbove |= target.compareTo(rule.below()) > 0;
    }
  }

  private void startWait(Demands.StartWait wait) {
    if (schedule.startDelay().compareTo(wait.most()) > 0) {
      findings.add(
          finding(
              Severity.WARN,
              "dries-while-waiting",
              "The start waits %s, longer than %s: %s. Load later, or keep the moulds bagged and damp until then."
                  .formatted(
                      HourMinute.words(schedule.startDelay()),
                      HourMinute.words(wait.most()),
                      wait.consequence()),
              wait.origin()));
    }
  }

  private String words(TemperatureRange range) {
    String from = Wording.of(range.from(), walk.unit());
    return range.to().compareTo(schedule.peak()) > 0
        ? "above " + from
        : "between %s and %s".formatted(from, Wording.of(range.to(), walk.unit()));
  }
}
