package org.heatwright.app.web;

import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.plot.PiecePlot;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.Ending;
import org.heatwright.app.report.WhenWords;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.CostEstimate;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.CheckFigures;
import org.heatwright.keypad.FitNote;
import org.heatwright.keypad.human.SlipEstimate;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.KeyingSheet;
import org.heatwright.keypad.keying.KeyingStep;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.keypad.register.SlotWarning;
import org.heatwright.kiln.Learned;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Caution;
import org.heatwright.work.EnamelJudge;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.Found;
import org.heatwright.work.Outcome;
import org.heatwright.work.Reason;

/** Puts a planned firing into the words of the page. */
final class PageWords {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM", Locale.UK);
  private static final DateTimeFormatter KEPT =
      DateTimeFormatter.ofPattern("EEE d MMM yyyy", Locale.UK);
  private static final int SHELF_SHOWS = 8;

  private final Store store;
  private final Clock clock;
  private final SlotsDesk slots;

  PageWords(Store store, Clock clock, SlotsDesk slots) {
    this.store = store;
    this.clock = clock;
    this.slots = slots;
  }

  /** What the time is at the bench. */
  String clock() {
    return ClockWords.stamp(clock.instant().atZone(clock.getZone()));
  }

  Page page(PlanResult result, Optional<Page.Reading> reading) {
    ZoneId zone = result.firing().map(f -> f.press().getZone()).orElse(clock.getZone());
    return new Page(
        ClockWords.stamp(clock.instant().atZone(zone)),
        choosing(result, zone),
        result.errors(),
        result.refusal(),
        result.firing().map(this::plan),
        reading,
        shelf(zone),
        bringing(),
        Page.Scan.nothing());
  }

  private Page.Choosing choosing(PlanResult result, ZoneId zone) {
    Choices choices = result.choices();
    return new Page.Choosing(
        options(Kind.WORK, choices.work()),
        options(Kind.KILN, choices.kiln()),
        options(Kind.KEYPAD, choices.keypad()),
        choices.slot(),
        choices.readyBy(),
        choices.at(),
        choices.press(),
        choices.kiln(),
        KilnDesk.address(choices.kiln()),
        SlotsDesk.address(choices.kiln(), choices.keypad()),
        zone.getId(),
        choices.of(),
        choices.query(),
        choices.sealed(),
        result.notes());
  }

  private List<Page.Option> options(Kind kind, String chosen) {
    return store.all(kind).stream()
        .map(Document::name)
        .map(name -> new Page.Option(name, name.equals(chosen)))
        .toList();
  }

  private Page.Plan plan(Firing firing) {
    WhenWords when = new WhenWords(Optional.of(firing.start().start()));
    List<Page.Remark> findings = firing.findings().stream().map(PageWords::remark).toList();
    return new Page.Plan(
        answer(firing, when, findings),
        CurveFigure.of("firing", Curves.plan(firing), "", summary(firing, when)),
        rows(firing, when),
        findings,
        firing.outcomes().stream().map(PageWords::outcome).toList(),
        piece(firing),
        !firing.composition().charge().moulds().isEmpty(),
        firing.composition().cautions().stream().map(Caution::message).toList(),
        firing.composition().findable().stream().map(Found::words).toList(),
        Optional.of(keying(firing)),
        new Page.Taking(moments(firing, when), firing.program().fits()));
  }

  // ---- answer

  /** What now, when next, how sure: sooner than the whole page. */
  Page.Answered answered(Firing firing) {
    WhenWords when = new WhenWords(Optional.of(firing.start().start()));
    String kiln = firing.choices().kiln();
    return new Page.Answered(
        answer(firing, when, firing.findings().stream().map(PageWords::remark).toList()),
        kiln,
        KilnDesk.address(kiln));
  }

  private Page.Answer answer(Firing firing, WhenWords when, List<Page.Remark> findings) {
    Optional<Card.Ready> ready = firing.card().timing().ready();
    Ending ending = firing.card().timing().ending();
    boolean endless = ready.isEmpty() && !ending.isTold();
    Band from = ready.map(Card.Ready::fromSeconds).orElse(ending.seconds());
    String figure = firing.sketch() ? "about " + when.clock(from.median()) : window(when, from);
    List<Page.Fact> facts = new ArrayList<>();
    facts.add(new Page.Fact("What now", whatNow(firing, when)));
    facts.add(new Page.Fact("How sure", howSure(firing, endless)));
    facts.add(new Page.Fact("Energy", energy(firing)));
    firing.timeNotes().forEach(note -> facts.add(new Page.Fact("Mind", note)));
    return new Page.Answer(
        endless ? "Not sure to be ready; the program" : lead(firing, ready),
        endless ? (firing.sketch() ? "may never end" : ending.briefly()) : figure,
        endless
            ? (firing.sketch() ? "" : ending.cases())
            : when.at(from.median()).map(this::day).orElse(""),
        facts,
        findings.stream().filter(f -> !f.severity().equals(word(Severity.NOTE))).findFirst(),
        firing.sketch());
  }

