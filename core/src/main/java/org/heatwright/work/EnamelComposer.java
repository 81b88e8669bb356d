package org.heatwright.work;

import static org.heatwright.work.RoundNumbers.lower;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Demands.Ceiling;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelWork.Metal;

/** An enamelling session: one way up, then the working hold. */
final class EnamelComposer {

  private static final double LEAST_WORKING_CELSIUS = 650;

  /** As far under the eutectic of copper and silver as a display may be out. Estimate. */
  private static final double SAFE_CONTACT_CELSIUS = 770;

  private final EnamelWork work;
  private final Kiln kiln;
  private final TemperatureUnit unit;
  private final DataSheet sheet;
  private final EnamelRules.MetalLimits metal;
  private final Temperature firmLimit;
  private final Temperature working;
  private final EnamelDoor.Model model;

  private EnamelComposer(EnamelWork work, Kiln kiln, TemperatureUnit unit, EnamelDoor.Model model) {
    this.model = model;
    this.work = work;
    this.kiln = kiln;
    this.unit = unit;
    sheet = work.dataSheet();
    metal = EnamelRules.limits(work.metal(), work.build().solidus());
    firmLimit = lower(metal.firm(), sheet.max().orElse(metal.firm()));
    Temperature limit = lower(firmLimit, kiln.limit());
    working =
        work.working()
            .orElseGet(
                () ->
                    sheet
                        .top()
                        .map(t -> lower(t, limit))
                        .orElseGet(
                            () ->
                                RoundNumbers.target(
                                    EnamelRules.usual(work.hardness()),
                                    lower(metal.usualMost(), limit),
                                    unit)));
  }

  static Composition compose(
      EnamelWork work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad) {
    return compose(work, kiln, unit, keypad, EnamelDoor.Simulated.usual());
  }

  /**
   * As the other.
   *
   * @param model what the kiln does after its door
   */
  static Composition compose(
      EnamelWork work,
      Kiln kiln,
      TemperatureUnit unit,
      Optional<Keypad> keypad,
      EnamelDoor.Model model) {
    EnamelComposer composer = new EnamelComposer(work, kiln, unit, model);
    composer.refuseImpossibleTemperatures();
    Refusals.pieceTooLong(work.pieceMetres(), kiln);
    return composer.compose(keypad, EnamelOutlook.of(work, kiln, model, composer.working));
  }

  private Composition compose(Optional<Keypad> keypad, EnamelOutlook outlook) {
    Draft.Fitted fitted = Draft.firstThatFits(List.of(draft(outlook)), name(), unit, keypad);
    return new Composition(
        work.kind(),
        fitted.schedule(),
        fitted.reasons(),
        demands(),
        Charge.empty(),
        cautions(outlook),
        moments(fitted.draft().steps().size(), outlook),
        new EnamelJudge(work, kiln, model, outlook));
  }

  private void refuseImpossibleTemperatures() {
    if (working.compareTo(kiln.limit()) > 0) {
      throw refused("the limit of %s, %s".formatted(kiln.name(), words(kiln.limit())));
    }
    if (working.compareTo(firmLimit) > 0) {
      throw refused(
          firmLimit.equals(metal.firm())
              ? "%s for %s: %s"
                  .formatted(words(firmLimit), work.metal().words(), metal.firmBecause())
              : "the data sheet's limit, %s".formatted(words(firmLimit)));
    }
  }

  private WorkRefusedException refused(String limit) {
    String hint = Refusals.fahrenheitHint(working, unit, legitimate()::contains);
    return new WorkRefusedException(
        "The working temperature %s%s is above %s.".formatted(words(working), hint, limit));
  }

  // ---- the schedule

  private String name() {
    return "enamel-" + work.metal().words().replace(' ', '-');
  }

  private Draft draft(EnamelOutlook outlook) {
    return new Draft(
        List.of(
            new Draft.Step(
                "working heat",
                Ramp.fastest(),
                new Draft.Why(
                    "The kiln is empty on the way up, so nothing but the kiln limits the rate.",
                    "",
                    Origin.practice()),
                working,
                workingWhy(),
                work.session().plus(warmUp()),
                new Draft.Why(
                    ("The whole session, for pieces that go in one after another; %s each from the"
                            + " door's shutting, %s.%s")
                        .formatted(
                            pieceTimeWords(outlook),
                            rateWords(outlook),
                            holdWaits()
                                ? ""
                                : " The hold's clock runs from the start here, so %s are added to warm up."
                                    .formatted(HourMinute.words(warmUp()))),
                    "",
                    Origin.own("work file")))));
  }

