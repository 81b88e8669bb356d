package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.TypedNumber;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.firings.Watch;
import org.heatwright.app.firings.WatchWords;
import org.heatwright.app.plot.FiringPlot;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.learn.RunningFiring;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Found;

/** Firings to come, that run and that are past: what is told of them, and what that means. */
final class FiringDesk {

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
  private static final DateTimeFormatter LONG_DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.UK);
  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("MMMM yyyy", Locale.UK);

  /** A firing on Now is waited for so long; then it comes by itself. Our choice. */
  private static final Duration PATIENCE = Duration.ofSeconds(1);

  private static final int READINGS_SHOWN = 4;
  private static final int PAST_SHOWN = 5;
  private static final int WATCHES_KEPT = 24;
  private static final int ZONES_KEPT = 48;
  private static final String GOOD = "good";

  private final Store store;
  private final Clock clock;
  private final SlotsDesk slots;
  private final Forecasts forecasts;
  private final FiringBook book;
  private final CausesDesk causes;
  private final Beside<FiringRecord, Watch> watches = new Beside<>(WATCHES_KEPT);
  private final Lately<String, ZoneId> zones = new Lately<>(ZONES_KEPT);

  /**
   * @param forecasts that were made while planning, too
   */
  FiringDesk(Store store, Clock clock, SlotsDesk slots, Forecasts forecasts) {
    this.store = store;
    this.clock = clock;
    this.slots = slots;
    this.forecasts = forecasts;
    this.book = new FiringBook(store, clock);
    this.causes = new CausesDesk(store, clock, this::watch);
  }

  /**
   * Something typed that is wrong.
   *
   * @param firing whose form; empty where nothing is wrong
   * @param field with the trouble
   * @param sentence what is wrong
   * @param typed all of the form
   */
  record Trouble(String firing, String field, String sentence, Map<String, String> typed) {
    static Trouble none() {
      return new Trouble("", "", "", Map.of());
    }
  }

  /** Address of a firing's page. */
  static String address(String id) {
    return "/firing?id=" + URLEncoder.encode(id, StandardCharsets.UTF_8);
  }

  /** What may be behind a firing's fault. */
  CausesDesk causes() {
    return causes;
  }

  /** Every firing whose start was pressed, the last first, in a few words each. */
  List<Named> pressed() {
    return book.all().stream()
        .filter(firing -> firing.pressed().isPresent())
        .map(
            firing ->
                new Named(
                    firing.id(),
                    "%s, %s in %s"
                        .formatted(
                            ClockWords.stamp(firing.pressed().orElseThrow().atZone(zone(firing))),
                            firing.entry().job(),
                            firing.entry().kiln())))
        .toList();
  }

  /** How a firing came out, in the trade's words. */
  String outcome(FiringRecord firing) {
    return firing.result().map(r -> words(firing, r.outcome())).orElse("result not told");
  }

  /** A firing in a few words. */
  record Named(String id, String words) {}

  Optional<FiringRecord> find(String id) {
    return book.find(id);
  }

  // ---- telling

  /** Puts a plan into the book. */
  void put(Firing firing, boolean pressed) {
    Choices choices = firing.choices();
    FiringRecord record =
        book.put(
            new FiringEntry(
                "",
                choices.work(),
                firing.work().kind(),
                choices.kiln(),
                choices.keypad(),
                firing.slot(),
                choices.query(),
                text(Kind.WORK, choices.work()),
                text(Kind.KILN, choices.kiln()),
                text(Kind.KEYPAD, choices.keypad()),
                ScheduleFile.write(firing.program().expressible().withName(choices.work())),
                firing.press().toInstant(),
                book.now(),
                List.of(),
                Optional.empty()));
    if (pressed) {
      pressed(record, Map.of());
    }
  }

  private String text(Kind kind, String name) {
    return store.find(kind, name).map(Document::text).orElseThrow();
  }

  /** Start was pressed; what the slot held then is kept with it. */
  void pressed(FiringRecord firing, Map<String, String> form) {
    Instant at = when(firing, form);
    Optional<SlotRegister> register = register(firing);
    int number = firing.entry().slot();
    Optional<Schedule> held = register.flatMap(r -> r.held(number));
    String standing =
        register.map(r -> r.standing(number, at).sentence(at, zone(firing))).orElse("");
    book.pressed(firing, at, held, standing);
  }

  /** The register of its keypad, where kiln and keypad are on the shelf and can be read. */
  private Optional<SlotRegister> register(FiringRecord firing) {
    try {
      return slots.at(firing.entry().kiln(), firing.entry().keypad()).map(slots::register);
    } catch (InputException notReadable) {
      return Optional.empty();
    }
  }

  /** The display said so. */
  void shown(FiringRecord firing, Map<String, String> form) {
    String typed = form.getOrDefault("shows", "").strip();
    TemperatureUnit unit = firing.runs().unit();
    double celsius =
        TypedNumber.celsius(typed, unit)
            .orElseThrow(
                () ->
                    InputException.in(
                        "shows",
                        "type the number that the display says, in %s, e.g. %s."
                            .formatted(
                                unit.symbol(), unit == TemperatureUnit.CELSIUS ? "612" : "1134")));
    book.shown(firing, when(firing, form), celsius);
  }

  void note(FiringRecord firing, Map<String, String> form) {
    book.note(firing, book.now(), form.getOrDefault("note", ""));
  }

  void out(FiringRecord firing, Map<String, String> form) {
    book.out(firing, when(firing, form), form.getOrDefault("why", ""));
  }

  /** How it came out: of a firing whose result can be seen by now that says that it is out, too. */
  void result(FiringRecord firing, Map<String, String> form) {
    String outcome = form.getOrDefault("outcome", "");
    if (outcomes(firing).stream().noneMatch(o -> o.code().equals(outcome))) {
      throw InputException.in("outcome", "say how it came out: good, or what was wrong.");
    }
    if (firing.state() == FiringRecord.State.RUNNING) {
      if (!resultIsDue(firing)) {
        throw InputException.in(
            "outcome",
            "by the clock it is still hot: say first that it is out, or that you stopped it.");
      }
      book.out(firing, book.now(), "");
    }
    book.result(firing, book.now(), outcome, form.getOrDefault("note", ""));
  }

  /** Whether a person can see by now how it came out; yes of one that cannot be read any more. */
  private boolean resultIsDue(FiringRecord firing) {
    try {
      return new WatchWords(watch(firing), book.now()).resultIsDue();
    } catch (InputException notReadable) {
      return true;
    }
  }

  // ---- one kiln, one firing

  /** Firings of a kiln that are under way by the book. */
  List<FiringRecord> running(String kiln) {
    return of(book.all(), FiringRecord.State.RUNNING).stream()
        .filter(firing -> firing.entry().kiln().equals(kiln))
        .toList();
  }

  /**
   * Asks whether the work of a running firing is out before the kiln is started again.
   *
   * @param address where the start was told
   * @param form with it
   */
  StillHotPage stillHot(FiringRecord running, String address, Map<String, String> form) {
    Map<String, String> fields = new LinkedHashMap<>(form);
    fields.remove("out");
    return new StillHotPage(
        clock(),
        running.id(),
        running.entry().kiln(),
        "By the book it fires %s since %s, and nobody has told that it is out. A kiln fires one program at a time."
            .formatted(
                running.entry().job(),
                ClockWords.stamp(running.pressed().orElseThrow().atZone(zone(running)))),
        address,
        fields);
  }

  /** A sentence for each kiln in which more than one firing is under way. */
  private static List<String> twice(List<NowPage.Hot> hot) {
    return hot.stream()
        .collect(
            Collectors.groupingBy(NowPage.Hot::kiln, LinkedHashMap::new, Collectors.counting()))
        .entrySet()
        .stream()
        .filter(kiln -> kiln.getValue() > 1)
        .map(
            kiln ->
                "By the book %d firings are under way in %s, and a kiln fires one at a time: say which is out."
                    .formatted(kiln.getValue(), kiln.getKey()))
        .toList();
  }

  void photo(FiringRecord firing, byte[] picture, Map<String, String> form) {
    book.photo(firing, picture, form.getOrDefault("caption", ""));
  }

  Optional<FiringEntry.Photo> photo(String line) {
    return book.photo(line);
  }

  void takeBack(FiringRecord firing, String line, boolean back) {
    book.takeBack(firing, line, back);
  }

  void putAway(FiringRecord firing, boolean away) {
    book.remove(firing, away);
  }

  /** A clock time that was typed is the last such moment; none is now. */
  private Instant when(FiringRecord firing, Map<String, String> form) {
    String typed = form.getOrDefault("time", "").strip();
    Instant now = book.now();
    return typed.isEmpty() ? now : last(typed, now.atZone(zone(firing))).toInstant();
  }

  /** The last moment at which a clock showed a time; one that it left out is refused. */
  static ZonedDateTime last(String typed, ZonedDateTime now) {
    ZonedDateTime latest = now.plusMinutes(1);
    ZoneId zone = latest.getZone();
    LocalDateTime local =
        StartPlanner.lastShown(now.toLocalDate().atTime(clockTime(typed)), latest);
    return StartPlanner.instants(local, zone).stream()
        .filter(at -> !at.isAfter(latest))
        .reduce((first, second) -> second)
        .orElseThrow(
            () ->
                InputException.in(
                    "time",
                    "%s; write a time that the clock has shown."
                        .formatted(StartPlanner.odd(local, zone))));
  }

  private static LocalTime clockTime(String typed) {
    try {
      return LocalTime.parse(typed);
    } catch (DateTimeException e) {
      throw InputException.in(
          "time", "“%s” is no clock time; write it like 14:05.".formatted(typed));
    }
  }

  /** Where the kiln stands; the bench's own zone if its file names none, or cannot be read. */
  private ZoneId zone(FiringRecord firing) {
    return zones.of(
        firing.entry().kilnText(),
        text -> {
          try {
            return KilnFile.read(text, firing.entry().kiln()).timeZone().orElseGet(clock::getZone);
          } catch (InputException notReadable) {
            return clock.getZone();
          }
        });
  }

  /** Works it out at first, up to a second; the next page that asks has it. */
  Watch watch(FiringRecord firing) {
    return watches.of(firing, () -> worked(firing));
  }

  private Watch worked(FiringRecord firing) {
    return Watch.of(firing, clock.getZone(), forecasts::of);
  }

  // ---- now

  NowPage now(Trouble trouble) {
    List<FiringRecord> all = book.all();
    List<NowPage.Hot> hot =
        of(all, FiringRecord.State.RUNNING).stream()
            .map(firing -> hot(firing, trouble))
            .sorted(Comparator.comparing(h -> h.due().isEmpty()))
            .toList();
    List<NowPage.Coming> coming =
        of(all, FiringRecord.State.PLANNED).stream()
            .sorted(Comparator.comparing(f -> f.entry().press()))
            .map(this::coming)
            .toList();
    List<NowPage.Past> past =
        of(all, FiringRecord.State.DONE).stream().limit(PAST_SHOWN).map(this::past).toList();
    return new NowPage(
        clock(),
        headline((int) hot.stream().map(NowPage.Hot::kiln).distinct().count(), coming.size()),
        twice(hot),
        hot,
        coming,
        past,
        new StartDesk(store, clock).isEmpty());
  }

  private String clock() {
    return ClockWords.stamp(clock.instant().atZone(clock.getZone()));
  }

  private static List<FiringRecord> of(List<FiringRecord> all, FiringRecord.State state) {
    return all.stream().filter(firing -> firing.state() == state).toList();
  }

  private static String headline(int hot, int coming) {
    String now =
        switch (hot) {
          case 0 -> "Nothing is hot.";
          case 1 -> "One kiln is hot.";
          default -> "%d kilns are hot.".formatted(hot);
        };
    return coming == 0
        ? now
        : now + " %s planned.".formatted(coming == 1 ? "One is" : coming + " are");
  }

  private NowPage.Hot hot(FiringRecord firing, Trouble trouble) {
    Optional<NowPage.Wrong> wrong =
        trouble.firing().equals(firing.id())
            ? Optional.of(new NowPage.Wrong(trouble.field(), trouble.sentence(), trouble.typed()))
            : Optional.empty();
    Optional<Watch> known;
    try {
      known = watches.within(firing, () -> worked(firing), PATIENCE);
    } catch (InputException e) {
      return untold(firing, wrong, Objects.requireNonNull(e.getMessage()));
    }
    if (known.isEmpty()) {
      return later(firing, wrong);
    }
    Watch watch = known.get();
    WatchWords words = new WatchWords(watch, book.now());
    Optional<WatchWords.Ready> ready = words.ready();
    return new NowPage.Hot(
        firing.id(),
        firing.entry().job(),
        firing.entry().kiln(),
        ready.map(WatchWords.Ready::what).orElse("Not sure to be ready"),
        ready.map(WatchWords.Ready::window).orElse("see the plan"),
        ready.map(WatchWords.Ready::day).orElse(""),
        words.due(),
        words.whatNow(),
        words.next().orElse(""),
        words.display().orElse(""),
        watch.unit().symbol(),
        words.verdict().map(v -> new NowPage.Verdict(words.normal().orElse(false), v)),
        read(firing),
        words.resultIsDue() ? outcomes(firing) : List.of(),
        firing.keyedOtherwise(),
        wrong,
        "",
        watch.composition().flatMap(TimerDesk::judge).map(j -> TimerDesk.address(firing.id())),
        false);
  }

  /** A firing whose forecast is still being worked out. */
  private static NowPage.Hot later(FiringRecord firing, Optional<NowPage.Wrong> wrong) {
    return bare(firing, "Being worked out", List.of(), wrong, "", true);
  }

  /** A firing whose texts this version cannot read: it can still be watched by the clock. */
  private static NowPage.Hot untold(
      FiringRecord firing, Optional<NowPage.Wrong> wrong, String trouble) {
    return bare(firing, "Nothing can be told", outcomes(firing), wrong, trouble, false);
  }

  private static NowPage.Hot bare(
      FiringRecord firing,
      String lead,
      List<NowPage.Outcome> outcomes,
      Optional<NowPage.Wrong> wrong,
      String trouble,
      boolean later) {
    return new NowPage.Hot(
        firing.id(),
        firing.entry().job(),
        firing.entry().kiln(),
        lead,
        "",
        "",
        List.of(),
        "",
        "",
        "",
        "",
        Optional.empty(),
        List.of(),
        outcomes,
        false,
        wrong,
        trouble,
        Optional.empty(),
        later);
  }

  private List<NowPage.Line> read(FiringRecord firing) {
    List<FiringEntry.Told> shown = firing.all(Happening.SHOWN);
    List<NowPage.Line> lines = new ArrayList<>();
    for (int i = shown.size() - 1; i >= 0 && lines.size() < READINGS_SHOWN; i--) {
      FiringEntry.Told told = shown.get(i);
      lines.add(
          new NowPage.Line(
              told.id(),
              "%s: %s"
                  .formatted(
                      ClockWords.time(told.at().atZone(zone(firing))), degrees(firing, told))));
    }
    return lines;
  }

  /** What the display said, in its unit; in °C where the schedule cannot be read any more. */
  private static String degrees(FiringRecord firing, FiringEntry.Told told) {
    return Wording.whole(told.celsius().orElseThrow(), displayUnit(firing));
  }

  private static TemperatureUnit displayUnit(FiringRecord firing) {
    try {
      return firing.runs().unit();
    } catch (InputException notReadable) {
      return TemperatureUnit.CELSIUS;
    }
  }

  private NowPage.Coming coming(FiringRecord firing) {
    ZonedDateTime press = firing.entry().press().atZone(zone(firing));
    boolean late = press.toInstant().isBefore(book.now());
    return new NowPage.Coming(
        firing.id(),
        firing.entry().job(),
        firing.entry().kiln(),
        Integer.toString(firing.entry().slot()),
        ClockWords.stamp(press) + (late ? ", that has passed" : ""),
        heatBegins(firing, press),
        "/plan?" + firing.entry().plan());
  }

  private static String heatBegins(FiringRecord firing, ZonedDateTime press) {
    try {
      Duration delay = firing.planned().startDelay();
      return delay.isZero()
          ? "heat begins at once"
          : "with a delay of %s keyed in, heat begins %s"
              .formatted(HourMinute.words(delay), ClockWords.stamp(press.plus(delay)));
    } catch (InputException e) {
      return Objects.requireNonNull(e.getMessage());
    }
  }

  private NowPage.Past past(FiringRecord firing) {
    return new NowPage.Past(
        address(firing.id()),
        firing.entry().job(),
        firing.entry().kiln(),
        ClockWords.stamp(firing.pressed().orElseThrow().atZone(zone(firing))),
        firing.result().map(r -> words(firing, r.outcome())).orElse("result not told"));
  }

  private static List<NowPage.Outcome> outcomes(FiringRecord firing) {
    return Found.after(firing.entry().kind()).stream()
        .map(found -> new NowPage.Outcome(found.code(), found.words()))
        .toList();
  }

  /** The trade's words for a firing's outcome; a code that is no longer among them as it is. */
  private static String words(FiringRecord firing, String code) {
    return Found.after(firing.entry().kind()).stream()
        .filter(found -> found.code().equals(code))
        .map(Found::words)
        .findFirst()
        .orElseGet(() -> code.replace('-', ' '));
  }

  // ---- the book

  /**
   * @param kiln to show its firings alone; empty for all
   */
  FiringsPage book(String kiln) {
    List<FiringsPage.Tab> tabs = new ArrayList<>();
    tabs.add(new FiringsPage.Tab("All kilns", "/firings", kiln.isEmpty()));
    List<String> kilns = store.all(Kind.KILN).stream().map(Document::name).toList();
    for (String name : kilns) {
      tabs.add(
          new FiringsPage.Tab(
              name,
              "/firings?kiln=" + URLEncoder.encode(name, StandardCharsets.UTF_8),
              name.equals(kiln)));
    }
    List<Dated> entries = new ArrayList<>();
    for (FiringRecord firing : book.all()) {
      if (kiln.isEmpty() || firing.entry().kiln().equals(kiln)) {
        entries.add(dated(firing));
      }
    }
    for (String name : kiln.isEmpty() ? kilns : List.of(kiln)) {
      store.logs(name).forEach(log -> entries.add(dated(name, log)));
    }
    entries.sort(Comparator.comparing(Dated::date).reversed());
    Map<String, List<FiringsPage.Entry>> months = new LinkedHashMap<>();
    entries.forEach(
        e ->
            months
                .computeIfAbsent(MONTH.format(e.date()), month -> new ArrayList<>())
                .add(e.entry()));
    return new FiringsPage(
        clock(),
        entries.isEmpty()
            ? "Nothing is in the book yet: a plan is put there from its last step."
            : entries.size() == 1 ? "One firing." : "%d firings.".formatted(entries.size()),
        tabs,
        months.entrySet().stream()
            .map(e -> new FiringsPage.Month(e.getKey(), e.getValue()))
            .toList());
  }

  private record Dated(LocalDate date, FiringsPage.Entry entry) {}

  private Dated dated(FiringRecord firing) {
    LocalDate date =
        firing.pressed().orElse(firing.entry().press()).atZone(zone(firing)).toLocalDate();
    String mark =
        switch (firing.state()) {
          case PLANNED -> "planned";
          case RUNNING -> "running";
          case DONE ->
              firing.result().map(r -> r.outcome().equals(GOOD) ? GOOD : "fault").orElse("open");
        };
    String result =
        switch (mark) {
          case "planned" -> "planned";
          case "running" -> "runs now";
          case "open" -> "result not told";
          default -> firing.result().map(r -> words(firing, r.outcome())).orElse("");
        };
    return new Dated(
        date,
        new FiringsPage.Entry(
            address(firing.id()),
            DAY.format(date),
            firing.entry().job(),
            firing.entry().kiln(),
            mark,
            result));
  }

  private static Dated dated(String kiln, FiringLog log) {
    return new Dated(
        log.date(),
        new FiringsPage.Entry(
            KilnDesk.address(kiln) + "&log=" + log.id() + "#watched",
            DAY.format(log.date()),
            log.name(),
            kiln,
            "log",
            "log"));
  }

  // ---- one firing

  FiringPage page(FiringRecord firing, String back, Trouble trouble) {
    ZoneId zone = zone(firing);
    Optional<FiringRecord.Result> result = firing.result();
    ZonedDateTime pressed = firing.pressed().orElse(firing.entry().press()).atZone(zone);
    boolean done = firing.state() == FiringRecord.State.DONE;
    List<Page.Fact> facts = new ArrayList<>();
    facts.add(
        new Page.Fact(
            "Start",
            firing.pressed().isPresent()
                ? "pressed " + ClockWords.stamp(pressed)
                : "to be pressed " + ClockWords.stamp(pressed)));
    facts.add(
        new Page.Fact(
            "Program", "slot %d on %s".formatted(firing.entry().slot(), firing.entry().keypad())));
    result
        .filter(r -> !r.note().isEmpty())
        .ifPresent(r -> facts.add(new Page.Fact("Said", r.note())));
    return new FiringPage(
        clock(),
        firing.id(),
        firing.entry().job(),
        firing.entry().kiln(),
        KilnDesk.address(firing.entry().kiln()),
        firing.state().name().toLowerCase(Locale.ROOT),
        "How it came out",
        result
            .map(r -> words(firing, r.outcome()))
            .orElse(
                done
                    ? "not told yet"
                    : firing.state() == FiringRecord.State.RUNNING ? "runs now" : "planned"),
        LONG_DAY.format(pressed),
        facts,
        curve(firing),
        readable(() -> lines(firing.planned())),
        readable(() -> keyed(firing)),
        "/plan?" + firing.entry().plan(),
        happened(firing, zone),
        photos(firing, zone),
        done || firing.state() == FiringRecord.State.RUNNING && resultIsDue(firing)
            ? outcomes(firing)
            : List.of(),
        result.map(FiringRecord.Result::outcome),
        causes.behind(firing, this::outcome),
        back,
        firing.entry().removed().isPresent(),
        trouble.field(),
        trouble.sentence(),
        trouble.typed(),
        displayUnit(firing).symbol());
  }

  /** Forecast and readings; a firing whose texts cannot be read any more has none. */
  private Optional<CurveFigure> curve(FiringRecord firing) {
    if (firing.pressed().isEmpty()) {
      return Optional.empty();
    }
    try {
      Watch watch = watch(firing);
      WatchedFiring watched =
          new WatchedFiring(
              watch.forecast(),
              watch.update().map(FiringDesk::afterReading).orElse(""),
              watch.seen(),
              watch.unit(),
              Optional.of(watch.start()),
              List.of());
      boolean runs = firing.state() == FiringRecord.State.RUNNING;
      return Optional.of(
          CurveFigure.of(
              "firing",
              Curves.watched(
                  watched,
                  watch.card().chart().limits().stream()
                      .map(limit -> new CurveData.Limit(limit.celsius(), limit.why()))
                      .toList(),
                  runs ? Optional.of(book.now().atZone(zone(firing))) : Optional.empty()),
              FiringPlot.told(watched),
              "The forecast and what the display said: " + FiringPlot.told(watched)));
    } catch (InputException notReadable) {
      return Optional.empty();
    }
  }

  private static String afterReading(RunningFiring.Update update) {
    return update.believed()
        ? "The forecast has been moved by what was read."
        : "The forecast is left as it was: what was read fits no likely kiln.";
  }

  /** What a kept text says, or why it cannot be read any more. */
  private static List<String> readable(Supplier<List<String>> lines) {
    try {
      return lines.get();
    } catch (InputException e) {
      return List.of(Objects.requireNonNull(e.getMessage()));
    }
  }

  private static List<String> lines(Schedule schedule) {
    TemperatureUnit unit = schedule.unit();
    List<String> lines = new ArrayList<>();
    if (!schedule.startDelay().isZero()) {
      lines.add("delay " + HourMinute.words(schedule.startDelay()));
    }
    for (Segment segment : schedule.segments()) {
      String rate = SegmentFields.rate(segment, unit);
      boolean plain = !rate.isEmpty() && Character.isDigit(rate.charAt(0));
      lines.add(
          "%s to %s %s, hold %s"
              .formatted(
                  plain ? "at " + rate + " " + unit.symbol() + "/h" : rate,
                  SegmentFields.target(segment, unit),
                  unit.symbol(),
                  SegmentFields.hold(segment)));
    }
    return lines;
  }

  private static List<String> keyed(FiringRecord firing) {
    if (firing.pressed().isEmpty()) {
      return List.of("Not started yet.");
    }
    Optional<Schedule> keyed = firing.keyed();
    if (keyed.isEmpty()) {
      return List.of("Nobody had read the slot back, so what ran is taken to be what was planned.");
    }
    List<String> lines = new ArrayList<>();
    lines.add(firing.keyedStanding());
    if (firing.keyedOtherwise()) {
      lines.add("The slot held something else than was planned; that is what ran:");
      lines.addAll(lines(keyed.get()));
    } else {
      lines.add("As planned.");
    }
    return lines;
  }

  private static List<FiringPage.Happened> happened(FiringRecord firing, ZoneId zone) {
    List<FiringPage.Happened> lines = new ArrayList<>();
    Optional<Instant> pressed = firing.pressed();
    for (FiringEntry.Told told : firing.entry().told()) {
      Happening kind = Happening.valueOf(told.kind().toUpperCase(Locale.ROOT));
      String when = ClockWords.stamp(told.at().atZone(zone));
      String after =
          pressed
              .filter(p -> told.at().isAfter(p))
              .map(
                  p ->
                      ", "
                          + HourMinute.words(
                              Duration.ofMinutes(Duration.between(p, told.at()).toMinutes()))
                          + " after start")
              .orElse("");
      switch (kind) {
        case PRESSED -> lines.add(line(told, when, "Start pressed", ""));
        case SHOWN ->
            lines.add(line(told, when + after, "The display said", degrees(firing, told)));
        case PIECE ->
            lines.add(
                line(told, when + after, "A piece was in the kiln for", told.text() + " seconds"));
        case NOTE -> lines.add(line(told, when + after, "Note", told.text()));
        case RESULT ->
            lines.add(
                line(
                    told,
                    when + after,
                    "Came out",
                    words(firing, told.text().lines().findFirst().orElse(""))));
        case OUT -> lines.add(line(told, when + after, "Out, or stopped", told.text()));
        default -> {
          // what was keyed and pictures have places of their own
        }
      }
    }
    return lines;
  }

  private static FiringPage.Happened line(
      FiringEntry.Told told, String when, String what, String words) {
    return new FiringPage.Happened(told.id(), when, what, words);
  }

  private static List<FiringPage.Photo> photos(FiringRecord firing, ZoneId zone) {
    return firing.all(Happening.PHOTO).stream()
        .map(
            told ->
                new FiringPage.Photo(
                    told.id(),
                    "/firing/photo/" + told.id(),
                    told.text(),
                    ClockWords.stamp(told.at().atZone(zone))))
        .toList();
  }
}