  /** The year only where it is another one. */
  private String day(ZonedDateTime when) {
    boolean thisYear = when.getYear() == clock.instant().atZone(when.getZone()).getYear();
    return DAY.format(when) + (thisYear ? "" : " " + when.getYear());
  }

  private static String lead(Firing firing, Optional<Card.Ready> ready) {
    if (ready.isEmpty()) {
      return "Not sure to be ready; the program ends";
    }
    return firing.inTime() || !firing.choices().readyBy()
        ? ready.get().what()
        : ready.get().what() + ", later than you asked";
  }

  private static String window(WhenWords when, Band band) {
    return when.clock(band.low()).equals(when.clock(band.high()))
        ? when.clock(band.low())
        : when.clock(when.minuteBefore(band.low()))
            + " to "
            + when.clock(when.minuteAfter(band.high()));
  }

  private static String whatNow(Firing firing, WhenWords when) {
    if (!firing.program().fits()) {
      return "Do not key this: it does not fit %s. See below what to change."
          .formatted(firing.keypad().name());
    }
    if (firing.findings().stream().anyMatch(f -> f.severity() == Severity.STOP)) {
      return "Do not fire this yet: change what stops it, then key it in.";
    }
    Duration delay = firing.program().expressible().startDelay();
    String press = new WhenWords(Optional.of(firing.press())).full(0);
    return delay.isZero()
        ? "Key it in and read it back. Press start %s: heat begins at once.".formatted(press)
        : "Key it in with a delay of %s and read it back. Press start %s: heat begins %s."
            .formatted(HourMinute.words(delay), press, when.full(0));
  }

  private static String howSure(Firing firing, boolean endless) {
    if (firing.sketch()) {
      return "A first sketch from one draw; the band is being worked out.";
    }
    if (endless) {
      return firing.card().timing().ending().sentence();
    }
    return "Nine firings in ten should land in this window, as far as %s can tell."
        .formatted(
            firing
                .kiln()
                .learned()
                .filter(fit -> fit.engine().equals(Learned.ENGINE))
                .map(
                    fit ->
                        fit.firings() == 1
                            ? "the kiln's one logged firing"
                            : "the kiln's %d logged firings".formatted(fit.firings()))
                .orElse("the kiln's nameplate alone"));
  }

  private static String energy(Firing firing) {
    Band energy = firing.forecast().energyKilowattHours();
    String kilowattHours =
        firing.sketch()
            ? "about %s kWh".formatted(tenths(energy.median()))
            : "%s to %s kWh".formatted(tenths(energy.low()), tenths(energy.high()));
    return firing
        .cost()
        .map(c -> kilowattHours + ", " + cost(c, firing.sketch()))
        .orElse(kilowattHours);
  }

  private static String cost(CostEstimate cost, boolean sketch) {
    return sketch
        ? "about %.2f %s".formatted(cost.cost().median(), cost.currency())
        : "%.2f to %.2f %s".formatted(cost.cost().low(), cost.cost().high(), cost.currency());
  }

  private static String tenths(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }

  /** The curve in words. */
  static String summary(Firing firing) {
    return summary(firing, new WhenWords(Optional.of(firing.start().start())));
  }

  private static String summary(Firing firing, WhenWords when) {
    List<SegmentForecast> segments =
        firing.forecast().segments().stream().filter(Ending::hasMedian).toList();
    StringBuilder words = new StringBuilder("The curve of the display over time.");
    for (SegmentForecast segment : segments) {
      Segment asked = firing.program().expressible().segments().get(segment.index() - 1);
      words.append(
          " %s %s at %s."
              .formatted(
                  SegmentFields.target(asked, firing.program().unit()),
                  firing.program().unit().symbol(),
                  when.full(segment.arrivedSeconds().orElse(segment.reachedSeconds()).median())));
    }
    return words.toString();
  }

  // ---- schedule