  private Draft.Why workingWhy() {
    TemperatureRange usual = EnamelRules.range(work.hardness());
    String range = "%s to %s".formatted(words(usual.from()), words(usual.to()));
    if (work.working().isPresent()) {
      return new Draft.Why("The studio's own working temperature.", range, Origin.own("work file"));
    }
    if (sheet.top().isPresent()) {
      return working.equals(sheet.top().get())
          ? new Draft.Why(
              "The maker's data sheet names the firing temperature.",
              range,
              Origin.own("data sheet"))
          : new Draft.Why(
              "The data sheet's %s lies above a limit of the metal, the sheet or the kiln, which rules."
                  .formatted(words(sheet.top().get())),
              range,
              metal.firmOrigin());
    }
    boolean metalRules = EnamelRules.usual(work.hardness()).compareTo(metal.usualMost()) > 0;
    return metalRules
        ? new Draft.Why(
            "A %s enamel likes %s, but %s is kept at or below %s: fire longer, not hotter."
                .formatted(
                    work.hardness().words(),
                    words(EnamelRules.usual(work.hardness())),
                    work.metal().words(),
                    words(metal.usualMost())),
            range,
            metal.usualMostOrigin())
        : new Draft.Why(
            "Usual for a %s enamel.".formatted(work.hardness().words()),
            range,
            EnamelRules.HARDNESS_TESTS);
  }

  // ---- what the work asks of any schedule

  private TemperatureRange legitimate() {
    return new TemperatureRange(
        lower(Temperature.ofCelsius(LEAST_WORKING_CELSIUS), firmLimit), firmLimit);
  }

  private Demands demands() {
    List<Ceiling> ceilings = new ArrayList<>();
    boolean sheetRules = sheet.max().filter(firmLimit::equals).isPresent();
    ceilings.add(
        new Ceiling(
            firmLimit,
            Severity.STOP,
            sheetRules ? "the enamel by its data sheet" : work.metal().words(),
            sheetRules ? "the maker does not stand behind it" : metal.firmBecause(),
            sheetRules ? Origin.own("data sheet") : metal.firmOrigin()));
    if (working.compareTo(metal.caution()) <= 0 && metal.caution().compareTo(firmLimit) < 0) {
      ceilings.add(
          new Ceiling(
              metal.caution(),
              Severity.WARN,
              work.metal().words(),
              metal.cautionBecause(),
              metal.cautionOrigin()));
    }
    return new Demands(
        "enamel on " + work.metal().words(),
        ceilings,
        List.of(),
        List.of(),
        new TemperatureRange(lower(legitimate().from(), working), firmLimit),
        new TemperatureRange(Temperature.ofCelsius(0), firmLimit),
        TemperatureChange.ofKelvins(Forecaster.READY_WITHIN_KELVINS),
        List.of(),
        List.of());
  }

  // ---- what to know, and when to act

  private List<Caution> cautions(EnamelOutlook outlook) {
    List<Caution> cautions = new ArrayList<>();
    if (working.compareTo(metal.caution()) > 0) {
      cautions.add(
          new Caution(
              "above-usual",
              "%s lies above the usual limit of %s for %s: %s."
                  .formatted(
                      words(working),
                      words(metal.caution()),
                      work.metal().words(),
                      metal.cautionBecause()),
              metal.cautionOrigin()));
    }
    if (work.metal() != Metal.STEEL
        && !work.metal().gold()
        && working.celsius() >= EnamelRules.COPPER_SILVER_EUTECTIC_CELSIUS - 20) {
      cautions.add(
          new Caution(
              "copper-silver-contact",
              "Where bare silver touches copper, metal melts from %s: keep enamel between them or stay at or below %s."
                  .formatted(
                      whole(EnamelRules.COPPER_SILVER_EUTECTIC_CELSIUS),
                      whole(SAFE_CONTACT_CELSIUS)),
              Origin.read("a metallurgy data page on copper and silver, eutectic 779.1 °C")));
    }
    long firings = firings(outlook);
    int needed = work.pieces() * work.build().firings();
    if (firings < needed) {
      cautions.add(
          new Caution(
              "session-short",
              "%s is room for about %d firings one after another, fewer than the %d that the work needs: load several at once or plan longer."
                  .formatted(HourMinute.words(work.session()), firings, needed),
              Origin.estimate("time for each piece and for the kiln to recover")));
    }
    cautions.add(
        new Caution(
            "door-dip",
            ("The display falls by some %s when the door opens%s: count a piece's time"
                    + " from the door's shutting, judge by its look, then go on in steps of 10 to"
                    + " 15 s.")
                .formatted(
                    EnamelJudge.kelvins(outlook.fallKelvins(), unit),
                    Double.isFinite(outlook.backSeconds().high())
                        ? " and needs %s to %s to come back"
                            .formatted(
                                EnamelJudge.seconds(outlook.backSeconds().low()),
                                EnamelJudge.seconds(outlook.backSeconds().high()))
                        : " and comes back slowly"),
            outlook.simulated()
                ? Origin.derived(
                    "this kiln's model with its door open for 20 s and a cold piece going in")
                : Origin.read("a blog on enamelled steel samples, one studio kiln")));
    int budget = EnamelRules.firingsBudget(work.metal());
    if (work.metal() == Metal.STERLING_925
        || work.metal() == Metal.COPPER
        || work.build().firings() > budget) {
      cautions.add(
          new Caution(
              "firings-budget",
              "Count the firings of each piece: sterling tends to blister after 8 to 10, copper after"
                  + " 12 and more%s."
                      .formatted(
                          work.build().firings() > budget
                              ? ", and this work asks for %d".formatted(work.build().firings())
                              : ""),
              Origin.estimate(
                  "how many; an enameller's page tells of bubbles on sterling fired again and again")));
    }
    cautions.add(
        new Caution(
            "enamel-dust",
            "Some enamels contain lead, cadmium or arsenic: do not breathe the powder, do not eat"
                + " here, vent the kiln, make no food ware of it.",
            Origin.read("an enamel supplier's safety page")));
    cautions.add(Cautions.hotWork(750, 60));
    cautions.add(
        new Caution(
            "no-quench",
            "Never quench enamelled work: the glass flies off. Let it cool in a warm place.",
            Origin.read("an enamel teaching site")));
    cautions.addAll(Cautions.always());
    return cautions;
  }

