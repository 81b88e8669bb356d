package org.heatwright.work;

import static org.heatwright.work.RoundNumbers.lower;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.CoreDemands;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Demands.Ceiling;
import org.heatwright.inspect.Demands.RateLimit;
import org.heatwright.inspect.Demands.TimeWithin;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.mould.Investment.Binder;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.CoreHolds.DryHold;
import org.heatwright.work.CoreHolds.Leg;
import org.heatwright.work.casting.PouringPlan;
import org.heatwright.work.casting.SectionClass;
import org.heatwright.work.casting.UsualMould;

/** Burnout of moulds: what the work is, what it asks, the schedule for it. */
final class BurnoutComposer {

  private static final String CARBON_OUT = "carbon out";
  private static final String SETTLE_AT_POUR = "settle at pour temperature";

  private static final double NEAR_KELVINS = 5;
  private static final double LEAST_LIMIT_CELSIUS = 400;

  private final BurnoutWork work;
  private final Kiln kiln;
  private final TemperatureUnit unit;
  private final DataSheet sheet;
  private final BinderRules rules;
  private final List<BinderRules.Rest> rests;
  private final double diameterMillimetres;
  private final boolean tall;
  private final boolean resin;
  private final boolean heavy;
  private final double kilnFactor;
  private final Temperature firmLimit;
  private final Temperature limit;
  private final Temperature top;
  private final Temperature pour;
  private final Optional<UsualMould> alloyPour;
  private final CoreHolds cores;
  private final DryHold drying;
  private final Duration topHold;
  private final Duration pourSoak;

  private BurnoutComposer(
      BurnoutWork work, Kiln kiln, TemperatureUnit unit, Function<BurnoutWork, CoreHolds> holds) {
    this.work = work;
    this.kiln = kiln;
    this.unit = unit;
    sheet = work.dataSheet();
    rules = BinderRules.of(work.investment());
    diameterMillimetres = work.largest().mould().diameterMetres() * 1000;
    tall = work.moulds().stream().anyMatch(m -> BurnoutRules.isTall(m.mould().heightMetres()));
    resin = work.moulds().stream().anyMatch(m -> m.pattern() == PatternedMould.Pattern.RESIN);
    heavy =
        work.moulds().stream().anyMatch(m -> BurnoutRules.isHeavy(m.patternKilograms().orElse(0)));
    kilnFactor = BurnoutRules.kilnFactor(footprintShare(work, kiln));
    firmLimit = lower(rules.ceiling(), sheet.max().orElse(rules.ceiling()));
    limit = lower(firmLimit, kiln.limit());
    top =
        sheet
            .top()
            .map(t -> lower(t, limit))
            .orElseGet(() -> RoundNumbers.target(rules.top(), limit, unit));
    rests = rules.restsAbove(dryTarget(), diameterMillimetres);
    alloyPour = bySection(work, unit).or(() -> rules.pourOf(work.metal().alloy()));
    pour =
        work.metal()
            .pourMould()
            .orElseGet(
                () ->
                    RoundNumbers.target(
                        alloyPour.orElseThrow(this::unknownAlloy).usual(), top, unit));
    cores = holds.apply(work);
    drying = drying();
    topHold = topHoldOfSlowest();
    pourSoak = soakOfSlowest();
  }

  static Composition compose(
      BurnoutWork work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad) {
    return compose(work, kiln, unit, keypad, CoreHolds::new);
  }

  /** The same with another way to find what cores need. */
  static Composition compose(
      BurnoutWork work,
      Kiln kiln,
      TemperatureUnit unit,
      Optional<Keypad> keypad,
      Function<BurnoutWork, CoreHolds> holds) {
    refuseWhatIsNotServed(work);
    refuseWhatDoesNotFit(work, kiln);
    BurnoutComposer composer = new BurnoutComposer(work, kiln, unit, holds);
    composer.refuseImpossibleTemperatures();
    return composer.compose(keypad);
  }

  private Composition compose(Optional<Keypad> keypad) {
    List<Draft> drafts = drafts();
    int fewest = drafts.get(drafts.size() - 1).steps().size();
    keypad.ifPresent(
        k -> {
          if (k.segments() < fewest) {
            throw new WorkRefusedException(
                ("This burnout needs at least %d segments, but the keypad %s holds %d: split it over"
                        + " two programs by hand, or use another keypad.")
                    .formatted(fewest, k.name(), k.segments()));
          }
        });
    Draft.Fitted fitted = Draft.firstThatFits(drafts, name(), unit, keypad);
    return new Composition(
        work.kind(),
        fitted.schedule(),
        fitted.reasons(),
        demands(),
        Charge.moulds(
            work.moulds().stream().map(PatternedMould::mould).toList(), work.investment()),
        cautions(),
        moments(fitted.draft()),
        PieceJudge.none());
  }

  // ---- what is refused

