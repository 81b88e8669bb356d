package org.heatwright.app.report;

import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.heatwright.app.files.ScheduleCode;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.forecast.WorkForecast;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.keypad.FitNote;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.TimeForm;
import org.heatwright.kiln.Circuit;
import org.heatwright.kiln.Kiln;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Caution;
import org.heatwright.work.Composition;
import org.heatwright.work.EnamelJudge;
import org.heatwright.work.Found;
import org.heatwright.work.Moment;
import org.heatwright.work.Outcome;
import org.heatwright.work.PourSheet;
import org.heatwright.work.Reason;
import org.heatwright.work.casting.Remark;

/**
 * Gathers what a card needs. Schedule, kiln and forecast are enough; everything else is optional.
 * Belongs to one thread while it is filled.
 */
public final class CardBuilder {

  /** What a display may go above a target without anything being wrong, K. {@code estimate:} */
  private static final double SWING_KELVINS = 10;

  /** Codes of cautions that are about people, the most urgent first. */
  private static final List<String> DANGERS =
      List.of(
          "molten-metal", "burnout-fumes", "hot-work", "unattended", "enamel-dust", "silica-dust");

  /** Cautions of the pour that the work's own do not say. */
  private static final List<String> POUR_DANGERS = List.of("quench-splash");

  private static final String SAID_ON_EVERY_CARD = "maker-first";

  private static final String LAST_MOMENT = "last moment to ";
  private static final Temperature COLD = Temperature.ofCelsius(20);

  private final Schedule schedule;
  private final Kiln kiln;
  private final Forecast forecast;
  private final TemperatureUnit unit;
  private Optional<Composition> composition = Optional.empty();
  private List<Outcome> outcomes = List.of();
  private Optional<PourSheet> pourSheet = Optional.empty();
  private Optional<FittedProgram> fitted = Optional.empty();
  private Optional<Keypad> keypad = Optional.empty();
  private OptionalInt slot = OptionalInt.empty();
  private Optional<ZonedDateTime> start = Optional.empty();
  private List<String> startNotes = List.of();
  private Optional<String> responsible = Optional.empty();
  private Optional<String> phone = Optional.empty();
  private Optional<String> nextService = Optional.empty();
  private List<Finding> findings = List.of();

  private CardBuilder(Schedule schedule, Kiln kiln, Forecast forecast) {
    this.schedule = schedule;
    this.kiln = kiln;
    this.forecast = forecast;
    this.unit = schedule.unit();
    if (forecast.segments().size() != schedule.segments().size()) {
      throw new IllegalArgumentException(
          "The forecast has %d segments, but the schedule '%s' has %d: forecast this schedule first."
              .formatted(forecast.segments().size(), schedule.name(), schedule.segments().size()));
    }
  }

  /** A card for a schedule without a keypad: the digits are those of the schedule. */
  public static CardBuilder of(Schedule schedule, Kiln kiln, Forecast forecast) {
    return new CardBuilder(schedule, kiln, forecast);
  }

  /**
   * A card for what a keypad will run.
   *
   * @param forecast of the expressible schedule
   * @throws IllegalArgumentException if the program does not fit: there is nothing to key then
   */
  public static CardBuilder of(FittedProgram program, Keypad keypad, Kiln kiln, Forecast forecast) {
    if (!program.fits()) {
      throw new IllegalArgumentException(
          "There is nothing to key: the schedule '%s' does not fit the keypad '%s'. %s"
              .formatted(
                  program.requested().name(),
                  keypad.name(),
                  program.refusals().stream().map(FitNote::message).findFirst().orElse("")));
    }
    CardBuilder builder =
        new CardBuilder(program.expressible().withUnit(program.unit()), kiln, forecast);
    builder.fitted = Optional.of(program);
    builder.keypad = Optional.of(keypad);
    return builder;
  }

  /**
   * What the work is.
   *
   * @param told what the firing does to its pieces
   */
  public CardBuilder composition(Composition made, List<Outcome> told) {
    composition = Optional.of(made.withUnit(unit));
    outcomes = List.copyOf(told);
    return this;
  }

  /** The pour that follows. */
  public CardBuilder pour(PourSheet sheet) {
    pourSheet = Optional.of(sheet);
    return this;
  }

  public CardBuilder slot(int number) {
    slot = OptionalInt.of(number);
    return this;
  }

  /**
   * When the program's first segment begins, after any delay.
   *
   * @param notes on daylight saving and the like
   */
  public CardBuilder start(ZonedDateTime programStart, List<String> notes) {
    start = Optional.of(programStart);
    startNotes = List.copyOf(notes);
    return this;
  }

