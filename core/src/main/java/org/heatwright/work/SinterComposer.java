package org.heatwright.work;

import static org.heatwright.work.RoundNumbers.lower;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
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
import org.heatwright.material.PieceMaterials;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.Slab;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.SinterRules.Limit;
import org.heatwright.work.SinterRules.Option;
import org.heatwright.work.SinterRules.Rate;
import org.heatwright.work.SinterWork.Embedded;
import org.heatwright.work.SinterWork.Phase;
import org.heatwright.work.sinter.CarbonBox;
import org.heatwright.work.sinter.Clay;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.Clays;
import org.heatwright.work.sinter.CurveBelief;
import org.heatwright.work.sinter.PieceLag;

/** A firing of metal clay: the binder out, then the metal's own time at its heat. */
final class SinterComposer {

  /** Draws that decide whether a firing fits into the day; a forecast tells it better later. */
  private static final int WINDOW_DRAWS = 8;

  private static final double QUARTER_SECONDS = 900;

  /** A footprint is about half of its longest side squared. {@code estimate:} */
  private static final double FOOTPRINT = 0.5;

  /** A lag shorter than this is nothing to add to a hold, s. */
  private static final double SHORT_LAG_SECONDS = 150;

  /** Start of a firing for the lag, °C. */
  private static final double ROOM_CELSIUS = 20;

  /** How fast a small kiln rises at full power. {@code estimate:} */
  private static final double FULL_POWER_KELVINS_PER_HOUR = 1200;

  /** The same, cautiously, where a hold's clock runs from the start. {@code estimate:} */
  private static final double WARM_UP_KELVINS_PER_HOUR = 900;

  private final SinterWork work;
  private final Kiln kiln;
  private final TemperatureUnit unit;
  private final ClayFacts facts;
  private final Limit clayLimit;
  private final Optional<Limit> embedded;
  private final Limit firm;
  private final Limit cap;
  private final Optional<CarbonBox> box;
  private final Cooling cooling;

  /** How long a shut kiln takes to cool after its program. */
  interface Cooling {
    Duration after(Schedule schedule, Kiln kiln, Charge charge);
  }

  private SinterComposer(SinterWork work, Kiln kiln, TemperatureUnit unit, Cooling cooling) {
    this.work = work;
    this.kiln = kiln;
    this.unit = unit;
    this.cooling = cooling;
    facts = Clays.of(work.clay());
    clayLimit = SinterRules.clay(facts, work.dataSheet(), kiln);
    embedded = SinterRules.embedded(work);
    firm = embedded.filter(e -> e.value().compareTo(clayLimit.value()) < 0).orElse(clayLimit);
    cap = SinterRules.cap(clayLimit, embedded, kiln);
    box = work.carbonBox();
  }

  static Composition compose(
      SinterWork work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad) {
    return compose(work, kiln, unit, keypad, SinterComposer::simulatedCooling);
  }

  static Composition compose(
      SinterWork work, Kiln kiln, TemperatureUnit unit, Optional<Keypad> keypad, Cooling cooling) {
    SinterComposer composer = new SinterComposer(work, kiln, unit, cooling);
    composer.refuseWhatDoesNotFit();
    return work.phase() == Phase.BINDER
        ? composer.composed(composer.binderPhase(), Optional.empty(), keypad)
        : composer.sintered(keypad);
  }

  // ---- which firing