  private static void refuseWhatIsNotServed(BurnoutWork work) {
    Binder binder = work.investment().binder();
    if (binder == Binder.UNKNOWN) {
      throw new WorkRefusedException(
          "Heatwright plans no burnout while the binder of the investment is unknown: look it up on"
              + " the maker's data sheet and set it to gypsum or phosphate.");
    }
    if (work.moulds().stream().anyMatch(m -> m.pattern() == PatternedMould.Pattern.UNKNOWN)) {
      throw new WorkRefusedException(
          "Heatwright plans no burnout while the material of a pattern is unknown: set it to wax or"
              + " resin.");
    }
    if (binder == Binder.GYPSUM && BurnoutRules.needsPhosphate(work.metal().alloy())) {
      throw new WorkRefusedException(
          "%s is too hot for a gypsum-bonded mould: it needs a phosphate-bonded one (investment.binder: phosphate)."
              .formatted(work.metal().alloy()));
    }
  }

  /** Where the thinnest section is told, what the sources say for it and the method. */
  private static Optional<UsualMould> bySection(BurnoutWork work, TemperatureUnit unit) {
    if (work.metal().thinnestMetres().isEmpty() || work.metal().pourMould().isPresent()) {
      return Optional.empty();
    }
    return PouringPlan.of(work.metal().question(work.investment().binder()), unit)
        .mould()
        .map(
            proposal ->
                new UsualMould(
                    proposal.value(),
                    proposal.range(),
                    Origin.derived("the sources for this section and method: " + proposal.why())));
  }

  private WorkRefusedException unknownAlloy() {
    return new WorkRefusedException(
        "Heatwright has no mould temperature for the alloy '%s': set the temperature of the mould at the pour yourself."
            .formatted(work.metal().alloy()));
  }

  private static void refuseWhatDoesNotFit(BurnoutWork work, Kiln kiln) {
    double roomMetres = kiln.chamber().heightMetres();
    double layersShare = 0;
    for (PatternedMould each : work.moulds()) {
      Mould mould = each.mould();
      if (mould.heightMetres() > roomMetres) {
        throw new WorkRefusedException(
            "A mould %.0f mm high does not fit into %s, which is %.0f mm high inside."
                .formatted(mould.heightMetres() * 1000, kiln.name(), roomMetres * 1000));
      }
      layersShare +=
          footprintSquareMetres(mould)
              / kiln.chamber().floorSquareMetres()
              / Math.floor(roomMetres / mould.heightMetres());
    }
    if (layersShare > 1) {
      throw new WorkRefusedException(
          "The moulds do not all fit into %s, even stacked: fire them in more than one load."
              .formatted(kiln.name()));
    }
  }

  private void refuseImpossibleTemperatures() {
    if (kiln.limit().compareTo(rules.leastTop()) < 0) {
      throw new WorkRefusedException(
          "%s may only go to %s, but a burnout of %s moulds needs about %s to clear the carbon: use a hotter kiln."
              .formatted(kiln.name(), words(kiln.limit()), rules.bonded(), words(rules.top())));
    }
    if (limit.celsius() < LEAST_LIMIT_CELSIUS) {
      throw new WorkRefusedException(
          "The data sheet's limit of %s is too low for any burnout, which clears wax and carbon above %.0f °C: check it."
              .formatted(words(limit), LEAST_LIMIT_CELSIUS));
    }
    if (pour.compareTo(top) > 0) {
      String hint = Refusals.fahrenheitHint(pour, unit, meant -> meant.compareTo(top) <= 0);
      throw new WorkRefusedException(
          "The mould's temperature at the pour, %s, is above the burnout's %s%s: set one below it."
              .formatted(words(pour), words(top), hint));
    }
  }

  // ---- the schedule

  private String name() {
    return "burnout-%.0f-mm".formatted(diameterMillimetres);
  }

  /** The full schedule first, then the one with the fewest segments. */
  private List<Draft> drafts() {
    HeatingRate early = earlyRise();
    HeatingRate second = secondRise(early);
    HeatingRate late = lateRise();
    List<Draft.Step> full = new ArrayList<>();
    Draft.Step dry = dryStep(early);
    full.add(dry);
    for (BinderRules.Rest rest : rests) {
      full.add(restStep(rest, second, full.size() == 1));
    }
    full.removeIf(step -> step.target().compareTo(top) >= 0);
    List<Draft.Step> ending = new ArrayList<>();
    boolean poursAtTop = top.celsius() - pour.celsius() < NEAR_KELVINS;
    if (!poursAtTop) {
      ending.add(pourStep());
    }
    full.add(topStep(late, lateWhy(), poursAtTop));
    full.addAll(ending);

    List<Draft> drafts = new ArrayList<>();
    drafts.add(new Draft(full));
    drafts.add(coolingFreely(full));
    List<Draft.Step> short3 = new ArrayList<>();
    short3.add(dry);
    short3.add(topStep(slowRise(second), slowWhy(), poursAtTop));
    short3.addAll(ending);
    if (full.size() > short3.size()) {
      drafts.add(new Draft(short3));
      drafts.add(coolingFreely(short3));
    }
    return drafts;
  }

