package org.heatwright.work;

import static org.heatwright.work.RoundNumbers.lower;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Demands.Ceiling;
import org.heatwright.inspect.Demands.RateLimit;
import org.heatwright.inspect.Demands.TimeWithin;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.HeatTransfer;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.KnownMaterial;
import org.heatwright.material.Origin;
import org.heatwright.material.SolidMaterials;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.FollowedPiece.Place;
import org.heatwright.piece.Slab;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.glass.Annealing;
import org.heatwright.work.glass.Compatibility;
import org.heatwright.work.glass.Flow;
import org.heatwright.work.glass.Glass;
import org.heatwright.work.glass.Glass.Elastic;
import org.heatwright.work.glass.Glass.Span;
import org.heatwright.work.glass.GlassProcess;

/** Glass: slowly up, flat or bent, quickly down to its annealing range, and slowly from there. */
final class GlassComposer {

  private static final double MEGA = 1e6;

  /** Of glass in a kiln, total. Memory: 0.90 to 0.95, any table of emissivities. */
  private static final double EMISSIVITY = 0.9;

  /** Still air of a kiln, W/(m² K). Our estimate. */
  private static final double FILM = 8;

  private static final KnownMaterial GLASS =
      SolidMaterials.known().stream()
          .filter(known -> known.name().equals("soda-lime-glass"))
          .findFirst()
          .orElseThrow();

  private static final Duration LONGEST_TOP = Duration.ofHours(1);

  private final GlassWork work;
  private final Kiln kiln;
  private final TemperatureUnit unit;
  private final Glass glass;
  private final Elastic elastic;
  private final Span anneal;
  private final Temperature firmLimit;
  private final double tensionPascals;
  private final Coasting coasting;

  /** What the kiln's display shows when nothing heats it, after a program, every two minutes. */
  interface Coasting {
    List<double[]> after(Schedule schedule, Kiln kiln, Temperature until);
  }

  private static final double READING_SECONDS = 120;

  private GlassComposer(GlassWork work, Kiln kiln, TemperatureUnit unit, Coasting coasting) {
    this.coasting = coasting;
    this.work = work;
    this.kiln = kiln;
    this.unit = unit;
    glass = work.glass();
    elastic = glass.elastic();
    anneal = glass.anneal();
    tensionPascals = work.tensionPascals().orElse(Annealing.USUAL_TENSION_PASCALS);
    Temperature firm = Temperature.ofCelsius(GlassRules.firmCelsius(glass.family()));
    firmLimit = lower(firm, work.dataSheet().max().orElse(firm));
  }

  static Composition compose(
      GlassWork work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad) {
    return compose(
        work,
        kiln,
        unit,
        keypad,
        (schedule, empty, until) ->
            KilnCoasting.readings(schedule, empty, List.of(), READING_SECONDS, until.celsius()));
  }

  /** The same with another way to tell how the kiln cools by itself. */
  static Composition compose(
      GlassWork work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad, Coasting coasting) {
    GlassComposer composer = new GlassComposer(work, kiln, unit, coasting);
    composer.refuseWhatDoesNotFit();
    composer.refuseTopsThatCannotBe();
    return keypad.isPresent() && keypad.get().rate().cooling() == Keypad.Cooling.NOT_CONTROLLED
        ? composer.composeInDrops(keypad.get())
        : composer.compose(keypad);
  }

  private Composition compose(Optional<Keypad> keypad) {
    Draft.Fitted fitted =
        Draft.firstThatFits(
            List.of(draft(true, true), draft(true, false), draft(false, false)),
            name(),
            unit,
            keypad);
    return composition(fitted, openAt(), cautions());
  }

  private Composition composition(
      Draft.Fitted fitted, Temperature freeFrom, List<Caution> cautions) {
    return new Composition(
        work.kind(),
        fitted.schedule(),
        fitted.reasons(),
        demands(freeFrom),
        charge(),
        cautions,
        moments(fitted.draft().steps()),
        judge());
  }

  /** For a keypad that cannot slow a fall. */
  private Composition composeInDrops(Keypad keypad) {
    GlassStairs stairs = stairs(keypad);
    List<double[]> readings =
        coasting.after(new Draft(upToTheSoak(false)).schedule(name(), unit), kiln, openAt());
    Temperature freeFrom = stairs.freeFrom(readings, READING_SECONDS);
    List<Draft> drafts = new ArrayList<>();
    for (boolean squeeze : List.of(true, false)) {
      for (GlassStairs.Size size : List.of(stairs.fine(), stairs.fewer(), stairs.coarse())) {
        List<Draft.Step> down = stairs.steps(size, freeFrom);
        if (!down.isEmpty()) {
          List<Draft.Step> steps = new ArrayList<>(upToTheSoak(squeeze));
          steps.addAll(down);
          drafts.add(new Draft(steps));
        }
      }
    }
    if (drafts.isEmpty()) {
      throw new WorkRefusedException(
          "The keypad cannot slow a fall, and its targets lie too far apart for drops that this glass stands, %.0f %s: anneal it on another."
              .formatted(
                  unit.value(TemperatureChange.ofKelvins(stairs.coarse().slowKelvins())),
                  unit.differenceSymbol()));
    }
    int least = drafts.get(drafts.size() - 1).split(keypad.hold().max()).steps().size();
    if (least > keypad.segments()) {
      throw new WorkRefusedException(
          "The keypad cannot slow a fall, and in drops with holds this glass needs %d segments at least; the keypad has %d. Make the glass thinner, let it cool from both faces, or anneal it on another."
              .formatted(least, keypad.segments()));
    }
    Draft.Fitted fitted = Draft.firstThatFits(drafts, name(), unit, Optional.of(keypad));
    List<Caution> cautions = new ArrayList<>();
    cautions.add(inDrops(fitted, stairs));
    cautions.addAll(cautions());
    return composition(fitted, freeFrom, cautions);
  }