  private Composition sintered(Optional<Keypad> keypad) {
    List<Option> options =
        SinterRules.inOrder(SinterRules.options(facts, work.dataSheet(), cap, unit), work.aim());
    if (options.isEmpty()) {
      throw new WorkRefusedException(
          "No firing of %s fits under %s for %s: its coolest is %s%s."
              .formatted(
                  work.clay().words(),
                  words(cap.value()),
                  cap.what(),
                  words(facts.coolest()),
                  embedded.isPresent() ? ", so set what limits it after the firing" : ""));
    }
    Optional<Duration> window = work.window();
    if (window.isEmpty()) {
      return composed(sinterPhase(options.get(0)), Optional.of(options.get(0)), keypad);
    }
    double shortest = Double.POSITIVE_INFINITY;
    Option quickest = options.get(0);
    for (Option option : options) {
      Composition tried = composed(sinterPhase(option), Optional.of(option), keypad);
      double seconds = handBackSeconds(tried);
      if (seconds <= window.get().toSeconds()) {
        return option.equals(options.get(0)) ? tried : withLost(tried, options.get(0), option);
      }
      if (seconds < shortest) {
        shortest = seconds;
        quickest = option;
      }
    }
    throw new WorkRefusedException(
        "No firing of these pieces fits into the %s from dry to ready: the quickest, %s for %s, needs about %s until they can be handed back%s."
            .formatted(
                HourMinute.words(window.get()),
                words(quickest.at()),
                HourMinute.words(quickest.hold()),
                Double.isFinite(shortest)
                    ? HourMinute.words(Duration.ofMinutes(Math.round(shortest / 60)))
                    : "a day and more",
                SinterRules.coolsShut(work) ? ", cooled in the shut kiln" : ""));
  }

  /** Says which firing the day was too short for. */
  private Composition withLost(Composition tried, Option lost, Option taken) {
    List<Caution> cautions = new ArrayList<>();
    cautions.add(
        new Caution(
            "day-too-short",
            "%s for %s does not fit into the %s from dry to ready: taken is %s for %s."
                .formatted(
                    words(lost.at()),
                    HourMinute.words(lost.hold()),
                    HourMinute.words(work.window().orElseThrow()),
                    words(taken.at()),
                    HourMinute.words(taken.hold())),
            Origin.derived("forecasts of each firing in this kiln")));
    cautions.addAll(tried.cautions());
    return new Composition(
        work.kind(),
        tried.schedule(),
        tried.reasons(),
        tried.demands(),
        tried.charge(),
        cautions,
        tried.moments(),
        tried.judge());
  }