  private static List<Page.Row> rows(Firing firing, WhenWords when) {
    List<Page.Row> rows = new ArrayList<>();
    TemperatureUnit unit = firing.composition().schedule().unit();
    List<Segment> composed = firing.composition().schedule().segments();
    for (int i = 0; i < composed.size(); i++) {
      int number = i + 1;
      SegmentForecast expected = firing.forecast().segments().get(i);
      List<Reason> reasons =
          firing.composition().reasons().stream().filter(r -> r.segment() == number).toList();
      rows.add(
          new Page.Row(
              number,
              Wording.capital(reasons.stream().map(Reason::purpose).findFirst().orElse("")),
              field(
                  firing,
                  "rate",
                  "Rate",
                  number,
                  SegmentFields.rate(composed.get(i), unit),
                  unit.symbol() + "/h"),
              field(
                  firing,
                  "target",
                  "Target",
                  number,
                  SegmentFields.target(composed.get(i), unit),
                  unit.symbol()),
              field(firing, "hold", "Hold", number, SegmentFields.hold(composed.get(i)), "h:mm"),
              expect(expected, when, firing.sketch()),
              reasons.stream().map(PageWords::why).toList()));
    }
    return rows;
  }

  private static String expect(SegmentForecast expected, WhenWords when, boolean sketch) {
    String arrives =
        expected
            .arrivedSeconds()
            .map(band -> "Reaches it " + at(when, band, sketch))
            .orElse("Does not reach it in every case that was tried");
    return Ending.isTold(expected)
        ? "%s; moves on %s.".formatted(arrives, at(when, expected.endSeconds(), sketch))
        : "%s; may never move on.".formatted(arrives);
  }

  private static String at(WhenWords when, Band band, boolean sketch) {
    return sketch ? "about " + when.full(band.median()) : days(when, band);
  }

  private static Page.Field field(
      Firing firing, String what, String label, int number, String composed, String unit) {
    String name = what + number;
    return new Page.Field(
        name,
        "%s of segment %d, %s".formatted(label, number, unit),
        firing.kept().getOrDefault(name, composed),
        composed,
        unit);
  }

  /** "Thu 3 Dec 08:10 to 08:50". */
  private static String days(WhenWords when, Band band) {
    if (when.full(band.low()).equals(when.full(band.high()))) {
      return when.full(band.low());
    }
    double low = when.minuteBefore(band.low());
    double high = when.minuteAfter(band.high());
    return when.full(low)
        + " to "
        + (when.day(low).equals(when.day(high)) ? when.clock(high) : when.full(high));
  }

  private static Page.Why why(Reason reason) {
    return new Page.Why(
        Wording.capital(reason.part().name().toLowerCase(Locale.ROOT)),
        reason.value(),
        reason.rule(),
        reason.range(),
        reason.origin().words());
  }

  // ---- findings, keying, taking

  private static Page.Remark remark(Finding finding) {
    return new Page.Remark(
        word(finding.severity()),
        finding.segment().isPresent() ? "segment " + finding.segment().getAsInt() : "",
        finding.message(),
        finding.origin().words());
  }

  /** Enamel goes into a hot kiln: its curve counts from the door. */
  private static Optional<CurveFigure> piece(Firing firing) {
    if (!(firing.composition().judge() instanceof EnamelJudge judge)) {
      return Optional.empty();
    }
    Schedule schedule = firing.program().expressible();
    EnamelOutlook outlook = judge.outlook(schedule);
    return Optional.of(
        CurveFigure.of(
            "piece",
            Curves.piece("a piece of %s".formatted(schedule.name()), outlook, schedule.unit()),
            PiecePlot.told(outlook, schedule.unit()),
            "The piece's temperature from the door's shutting."));
  }

  private static Page.Outcome outcome(Outcome outcome) {
    return new Page.Outcome(
        outcome.what(),
        outcome.value(),
        outcome.meaning(),
        outcome.severity().map(PageWords::word).orElse(""),
        outcome.origin().words());
  }

  private static String word(Severity severity) {
    return severity.name().toLowerCase(Locale.ROOT);
  }