  private GlassStairs stairs(Keypad keypad) {
    return new GlassStairs(
        new GlassStairs.Fall(
            soakTarget(),
            slowEnd(),
            secondEnd(),
            openAt(),
            slowRate(),
            fasterRate(1),
            fall(coldLimit().kelvinsPerHour(), 2)),
        Annealing.differenceKelvins(elastic, work.depthMetres(), slowRate()),
        suddenDropKelvins(),
        dropShare(),
        keypad.targetRange(unit),
        unit);
  }

  /**
   * A sudden drop of the kiln after which the face is pulled with a quarter of the design stress.
   */
  private double suddenDropKelvins() {
    return Annealing.SHARE_OF_DESIGN
        * Annealing.DESIGN_PASCALS
        / (elastic.pascalsPerKelvin() * dropShare());
  }

  private double dropShare() {
    double celsius = slowEnd().celsius();
    double taken =
        FILM + 4 * EMISSIVITY * HeatTransfer.STEFAN_BOLTZMANN * Math.pow(celsius + 273.15, 3);
    return Annealing.shareOfDrop(
        taken
            * work.depthMetres()
            / GLASS.material().conductivityWattsPerMetreKelvin().at(celsius));
  }

  private Caution inDrops(Draft.Fitted fitted, GlassStairs stairs) {
    double most = 0;
    long drops = 0;
    List<Segment> segments = fitted.schedule().segments();
    for (int i = 1; i < segments.size(); i++) {
      if (fitted.draft().steps().get(i).purpose().equals(GlassStairs.COOL_SLOWLY)
          && !segments.get(i).target().equals(segments.get(i - 1).target())) {
        most =
            Math.max(
                most, segments.get(i - 1).target().celsius() - segments.get(i).target().celsius());
        drops++;
      }
    }
    boolean coarse = most > stairs.fine().slowKelvins() + 1;
    return new Caution(
        "cools-in-drops",
        "This keypad cannot slow a fall, so from the soak the program goes down in %d drops of %s at most, each held, then further: %s Leave door, lid and vent shut all the way."
            .formatted(
                drops,
                Wording.differenceUp(most, unit),
                coarse
                    ? "with so few segments they leave up to half as much tension again as a slow ramp."
                    : "as much tension stays as after a slow ramp."),
        GlassStairs.STRESS);
  }

  // ---- what cannot be

  private void refuseWhatDoesNotFit() {
    Refusals.pieceTooLong(work.pieceMetres(), kiln);
    if (soakTarget().compareTo(kiln.limit()) > 0 || soakTarget().compareTo(firmLimit) > 0) {
      throw new WorkRefusedException(
          "The anneal soak at %s is above the limit of %s, %s."
              .formatted(
                  words(soakTarget()),
                  soakTarget().compareTo(kiln.limit()) > 0 ? kiln.name() : "the data sheet",
                  words(lower(kiln.limit(), firmLimit))));
    }
    double slowHours = (soakTarget().celsius() - slowEnd().celsius()) / slowRate().kelvinsPerHour();
    if (slowHours > GlassRules.LONGEST_SLOW.toHours()) {
      throw new WorkRefusedException(
          "Glass treated as %.0f mm would have to cool for %.0f days between %s and %s: make it thinner or let it cool from both faces."
              .formatted(
                  work.effectiveMetres() * 1000,
                  slowHours / 24,
                  words(soakTarget()),
                  words(slowEnd())));
    }
  }