  private Temperature dryTarget() {
    return sheet
        .dry()
        .map(t -> lower(t, limit))
        .orElseGet(() -> RoundNumbers.target(rules.dry().value(), limit, unit));
  }

  /** The drying hold by the core; a data sheet's hold is kept. */
  private DryHold drying() {
    Leg dry = new Leg(earlyRise(), dryTarget(), dryRule());
    return cores.drying(dry, sheet.dryHold().isPresent(), legAfter(dry));
  }

  private Leg legAfter(Leg dry) {
    HeatingRate second = secondRise(dry.rate());
    return rests.stream()
        .findFirst()
        .map(rest -> new Leg(second, rest.target().value(), rest.hold().value()))
        .orElseGet(() -> new Leg(lateRise(), top, topRule()));
  }

  private Duration dryRule() {
    return sheet
        .dryHold()
        .orElseGet(
            () -> CoreHolds.longer(rules.dryHold(diameterMillimetres, kilnFactor), leastDryHold()));
  }

  /**
   * Practice's holds count on its own slow rise. Where a data sheet's is faster, the hold makes up
   * for the time that the rises spend less in the range of drying.
   */
  private Duration leastDryHold() {
    HeatingRate early = earlyRise();
    double up = dryRange().kelvinsOfWay(Temperature.ofCelsius(20), dryTarget());
    double on = dryRange().kelvinsOfWay(dryTarget(), top);
    HeatingRate onward = rests.isEmpty() ? lateRise() : secondRise(early);
    double hours =
        rules.leastDryTime(diameterMillimetres).toMinutes() / 60.0
            - up / early.kelvinsPerHour()
            - on / onward.kelvinsPerHour();
    return RoundNumbers.quarterUp(Math.max(0, hours));
  }

  private Draft.Step dryStep(HeatingRate early) {
    Temperature target = dryTarget();
    Duration hold = drying.hold();
    return new Draft.Step(
        "dry",
        Ramp.at(early),
        sheet.fastestWetRise().isPresent()
                || early.kelvinsPerHour() < plannedEarly().kelvinsPerHour()
            ? sheetWhy("fastest rise")
            : rules.earlyRise(diameterMillimetres).why(),
        target,
        sheet.dry().isPresent() ? sheetWhy("drying temperature") : rules.dry().why(),
        hold,
        sheet.dryHold().isPresent() ? sheetWhy("drying hold") : dryingWhy());
  }

  private Draft.Why dryingWhy() {
    Draft.Why rule = rules.dryHoldWhy();
    boolean asRuled = drying.hold().equals(dryRule());
    String longer =
        asRuled
            ? ""
            : "%s, by the core: less, and the next ramp would drive off more steam at a time than the mould should give. "
                .formatted(HourMinute.words(drying.hold()));
    String madeUp =
        dryRule().compareTo(rules.dryHold(diameterMillimetres, kilnFactor)) > 0
            ? " Longer here, because the data sheet's rise leaves less time on the way up."
            : "";
    return new Draft.Why(
        longer + rule.rule() + madeUp + " " + dryingSentence(),
        rule.range(),
        asRuled ? rule.origin() : CORE);
  }

  private static final double DRIED_SHARE = 0.01;

  private static final Origin CORE =
      Origin.derived("the mould solved in its section, conducting at the slow end of its range");

  /** A rest on the way up; the first one is also where the pattern goes. */
  private Draft.Step restStep(BinderRules.Rest rest, HeatingRate rise, boolean first) {
    boolean patternGoes = first && resin;
    boolean longerForWax = first && heavy;
    Draft.Why hold = rest.hold().why();
    return new Draft.Step(
        patternGoes ? "resin and " + rest.purpose() : rest.purpose(),
        Ramp.at(rise),
        first
            ? secondWhy()
            : new Draft.Why(
                "A large core lags an hour and more behind: no faster than before.",
                "",
                Origin.estimate("conduction into a bare cylinder, within 40 %")),
        RoundNumbers.target(rest.target().value(), limit, unit),
        rest.target().why(),
        restHold(rest, first),
        longerForWax
            ? new Draft.Why(
                hold.rule() + " One hour more for a pattern of 100 g or more.",
                hold.range(),
                hold.origin())
            : hold);
  }

  private Duration restHold(BinderRules.Rest rest, boolean first) {
    return first && heavy
        ? rest.hold().value().plus(BurnoutRules.EXTRA_FOR_HEAVY_WAX)
        : rest.hold().value();
  }

  private Draft.Step topStep(HeatingRate rise, Draft.Why rampWhy, boolean poursAtTop) {
    Duration hold = topHold;
    Duration after = poursAtTop ? pourHold() : Duration.ZERO;
    return new Draft.Step(
        poursAtTop ? CARBON_OUT + ", " + SETTLE_AT_POUR : CARBON_OUT,
        Ramp.at(rise),
        rampWhy,
        top,
        topWhy(),
        hold.plus(after),
        sheet.topHold().isPresent() ? sheetWhy("top hold") : topHoldWhy());
  }