  private Page.Keying keying(Firing firing) {
    boolean fits = firing.program().fits();
    SlotRegister register = slots.register(firing);
    Optional<Schedule> held = register.held(firing.slot());
    List<String> told =
        new ArrayList<>(firing.program().notes().stream().map(FitNote::message).toList());
    if (fits && held.isPresent()) {
      told.add(
          "The steps start from what the register says is in slot %d, “%s”; if the display shows other values, key every value."
              .formatted(firing.slot(), held.get().name()));
    }
    Optional<KeyingSheet> sheet =
        fits
            ? Optional.of(
                KeyingPlanner.plan(firing.program(), firing.keypad(), firing.slot(), held))
            : Optional.empty();
    return new Page.Keying(
        firing.keypad().name(),
        Integer.toString(firing.slot()),
        firing.program().unit().symbol(),
        fits,
        told,
        sheet.map(s -> s.steps().stream().map(PageWords::step).toList()).orElse(List.of()),
        sheet
            .map(s -> "About %s by hand.".formatted(HourMinute.words(atLeastAMinute(s.byHand()))))
            .orElse(""),
        sheet.map(KeyingSheet::timesOrigin).orElse(""),
        fits ? check(firing.program().checkFigures(), firing.program().unit()) : List.of(),
        fits
            ? slots.warnings(firing, register).stream().map(PageWords::remark).toList()
            : List.of(),
        SlotsDesk.address(firing.choices().kiln(), firing.choices().keypad()),
        SlotsDesk.roles(),
        fits ? SlipEstimate.of(firing.program(), firing.keypad()).words() : "",
        SlipEstimate.ORIGIN.words());
  }

  private static Page.Remark remark(SlotWarning warning) {
    return new Page.Remark(
        warning.level().name().toLowerCase(Locale.ROOT),
        "",
        warning.message(),
        "the slot register");
  }

  private static Duration atLeastAMinute(Duration byHand) {
    return byHand.compareTo(Duration.ofMinutes(1)) < 0 ? Duration.ofMinutes(1) : byHand;
  }

  private static Page.Step step(KeyingStep step) {
    return new Page.Step(
        step.number(),
        step.prompt(),
        step.press(),
        step.showsBefore(),
        step.press().contains("shows " + step.showsAfter() + ",") ? "" : step.showsAfter(),
        step.meaning());
  }

  private static List<Page.Fact> check(CheckFigures figures, TemperatureUnit unit) {
    return List.of(
        new Page.Fact("Segments", Integer.toString(figures.segments())),
        new Page.Fact(
            "Sum of targets", SegmentFields.number(figures.sumOfTargets()) + " " + unit.symbol()),
        new Page.Fact(
            "All holds",
            "%d min = %s"
                .formatted(
                    figures.totalMinutes(),
                    HourMinute.words(Duration.ofMinutes(figures.totalMinutes())))),
        new Page.Fact("First unused segment", figures.firstUnused()));
  }

  private static List<Page.Fact> moments(Firing firing, WhenWords when) {
    List<Page.Fact> moments = new ArrayList<>();
    Band end = firing.forecast().endSeconds();
    boolean ends = firing.card().timing().ending().isTold();
    boolean goesOff = ends && firing.program().expressible().atEnd() == AtEnd.OFF;
    Page.Fact off =
        new Page.Fact(days(when, end), "The elements go off; the work cools from here.");
    for (Card.Act act : firing.card().moments()) {
      if (goesOff && !moments.contains(off) && act.seconds().median() > end.median()) {
        moments.add(off);
      }
      String at = act.deadline() ? act.at(when) : days(when, act.seconds());
      moments.add(new Page.Fact(at, Wording.capital(act.what()) + "."));
    }
    if (goesOff && !moments.contains(off)) {
      moments.add(off);
    }
    if (!goesOff) {
      moments.add(
          new Page.Fact(
              "Until you stop it",
              ends
                  ? "The kiln keeps its last target: somebody must come."
                  : "The program may never end: somebody must come."));
    }
    return moments;
  }

  // ---- shelf

  /** What is missing is asked for, with a file to start one's own from. */
  private Page.Bringing bringing() {
    return Stream.of(Kind.WORK, Kind.KILN, Kind.KEYPAD)
        .filter(kind -> store.all(kind).isEmpty())
        .findFirst()
        .map(
            kind ->
                new Page.Bringing(
                    kind.word(),
                    kind == Kind.WORK ? "First burnout" : "",
                    DemoStudio.example(kind),
                    "",
                    true))
        .orElse(Page.Bringing.nothing());
  }

  private Page.Shelf shelf(ZoneId zone) {
    List<Page.Kept> cards =
        store.newestCards(SHELF_SHOWS).stream()
            .map(c -> new Page.Kept(c.name(), kept(c.made().atZone(zone)), "/cards/" + c.id()))
            .toList();
    List<Page.Kept> schedules =
        store.all(Kind.SCHEDULE).stream()
            .map(
                d ->
                    new Page.Kept(d.name(), kept(d.changed().atZone(zone)), "/schedules/" + d.id()))
            .toList();
    return new Page.Shelf(cards, schedules);
  }

  private static String kept(ZonedDateTime when) {
    return KEPT.format(when) + ", " + ClockWords.time(when);
  }
}