  private void refuseTopsThatCannotBe() {
    if (!work.process().hasTop()) {
      return;
    }
    Temperature limit = lower(firmLimit, kiln.limit());
    String whose =
        kiln.limit().compareTo(firmLimit) < 0
            ? "the limit of %s, %s".formatted(kiln.name(), words(kiln.limit()))
            : "%s for %s".formatted(words(firmLimit), glass.family().words());
    if (work.own().top().isPresent()) {
      Temperature own = work.own().top().get();
      if (own.compareTo(limit) > 0) {
        String hint =
            Refusals.fahrenheitHint(
                own, unit, meant -> meant.celsius() > 550 && meant.compareTo(limit) <= 0);
        throw new WorkRefusedException(
            "The top temperature %s%s is above %s.".formatted(words(own), hint, whose));
      }
      if (own.compareTo(soakTarget()) <= 0) {
        throw new WorkRefusedException(
            "The top temperature %s is not above the anneal soak at %s: nothing would %s."
                .formatted(
                    words(own),
                    words(soakTarget()),
                    work.process() == GlassProcess.SLUMP ? "bend" : "fuse"));
      }
      return;
    }
    Span range = work.process().range(glass);
    if (work.dataSheet().top().isEmpty() && topHold().compareTo(LONGEST_TOP) > 0) {
      throw new WorkRefusedException(
          "A %s of %s wants %s to %s, above %s."
              .formatted(
                  work.process().words(),
                  glass.family().words(),
                  words(range.low()),
                  words(range.high()),
                  whose));
    }
    if (top().compareTo(soakTarget()) <= 0) {
      throw new WorkRefusedException(
          "The top temperature %s is not above the anneal soak at %s."
              .formatted(words(top()), words(soakTarget())));
    }
  }

  // ---- the numbers

  /** The studio's own, the maker's, or practice's for a glass as stiff as this. */
  private Temperature top() {
    return work.own()
        .top()
        .or(() -> work.dataSheet().top().map(t -> lower(t, lower(firmLimit, kiln.limit()))))
        .orElseGet(
            () ->
                wholeDown(
                    lower(work.process().range(glass).usual(), lower(firmLimit, kiln.limit()))));
  }

  private Duration topHold() {
    Optional<Duration> given = work.own().hold().or(() -> work.dataSheet().topHold());
    if (given.isPresent()) {
      return given.get();
    }
    Duration usual = GlassRules.usualHold(work.process());
    if (work.own().top().isPresent() || work.dataSheet().top().isPresent()) {
      return usual;
    }
    // A limit under practice's temperature: as much flow by a longer hold.
    Temperature wanted = work.process().range(glass).usual();
    double thicker =
        Math.pow(
            10,
            glass.viscosities().usual().logPoiseAt(top())
                - glass.viscosities().usual().logPoiseAt(wanted));
    if (thicker <= 1.1) {
      return usual;
    }
    double minutes = Math.min(usual.toMinutes() * thicker, 1e6);
    return Duration.ofMinutes((long) (5 * Math.ceil(minutes / 5)));
  }

  /**
   * The top of what the annealing point may be: a stiffer glass is soaked too, a softer one still.
   */
  private Temperature soakTarget() {
    return wholeUp(anneal.high());
  }

  private Temperature slowEnd() {
    return wholeDown(
        Temperature.ofCelsius(glass.strain().low().celsius() - GlassRules.UNDER_STRAIN_KELVINS));
  }

  private Temperature secondEnd() {
    return wholeDown(Temperature.ofCelsius(slowEnd().celsius() - GlassRules.SECOND_KELVINS));
  }

  private Temperature openAt() {
    return wholeDown(
        Temperature.ofCelsius(
            work.effectiveMetres() >= GlassRules.THICK_FROM_METRES
                ? GlassRules.OPEN_THICK_CELSIUS
                : GlassRules.OPEN_THIN_CELSIUS));
  }

  private HeatingRate slowLimit() {
    return Annealing.coolingRate(elastic, work.depthMetres(), tensionPascals);
  }

  private HeatingRate coldLimit() {
    return Annealing.coldCoolingRate(
        elastic, work.depthMetres(), Annealing.SHARE_OF_DESIGN * Annealing.DESIGN_PASCALS);
  }

  private HeatingRate slowRate() {
    return fall(slowLimit().kelvinsPerHour(), 0);
  }

  private HeatingRate fasterRate(int stage) {
    double factor = stage == 1 ? GlassRules.SECOND_FACTOR : GlassRules.THIRD_FACTOR;
    return fall(
        Math.min(factor * slowLimit().kelvinsPerHour(), coldLimit().kelvinsPerHour()), stage);
  }

  private HeatingRate fall(double kelvinsPerHour, int stage) {
    return roundRate(
        HeatingRate.ofKelvinsPerHour(Math.min(kelvinsPerHour, GlassRules.MOST_FALL[stage])));
  }

  private Duration soak() {
    return work.annealSoak()
        .orElseGet(
            () -> {
              double minutes =
                  Annealing.soak(elastic, work.effectiveMetres(), work.depthMetres()).toSeconds()
                      / 60.0;
              return Duration.ofMinutes((long) (5 * Math.ceil(minutes / 5)));
            });
  }

  private boolean isStack() {
    return work.process().fuses() && work.layers() > 1;
  }

  /** Through what it is heated: a loose stack is worse than one sheet. */
  private double heatingFactor() {
    return isStack() ? GlassRules.STACK_FACTOR : 1;
  }