  /** Role of the responsible person, e.g. "caster". */
  public CardBuilder responsible(String role) {
    responsible = Optional.of(role);
    return this;
  }

  public CardBuilder phone(String number) {
    phone = Optional.of(number);
    return this;
  }

  /** When the kiln is due, e.g. "elements, January 2027". */
  public CardBuilder nextService(String due) {
    nextService = Optional.of(due);
    return this;
  }

  public CardBuilder findings(List<Finding> all) {
    findings = all.stream().sorted(Comparator.comparing(Finding::severity)).toList();
    return this;
  }

  public Card build() {
    return new Card(
        new Card.Header(
            schedule.name(),
            kiln.name(),
            keypad.map(Keypad::name),
            slot,
            unit,
            zone(),
            responsible,
            phone),
        timing(),
        order().stream().map(this::digitHead).toList(),
        entries(),
        extras(),
        checkFigures(),
        work(),
        limits(),
        power(),
        loading(),
        DisplayTimes.choose(forecast, start),
        alarms(),
        estimates(),
        pourSheet
            .map(sheet -> new PourWords(sheet, forecast, unit, new WhenWords(start)).facts())
            .orElse(List.of()),
        piece(),
        pieceChart(),
        moments(),
        composition.map(Composition::findable).orElseGet(Found::afterAny),
        nextService,
        findings,
        cautions(),
        scheduleText(),
        code(),
        ChartData.of(forecast, unit, start, ceilings()));
  }

  private ZoneId zone() {
    return start.map(ZonedDateTime::getZone).or(kiln::timeZone).orElse(ZoneOffset.UTC);
  }

  // ---------------------------------------------------------------- timing

  private Card.Timing timing() {
    return new Card.Timing(
        start,
        !schedule.startDelay().isZero(),
        ready(),
        Ending.of(forecast),
        schedule.atEnd(),
        startNotes);
  }

  private Optional<Card.Ready> ready() {
    Optional<Double> until =
        schedule.atEnd() == AtEnd.OFF ? Ending.of(forecast).earliestSeconds() : Optional.empty();
    boolean work = !forecast.work().isEmpty() || !forecast.pieces().isEmpty();
    String what = work ? "Work ready" : "Kiln ready";
    Optional<Band> from = readyFrom();
    if (readyAfterTheEnd()) {
      // Work that is followed and ready when it has cooled stays ready; else it was never sure.
      return forecast.pieces().isEmpty()
          ? Optional.empty()
          : from.map(band -> new Card.Ready("Work ready", band, Optional.empty()));
    }
    return from.map(band -> new Card.Ready(what, band, until));
  }

  private boolean readyAfterTheEnd() {
    return schedule.atEnd() == AtEnd.OFF
        && Ending.of(forecast).earliestSeconds().stream()
            .anyMatch(end -> readyFrom().stream().anyMatch(from -> from.median() >= end));
  }

  /** The work if there is any, else what the composition calls ready, else the last target. */
  private Optional<Band> readyFrom() {
    return composition
        .map(c -> c.ready(forecast))
        .orElseGet(() -> StartPlanner.ready(forecast))
        .seconds();
  }

  private SegmentForecast segment(int number) {
    return forecast.segments().get(number - 1);
  }

  private List<Card.Act> moments() {
    List<Card.Act> acts = new ArrayList<>();
    List<Moment> told = composition.map(Composition::moments).orElse(List.of());
    for (Moment moment : told) {
      if (moment.kind() == Moment.Kind.READY && ready().isPresent() && !readyAfterTheEnd()) {
        continue; // stands at the head of the card; after the end somebody must come back for it
      }
      composition
          .flatMap(c -> c.seconds(moment, forecast))
          .ifPresent(
              at ->
                  acts.add(
                      moment.kind() != Moment.Kind.LAST_CHANGE
                          ? new Card.Act(moment.what(), at, true, moment.deadline())
                          : new Card.Act(LAST_MOMENT + moment.what(), at, false, true)));
    }
    if (told.isEmpty()) {
      int hottest = hottest();
      Band ramp =
          hottest == 0 ? Band.exactly(0) : segment(hottest).endSeconds(); // 1-based: one before
      acts.add(
          new Card.Act(
              LAST_MOMENT + "change the highest target, " + degrees(schedule.peak()),
              ramp,
              false,
              true));
    }
    acts.sort(Comparator.comparingDouble(a -> a.seconds().median()));
    return acts;
  }

