package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Demands.Ceiling;
import org.heatwright.inspect.Demands.TimeWithin;
import org.heatwright.inspect.Demands.Window;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.HeatTreatWork.Phase;
import org.heatwright.work.HeatTreatWork.Setting;
import org.heatwright.work.heattreat.Practice.Medium;
import org.heatwright.work.heattreat.SterlingHardness.Hardness;
import org.heatwright.work.heattreat.TreatedMetal;

/** A heat treatment: one way up at a rate, a hold that counts in the piece, time to take it out. */
final class HeatTreatComposer {

  private static final double MINUTE_SECONDS = 60;
  private static final int ROUND_MINUTES = 5;

  private final HeatTreatWork work;
  private final Kiln kiln;
  private final TemperatureUnit unit;
  private final HeatTreatHeat heat;
  private final List<HeatTreatRules.Cap> caps;
  private final HeatTreatRules.Cap cap;
  private final Temperature target;
  private final HeatingRate rate;
  private final Duration lag;

  private HeatTreatComposer(HeatTreatWork work, Kiln kiln, TemperatureUnit unit) {
    this.work = work;
    this.kiln = kiln;
    this.unit = unit;
    heat = HeatTreatHeat.of(work, unit);
    caps = HeatTreatRules.caps(work, kiln, unit);
    cap = HeatTreatRules.lowest(caps);
    target = target();
    rate = HeatTreatRules.rate(work, target, unit);
    lag = minutesUp(HeatTreatCautions.lagSeconds(work, kiln, target, rate));
  }

  static Composition compose(
      HeatTreatWork work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad) {
    HeatTreatComposer composer = new HeatTreatComposer(work, kiln, unit);
    composer.refuseWhatCannotBeDone();
    return composer.compose(keypad);
  }

  private Composition compose(Optional<Keypad> keypad) {
    Draft.Fitted fitted = Draft.firstThatFits(List.of(draft()), name(), unit, keypad);
    return new Composition(
        work.kind(),
        fitted.schedule(),
        fitted.reasons(),
        demands(),
        Charge.followed(List.of(HeatTreatPieces.of(work))),
        new HeatTreatCautions(work, kiln, unit, heat, target).all(cap),
        moments(fitted.draft().steps().size()),
        new HeatTreatJudge(work, heat, window(), kiln.room(), unit));
  }

  // ---- what cannot be done

  /** The plan in round numbers, under the caps; a number of the person's own stays as it is. */
  private Temperature target() {
    return work.own().target().isPresent()
        ? heat.plan()
        : heat.fixed() ? RoundNumbers.lower(heat.plan(), cap.limit()) : round();
  }

  /** In tens where a ten lies in the window and under the caps, else in whole degrees. */
  private Temperature round() {
    Temperature most = RoundNumbers.lower(cap.limit(), heat.window().to());
    Temperature tens = RoundNumbers.target(heat.plan(), most, unit);
    return tens.compareTo(heat.window().from()) >= 0
        ? tens
        : whole(RoundNumbers.lower(heat.plan(), most));
  }

  private void refuseWhatCannotBeDone() {
    if (target.compareTo(cap.limit()) > 0) {
      throw new WorkRefusedException(
          "The target of %s%s is above %s: %s."
              .formatted(words(target), unitHint(), words(whole(cap.limit())), cap.words()));
    }
    boolean sterlingSolution = work.isSolution() && work.metal() == TreatedMetal.STERLING_925;
    if (sterlingSolution && target.compareTo(HeatTreatRules.STERLING_GAINS_LITTLE) <= 0) {
      throw new WorkRefusedException(
          "Sterling gains little from a solution heat of 650 °C or less, and here %s is the most (%s): age as it is for what that gives, or harden before soldering."
              .formatted(words(target), cap.words()));
    }
    boolean mayBeLess = sterlingSolution && work.own().window().isEmpty();
    if (!mayBeLess && !work.own().target().isPresent() && target.compareTo(lowest()) < 0) {
      throw new WorkRefusedException(
          "%s needs %s at least, and here %s is the most: %s."
              .formatted(
                  Wording.capital(work.words()),
                  words(heat.window().from()),
                  words(whole(cap.limit())),
                  cap.words()));
    }
    if (heat.after().medium() == Medium.WATER
        && heat.after().above().isPresent()
        && work.setting() == Setting.CARBON_BOX) {
      throw new WorkRefusedException(
          "%s must be in water within seconds, and out of a box of hot carbon it never is: lay it on a mesh or a block."
              .formatted(Wording.capital(work.words())));
    }
    refuseHardnessOutOfReach();
  }