  private HeatingRate riseLimit() {
    HeatingRate stress = GlassRules.stressRise(glass, work.depthMetres() * heatingFactor());
    HeatingRate wanted =
        work.dataSheet()
            .fastestRise()
            .orElseGet(() -> GlassRules.practiceRise(work.effectiveMetres() * heatingFactor()));
    return wanted.compareTo(stress) <= 0 ? wanted : stress;
  }

  private HeatingRate roundRate(HeatingRate wanted) {
    double value = unit.value(wanted);
    double step = value >= 100 ? 10 : value >= 20 ? 5 : 1;
    double slower = Math.floor(value / step + 1e-6) * step;
    return slower > 0 ? unit.rate(slower) : wanted;
  }

  private Temperature wholeUp(Temperature wanted) {
    return unit.temperature(Math.ceil(unit.value(wanted) - 1e-6));
  }

  private Temperature wholeDown(Temperature wanted) {
    return unit.temperature(Math.floor(unit.value(wanted) + 1e-6));
  }

  // ---- the schedule

  private String name() {
    return "glass-" + work.process().words().replace(' ', '-');
  }

  /**
   * @param squeeze whether to hold for the air between sheets
   * @param threeStages whether to go faster twice under the slow range, or once
   */
  private Draft draft(boolean squeeze, boolean threeStages) {
    List<Draft.Step> steps = new ArrayList<>(upToTheSoak(squeeze));
    steps.add(slowStep());
    steps.add(fasterStep("cool further", 1, threeStages ? secondEnd() : openAt()));
    if (threeStages) {
      steps.add(fasterStep("cool to the door", 2, openAt()));
    }
    return new Draft(steps);
  }

  private List<Draft.Step> upToTheSoak(boolean squeeze) {
    List<Draft.Step> steps = new ArrayList<>();
    Ramp rise = Ramp.at(roundRate(riseLimit()));
    Draft.Why riseWhy = riseWhy();
    if (!work.process().hasTop()) {
      steps.add(soakStep(rise, riseWhy));
    } else {
      Temperature squeezeAt = squeezeTarget();
      boolean squeezed = squeeze && isStack() && !draftSqueezeLeftOut();
      if (squeezed) {
        steps.add(squeezeStep(rise, riseWhy, squeezeAt));
        steps.add(topStep(Ramp.at(topRise()), topRiseWhy()));
      } else {
        steps.add(topStep(rise, riseWhy));
      }
      steps.add(
          soakStep(
              Ramp.fastest(),
              new Draft.Why(
                  "Quickly past the range where glass devitrifies; it is soft and takes no harm. Leave the door shut.",
                  "visible in about an hour inside the range",
                  GlassRules.BLOG)));
    }
    return steps;
  }

  private Temperature squeezeTarget() {
    double shift = GlassProcess.shiftKelvins(glass);
    return RoundNumbers.target(
        Temperature.ofCelsius(GlassRules.SQUEEZE_CELSIUS + shift), top(), unit);
  }

  private HeatingRate topRise() {
    HeatingRate usual =
        unit.rate(
            Math.floor(unit.value(HeatingRate.ofKelvinsPerHour(GlassRules.TOP_RISE)) / 10) * 10);
    return work.dataSheet()
        .fastestRise()
        .map(this::roundRate)
        .filter(own -> own.compareTo(usual) < 0)
        .orElse(usual);
  }

  private Draft.Why topRiseWhy() {
    return new Draft.Why(
        "The glass is soft and no longer cracks; without delay through the range where it devitrifies.",
        "",
        Origin.estimate("between practice's rates and full power"));
  }

  private Draft.Step squeezeStep(Ramp rise, Draft.Why riseWhy, Temperature target) {
    return new Draft.Step(
        "air out",
        rise,
        riseWhy,
        target,
        new Draft.Why(
            "The sheets sag onto one another from the middle while the air can still leave at the rim.",
            "600 to 670 °C for soft art glass",
            Origin.practice()),
        GlassRules.SQUEEZE,
        new Draft.Why("Usual for air to leave.", "30 to 60 min", Origin.practice()));
  }

  private Draft.Step topStep(Ramp ramp, Draft.Why rampWhy) {
    return new Draft.Step(
        work.process().words(), ramp, rampWhy, top(), topWhy(), topHold(), topHoldWhy());
  }

  private Draft.Why topWhy() {
    Span range = work.process().range(glass);
    String practice = "%s to %s".formatted(words(range.low()), words(range.high()));
    if (work.own().top().isPresent()) {
      return new Draft.Why("The studio's own top.", practice, Origin.own("work file"));
    }
    if (work.dataSheet().top().isPresent()) {
      return new Draft.Why(
          top().equals(work.dataSheet().top().get())
              ? "The maker's data sheet names the top."
              : "The data sheet's %s lies above a limit of the sheet, the glass or the kiln, which rules."
                  .formatted(words(work.dataSheet().top().get())),
          practice,
          Origin.own("data sheet"));
    }
    return new Draft.Why(
        top().compareTo(wholeDown(range.usual())) < 0
            ? "As hot as the limit allows; the hold makes up for it."
            : "Usual for a %s of %s.".formatted(work.process().words(), glass.family().words()),
        practice,
        range.origin());
  }