  /** 0-based segment with the highest target. */
  private int hottest() {
    List<Segment> segments = schedule.segments();
    int hottest = 0;
    for (int i = 1; i < segments.size(); i++) {
      if (segments.get(i).target().compareTo(segments.get(hottest).target()) > 0) {
        hottest = i;
      }
    }
    return hottest;
  }

  // ---------------------------------------------------------------- entry

  /** The fields of a segment in the order they are keyed. */
  private List<KeyedValue.Kind> order() {
    return keypad
        .map(Keypad::order)
        .orElse(List.of(KeyedValue.Kind.RATE, KeyedValue.Kind.TARGET, KeyedValue.Kind.HOLD));
  }

  /** "rate, °C/h", "hold, h.mm". */
  private String digitHead(KeyedValue.Kind kind) {
    boolean aMinute = keypad.filter(k -> k.rate().per() == Keypad.RateField.Per.MINUTE).isPresent();
    String form =
        switch (kind) {
          case RATE -> unit.symbol() + (aMinute ? "/min" : "/h");
          case TIME -> keypad.flatMap(k -> k.rate().time()).map(CardBuilder::words).orElse("h:mm");
          case TARGET -> unit.symbol();
          default -> keypad.map(k -> k.hold().form()).map(CardBuilder::words).orElse("h:mm");
        };
    return kind.word() + ", " + form;
  }

  private static String words(TimeForm form) {
    return switch (form) {
      case MINUTES -> "min";
      case DECIMAL_HOURS -> "hours, decimal";
      case HOURS_UNSURE -> "whole hours";
      default -> form.word();
    };
  }

  private List<Card.Entry> entries() {
    List<Card.Entry> entries = new ArrayList<>();
    for (int i = 0; i < schedule.segments().size(); i++) {
      int index = i;
      entries.add(
          new Card.Entry(
              i + 1,
              purpose(i),
              order().stream().map(kind -> digits(index, kind)).toList(),
              meaning(i),
              Optional.of(segment(i + 1))
                  .filter(Ending::isTold)
                  .map(SegmentForecast::reachedSeconds)));
    }
    return entries;
  }

  /** As the keypad takes it; without a keypad, as the schedule's file has it. */
  private String digits(int index, KeyedValue.Kind kind) {
    Segment segment = schedule.segments().get(index);
    if (fitted.isPresent()) {
      return fitted.get().values().stream()
          .filter(v -> v.segment() == index + 1 && v.kind() == kind)
          .map(KeyedValue::digits)
          .findFirst()
          .orElseThrow(
              () ->
                  new IllegalArgumentException(
                      "The fitted program lacks the %s of segment %d."
                          .formatted(kind.word(), index + 1)));
    }
    return switch (kind) {
      case RATE -> segment.ramp().rate().map(r -> number(unit.value(r))).orElse("fastest");
      case TARGET -> number(unit.value(segment.target()));
      default -> HourMinute.format(segment.hold());
    };
  }

  private List<Card.Extra> extras() {
    Duration delay = schedule.startDelay();
    if (fitted.isEmpty()) {
      return delay.isZero()
          ? List.of()
          : List.of(new Card.Extra("start delay", HourMinute.format(delay), delayWords(), false));
    }
    List<KeyedValue> values = fitted.get().values();
    List<Card.Extra> extras = new ArrayList<>();
    boolean before = true;
    for (int i = 0; i < values.size(); i++) {
      KeyedValue value = values.get(i);
      if (value.segment() > 0 && value.kind() != KeyedValue.Kind.END) {
        before = false;
        continue;
      }
      int last = i;
      while (last + 1 < values.size()
          && value.segment() > 0
          && values.get(last + 1).kind() == KeyedValue.Kind.END
          && values.get(last + 1).segment() > 0) {
        last++; // one row for all unused segments
      }
      boolean wait = value.kind() == KeyedValue.Kind.DELAY;
      extras.add(
          new Card.Extra(
              last == i
                  ? value.place()
                  : "segments %d to %d".formatted(value.segment(), values.get(last).segment()),
              value.digits(),
              wait ? delayWords() : value.meaning(),
              before));
      i = last;
    }
    return extras;
  }

  private String delayWords() {
    Duration delay = schedule.startDelay();
    String pressed =
        start
            .map(s -> new WhenWords(Optional.of(s)).full(-delay.toSeconds()))
            .map(at -> ", start pressed " + at)
            .orElse(" from the moment start is pressed");
    return delay.isZero() ? "no delay" : HourMinute.words(delay) + pressed;
  }