  private Draft.Step pourStep() {
    HeatingRate fall = RoundNumbers.rate(BurnoutRules.plannedFall(diameterMillimetres), unit);
    return new Draft.Step(
        SETTLE_AT_POUR,
        Ramp.at(fall),
        new Draft.Why(
            "Only downwards, without undershoot; large moulds slower.",
            "100 to 250 °C/h",
            Origin.practice()),
        pour,
        work.metal().pourMould().isPresent()
            ? new Draft.Why(
                "The studio's own mould temperature for %s.".formatted(work.metal().alloy()),
                alloyPour.map(p -> rangeWords(p.range())).orElse(""),
                Origin.own("work file"))
            : new Draft.Why(
                work.metal().thinnestMetres().isPresent()
                    ? "For %s, %s."
                        .formatted(
                            work.metal().alloy(),
                            SectionClass.ofMetres(work.metal().thinnestMetres().getAsDouble())
                                .words())
                    : "Usual for %s of medium section: thin work hotter, heavy work cooler."
                        .formatted(work.metal().alloy()),
                rangeWords(alloyPour.orElseThrow().range()),
                alloyPour.orElseThrow().origin()),
        pourHold(),
        sheet.pourSoak().isPresent()
            ? sheetWhy("soak at the pour temperature")
            : new Draft.Why(
                ("%s before the first mould is drawn, so that the core has come down too; then %s to"
                            + " pour %s.")
                        .formatted(
                            HourMinute.words(pourSoak),
                            HourMinute.words(BurnoutRules.pouringTime(work.count())),
                            counted(work.count(), "mould"))
                    + (pourSoak.equals(soakRule())
                        ? ""
                        : " By practice %s would do, by the core it takes longer."
                            .formatted(HourMinute.words(soakRule()))),
                "at least 1 h, large moulds 2 h",
                Origin.read("a supplier's article on casting karat gold, and the maker's cycles")));
  }

  /** For keypads that only stop heating on the way down. */
  private static Draft coolingFreely(List<Draft.Step> steps) {
    List<Draft.Step> free = new ArrayList<>();
    for (Draft.Step step : steps) {
      boolean falls =
          !free.isEmpty() && step.target().compareTo(free.get(free.size() - 1).target()) < 0;
      free.add(
          falls
              ? step.withRamp(
                  Ramp.fastest(),
                  new Draft.Why(
                      "The keypad cannot slow the cooling: the closed kiln falls as it will.",
                      "100 to 250 °C/h",
                      Origin.own("keypad description")))
              : step);
    }
    return new Draft(free);
  }

  private HeatingRate plannedEarly() {
    return RoundNumbers.rate(rules.earlyRise(diameterMillimetres).value(), unit);
  }

  private HeatingRate earlyRise() {
    return capped(sheet.fastestWetRise().orElseGet(this::plannedEarly));
  }

  private HeatingRate secondRise(HeatingRate early) {
    return resin ? RoundNumbers.rate(BurnoutRules.slowedForResin(early), unit) : early;
  }

  private Draft.Why secondWhy() {
    return new Draft.Why(
        "The core still boils while the chamber climbs, and cristobalite turns at 220 to 270 °C: no"
            + " faster than while drying."
            + (resin
                ? " A quarter slower for resin, which swells before it chars, but not under 50 °C/h."
                : ""),
        "100 to 150 °C/h, slower for large moulds",
        Origin.practice());
  }

  private Draft.Why lateWhy() {
    if (sheet.fastestRise().isPresent()) {
      return sheetWhy("fastest rise");
    }
    Draft.Why why = rules.lateRise(diameterMillimetres).why();
    return slowsLateForResin()
        ? new Draft.Why(
            why.rule() + " A quarter slower for resin, which swells before it chars.",
            why.range(),
            why.origin())
        : why;
  }

  /** Without a hold of its own, the gypsum still gets its time between 350 and 450 °C. */
  private HeatingRate slowRise(HeatingRate second) {
    double hours = BurnoutRules.waxHold(diameterMillimetres).toMinutes() / 60.0;
    return RoundNumbers.rate(
        HeatingRate.ofKelvinsPerHour(Math.min(second.kelvinsPerHour(), 100 / hours)), unit);
  }

  private static Draft.Why slowWhy() {
    return new Draft.Why(
        "The keypad has too few segments for a hold on the way, so the ramp is slow enough to give"
            + " the gypsum the same time between 350 and 450 °C.",
        "",
        Origin.derived("the hold it replaces"));
  }

  private HeatingRate lateRise() {
    HeatingRate late = rules.lateRise(diameterMillimetres).value();
    return capped(
        slowsLateForResin() ? RoundNumbers.rate(BurnoutRules.slowedForResin(late), unit) : late);
  }

