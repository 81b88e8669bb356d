package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
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
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.firings.Watch;
import org.heatwright.app.firings.WatchWords;
import org.heatwright.app.firings.Watches;
import org.heatwright.app.report.CardBuilder;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** Firings to come, that run and that are past: what is told of them, and what that means. */
final class FiringDesk {

  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("EEE d MMM, HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM", Locale.UK);
  private static final DateTimeFormatter LONG_DAY =
      DateTimeFormatter.ofPattern("EEEE d MMMM yyyy", Locale.UK);
  private static final DateTimeFormatter MONTH =
      DateTimeFormatter.ofPattern("MMMM yyyy", Locale.UK);
  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);
  private static final int READINGS_SHOWN = 4;
  private static final int PAST_SHOWN = 5;
  private static final String GOOD = "good";

  private final Store store;
  private final Clock clock;
  private final SlotsDesk slots;
  private final FiringBook book;
  private final Watches watches;

  FiringDesk(Store store, Clock clock, SlotsDesk slots) {
    this.store = store;
    this.clock = clock;
    this.slots = slots;
    this.book = new FiringBook(store, clock);
    this.watches = new Watches(clock.getZone());
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
    Optional<SlotsDesk.At> slot = slots.at(firing.entry().kiln(), firing.entry().keypad());
    Optional<SlotRegister> register = slot.map(slots::register);
    int number = firing.entry().slot();
    Optional<Schedule> held = register.flatMap(r -> r.held(number));
    String standing =
        register.map(r -> r.standing(number, at).sentence(at, zone(firing))).orElse("");
    book.pressed(firing, at, held, standing);
  }

  /** The display said so. */
  void shown(FiringRecord firing, Map<String, String> form) {
    String typed = form.getOrDefault("shows", "").strip();
    TemperatureUnit unit = firing.runs().unit();
    double value;
    try {
      value = Double.parseDouble(typed.replace(',', '.').replaceAll("\\s*°?[CF]?$", ""));
    } catch (NumberFormatException e) {
      throw InputException.in(
          "shows",
          "type the number that the display says, in %s, e.g. %s."
              .formatted(unit.symbol(), unit == TemperatureUnit.CELSIUS ? "612" : "1134"));
    }
    book.shown(firing, when(firing, form), unit.temperature(value).celsius());
  }

  void note(FiringRecord firing, Map<String, String> form) {
    book.note(firing, book.now(), form.getOrDefault("note", ""));
  }

  void out(FiringRecord firing, Map<String, String> form) {
    book.out(firing, when(firing, form), form.getOrDefault("why", ""));
  }

  void result(FiringRecord firing, Map<String, String> form) {
    String outcome = form.getOrDefault("outcome", "");
    if (outcomes().stream().noneMatch(o -> o.code().equals(outcome))) {
      throw InputException.in("outcome", "say how it came out: good, or what was wrong.");
    }
    book.result(firing, book.now(), outcome, form.getOrDefault("note", ""));
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
    if (typed.isEmpty()) {
      return now;
    }
    try {
      ZonedDateTime local = now.atZone(zone(firing));
      ZonedDateTime told = local.with(LocalTime.parse(typed));
      return (told.isAfter(local.plusMinutes(1)) ? told.minusDays(1) : told).toInstant();
    } catch (DateTimeException e) {
      throw InputException.in(
          "time", "“%s” is no clock time; write it like 14:05.".formatted(typed));
    }
  }

  private ZoneId zone(FiringRecord firing) {
    return firing.kiln().timeZone().orElse(clock.getZone());
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
    return new NowPage(clock(), headline(hot.size(), coming.size()), hot, coming, past);
  }

  private String clock() {
    return CLOCK.format(clock.instant().atZone(clock.getZone()));
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
    Watch watch;
    try {
      watch = watches.of(firing);
    } catch (InputException e) {
      return untold(firing, wrong, Objects.requireNonNull(e.getMessage()));
    }
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
        words.resultIsDue() ? outcomes() : List.of(),
        firing.keyedOtherwise(),
        wrong,
        "");
  }

  /** A firing whose texts this version cannot read: it can still be watched by the clock. */
  private static NowPage.Hot untold(
      FiringRecord firing, Optional<NowPage.Wrong> wrong, String trouble) {
    return new NowPage.Hot(
        firing.id(),
        firing.entry().job(),
        firing.entry().kiln(),
        "Nothing can be told",
        "",
        "",
        List.of(),
        "",
        "",
        "",
        "",
        Optional.empty(),
        List.of(),
        outcomes(),
        false,
        wrong,
        trouble);
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
                      TIME.format(told.at().atZone(zone(firing))),
                      degrees(told, firing.runs().unit()))));
    }
    return lines;
  }

  private static String degrees(FiringEntry.Told told, TemperatureUnit unit) {
    return "%.0f %s"
        .formatted(unit.value(Temperature.ofCelsius(told.celsius().orElseThrow())), unit.symbol());
  }

  private NowPage.Coming coming(FiringRecord firing) {
    ZonedDateTime press = firing.entry().press().atZone(zone(firing));
    Duration delay = firing.planned().startDelay();
    boolean late = press.toInstant().isBefore(book.now());
    String what =
        delay.isZero()
            ? "heat begins at once"
            : "with a delay of %s keyed in, heat begins %s"
                .formatted(HourMinute.words(delay), CLOCK.format(press.plus(delay)));
    return new NowPage.Coming(
        firing.id(),
        firing.entry().job(),
        firing.entry().kiln(),
        Integer.toString(firing.entry().slot()),
        CLOCK.format(press) + (late ? ", that has passed" : ""),
        what,
        "/plan?" + firing.entry().plan());
  }

  private NowPage.Past past(FiringRecord firing) {
    return new NowPage.Past(
        address(firing.id()),
        firing.entry().job(),
        firing.entry().kiln(),
        CLOCK.format(firing.pressed().orElseThrow().atZone(zone(firing))),
        firing.result().map(r -> words(r.outcome())).orElse("result not told"));
  }

  private static List<NowPage.Outcome> outcomes() {
    return CardBuilder.OUTCOMES.stream()
        .map(code -> new NowPage.Outcome(code, words(code)))
        .toList();
  }

  private static String words(String code) {
    return code.replace('-', ' ');
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
          default -> firing.result().map(r -> words(r.outcome())).orElse("");
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
                ? "pressed " + CLOCK.format(pressed)
                : "to be pressed " + CLOCK.format(pressed)));
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
            .map(r -> words(r.outcome()))
            .orElse(
                done
                    ? "not told yet"
                    : firing.state() == FiringRecord.State.RUNNING ? "runs now" : "planned"),
        LONG_DAY.format(pressed),
        facts,
        lines(firing.planned()),
        keyed(firing),
        "/plan?" + firing.entry().plan(),
        happened(firing, zone),
        photos(firing, zone),
        firing.pressed().isPresent() ? outcomes() : List.of(),
        result.map(FiringRecord.Result::outcome),
        back,
        firing.entry().removed().isPresent(),
        trouble.field(),
        trouble.sentence(),
        trouble.typed());
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
      String when = CLOCK.format(told.at().atZone(zone));
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
            lines.add(
                line(told, when + after, "The display said", degrees(told, firing.runs().unit())));
        case PIECE -> lines.add(line(told, when + after, "A piece was in", told.text()));
        case NOTE -> lines.add(line(told, when + after, "Note", told.text()));
        case RESULT ->
            lines.add(
                line(
                    told,
                    when + after,
                    "Came out",
                    words(told.text().lines().findFirst().orElse(""))));
        case OUT -> lines.add(line(told, when + after, "Out, or stopped", told.text()));
        default -> {
          // what was keyed, pictures and logs have places of their own
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
                    CLOCK.format(told.at().atZone(zone))))
        .toList();
  }
}