  private String purpose(int index) {
    boolean same =
        composition.isPresent()
            && composition.get().schedule().segments().size() == schedule.segments().size();
    Optional<String> told =
        same
            ? composition.get().reasons().stream()
                .filter(r -> r.segment() == index + 1 && !r.purpose().isBlank())
                .map(Reason::purpose)
                .findFirst()
            : Optional.empty();
    return told.orElse(rises(index) ? "heat" : "cool");
  }

  private boolean rises(int index) {
    return schedule.segments().get(index).target().compareTo(schedule.setpointBefore(index, COLD))
        >= 0;
  }

  /** "120 °C/h up to 150 °C (1 h 5 min), hold 2 h". */
  private String meaning(int index) {
    Segment segment = schedule.segments().get(index);
    boolean rises = rises(index);
    Temperature before = schedule.setpointBefore(index, COLD);
    String way =
        segment
            .ramp()
            .rate()
            .map(r -> number(unit.value(r)) + " " + unit.symbol() + "/h " + (rises ? "up" : "down"))
            .orElse(rises ? "full power up" : "elements off, down");
    String time =
        segment
            .ramp()
            .nominalTime(segment.target().minus(before))
            .map(t -> " in " + HourMinute.words(t))
            .orElse("");
    String hold = segment.hold().isZero() ? "" : ", hold " + HourMinute.words(segment.hold());
    boolean kept = index == schedule.segments().size() - 1 && schedule.atEnd() == AtEnd.KEEP;
    return way + " to " + degrees(segment.target()) + time + hold + (kept ? ", then kept" : "");
  }

  private List<Card.Fact> checkFigures() {
    int segments = schedule.segments().size();
    double sum =
        fitted
            .map(f -> f.checkFigures().sumOfTargets())
            .orElse(schedule.segments().stream().mapToDouble(s -> unit.value(s.target())).sum());
    Duration holds =
        schedule.segments().stream().map(Segment::hold).reduce(Duration.ZERO, Duration::plus);
    Schedule.NominalTime paper = schedule.nominalTime(COLD);
    return List.of(
        new Card.Fact("segments", Integer.toString(segments)),
        new Card.Fact("sum of targets", number(sum) + " " + unit.symbol()),
        new Card.Fact("all holds", minutes(holds)),
        new Card.Fact(
            "total from " + degrees(COLD),
            paper.complete()
                ? minutes(paper.total())
                : wholeMinutes(paper.total()) + " min + fastest"),
        firstUnused(segments + 1));
  }

  private Card.Fact firstUnused(int number) {
    boolean counted = keypad.filter(k -> k.end().by() == Keypad.EndRule.By.COUNT).isPresent();
    boolean full = keypad.filter(k -> number > k.segments()).isPresent();
    if (counted || full) {
      return new Card.Fact(
          "unused segments", full ? "none, all are used" : "none, they are counted");
    }
    return new Card.Fact(
        "segment " + number + " must read",
        fitted.map(f -> f.checkFigures().firstUnused()).orElse("empty"));
  }

  /** "570 min = 9 h 30 min". */
  private static String minutes(Duration time) {
    String words = HourMinute.words(time);
    return time.toHours() == 0 ? words : wholeMinutes(time) + " min = " + words;
  }

  private static long wholeMinutes(Duration time) {
    return Math.floorDiv(time.toSeconds() + 30, 60);
  }

  // ---------------------------------------------------------------- work, kiln

  private List<Card.Fact> work() {
    List<Card.Fact> facts = new ArrayList<>();
    composition.ifPresent(c -> facts.add(new Card.Fact("work", c.demands().work())));
    Charge charge = composition.map(Composition::charge).orElse(Charge.empty());
    StringJoiner load = new StringJoiner("; ");
    for (Mould mould : charge.moulds()) {
      load.add(
          "%d × ⌀ %s mm, %s mm high"
              .formatted(
                  mould.count(),
                  number(mould.diameterMetres() * 1000),
                  number(mould.heightMetres() * 1000)));
    }
    for (Charge.Piece piece : charge.pieces()) {
      load.add(piece.name() + " " + number(piece.massKilograms()) + " kg");
    }
    if (charge.furnitureKilograms() > 0) {
      load.add("shelves and props " + number(charge.furnitureKilograms()) + " kg");
    }
    if (load.length() > 0) {
      facts.add(new Card.Fact("load", load.toString()));
    } else if (composition.isEmpty()) {
      facts.add(new Card.Fact("load", "not told; forecast for an empty kiln"));
    }
    return facts;
  }