  /** Where there is no rest on the way for the pattern. */
  private boolean slowsLateForResin() {
    return resin && rests.isEmpty();
  }

  private HeatingRate capped(HeatingRate rise) {
    return sheet.fastestRise().filter(r -> r.compareTo(rise) < 0).orElse(rise);
  }

  private Duration baseTopHold() {
    return sheet.topHold().orElseGet(() -> rules.topHold(diameterMillimetres));
  }

  /** The rule's hold, or longer where a core has not burnt out by then. */
  private Duration topHoldOfSlowest() {
    if (sheet.topHold().isPresent()) {
      return topRule();
    }
    HeatingRate early = earlyRise();
    HeatingRate second = secondRise(early);
    List<Leg> before = new ArrayList<>();
    before.add(new Leg(early, dryTarget(), drying.hold()));
    for (BinderRules.Rest rest : rests) {
      before.add(new Leg(second, rest.target().value(), rest.hold().value()));
    }
    before.removeIf(leg -> leg.target().compareTo(top) >= 0);
    return cores.top(before, new Leg(lateRise(), top, topRule()));
  }

  /** What practice holds at the top. */
  private Duration topRule() {
    if (sheet.topHold().isPresent()) {
      return baseTopHold();
    }
    Duration hold = baseTopHold();
    if (tall) {
      hold = hold.plus(BurnoutRules.EXTRA_FOR_TALL);
    }
    hold = RoundNumbers.quarterUp(hold.toMinutes() * kilnFactor / 60);
    return resin ? hold.plus(BurnoutRules.EXTRA_FOR_RESIN) : hold;
  }

  private Draft.Why topHoldWhy() {
    Draft.Why practice = rules.topHoldWhy();
    StringBuilder rule = new StringBuilder(practice.rule());
    if (tall) {
      rule.append(" Half an hour more for a mould of 180 mm and higher.");
    }
    if (kilnFactor > 1) {
      rule.append(" Times %s, because the kiln is crowded.".formatted(kilnFactor));
    }
    if (resin) {
      rule.append(" Two hours more for printed resin.");
    }
    if (!topHold.equals(topRule())) {
      rule.append(
          " That would be %s; the core needs %s to burn out."
              .formatted(HourMinute.words(topRule()), HourMinute.words(topHold)));
    }
    return new Draft.Why(rule.toString(), practice.range(), practice.origin());
  }

  private Draft.Why topWhy() {
    if (sheet.top().isPresent()) {
      return top.equals(sheet.top().get())
          ? sheetWhy("burnout temperature")
          : new Draft.Why(
              "The data sheet's %s lies above the limit of %s, which rules."
                  .formatted(words(sheet.top().get()), limitOwner()),
              "",
              Origin.own("data sheet"));
    }
    Draft.Why practice = rules.topWhy();
    if (limit.compareTo(rules.top()) < 0) {
      return new Draft.Why(
          "As near to %s as the limit of %s allows.".formatted(words(rules.top()), limitOwner()),
          practice.range(),
          Origin.own(limitOwner()));
    }
    return practice;
  }

  private String limitOwner() {
    if (kiln.limit().compareTo(firmLimit) < 0) {
      return "the kiln";
    }
    return sheet.max().filter(firmLimit::equals).isPresent() ? "the data sheet" : "the binder";
  }

  private Duration soakRule() {
    return sheet.pourSoak().orElseGet(() -> BurnoutRules.pourSoak(diameterMillimetres));
  }

  /** The rule's soak, or longer where a core has not come down by then. */
  private Duration soakOfSlowest() {
    return sheet.pourSoak().isPresent() || top.celsius() - pour.celsius() < NEAR_KELVINS
        ? soakRule()
        : cores.soak(
            top,
            new Leg(
                RoundNumbers.rate(BurnoutRules.plannedFall(diameterMillimetres), unit),
                pour,
                soakRule()));
  }

  private Duration pourHold() {
    return pourSoak.plus(BurnoutRules.pouringTime(work.count()));
  }

  private static Draft.Why sheetWhy(String what) {
    return new Draft.Why(
        "The maker's data sheet names the %s.".formatted(what), "", Origin.own("data sheet"));
  }

  // ---- what the work asks of any schedule