  /** The late end of when the pieces are ready, s from the start. */
  private double handBackSeconds(Composition composition) {
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(composition.schedule(), kiln, composition.charge())
                .withDraws(WINDOW_DRAWS));
    return composition.ready(forecast).seconds().map(Band::high).orElse(Double.POSITIVE_INFINITY);
  }

  private void refuseWhatDoesNotFit() {
    Refusals.pieceTooLong(work.longestMetres(), kiln);
    if (box.isEmpty()) {
      return;
    }
    double across = kiln.chamber().acrossMetres();
    CarbonBox carbon = box.get();
    double thick = work.thickest().thicknessMetres();
    if (carbon.acrossMetres() > across
        || carbon.outerHeightMetres() > kiln.chamber().heightMetres()) {
      throw new WorkRefusedException(
          "The box of %.0f by %.0f by %.0f mm does not fit into %s, which is %.0f mm inside from corner to corner and %.0f mm high."
              .formatted(
                  carbon.widthMetres() * 1000,
                  carbon.depthMetres() * 1000,
                  carbon.heightMetres() * 1000,
                  kiln.name(),
                  across * 1000,
                  kiln.chamber().heightMetres() * 1000));
    }
    if (carbon.coverMetres(thick) < 0.006
        || work.longestMetres()
            > Math.hypot(carbon.widthMetres(), carbon.depthMetres())
                - 2 * CarbonBox.STERLING_COVER_METRES) {
      throw new WorkRefusedException(
          "A piece of %.0f by %.1f mm does not fit into the box with carbon all round it."
              .formatted(work.longestMetres() * 1000, thick * 1000));
    }
  }

  // ---- the two phases

  private List<Draft.Step> binderPhase() {
    Temperature at = binderTarget();
    Slab slab = bare();
    Optional<Rate> rate = SinterRules.binderRate(work, facts);
    return List.of(
        new Draft.Step(
            "binder out",
            ramp(rate),
            rampWhy(rate),
            at,
            binderWhy(),
            holdWith(SinterRules.binderHold(work, facts), lagSeconds(slab, at, rate)),
            new Draft.Why(
                "In air, on an open shelf, until the binder has gone; the thickest piece rules.",
                "15 to 30 min",
                facts.binder().origin())));
  }

  private Temperature binderTarget() {
    return RoundNumbers.target(facts.binder().at(), lower(facts.binder().at(), cap.value()), unit);
  }

  private Draft.Why binderWhy() {
    return new Draft.Why("The binder burns away below.", "290 to 540 °C", facts.binder().origin());
  }

  private List<Draft.Step> sinterPhase(Option option) {
    List<Draft.Step> steps = new ArrayList<>();
    Slab slab = slab();
    Optional<Rate> first = SinterRules.binderRate(work, facts);
    boolean slow = first.isPresent() && work.phase() == Phase.BOTH_IN_ONE;
    boolean apart = work.phase() == Phase.BOTH_IN_ONE && work.inCarbon();
    if (slow || apart) {
      Temperature at = binderTarget();
      Duration own =
          apart || work.holds(Embedded.CORK)
              ? SinterRules.binderHold(work, facts)
              : Duration.ofMinutes(10);
      steps.add(
          new Draft.Step(
              "binder out",
              ramp(first),
              rampWhy(first),
              at,
              binderWhy(),
              holdWith(own, lagSeconds(slab, at, first)),
              new Draft.Why(
                  apart
                      ? "In the carbon too the binder must go first; the hold waits for the middle of the box."
                      : "The thickest piece comes to that heat and its binder goes.",
                  "10 to 30 min",
                  facts.binder().origin())));
    }
    Optional<Rate> rate = SinterRules.topRate(work, facts, option.at());
    double from = steps.isEmpty() ? ROOM_CELSIUS : steps.get(0).target().celsius();
    double warmUp = rate.isPresent() ? 0 : warmUpSeconds(from, option.at());
    double lag = lagSeconds(slab, option.at(), rate) + warmUp;
    steps.add(
        new Draft.Step(
            "sinter",
            ramp(rate),
            rampWhy(rate),
            option.at(),
            option.targetWhy(),
            holdWith(option.hold(), lag),
            lag < SHORT_LAG_SECONDS
                ? option.holdWhy()
                : new Draft.Why(
                    "%s Of it %s are for %sthe piece to follow%s, then %s of its own."
                        .formatted(
                            option.holdWhy().rule(),
                            HourMinute.words(extra(option.hold(), lag)),
                            warmUp > 0
                                ? "the kiln to warm up, as the hold's clock does not wait, and for "
                                : "",
                            work.inCarbon() ? " through the carbon" : "",
                            HourMinute.words(option.hold())),
                    work.inCarbon() ? "boxes lag 30 to 90 min" : option.holdWhy().range(),
                    option.holdWhy().origin())));
    return steps;
  }

  /** The longest of some likely kilns, in quarters of an hour, a day at most. */
  private static Duration simulatedCooling(Schedule schedule, Kiln kiln, Charge charge) {
    double longest =
        KilnCoasting.readings(
                schedule, kiln, charge.loads(), QUARTER_SECONDS, SinterRules.COLD_CELSIUS)
            .stream()
            .mapToDouble(readings -> (readings.length - 1) * QUARTER_SECONDS)
            .max()
            .orElseThrow();
    return Duration.ofSeconds(Math.round(longest));
  }

  private static Ramp ramp(Optional<Rate> rate) {
    return rate.map(r -> Ramp.at(r.value())).orElse(Ramp.fastest());
  }

  private Draft.Why rampWhy(Optional<Rate> rate) {
    return rate.map(Rate::why)
        .orElse(
            new Draft.Why(
                work.inCarbon()
                    ? "The carbon slows the pieces more than the kiln could."
                    : work.phase() != Phase.BOTH_IN_ONE
                            || work.thickest().thicknessMetres() > SinterRules.THIN_METRES + 1e-9
                        ? "Once the binder has gone they stand any rate of a small kiln."
                        : "Dry pieces of up to 3 mm stand any rate of a small kiln.",
                "",
                Origin.practice()));
  }

  private double lagSeconds(Slab slab, Temperature at, Optional<Rate> rate) {
    return PieceLag.seconds(
        slab,
        ROOM_CELSIUS,
        at.celsius(),
        rate.map(r -> r.value().kelvinsPerHour()).orElse(FULL_POWER_KELVINS_PER_HOUR),
        SinterRules.LAG_KELVINS);
  }

  /** Part of the hold on a controller whose hold does not wait for the kiln, s. */
  private double warmUpSeconds(double fromCelsius, Temperature at) {
    return kiln.control().holdWaitsWithin().isPresent()
        ? 0
        : Math.max(0, at.celsius() - fromCelsius) / WARM_UP_KELVINS_PER_HOUR * 3600;
  }

  private static Duration extra(Duration own, double lagSeconds) {
    return holdWith(own, lagSeconds).minus(own);
  }

  /** A hold with the lag, in whole five minutes where it is added. */
  private static Duration holdWith(Duration own, double lagSeconds) {
    if (lagSeconds < SHORT_LAG_SECONDS) {
      return own;
    }
    double minutes = own.toMinutes() + lagSeconds / 60;
    return Duration.ofMinutes(Math.round(Math.ceil(minutes / 5 - 1e-9) * 5));
  }

  // ---- what stands in the kiln

  private Slab slab() {
    return box.map(b -> b.slab(facts, work.thickest().thicknessMetres())).orElseGet(this::bare);
  }

  /** The thickest piece on a shelf that insulates. */
  private Slab bare() {
    return Slab.lying(
        facts.dense(),
        work.thickest().thicknessMetres(),
        new Slab.Face(facts.emissivity(), SinterWork.FILM));
  }

  private Charge charge() {
    List<Charge.Piece> rest = new ArrayList<>();
    FollowedPiece followed;
    if (box.isPresent()) {
      CarbonBox carbon = box.get();
      followed = carbon.followed(facts, work.thickest().thicknessMetres());
      rest.add(
          new Charge.Piece(
              "sides of the box", carbon.sideKilograms(), carbon.sideJoulesPerKilogramKelvin()));
    } else {
      SinterWork.Piece thickest = work.thickest();
      Slab slab = bare();
      followed =
          new FollowedPiece(
              "piece",
              thickest.count(),
              FOOTPRINT * thickest.lengthMetres() * thickest.lengthMetres(),
              slab,
              List.of(new FollowedPiece.Place("middle", slab.thicknessMetres())));
      for (SinterWork.Piece piece : work.pieces()) {
        if (piece != thickest) {
          rest.add(
              new Charge.Piece(
                  work.clay().words(),
                  piece.count()
                      * FOOTPRINT
                      * piece.lengthMetres()
                      * piece.lengthMetres()
                      * piece.thicknessMetres()
                      * facts.fullKilogramsPerCubicMetre(),
                  PieceMaterials.heatCapacityJoulesPerKilogramKelvin(metal()).orElseThrow()));
        }
      }
    }
    return new Charge(0, List.of(), Optional.empty(), rest, List.of(followed));
  }

  private String metal() {
    return switch (work.clay()) {
      case FINE_SILVER, FINE_SILVER_LOW_FIRE, FINE_SILVER_OLDER, STERLING -> "silver";
      case COPPER -> "copper";
      case BRONZE, BRONZE_LOW_FIRE -> "bronze";
    };
  }

  // ---- putting it together

  private Composition composed(
      List<Draft.Step> steps, Optional<Option> option, Optional<Keypad> keypad) {
    Draft.Fitted fitted = Draft.firstThatFits(List.of(rounded(steps)), name(), unit, keypad);
    Temperature top = option.map(Option::at).orElseGet(() -> fitted.schedule().peak());
    return new Composition(
        work.kind(),
        fitted.schedule(),
        fitted.reasons(),
        demands(top, option),
        charge(),
        cautions(option),
        moments(fitted.schedule(), option),
        new SinterJudge(
            work,
            top,
            option.map(Option::hold).orElseGet(() -> SinterRules.binderHold(work, facts))));
  }

  private Draft rounded(List<Draft.Step> steps) {
    return new Draft(
        steps.stream()
            .map(
                step ->
                    step.ramp()
                        .rate()
                        .map(
                            rate ->
                                step.withRamp(
                                    Ramp.at(RoundNumbers.rate(rate, unit)), step.rampWhy()))
                        .orElse(step))
            .toList());
  }

  private String name() {
    String phase =
        work.phase() == Phase.BOTH_IN_ONE
            ? ""
            : work.phase() == Phase.BINDER ? "-phase-1" : "-phase-2";
    return work.clay().word() + "-clay" + phase;
  }

  private Demands demands(Temperature top, Optional<Option> option) {
    List<Ceiling> ceilings = new ArrayList<>();
    ceilings.add(
        new Ceiling(firm.value(), Severity.STOP, firm.what(), firm.because(), firm.origin()));
    if (work.phase() == Phase.BINDER && !work.clay().isFineSilver()) {
      Temperature most = Temperature.ofCelsius(facts.binder().at().celsius() + 100);
      if (most.compareTo(firm.value()) < 0) {
        ceilings.add(
            new Ceiling(
                most,
                Severity.WARN,
                work.clay().words() + " in air",
                "it oxidises through and will not sinter in the carbon",
                Origin.estimate("100 K above the binder's hold")));
      }
    }
    List<RateLimit> rates = new ArrayList<>();
    if (work.phase() != Phase.SINTER) {
      SinterRules.binderRate(work, facts)
          .ifPresent(
              rate ->
                  rates.add(
                      new RateLimit(
                          "binder-too-fast",
                          TemperatureRange.ofCelsius(100, facts.binder().at().celsius() - 10),
                          rate.value(),
                          Severity.WARN,
                          "gas of the binder lifts or cracks the piece",
                          rate.why().origin())));
    }
    List<TimeWithin> times = new ArrayList<>();
    option.ifPresent(
        o ->
            times.add(
                new TimeWithin(
                    "short-sintering",
                    "sintering",
                    new TemperatureRange(
                        Temperature.ofCelsius(top.celsius() - SinterRules.AT_HEAT_KELVINS),
                        Temperature.ofCelsius(2000)),
                    o.hold(),
                    "the piece stays weak",
                    o.holdWhy().origin())));
    double low =
        work.phase() == Phase.BINDER
            ? 200
            : Math.min(top.celsius(), facts.coolest().celsius() - 50);
    double high =
        work.phase() == Phase.BINDER
            ? Math.min(firm.value().celsius(), facts.binder().at().celsius() + 100)
            : firm.value().celsius();
    return new Demands(
        phaseWords() + " of " + work.clay().words(),
        ceilings,
        rates,
        times,
        TemperatureRange.ofCelsius(Math.min(low, high), high),
        TemperatureRange.ofCelsius(0, high),
        TemperatureChange.ofKelvins(SinterRules.AT_HEAT_KELVINS),
        List.of(),
        List.of());
  }

  private String phaseWords() {
    return switch (work.phase()) {
      case BINDER -> "binder firing";
      case SINTER -> "sintering";
      case BOTH_IN_ONE -> "firing";
    };
  }

  // ---- what to know

  private List<Caution> cautions(Optional<Option> option) {
    List<Caution> cautions = new ArrayList<>();
    phases(cautions);
    option.ifPresent(o -> strength(cautions, o));
    embedded.ifPresent(limit -> apart(cautions, limit));
    if (work.inCarbon()) {
      carbon(cautions);
    }
    if (work.clay().isBronze() || work.clay() == Clay.STERLING) {
      cautions.add(
          new Caution(
              "narrow-window",
              "From too cool to melted is 30 to 60 K here, and kilns err by as much: fire a test strip first, in the same box and place, and bend it.",
              Origin.read(
                  "bronze-clay makers' reports: 727 to 843 °C on displays that were 50 to 70 K off")));
    }
    if (work.phase() != Phase.SINTER) {
      cautions.add(
          new Caution(
              "bone-dry",
              "Every piece must be bone dry: its weight steady over 10 min on a warm plate. Steam bursts a damp one.",
              Origin.practice()));
      cautions.add(
          new Caution(
              "binder-fume",
              "The binder smokes%s: vent the kiln outdoors, never fire it in a closed room."
                  .formatted(work.holds(Embedded.CORK) ? " and the cork burns with a flame" : ""),
              Origin.practice()));
    }
    cautions.add(Cautions.hotWork(750, 60));
    cautions.add(
        new Caution(
            "quench",
            work.holdsWhatCracks()
                ? "Do not quench: glass and stones crack. Let the kiln cool shut."
                : "Quench, if at all, one piece by tongs after the red has gone: steam and splashes burn.",
            Origin.practice()));
    cautions.add(
        new Caution(
            "fibre-dust",
            "Fibre board and blanket under the pieces shed dust, and after many firings it holds cristobalite: wet it, wear a mask, do not sweep dry.",
            Origin.memory("IARC Monographs vol. 81, Man-made Vitreous Fibres, 2002")));
    cautions.addAll(Cautions.always());
    return cautions;
  }

  private void phases(List<Caution> cautions) {
    if (work.phase() == Phase.BINDER) {
      cautions.add(
          new Caution(
              "phase-one-of-two",
              "This is phase 1 of 2: it only burns the binder. Let the kiln cool, lay the pieces in carbon, then compose phase 2 (phase: sinter)%s."
                  .formatted(work.clay().isFineSilver() ? "; fine silver needs no carbon" : ""),
              Origin.practice()));
      cautions.add(
          new Caution(
              "fragile",
              "After phase 1 copper pieces are as fragile as a biscuit: lift them with the shelf.",
              Origin.read("a metal-clay blog, 2011: copper and steel very fragile, bronze less")));
    } else if (work.phase() == Phase.SINTER && !work.clay().isFineSilver()) {
      cautions.add(
          new Caution(
              "phase-two-of-two",
              "This is phase 2 of 2: the binder must have gone before in phase 1 (phase: binder), on an open shelf in air. What was not fired so stays porous.",
              Origin.practice()));
    } else if (!work.clay().isFineSilver()) {
      cautions.add(
          new Caution(
              "one-phase",
              "Both phases in one, in carbon, left copper pieces porous in one test: two phases are surer.",
              Origin.read("an article on firing copper clay")));
    }
  }

  private void strength(List<Caution> cautions, Option option) {
    Optional<CurveBelief> belief = work.belief();
    if (belief.isEmpty() || !work.clay().isFineSilver()) {
      return;
    }
    List<String> others = new ArrayList<>();
    for (Option each : SinterRules.options(facts, work.dataSheet(), cap, unit)) {
      others.add(
          "%s %s: %s%s"
              .formatted(
                  words(each.at()),
                  HourMinute.words(each.hold()),
                  SinterJudge.percent(each.strengthBy(belief.get())),
                  each.equals(option) ? " (this one)" : ""));
    }
    cautions.add(
        new Caution(
            "strength",
            "Strength against %s for %s, as a range, at just these temperatures and times: %s. What the kiln makes of it stands with what happens in the piece. Wide because no curve of a clay is published; measured strips narrow it."
                .formatted(
                    words(facts.best().at()),
                    HourMinute.words(facts.best().hold()),
                    String.join("; ", others)),
            Origin.estimate(
                "sintering curves of the literature's range; 30 min against 2 h at 899 °C about 5 % (read: a teacher's page)")));
  }

  private void apart(List<Caution> cautions, Limit limit) {
    int limited =
        work.pieces().stream()
            .filter(
                piece ->
                    SinterRules.embedded(piece.embedded())
                        .filter(l -> l.value().equals(limit.value()))
                        .isPresent())
            .mapToInt(SinterWork.Piece::count)
            .sum();
    if (limited < work.count() && limit.value().compareTo(clayLimit.value()) < 0) {
      cautions.add(
          new Caution(
              "fire-apart",
              "%d of %d pieces hold what stands no more than %s and cap them all: fire the others apart and hotter if they must be strong."
                  .formatted(limited, work.count(), words(limit.value())),
              limit.origin()));
    }
  }

  private void carbon(List<Caution> cautions) {
    CarbonBox carbon = box.orElseThrow();
    cautions.add(
        new Caution(
            "carbon-monoxide",
            "Carbon in a hot box gives off carbon monoxide, which has no smell: extract to the outside, an alarm in the room, and open the box only when it is cold, or outdoors.",
            Origin.practice()));
    double cover = carbon.coverMetres(work.thickest().thicknessMetres());
    cautions.add(
        new Caution(
            "carbon-box",
            "%s %.0f by %.0f by %.0f mm inside, %.0f mm of carbon under and over the thickest piece, 13 mm between pieces, away from the door%s."
                .formatted(
                    work.box().isPresent() ? "The box:" : "Taken as usual: a box of sheet steel,",
                    carbon.widthMetres() * 1000,
                    carbon.depthMetres() * 1000,
                    carbon.heightMetres() * 1000,
                    cover * 1000,
                    cover < CarbonBox.cover(facts) - 1e-9
                        ? "; practice wants %.0f mm".formatted(CarbonBox.cover(facts) * 1000)
                        : ""),
            CarbonBox.COVER_ORIGIN));
  }

  // ---- when to act

  private List<Moment> moments(Schedule schedule, Optional<Option> option) {
    int last = schedule.segments().size();
    List<Moment> moments = new ArrayList<>();
    SinterWork.Piece thickest = work.thickest();
    if (work.phase() == Phase.SINTER) {
      moments.add(
          new Moment(
              Moment.Kind.ACT,
              Moment.Anchor.PROGRAM_START,
              0,
              Duration.ZERO,
              "latest load",
              "The pieces went through phase 1 and lie %s."
                  .formatted(work.inCarbon() ? "in the carbon, lid on" : "on the shelf")));
    } else {
      moments.add(
          new Moment(
              Moment.Kind.ACT,
              Moment.Anchor.PROGRAM_START,
              0,
              Duration.ZERO,
              "latest load, all dry",
              "The thickest piece, %.1f mm, rules: let it dry on a warm plate from %s before."
                  .formatted(
                      thickest.thicknessMetres() * 1000,
                      HourMinute.words(SinterRules.drying(thickest.thicknessMetres())))));
    }
    if (option.isPresent()) {
      moments.add(
          new Moment(
              Moment.Kind.LAST_CHANGE,
              Moment.Anchor.SEGMENT_END,
              last,
              Duration.ZERO,
              "lengthen the hold",
              "Afterwards the kiln cools; a second firing still helps a weak piece."));
    }
    if (SinterRules.coolsShut(work) && work.phase() != Phase.BINDER) {
      Duration inside =
          work.inCarbon()
              ? RoundNumbers.quarterUp(
                  PieceLag.delaySeconds(slab(), SinterRules.COLD_CELSIUS + 100) / 3600)
              : Duration.ZERO;
      moments.add(
          new Moment(
              Moment.Kind.READY,
              Moment.Anchor.SEGMENT_END,
              last,
              cooling.after(schedule, kiln, charge()).plus(inside),
              "hand back",
              work.inCarbon()
                  ? "The shut kiln is at %s, and the middle of the box follows late: do not open it before, hot carbon burns and gives off carbon monoxide."
                      .formatted(words(Temperature.ofCelsius(SinterRules.COLD_CELSIUS)))
                  : "Cooled in the shut kiln to %s: glass and stones crack in a draught."
                      .formatted(words(Temperature.ofCelsius(SinterRules.COLD_CELSIUS)))));
    } else if (work.phase() == Phase.BINDER) {
      moments.add(
          new Moment(
              Moment.Kind.READY,
              Moment.Anchor.SEGMENT_END,
              last,
              SinterRules.BY_TONGS,
              "phase 1 is done",
              "Let the pieces cool on their shelf, then lay them in for phase 2."));
    } else {
      moments.add(
          new Moment(
              Moment.Kind.READY,
              Moment.Anchor.SEGMENT_END,
              last,
              SinterRules.BY_TONGS,
              "hand back",
              "Out by tongs on to a brick when the hold has ended; cold after half an hour."));
    }
    return moments;
  }

  private String words(Temperature temperature) {
    return Wording.of(temperature, unit);
  }
}