  private List<Card.Fact> limits() {
    List<Card.Fact> facts = new ArrayList<>();
    facts.add(
        new Card.Fact(
            "never above",
            ceilings().stream()
                .map(c -> degrees(Temperature.ofCelsius(c.celsius())) + ", " + c.why())
                .collect(Collectors.joining("; "))));
    composition.stream()
        .flatMap(c -> c.demands().rateLimits().stream())
        .min(Comparator.comparing(Demands.RateLimit::most))
        .ifPresent(
            r ->
                facts.add(
                    new Card.Fact(
                        "rise at most",
                        number(unit.value(r.most()))
                            + " "
                            + unit.symbol()
                            + "/h from "
                            + degrees(r.range().from())
                            + " to "
                            + degrees(r.range().to()))));
    return facts;
  }

  /** What must not be exceeded, lowest first. */
  private List<ChartData.Limit> ceilings() {
    return Stream.concat(
            composition
                .flatMap(c -> c.demands().firmCeiling())
                .map(c -> new ChartData.Limit(c.limit().celsius(), c.what()))
                .stream(),
            Stream.of(new ChartData.Limit(kiln.limit().celsius(), "the kiln")))
        .sorted(Comparator.comparingDouble(ChartData.Limit::celsius))
        .toList();
  }

  private List<Card.Fact> power() {
    List<Card.Fact> facts = new ArrayList<>();
    facts.add(
        new Card.Fact(
            "power",
            tenths(kiln.element().suppliedWatts() / 1000)
                + " kW at "
                + number(kiln.element().supplyVolts())
                + " V, "
                + tenths(kiln.element().suppliedAmperes())
                + " A"));
    kiln.circuit().ifPresent(c -> facts.add(new Card.Fact("circuit", circuit(c))));
    Band energy = forecast.energyKilowattHours();
    facts.add(
        new Card.Fact(
            "energy",
            tenths(energy.median())
                + " kWh predicted ("
                + tenths(energy.low())
                + " to "
                + tenths(energy.high())
                + ")"));
    return facts;
  }

  private String circuit(Circuit circuit) {
    double left = circuit.limitAmperes() - kiln.element().suppliedAmperes();
    return "%s, %s A breaker: %s"
        .formatted(
            circuit.name(),
            number(circuit.limitAmperes()),
            left > 0 ? tenths(left) + " A left" : "too small for this kiln alone");
  }

  private List<String> loading() {
    List<String> list = new ArrayList<>();
    list.add("cold display agrees with a thermometer, " + unit.symbol());
    list.add("thermocouple tip in sight, touching nothing");
    if (composition.stream().anyMatch(c -> !c.charge().moulds().isEmpty())) {
      list.add("moulds clear of elements and tip, air beneath");
      list.add("drip tray, extraction on, nothing near that burns");
    } else {
      list.add("load clear of elements and tip");
      list.add("extraction on, nothing near that burns");
    }
    list.add("load as planned, or forecast again");
    list.add("vents as planned, " + (kiln.door() == Kiln.Door.TOP ? "lid" : "door") + " shut");
    return list;
  }

  /**
   * The lowest limit; where a target lies close under it, as far above the target as a display may
   * swing in a firing where all is well, but not above the kiln's own limit: an alarm that goes off
   * in a good firing is an alarm that nobody heeds. What stands no swing (glass or a stone in metal
   * clay) is fired that far below its limit, so there the alarm stands at the limit.
   */
  private Temperature switchOffAbove() {
    double lowest = ceilings().get(0).celsius();
    double peak = schedule.peak().celsius();
    double swings = Math.min(peak + SWING_KELVINS, kiln.limit().celsius());
    return Temperature.ofCelsius(peak > lowest ? lowest : Math.max(lowest, swings));
  }

  private List<Card.Alarm> alarms() {
    Temperature top = switchOffAbove();
    String afterCut =
        switch (KilnOnKeypad.of(kiln, keypad).control().afterPowerCut()) {
          case CONTINUE -> "it goes on where it was: read the display, forecast again.";
          case RESTART ->
              "it starts again from segment 1: switch off, decide before you let it run.";
          case STOP -> "it stops: read the display, decide before you start again.";
          case UNKNOWN ->
              "what it does is not known: read the display and the segment number first.";
        };
    return List.of(
        new Card.Alarm(
            "Display above " + degrees(top) + ", stuck or jumping",
            "act now: switch the kiln off at the mains, leave it shut."),
        new Card.Alarm(
            "Two rows running outside their band",
            "plan changed: check door, vent, mains and slot; forecast again with what you read."),
        new Card.Alarm("After a power cut", afterCut));
  }