  private Demands demands() {
    List<Ceiling> ceilings = new ArrayList<>();
    boolean sheetRules = sheet.max().filter(firmLimit::equals).isPresent();
    ceilings.add(
        new Ceiling(
            firmLimit,
            Severity.STOP,
            sheetRules
                ? "the investment by its data sheet"
                : "the %s mould".formatted(rules.bonded()),
            rules.beyondCeiling(),
            limitOrigin(sheetRules)));
    rules
        .topCaution()
        .filter(from -> top.compareTo(from.value()) <= 0 && firmLimit.compareTo(from.value()) > 0)
        .ifPresent(
            from ->
                ceilings.add(
                    new Ceiling(
                        from.value(),
                        Severity.WARN,
                        "the %s mould".formatted(rules.bonded()),
                        from.why().rule(),
                        from.why().origin())));
    TemperatureRange lastTargets =
        work.metal()
            .pourMould()
            .map(t -> around(t, 100))
            .orElseGet(
                () ->
                    new TemperatureRange(
                        lower(alloyPour.orElseThrow().range().from(), pour), firmLimit));
    return new Demands(
        "burnout of " + counted(work.count(), rules.bonded() + " mould"),
        ceilings,
        rateLimits(),
        timesWithin(),
        Optional.of(
            new Demands.PourSoak(
                pour,
                pourSoak,
                sheet.pourSoak().isPresent()
                    ? Origin.own("data sheet")
                    : Origin.read("a supplier's article on casting karat gold"))),
        Optional.of(
            new Demands.NoReheat(
                Temperature.ofCelsius(275),
                "cristobalite turns back and forth, and the mould cracks",
                Origin.practice())),
        Optional.of(
            new Demands.StartWait(
                Duration.ofHours(8),
                "the moulds dry out unevenly, and a half-dry mould cracks on heating",
                Origin.read(
                    "bench-forum reports on damp and dry moulds; the hours are our estimate"))),
        new TemperatureRange(
            lower(rules.leastTop().plus(TemperatureChange.ofKelvins(-30)), top), firmLimit),
        lastTargets,
        TemperatureChange.ofKelvins(Forecaster.READY_WITHIN_KELVINS),
        coreDemands(),
        List.of(),
        List.of());
  }

  /** What practice's fastest schedule does inside each kind of mould is what we allow. */
  private List<CoreDemands> coreDemands() {
    List<CoreDemands> demands = new ArrayList<>();
    for (int i = 0; i < work.moulds().size(); i++) {
      PatternedMould each = work.moulds().get(i);
      double millimetres = each.mould().diameterMetres() * 1000;
      BurnoutMeasures fastest = cores.fastest(each.mould());
      demands.add(
          new CoreDemands(
              i + 1,
              work.moulds().size() == 1
                  ? "the mould of %.0f mm".formatted(millimetres)
                  : "mould %d (%.0f mm)".formatted(i + 1, millimetres),
              each.pattern() == PatternedMould.Pattern.WAX,
              fastest.steamKilogramsPerSecond(),
              fastest.boilingKelvins(),
              fastest.cristobaliteKelvins(),
              fastest.quartzKelvins(),
              fastest.tensionPascals(),
              BurnoutRules.burn(each.pattern()),
              BurnoutMeasures.BURN_REFERENCE,
              BurnoutRules.BURN,
              firmLimit,
              limitOrigin(sheet.max().isPresent())));
    }
    return demands;
  }

  private Origin limitOrigin(boolean sheetRules) {
    return sheetRules ? Origin.own("data sheet") : rules.ceilingOrigin();
  }

  private TemperatureRange around(Temperature own, double kelvins) {
    return new TemperatureRange(
        own.plus(TemperatureChange.ofKelvins(-kelvins)),
        higher(own, lower(own.plus(TemperatureChange.ofKelvins(kelvins)), firmLimit)));
  }

  private List<RateLimit> rateLimits() {
    List<RateLimit> limits = new ArrayList<>();
    limits.add(
        new RateLimit(
            "wet-ramp-too-fast",
            rules.wet(),
            sheet.fastestWetRise().orElseGet(() -> rules.fastestWetRise(diameterMillimetres)),
            Severity.STOP,
            "the water boils faster than steam can leave, and the mould may crack or blow out",
            sheet.fastestWetRise().isPresent() ? Origin.own("data sheet") : rules.wetRiseOrigin()));
    limits.add(
        new RateLimit(
            "inversion-too-fast",
            BurnoutRules.CRISTOBALITE,
            // The sheet's wet rise is also what we plan through here.
            higher(rules.fastestCristobaliteRise(diameterMillimetres), sheet.fastestWetRise()),
            Severity.WARN,
            "the skin turns and swells while the core does not, and the mould cracks",
            Origin.practice()));
    limits.add(
        new RateLimit(
            "inversion-too-fast",
            BurnoutRules.QUARTZ,
            rules.fastestQuartzRise(),
            Severity.WARN,
            "quartz swells at 573 °C, and a fast skin cracks: flash on the castings",
            Origin.practice()));
    sheet
        .fastestRise()
        .ifPresent(
            most ->
                limits.add(
                    new RateLimit(
                        "faster-than-data-sheet",
                        new TemperatureRange(Temperature.ofCelsius(20), firmLimit),
                        most,
                        Severity.WARN,
                        "the maker does not stand behind a faster rise",
                        Origin.own("data sheet"))));
    return limits;
  }

  /** Where the time of drying counts. */
  private TemperatureRange dryRange() {
    return new TemperatureRange(
        lower(
            Temperature.ofCelsius(95),
            sheet.dry().orElse(rules.dry().value()).plus(TemperatureChange.ofKelvins(-5))),
        rules.dryUpTo());
  }