  private List<Moment> moments(int segments, EnamelOutlook outlook) {
    return List.of(
        new Moment(
            Moment.Kind.READY,
            Moment.Anchor.SEGMENT_REACHED,
            1,
            warmUp().plus(EnamelRules.SETTLE),
            "first piece may go in",
            "The walls have followed the display, so the kiln recovers well after the door."),
        new Moment(
            Moment.Kind.ACT,
            Moment.Anchor.SEGMENT_REACHED,
            1,
            warmUp().plus(EnamelRules.SETTLE),
            "first piece: look after %s".formatted(lookWords(outlook)),
            "This metal, thickness and enamel in this kiln: %s, counted from the door's shutting."
                .formatted(pieceTimeWords(outlook))),
        new Moment(
            Moment.Kind.LAST_CHANGE,
            Moment.Anchor.SEGMENT_REACHED,
            1,
            warmUp(),
            "change the working temperature",
            "Afterwards the walls must settle again."),
        new Moment(
                Moment.Kind.ACT,
                Moment.Anchor.SEGMENT_END,
                segments,
                Duration.ZERO,
                "last piece out",
                "The working hold ends, and the kiln cools by itself.")
            .asDeadline());
  }

  private boolean holdWaits() {
    return kiln.control().holdWaitsWithin().isPresent();
  }

  /** Part of the hold on a controller whose hold does not wait for the kiln. */
  private Duration warmUp() {
    return holdWaits() ? Duration.ZERO : EnamelRules.WARM_UP;
  }

  private double leastPieceSeconds() {
    return EnamelRules.REFERENCE_LEAST_SECONDS
        * EnamelRules.timeFactor(work.metal(), work.sheetMetres());
  }

  private double mostPieceSeconds() {
    return EnamelRules.REFERENCE_MOST_SECONDS
        * EnamelRules.timeFactor(work.metal(), work.sheetMetres());
  }

  private String pieceTimeWords(EnamelOutlook outlook) {
    double latest = outlook.window().latestSeconds();
    return outlook.window().glosses()
        ? "%s to %s"
            .formatted(
                lookWords(outlook),
                Double.isFinite(latest)
                    ? EnamelJudge.seconds(latest)
                    : "more than " + EnamelJudge.seconds(outlook.window().followedSeconds()))
        : "%s to %s"
            .formatted(
                EnamelJudge.seconds(leastPieceSeconds()), EnamelJudge.seconds(mostPieceSeconds()));
  }

  private String lookWords(EnamelOutlook outlook) {
    return EnamelJudge.seconds(
        outlook.window().glosses() ? outlook.window().earliestSeconds() : leastPieceSeconds());
  }

  private String rateWords(EnamelOutlook outlook) {
    return outlook.window().glosses()
        ? "about %.0f pieces an hour".formatted(outlook.piecesAnHour().median())
        : "and this enamel may not gloss at this heat: try a tile first";
  }

  private long firings(EnamelOutlook outlook) {
    double each =
        outlook.piecesAnHour().median() > 0
            ? 3600 / outlook.piecesAnHour().median()
            : (leastPieceSeconds() + mostPieceSeconds()) / 2 + EnamelRules.RECOVERY.toSeconds();
    return (long) (work.session().toSeconds() / each);
  }

  /** To the degree, rounded down. */
  private String whole(double celsius) {
    return words(unit.temperature(Math.floor(unit.value(Temperature.ofCelsius(celsius)))));
  }

  private String words(Temperature temperature) {
    return Wording.of(temperature, unit);
  }
}