  private Draft.Why topHoldWhy() {
    if (work.own().hold().isPresent()) {
      return new Draft.Why("The studio's own hold.", "", Origin.own("work file"));
    }
    if (work.dataSheet().topHold().isPresent()) {
      return new Draft.Why("The maker's data sheet names it.", "", Origin.own("data sheet"));
    }
    Duration usual = GlassRules.usualHold(work.process());
    return topHold().equals(usual)
        ? new Draft.Why(
            "Usual; look, then go on in steps of 5 min.", "10 to 20 min", Origin.practice())
        : new Draft.Why(
            "As much flow as %s at %s, by the viscosity."
                .formatted(HourMinute.words(usual), words(work.process().range(glass).usual())),
            "",
            Origin.derived("time over viscosity"));
  }

  private Draft.Why riseWhy() {
    String treated =
        isStack()
            ? "%d loose sheets are heated as %s."
                .formatted(work.layers(), millimetres(work.effectiveMetres() * heatingFactor()))
            : "Treated as %s.".formatted(millimetres(work.effectiveMetres()));
    HeatingRate stress = GlassRules.stressRise(glass, work.depthMetres() * heatingFactor());
    String margin =
        "a quarter of the design stress through the thickness alone: " + Wording.of(stress, unit);
    Optional<HeatingRate> sheet = work.dataSheet().fastestRise();
    if (sheet.isPresent() && sheet.get().compareTo(stress) <= 0) {
      return new Draft.Why(
          treated + " The maker names the fastest rise.", margin, Origin.own("data sheet"));
    }
    return stress.equals(riseLimit())
        ? new Draft.Why(
            treated + " The tension in its middle stays at a quarter of the design stress, 19 MPa.",
            margin,
            Origin.derived("difference through a plate that warms steadily"))
        : new Draft.Why(
            treated + " Practice is slower than the stress alone asks for: kilns heat unevenly.",
            "150 to 250 °C/h at 6 mm, 120 to 139 °C/h at 21 mm; " + margin,
            Origin.read("a kiln-forming blog on splits, 120 and 139 °C/h at 21 mm"));
  }

  private Draft.Step soakStep(Ramp ramp, Draft.Why rampWhy) {
    String points =
        anneal.low().equals(anneal.high())
            ? ""
            : "%s to %s".formatted(words(anneal.low()), words(anneal.high()));
    return new Draft.Step(
        "anneal soak",
        ramp,
        rampWhy,
        soakTarget(),
        new Draft.Why(
            anneal.low().equals(anneal.high())
                ? "The maker's annealing point."
                : "The upper end of where it may lie: no expansion number tells the annealing point. Soaked here and cooled slowly through the rest, any of them is annealed.",
            points,
            anneal.origin()),
        soak(),
        work.annealSoak().isPresent()
            ? new Draft.Why("The maker's soak.", "", Origin.own("data sheet"))
            : new Draft.Why(
                "Treated as %s, %s: %s to even out from 20 K to 1 K, and 30 min for each 6 mm."
                    .formatted(
                        millimetres(work.effectiveMetres()),
                        work.faces().words(),
                        HourMinute.words(
                            Duration.ofMinutes(
                                Math.round(
                                    Annealing.equaliseSeconds(elastic, work.depthMetres()) / 60)))),
                "about 30 min at 6 mm, 2 h 40 min at 25 mm",
                Origin.read("a forum and a glass studio's notes; the evening out is derived")));
  }

  private Draft.Step slowStep() {
    Span strain = glass.strain();
    return new Draft.Step(
        GlassStairs.COOL_SLOWLY,
        Ramp.at(slowRate()),
        new Draft.Why(
            "At most %s MPa of tension stays in the middle: %s by E a R L²/(6 k (1-n)) with L %s%s."
                .formatted(
                    Wording.number(tensionPascals / MEGA),
                    Wording.of(slowLimit(), unit),
                    millimetres(work.depthMetres()),
                    slowLimit().kelvinsPerHour() > GlassRules.MOST_FALL[0]
                        ? "; practice hardly goes faster than 120 °C/h"
                        : ""),
            "a published schedule: 55 °C/h at 9 mm, 25 °C/h at 12 mm, 15 °C/h at 15 mm",
            Origin.derived(
                "the law with the square of the thickness; 0.3 MPa is what careful schedules come to")),
        slowEnd(),
        new Draft.Why(
            "20 K under the strain point, %s%s."
                .formatted(
                    words(strain.low()),
                    strain.low().equals(strain.high()) ? "" : ", the lowest it may be"),
            "",
            strain.origin()),
        Duration.ZERO,
        new Draft.Why("Nothing to wait for.", "", Origin.derived("the ramp itself")));
  }