  private List<TimeWithin> timesWithin() {
    Temperature topFrom = lower(rules.topHoldFrom(), top.plus(TemperatureChange.ofKelvins(-20)));
    Duration leastTop =
        resin && sheet.topHold().isEmpty()
            ? baseTopHold().plus(Duration.ofHours(1))
            : baseTopHold();
    return List.of(
        new TimeWithin(
            "short-dry-hold",
            "dry",
            dryRange(),
            sheet.dryHold().orElseGet(() -> rules.leastDryTime(diameterMillimetres)),
            "the core is still wet when the chamber climbs on, and steam may crack the mould",
            sheet.dryHold().isPresent() ? Origin.own("data sheet") : rules.dryHoldWhy().origin()),
        new TimeWithin(
            "short-top-hold",
            "carbon out",
            new TemperatureRange(topFrom, Temperature.ofCelsius(1400)),
            leastTop,
            "carbon stays in the mould and spoils the castings",
            sheet.topHold().isPresent() ? Origin.own("data sheet") : rules.topHoldWhy().origin()));
  }

  // ---- what to know, and when to act

  /** What the drying hold leaves to the next ramp, if it leaves anything. */
  private Optional<Caution> dryingCaution() {
    return drying.leftShare() < DRIED_SHARE
        ? Optional.empty()
        : Optional.of(
            new Caution(
                "not-dry-through",
                dryingSentence() + " Keep the slow ramp after it; do not speed it up.",
                CORE));
  }

  private List<Caution> cautions() {
    List<Caution> cautions = new ArrayList<>();
    dryingCaution().ifPresent(cautions::add);
    mixedSizesCaution().ifPresent(cautions::add);
    if (resin) {
      boolean waxToo =
          work.moulds().stream().anyMatch(m -> m.pattern() == PatternedMould.Pattern.WAX);
      cautions.add(
          new Caution(
              "resin-no-promise",
              "Printed resin leaves ash unless it was fully cured and gets plenty of air: keep the"
                  + " vent open and try one mould first."
                  + (waxToo ? " The wax moulds share its slower, longer schedule." : ""),
              Origin.read("opening of a symposium paper on resin casting")));
    }
    double hours = work.investment().pouredHoursBefore();
    if (hours < 1) {
      cautions.add(
          new Caution(
              "stand-first",
              "The moulds were poured under an hour ago: let them stand 1 to 2 h before the heat, or"
                  + " they crack.",
              Origin.read("bench-forum practice")));
    } else if (hours > 24) {
      cautions.add(
          new Caution(
              "rewet",
              "The moulds have stood for more than a day: dip them about 10 s in water first, because"
                  + " half-dry moulds crack on heating.",
              Origin.read("bench-forum practice; an older textbook view says bone dry")));
    }
    if (rules.topCaution().filter(from -> top.compareTo(from.value()) > 0).isPresent()) {
      cautions.add(
          new Caution(
              "hot-top",
              "The data sheet's %s lies above the usual %s: carbon left in the mould would attack the binder, so give it air."
                  .formatted(words(top), words(rules.top())),
              Origin.own("data sheet")));
    }
    if (top.compareTo(rules.leastTop()) < 0) {
      cautions.add(
          new Caution(
              "cool-top",
              "At %s carbon burns slowly: look into the sprue hole, and do not pour into a grey mould."
                  .formatted(words(top)),
              Origin.practice()));
    }
    cautions.addAll(rules.cautions());
    cautions.add(
        new Caution(
            "pour-window",
            "Out of the kiln the outermost pattern cools first: a mould of 75 mm has one to two"
                + " minutes, smaller ones less. Have the metal ready before the mould is drawn.",
            Origin.estimate("conduction into air, within some tens of per cent")));
    cautions.add(
        new Caution(
            "molten-metal",
            "Molten metal on water explodes: moulds, tools and floor must be dry; wear face shield,"
                + " gloves and natural-fibre clothes.",
            Origin.practice()));
    cautions.add(
        new Caution(
            "burnout-fumes",
            "Wax and resin give smoke and carbon monoxide: lead it outdoors, use a carbon monoxide"
                + " alarm, never fire indoors without extraction.",
            Origin.practice()));
    cautions.add(powerCutCaution());
    cautions.add(
        new Caution(
            "silica-dust",
            "Investment dust scars the lungs: mix and break out wet or under extraction, with a"
                + " fitted respirator.",
            Origin.read("pages on the US rule for respirable crystalline silica (50 µg/m³)")));
    cautions.addAll(Cautions.always());
    return cautions;
  }