  private Optional<PieceChart> pieceChart() {
    return composition
        .map(Composition::judge)
        .filter(EnamelJudge.class::isInstance)
        .map(judge -> PieceChart.of(((EnamelJudge) judge).outlook(schedule), unit));
  }

  /** What happens in the piece: the number, and what to do where it is to be acted on. */
  private List<Card.Fact> piece() {
    return outcomes.stream()
        .map(
            outcome ->
                new Card.Fact(
                    outcome.what(),
                    outcome.severity().filter(s -> s != Severity.NOTE).isPresent()
                        ? outcome.value() + ": see the cautions"
                        : outcome.value()))
        .toList();
  }

  private List<String> estimates() {
    WhenWords words = new WhenWords(start);
    List<String> lines = new ArrayList<>();
    for (WorkForecast place : forecast.work()) {
      StringJoiner line =
          new StringJoiner(", ", "mould " + place.mould() + " " + place.probe() + ": ", "");
      place.drySeconds().ifPresent(dry -> line.add("dry " + words.full(dry.median())));
      line.add(
          place
              .readySeconds()
              .map(ready -> "ready " + words.full(ready.median()) + " (" + words.band(ready) + ")")
              .orElse("not sure to be ready"));
      Band end = place.atEndCelsius();
      line.add(
          "at the end %s to %s %s".formatted(whole(end.low()), whole(end.high()), unit.symbol()));
      lines.add(line.toString());
    }
    return lines;
  }

  /** Dangers to people first: where not all fit the page, those do. */
  private List<String> cautions() {
    List<Caution> told =
        composition.map(Composition::cautions).orElse(List.of()).stream()
            .filter(c -> !c.code().equals(SAID_ON_EVERY_CARD))
            .toList();
    List<String> cautions = new ArrayList<>();
    told.stream()
        .filter(c -> DANGERS.contains(c.code()))
        .sorted(Comparator.comparingInt(c -> DANGERS.indexOf(c.code())))
        .map(Caution::message)
        .forEach(cautions::add);
    pourSheet.stream()
        .flatMap(sheet -> sheet.plan().cautions().stream())
        .filter(caution -> POUR_DANGERS.contains(caution.code()))
        .map(Remark::message)
        .forEach(cautions::add);
    fitted.stream().flatMap(f -> f.notes().stream()).map(FitNote::message).forEach(cautions::add);
    told.stream()
        .filter(c -> !DANGERS.contains(c.code()))
        .map(Caution::message)
        .forEach(cautions::add);
    return cautions;
  }

  /** "harbour-burnout (°C): 1. 120 °C/h to 150 °C, hold 2:00 h; …; then off." */
  private String scheduleText() {
    StringJoiner text =
        new StringJoiner("; ", "Schedule " + schedule.name() + ", " + unit.symbol() + ": ", "");
    for (int i = 0; i < schedule.segments().size(); i++) {
      Segment segment = schedule.segments().get(i);
      text.add(
          "%d. %s to %s, hold %s h"
              .formatted(
                  i + 1,
                  segment
                      .ramp()
                      .rate()
                      .map(r -> number(unit.value(r)) + " " + unit.symbol() + "/h")
                      .orElse("fastest"),
                  degrees(segment.target()),
                  HourMinute.format(segment.hold())));
    }
    return text + (schedule.atEnd() == AtEnd.OFF ? "; then off." : "; then kept.");
  }

  private Optional<String> code() {
    try {
      return Optional.of(ScheduleCode.write(schedule));
    } catch (IllegalArgumentException noFileHoldsIt) {
      return Optional.empty();
    }
  }

  // ---------------------------------------------------------------- words

  private String degrees(Temperature temperature) {
    return number(unit.value(temperature)) + " " + unit.symbol();
  }

  private static String tenths(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  private String whole(double celsius) {
    return Long.toString(Math.round(unit.value(new Temperature(celsius))));
  }

  /** A number with at most one decimal, none if it is whole. */
  private static String number(double value) {
    double tenths = Math.rint(value * 10) / 10;
    return tenths == Math.rint(tenths)
        ? Long.toString(Math.round(tenths))
        : Double.toString(tenths);
  }
}