  private Draft.Step fasterStep(String purpose, int stage, Temperature target) {
    boolean last = target.equals(openAt());
    return new Draft.Step(
        purpose,
        Ramp.at(fasterRate(stage)),
        new Draft.Why(
            "At most %s times as fast: what comes now goes again. Its tension at the surface stays under a quarter of the design stress, %s."
                .formatted(stage == 1 ? "two" : "five", Wording.of(coldLimit(), unit)),
            stage == 1 ? "a published schedule goes 1.8 times as fast" : "",
            stage == 1 ? Origin.read("a practitioner's published schedule") : Origin.practice()),
        target,
        last
            ? new Draft.Why(
                "Cool enough to open. Slower than the kiln can cool it takes as long as the kiln takes.",
                "thick pieces 40 to 50 °C; one expert waits a day above 15 mm",
                GlassRules.BLOG)
            : new Draft.Why(
                "55 K further, as a published schedule has it.",
                "",
                Origin.read("a practitioner's published schedule")),
        Duration.ZERO,
        new Draft.Why("Nothing to wait for.", "", Origin.derived("the ramp itself")));
  }

  // ---- what the work asks of any schedule

  /**
   * @param freeFrom from there down the kiln may be left to itself
   */
  private Demands demands(Temperature freeFrom) {
    boolean sheetRules = work.dataSheet().max().filter(firmLimit::equals).isPresent();
    List<Ceiling> ceilings = new ArrayList<>();
    ceilings.add(
        new Ceiling(
            firmLimit,
            Severity.STOP,
            sheetRules ? "the glass by its data sheet" : glass.family().words(),
            sheetRules
                ? "the maker does not stand behind it"
                : "it blisters, runs and eats into its shelf",
            sheetRules
                ? Origin.own("data sheet")
                : Origin.estimate("well above any fusing temperature of practice")));
    processCeiling().filter(c -> c.limit().compareTo(firmLimit) < 0).ifPresent(ceilings::add);
    return new Demands(
        "%s of %s".formatted(work.process().words(), glass.family().words()),
        ceilings,
        List.of(
            new RateLimit(
                "glass-cracks",
                new TemperatureRange(lower(Temperature.ofCelsius(30), anneal.low()), anneal.low()),
                riseLimit(),
                Severity.STOP,
                "cold glass cracks when it is heated unevenly",
                work.dataSheet().fastestRise().isPresent()
                    ? Origin.own("data sheet")
                    : Origin.read("a kiln-forming blog on splits, 120 and 139 °C/h at 21 mm"))),
        List.of(
            new TimeWithin(
                "short-anneal-soak",
                "to even out and let its stress go",
                new TemperatureRange(
                    Temperature.ofCelsius(soakTarget().celsius() - GlassRules.SOAK_BELOW_KELVINS),
                    Temperature.ofCelsius(soakTarget().celsius() + GlassRules.SOAK_ABOVE_KELVINS)),
                soak(),
                "the glass is still uneven when it sets, and stress stays in it",
                Origin.read("a forum and a glass studio's notes; the evening out is derived"))),
        peak(),
        new TemperatureRange(Temperature.ofCelsius(0), slowEnd()),
        TemperatureChange.ofKelvins(Forecaster.READY_WITHIN_KELVINS),
        List.of(),
        coolingLimits(freeFrom));
  }

  private List<RateLimit> coolingLimits(Temperature freeFrom) {
    List<RateLimit> limits = new ArrayList<>();
    limits.add(
        new RateLimit(
            "cools-too-fast",
            new TemperatureRange(slowEnd(), soakTarget()),
            slowLimit(),
            Severity.STOP,
            "stress stays in the glass for good, and it may crack days later",
            Origin.derived("the law with the square of the thickness"),
            Math.min(GlassRules.COARSE_DROP_KELVINS, suddenDropKelvins())));
    Temperature low = freeFrom.compareTo(openAt()) > 0 ? freeFrom : openAt();
    limits.add(
        new RateLimit(
            "cold-glass-cools-too-fast",
            new TemperatureRange(lower(low, slowEnd()), slowEnd()),
            coldLimit(),
            Severity.WARN,
            "its surface is pulled, and a scratched edge may let go",
            Origin.derived("a quarter of the design stress at the surface"),
            Math.min(GlassRules.MOST_COLD_DROP_KELVINS, suddenDropKelvins())));
    return limits;
  }

  /** A target so far above the process that something else becomes of the glass. */
  private Optional<Ceiling> processCeiling() {
    if (!work.process().hasTop() || work.process() == GlassProcess.FULL_FUSE) {
      return Optional.empty();
    }
    Temperature limit = Temperature.ofCelsius(work.process().range(glass).high().celsius() + 20);
    return top().compareTo(limit) > 0
        ? Optional.empty()
        : Optional.of(
            new Ceiling(
                limit,
                Severity.WARN,
                "a " + work.process().words(),
                "the glass goes further than that",
                work.process().range(glass).origin()));
  }

  private TemperatureRange peak() {
    if (!work.process().hasTop()) {
      return new TemperatureRange(
          Temperature.ofCelsius(anneal.low().celsius() - 20),
          Temperature.ofCelsius(soakTarget().celsius() + GlassRules.SOAK_ABOVE_KELVINS));
    }
    return new TemperatureRange(
        lower(Temperature.ofCelsius(work.process().range(glass).low().celsius() - 60), top()),
        firmLimit);
  }