  private String dryingSentence() {
    if (drying.leftShare() < DRIED_SHARE) {
      return "That dries a mould of %.0f mm through.".formatted(diameterMillimetres);
    }
    String needed =
        drying
            .dry()
            .map(d -> HourMinute.words(RoundNumbers.quarterUp(d.toMinutes() / 60.0)) + " would")
            .orElse("not even 8 h would");
    return "%s at %s does not dry a mould of %.0f mm through (%.0f %% of its free water is left; %s): its core still boils on the next ramp, which is why that one is slow."
        .formatted(
            HourMinute.words(drying.hold()),
            words(dryTarget()),
            diameterMillimetres,
            100 * drying.leftShare(),
            needed);
  }

  private Optional<Caution> mixedSizesCaution() {
    double smallest =
        work.moulds().stream().mapToDouble(m -> m.mould().diameterMetres()).min().orElseThrow()
            * 1000;
    if (diameterMillimetres - smallest < 10) {
      return Optional.empty();
    }
    Temperature harmless =
        rules.topCaution().map(BinderRules.Reasoned::value).orElse(rules.ceiling());
    return Optional.of(
        new Caution(
            "mixed-sizes",
            "The %.0f mm mould rules; the %.0f mm ones only stand longer, which does them no harm below %s. They lose their heat sooner: have everything ready before drawing one."
                .formatted(diameterMillimetres, smallest, words(harmless)),
            Origin.estimate("conduction into bare cylinders")));
  }

  private Caution powerCutCaution() {
    String what =
        switch (kiln.control().afterPowerCut()) {
          case CONTINUE -> "the controller goes on";
          case RESTART -> "the controller starts the program from the beginning";
          case STOP -> "the controller stops";
          case UNKNOWN -> "nobody has noted what the controller does";
        };
    return new Caution(
        "power-cut",
        "After a power cut %s. Moulds whose core fell below 275 °C must not be heated again: they would crack."
            .formatted(what),
        Origin.practice());
  }

  private List<Moment> moments(Draft draft) {
    int last = draft.steps().size();
    int topBegins = 0;
    int topEnds = 0;
    for (int i = 0; i < last; i++) {
      if (draft.steps().get(i).purpose().startsWith(CARBON_OUT)) {
        topBegins = topBegins == 0 ? i + 1 : topBegins;
        topEnds = i + 1;
      }
    }
    List<Moment> moments = new ArrayList<>();
    moments.add(
        new Moment(
            Moment.Kind.LAST_CHANGE,
            Moment.Anchor.SEGMENT_REACHED,
            1,
            Duration.ZERO,
            "call it off without harm",
            "Once water boils in the moulds they must go through."));
    moments.add(
        new Moment(
            Moment.Kind.LAST_CHANGE,
            Moment.Anchor.SEGMENT_REACHED,
            topBegins,
            Duration.ZERO,
            "change the top temperature",
            "The carbon hold begins."));
    if (last > topEnds) {
      moments.add(
          new Moment(
              Moment.Kind.LAST_CHANGE,
              Moment.Anchor.SEGMENT_END,
              topEnds,
              Duration.ZERO,
              "change the pour temperature at no cost",
              "Later the core needs its catch-up time again, and it must not go up from below 275"
                  + " °C."));
    }
    moments.add(
        new Moment(
            Moment.Kind.READY,
            Moment.Anchor.WORK_READY,
            0,
            Duration.ZERO,
            "first mould may be drawn",
            "Every core is within %.0f K of the pour temperature; practice also waits until the kiln has stood there %s."
                .formatted(Forecaster.READY_WITHIN_KELVINS, HourMinute.words(pourSoak))));
    moments.add(
        new Moment(
            Moment.Kind.ACT,
            Moment.Anchor.WORK_READY,
            0,
            Duration.ZERO,
            "melt ready, pour the moulds",
            "Be there with metal, tongs and helper."));
    moments.add(
        new Moment(
                Moment.Kind.ACT,
                Moment.Anchor.PROGRAM_END,
                0,
                Duration.ZERO,
                "last mould poured by now",
                "The program ends, and the kiln cools by itself.")
            .asDeadline());
    return moments;
  }

  // ---- small things

  private String words(Temperature temperature) {
    return Wording.of(temperature, unit);
  }

  private String rangeWords(TemperatureRange range) {
    return "%s to %s".formatted(words(range.from()), words(range.to()));
  }

  private static String counted(int count, String thing) {
    return count == 1 ? "1 " + thing : count + " " + thing + "s";
  }

  private static double footprintShare(BurnoutWork work, Kiln kiln) {
    return work.moulds().stream().mapToDouble(m -> footprintSquareMetres(m.mould())).sum()
        / kiln.chamber().floorSquareMetres();
  }

  private static double footprintSquareMetres(Mould mould) {
    return mould.count() * mould.diameterMetres() * mould.diameterMetres();
  }

  private static Temperature higher(Temperature a, Temperature b) {
    return a.compareTo(b) >= 0 ? a : b;
  }

  private static HeatingRate higher(HeatingRate rate, Optional<HeatingRate> other) {
    return other.filter(r -> r.compareTo(rate) > 0).orElse(rate);
  }
}