  /** A rounded target may stand a little under what practice names. */
  private Temperature lowest() {
    return HeatTreatRules.less(heat.window().from(), HeatTreatRules.NEAR_KELVINS);
  }

  private void refuseHardnessOutOfReach() {
    if (work.own().wantedHardness().isEmpty()) {
      return;
    }
    double wanted = work.own().wantedHardness().getAsDouble();
    Optional<Hardness> expected = expected();
    if (expected.isPresent() && wanted > expected.get().high()) {
      throw new WorkRefusedException(
          "%.0f HV is out of reach: %s at %s ends between %.0f and %.0f HV by our sources."
              .formatted(
                  wanted,
                  work.words(),
                  words(target),
                  expected.get().low(),
                  expected.get().high()));
    }
  }

  /** What hardness to expect when all goes as planned, where our sources tell any. */
  private Optional<Hardness> expected() {
    return HeatTreatCautions.expected(work, target, heat.soak());
  }

  /** For a number of the person's own. */
  private String unitHint() {
    return heat.fixed()
        ? Refusals.fahrenheitHint(target, unit, meant -> meant.compareTo(cap.limit()) <= 0)
        : "";
  }

  // ---- the schedule

  private String name() {
    String what =
        work.phase()
            .map(p -> p == Phase.SOLUTION ? "solution" : "age")
            .orElse(work.treatment().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
    return what + "-" + work.metal().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  private Duration ready() {
    return lag.plus(heat.soak());
  }

  private Duration hold() {
    return ready().plus(HeatTreatRules.handling(work, heat.after().medium() == Medium.WATER));
  }

  private Draft draft() {
    return new Draft(
        List.of(
            new Draft.Step(
                work.phase().map(Phase::words).orElse(work.treatment().words()),
                Ramp.at(rate),
                rateWhy(),
                target,
                targetWhy(),
                hold(),
                holdWhy())));
  }

  private Draft.Why rateWhy() {
    boolean sheet =
        work.dataSheet()
            .fastestRise()
            .filter(r -> r.kelvinsPerHour() <= rate.kelvinsPerHour() * 1.1)
            .isPresent();
    return sheet
        ? new Draft.Why("The data sheet names the fastest rise.", "", Origin.own("data sheet"))
        : new Draft.Why(
            "A rate the kiln can follow: at full power a small kiln overshoots, most of all at low targets.",
            "",
            Origin.estimate("150 °C/h for a narrow window, 400 °C/h where time in hot air counts"));
  }

  private Draft.Why targetWhy() {
    TemperatureRange window = heat.window();
    String range = "%s to %s in the piece".formatted(words(window.from()), words(window.to()));
    boolean capped = target.compareTo(heat.plan()) < 0 && cap.limit().compareTo(heat.plan()) < 0;
    if (capped) {
      return new Draft.Why(
          "%s would be planned, but %s.".formatted(words(heat.plan()), cap.words()),
          range,
          cap.origin());
    }
    if (heat.fixed()) {
      return new Draft.Why(
          work.own().target().isPresent()
              ? "The studio's own temperature."
              : "The supplier's data sheet names it.",
          range,
          heat.planOrigin());
    }
    return new Draft.Why(
        work.isSolution() && work.metal() == TreatedMetal.STERLING_925
            ? "Hot enough for all of the copper to dissolve (from about 732 °C), and capped at 745 °C: melting and solder are near."
            : "Practice for %s.".formatted(work.words()),
        range,
        heat.planOrigin());
  }

  private Draft.Why holdWhy() {
    Duration handling = hold().minus(ready());
    return new Draft.Why(
        "%s until the piece itself is within %s of the target, %s at temperature%s."
            .formatted(
                HourMinute.words(lag),
                Wording.differenceUp(HeatTreatRules.NEAR_KELVINS, unit),
                HourMinute.words(heat.soak()),
                handling.isZero()
                    ? ""
                    : ", %s to take the pieces out".formatted(HourMinute.words(handling))),
        heat.most().map(m -> "up to %s at temperature".formatted(HourMinute.words(m))).orElse(""),
        heat.soakOrigin());
  }

  // ---- what the work asks of any schedule

  private Demands demands() {
    List<Ceiling> ceilings = new ArrayList<>();
    Ceiling firmest = firmCeiling();
    Temperature firm = firmest.limit();
    ceilings.add(firmest);
    boolean windowRules = window().to().compareTo(cap.limit()) <= 0;
    Temperature usual = windowRules ? window().to() : cap.limit();
    if (usual.compareTo(firm) < 0) {
      ceilings.add(
          new Ceiling(
              usual,
              Severity.WARN,
              windowRules ? work.words() : work.metal().words(),
              windowRules ? heat.beyond() : cap.words(),
              windowRules ? heat.windowOrigin() : cap.origin()));
    }
    Temperature low =
        HeatTreatRules.less(
            RoundNumbers.lower(target, heat.window().from()), HeatTreatRules.NEAR_KELVINS);
    return new Demands(
        work.words(),
        ceilings,
        List.of(),
        List.of(
            new TimeWithin(
                "short-soak",
                "at temperature",
                new TemperatureRange(low, firm),
                ready(),
                "%s to warm the piece and %s at temperature are needed; %s"
                    .formatted(HourMinute.words(lag), HourMinute.words(heat.soak()), heat.below()),
                heat.soakOrigin())),
        new TemperatureRange(low, RoundNumbers.lower(firm, window().to())),
        new TemperatureRange(Temperature.ofCelsius(0), firm),
        TemperatureChange.ofKelvins(HeatTreatRules.NEAR_KELVINS),
        List.of(
            new Window(window(), work.words(), heat.beyond(), heat.below(), heat.windowOrigin())),
        List.of());
  }

  /** What must not be passed for sure: the metal melts, a joint flows, the sheet forbids it. */
  private Ceiling firmCeiling() {
    Temperature solid = HeatTreatRules.solidByDisplay(work, kiln);
    List<Ceiling> firm = new ArrayList<>();
    firm.add(
        new Ceiling(
            solid,
            Severity.STOP,
            work.metal().words(),
            "it begins to melt at %s, and the display may be off"
                .formatted(words(HeatTreatRules.solidus(work).temperature())),
            HeatTreatRules.solidus(work).origin()));
    work.own()
        .solderFlow()
        .ifPresent(
            flow ->
                firm.add(
                    new Ceiling(
                        HeatTreatRules.trueByDisplay(flow, kiln),
                        Severity.STOP,
                        "the soldered joints",
                        "the solder flows at %s, and the display may be off".formatted(words(flow)),
                        Origin.own("work file"))));
    work.dataSheet()
        .max()
        .ifPresent(
            max ->
                firm.add(
                    new Ceiling(
                        max,
                        Severity.STOP,
                        "this metal by its data sheet",
                        "the supplier does not stand behind it",
                        Origin.own("data sheet"))));
    return firm.stream().min(Comparator.comparing(Ceiling::limit)).orElseThrow();
  }

  /** The window for the piece; where a cap presses the target to its lower edge, it gives way. */
  private TemperatureRange window() {
    return new TemperatureRange(
        RoundNumbers.lower(
            HeatTreatRules.less(target, 2 * HeatTreatRules.NEAR_KELVINS), heat.window().from()),
        heat.window().to());
  }

  // ---- when to act

  private List<Moment> moments(int segments) {
    List<Moment> moments = new ArrayList<>();
    moments.add(
        new Moment(
            Moment.Kind.READY,
            Moment.Anchor.SEGMENT_REACHED,
            1,
            ready(),
            "pieces have had their time",
            "Counted in the piece: %s to warm it, %s at temperature."
                .formatted(HourMinute.words(lag), HourMinute.words(heat.soak()))));
    HeatTreatCautions cautions = new HeatTreatCautions(work, kiln, unit, heat, target);
    cautions
        .way()
        .ifPresent(
            way ->
                moments.add(
                    new Moment(
                        Moment.Kind.ACT,
                        Moment.Anchor.SEGMENT_REACHED,
                        1,
                        ready(),
                        way.what(),
                        way.why())));
    moments.add(
        new Moment(
            Moment.Kind.LAST_CHANGE,
            Moment.Anchor.SEGMENT_REACHED,
            1,
            Duration.ZERO,
            "change the temperature",
            "Afterwards the piece's time is counted at another one."));
    boolean last = heat.after().medium() == Medium.WATER;
    Moment out =
        new Moment(
            Moment.Kind.ACT,
            Moment.Anchor.SEGMENT_END,
            segments,
            Duration.ZERO,
            last ? "last piece out" : "pieces may come out",
            "The hold ends, and the kiln cools by itself.");
    moments.add(last ? out.asDeadline() : out);
    return moments;
  }

  /** Up to the next five minutes; nothing stays nothing. */
  private static Duration minutesUp(double seconds) {
    double fives = Math.ceil(seconds / MINUTE_SECONDS / ROUND_MINUTES - 1e-9);
    return Duration.ofMinutes(Math.round(fives) * ROUND_MINUTES);
  }

  private Temperature whole(Temperature temperature) {
    return unit.temperature(Math.floor(unit.value(temperature) + 1e-6));
  }

  private String words(Temperature temperature) {
    return Wording.of(temperature, unit);
  }
}