  /** The plate at its thickest place; the place that lags most is judged. */
  private Charge charge() {
    Slab.Face face = new Slab.Face(EMISSIVITY, FILM);
    double whole = work.wholeMetres();
    boolean one = work.faces() == GlassWork.Faces.ONE;
    return Charge.followed(
        List.of(
            new FollowedPiece(
                "glass",
                work.pieces(),
                work.pieceMetres() * work.pieceMetres(),
                one
                    ? Slab.lying(GLASS.material(), whole, face)
                    : Slab.free(GLASS.material(), whole, face),
                List.of(
                    one ? new Place("underside", whole) : new Place("middle", whole / 2),
                    new Place("face", 0)))));
  }

  private GlassJudge judge() {
    return new GlassJudge(
        work,
        new GlassJudge.Limits(
            firmLimit,
            soakTarget(),
            soak(),
            slowEnd(),
            openAt(),
            shifted(GlassRules.DEVITRIFY_FROM_CELSIUS),
            shifted(GlassRules.DEVITRIFY_TO_CELSIUS)),
        new CoastOnce(
            () ->
                KilnCoasting.readings(
                    new Draft(upToTheSoak(false)).schedule(name(), unit),
                    kiln,
                    charge().loads(),
                    GlassJudge.Coast.STEP_SECONDS,
                    openAt().celsius())));
  }

  /** Simulates when it is first asked, and only then. */
  private static final class CoastOnce implements GlassJudge.Coast {
    private final Supplier<List<double[]>> simulation;
    private final Map<CoastOnce, List<double[]>> known = new ConcurrentHashMap<>();

    CoastOnce(Supplier<List<double[]>> simulation) {
      this.simulation = simulation;
    }

    @Override
    public List<double[]> readings() {
      return known.computeIfAbsent(this, once -> simulation.get());
    }
  }

  // ---- what to know, and when to act

  private List<Caution> cautions() {
    List<Caution> cautions = new ArrayList<>();
    if (glass.annealPoint().isEmpty()) {
      cautions.add(
          new Caution(
              "anneal-point-unknown",
              "Nobody's expansion number tells the annealing point. With the maker's figure (anneal-celsius) the cooling gets shorter; without it, look at the piece between crossed polarisers.",
              anneal.origin()));
    }
    if (glass.family() == Glass.Family.UNKNOWN && work.layers() > 1) {
      cautions.add(
          new Caution(
              "unknown-compatibility",
              "Fuse glass you do not know only with itself, and first a test strip: look at it between crossed polarisers after it has cooled.",
              GlassRules.BLOG));
    }
    compatibility().ifPresent(cautions::add);
    if (work.process() == GlassProcess.FULL_FUSE) {
      ownThickness().ifPresent(cautions::add);
    }
    offPractice().ifPresent(cautions::add);
    if (isStack() && draftSqueezeLeftOut()) {
      cautions.add(
          new Caution(
              "air-between",
              "The top lies too low for an air squeeze of its own: rise slowly, and expect bubbles.",
              Origin.practice()));
    }
    if (work.process().fuses()) {
      cautions.add(
          new Caution(
              "devitrification",
              "Clean the glass, touch only its edges, and do not linger between %s and %s: a dull skin shows after about an hour there."
                  .formatted(
                      words(shifted(GlassRules.DEVITRIFY_FROM_CELSIUS)),
                      words(shifted(GlassRules.DEVITRIFY_TO_CELSIUS))),
              GlassRules.BLOG));
    }
    cautions.add(
        new Caution(
            "hot-opening",
            "Do not open to look below the annealing range, not even for a moment: cold air cracks the piece. Above it a glance is enough; gloves, face shield, natural-fibre clothes.",
            Origin.practice()));
    if (work.process().hasTop()) {
      cautions.add(
          new Caution(
              "glare",
              "A kiln at 800 °C radiates some 75 kW for each square metre of door: glasses that stop infrared, and no long look.",
              Origin.derived("radiation of a black opening")));
    }
    cautions.add(
        new Caution(
            "shelf-dust",
            "Shelf primer and fibre carry fine silica and kaolin: sweep damp, wear a fitted respirator, throw used primer away wet. New fibre paper smokes at first: vent.",
            Origin.memory("IARC Monographs vol. 81, Man-made Vitreous Fibres, 2002")));
    cautions.add(
        new Caution(
            "sharp-edges",
            "Cut edges and cracked pieces cut, and a piece under stress can spring: gloves and glasses when you unload.",
            Origin.practice()));
    cautions.add(
        new Caution(
            "power-cut",
            "After a power cut: below the strain point begin again with the slow rise; above it go on with the anneal soak.",
            Origin.estimate("what is still soft has not set")));
    cautions.addAll(Cautions.always());
    return cautions;
  }

  /** A hold just under the top would be one with it. */
  private boolean draftSqueezeLeftOut() {
    return top().celsius() - squeezeTarget().celsius() < GlassRules.SQUEEZE_UNDER_TOP_KELVINS;
  }

  private Temperature shifted(double artCelsius) {
    double shift = GlassProcess.shiftKelvins(glass);
    return RoundNumbers.target(
        Temperature.ofCelsius(artCelsius + shift), Temperature.ofCelsius(2000), unit);
  }

  private Optional<Caution> compatibility() {
    if (work.accent().isEmpty()) {
      return Optional.empty();
    }
    double difference = work.accent().get().perKelvin() - elastic.expansionPerKelvin();
    double setKelvins = glass.strain().usual().celsius() - 20;
    Compatibility two = Compatibility.of(elastic, difference, setKelvins, work.sheetMetres());
    String verdict =
        two.jointPascals() > Compatibility.BAD_PASCALS
            ? "they do not go together; expect cracks"
            : two.jointPascals() > Compatibility.DOUBTFUL_PASCALS ? "doubtful" : "likely sound";
    return Optional.of(
        new Caution(
            "compatibility",
            "The two expansions, %s and %s, leave about %s MPa beside the joint (half to one and a half of it: an expansion over 20 to 300 °C says little of the last hundred degrees): %s. A strip of both, 300 mm long, would stand off by %s mm; fuse one and look between crossed polarisers."
                .formatted(
                    tradeNumber(elastic.expansionPerKelvin()),
                    tradeNumber(work.accent().get().perKelvin()),
                    Wording.number(two.jointPascals() / MEGA),
                    verdict,
                    Wording.number(two.bowMetres(0.3) * 1000)),
            Origin.derived("two strips of equal stiffness; the limits are our estimate")));
  }

  private static String tradeNumber(double perKelvin) {
    return Wording.number(perKelvin * 1e7);
  }

  /** The trade's rule of 6 mm. */
  private Optional<Caution> ownThickness() {
    double share = work.wholeMetres() / Flow.ownThicknessMetres();
    if (share > 0.9 && share < 1.15) {
      return Optional.empty();
    }
    return Optional.of(
        new Caution(
            share < 1 ? "draws-in" : "spreads",
            share < 1
                ? "Fully fused, glass stands about 6 mm high by itself; %s draw in at the edges and may open holes."
                    .formatted(millimetres(work.wholeMetres()))
                : "Fully fused, glass stands about 6 mm high by itself; %s run out: dam it on all sides, with a fibre lining."
                    .formatted(millimetres(work.wholeMetres())),
            Origin.derived("surface tension against weight")));
  }

  private Optional<Caution> offPractice() {
    if (!work.process().hasTop()) {
      return Optional.empty();
    }
    Span range = work.process().range(glass);
    if (top().celsius() >= range.low().celsius() - 5
        && top().celsius() <= range.high().celsius() + 5) {
      return Optional.empty();
    }
    return Optional.of(
        new Caution(
            "off-practice",
            "%s lies outside practice's %s to %s for a %s of %s: fire a small test first."
                .formatted(
                    words(top()),
                    words(range.low()),
                    words(range.high()),
                    work.process().words(),
                    glass.family().words()),
            range.origin()));
  }

  private List<Moment> moments(List<Draft.Step> steps) {
    List<Moment> moments = new ArrayList<>();
    int soak = segmentOf(steps, "anneal soak");
    moments.add(
        new Moment(
            Moment.Kind.READY,
            Moment.Anchor.SEGMENT_REACHED,
            steps.size(),
            Duration.ZERO,
            "kiln may be opened",
            "A crack at first: the glass may still be warmer than the display. Gloves for the edges."));
    if (work.process().hasTop()) {
      int top = segmentOf(steps, work.process().words());
      moments.add(
          new Moment(
              Moment.Kind.ACT,
              Moment.Anchor.SEGMENT_REACHED,
              top,
              topHold().toMinutes() > 5 ? topHold().minusMinutes(5) : Duration.ZERO,
              "look at the glass, briefly",
              "Done sooner, skip to the anneal soak; not yet, add 5 min at a time."));
      moments.add(
          new Moment(
              Moment.Kind.LAST_CHANGE,
              Moment.Anchor.SEGMENT_REACHED,
              top,
              Duration.ZERO,
              "change the top",
              "Afterwards only its hold can still be changed."));
    }
    moments.add(
        new Moment(
            Moment.Kind.LAST_CHANGE,
            Moment.Anchor.SEGMENT_END,
            soak,
            Duration.ZERO,
            "change soak and cooling",
            "From here on it sets, and what is missed stays in the glass; a second annealing mends it."));
    return moments;
  }

  private static int segmentOf(List<Draft.Step> steps, String purpose) {
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).purpose().equals(purpose)) {
        return i + 1;
      }
    }
    throw new IllegalStateException("no step '%s'".formatted(purpose));
  }

  private static String millimetres(double metres) {
    return Wording.number(metres * 1000) + " mm";
  }

  private String words(Temperature temperature) {
    return Wording.of(temperature, unit);
  }
}
