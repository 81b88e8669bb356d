package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.heatwright.app.files.Firing;
import org.heatwright.app.files.FiringFile;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.plot.Figure;
import org.heatwright.app.plot.FiringPlot;
import org.heatwright.app.plot.HealthPlot;
import org.heatwright.app.plot.LearnedPlot;
import org.heatwright.app.plot.ResidualPlot;
import org.heatwright.app.plot.Svg;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.app.report.QuantityWords;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.Coverage;
import org.heatwright.learn.DatedFiring;
import org.heatwright.learn.DoorSession;
import org.heatwright.learn.KilnHealth;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Progress;
import org.heatwright.learn.Unseen;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/** What is known of a kiln: its logs, what they taught, and how well forecasts held. */
final class KilnDesk {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.UK);
  private static final int LONGEST_LOG = 5_000_000;
  private static final int LONGEST_FILE = 200_000;
  private static final int LONGEST_NAME = 200;
  private static final int ALIGNMENTS_KEPT = 48;

  /** A rise that people know the time of: to here, or to a lower one that the kiln may take. */
  private static final double RISE_CELSIUS = 800;

  private static final long LONGEST_IN_MINUTES = 120;

  private final Store store;
  private final Clock clock;
  private final Lately<String, List<String>> remarks = new Lately<>(REMARKS_KEPT);
  private final Forecasts forecasts = new Forecasts();
  private final Beside<Aligning, LogAlignment> alignments = new Beside<>(ALIGNMENTS_KEPT);
  private final Beside<HealthQuestion, KilnHealth> healths = new Beside<>(HEALTHS_KEPT);

  /** What health depends on: the kiln without what was learned, and which logs. */
  private record HealthQuestion(Kiln nameplate, List<String> logs) {}

  KilnDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /** Address of a kiln's page. */
  static String address(String kiln) {
    return "/kiln?name=" + encoded(kiln);
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** Every kiln on the shelf, shortly. */
  KilnsPage all(String now) {
    return new KilnsPage(
        now,
        store.all(Kind.KILN).stream().map(this::entry).toList(),
        store.all(Kind.KEYPAD).stream().map(Document::name).toList());
  }

  private KilnsPage.Entry entry(Document document) {
    String name = document.name();
    Optional<String> keypad = store.keypadOf(name);
    List<FiringLog> logs = store.logs(name);
    String known = "";
    String trouble = "";
    try {
      known =
          learned(kiln(document))
              .map(
                  l ->
                      "from %s, learned %s"
                          .formatted(count(l.firings(), "firing"), DAY.format(l.date())))
              .orElse("from its nameplate alone");
    } catch (InputException e) {
      trouble = Objects.requireNonNull(e.getMessage());
    }
    return new KilnsPage.Entry(
        name,
        address(name),
        known,
        logs.isEmpty()
            ? ""
            : "%s, %s"
                .formatted(
                    logs.get(logs.size() - 1).name(), DAY.format(logs.get(logs.size() - 1).date())),
        keypad.orElse(""),
        keypad.map(k -> SlotsDesk.address(name, k)).orElse(""),
        "/plan?kiln=" + encoded(name),
        trouble);
  }

  // ---- the page

  /**
   * @param name of a kiln on the shelf; its page, or empty if there is none
   * @param logId the log to show against its forecast; the newest one if there is no such log
   * @param error why the last asking was not done; may be empty
   */
  Optional<KilnPage> page(String name, String logId, String error, KilnPage.Bringing bringing) {
    Optional<Document> document = store.find(Kind.KILN, name);
    if (document.isEmpty()) {
      return Optional.empty();
    }
    List<FiringLog> logs = store.logs(name);
    Optional<FiringLog> shown = shown(logs, logId);
    List<KilnPage.Log> listed = logs.stream().map(log -> listed(name, log, shown)).toList();
    String trouble = error;
    Optional<Kiln> kiln = Optional.empty();
    Optional<KilnPage.Watched> watched = Optional.empty();
    String reading = "";
    try {
      kiln = Optional.of(kiln(document.get()));
      if (shown.isPresent()) {
        if (aligned(kiln.get(), shown.get(), PATIENCE).isPresent()) {
          watched = Optional.of(watched(name, kiln.get(), shown.get()));
        } else {
          reading = head(shown.get());
        }
      }
    } catch (InputException e) {
      trouble = trouble.isEmpty() ? Objects.requireNonNull(e.getMessage()) : trouble;
    }
    Optional<Learned> learned = kiln.flatMap(KilnDesk::learned);
    Optional<KilnPage.Health> health = kiln.flatMap(k -> health(name, k, logs));
    return Optional.of(
        new KilnPage(
            ClockWords.stamp(clock.instant().atZone(zone(kiln))),
            name,
            address(name),
            encoded(name),
            learned.map(l -> count(l.firings(), "firing")).orElse("the nameplate"),
            learned.map(l -> "learned " + DAY.format(l.date())).orElse(""),
            kiln.map(k -> facts(k, logs, health)).orElse(List.of()),
            trouble,
            kiln.flatMap(k -> learned.map(l -> taught(name, k, l, logs))),
            health,
            watched,
            reading,
            listed,
            schedules(logs, bringing.chosen()),
            bringing.date().isEmpty() ? dated(bringing, zone(kiln)) : bringing));
  }

  private KilnPage.Bringing dated(KilnPage.Bringing bringing, ZoneId zone) {
    return bringing.on(LocalDate.ofInstant(clock.instant(), zone).toString());
  }

  private ZoneId zone(Optional<Kiln> kiln) {
    return kiln.flatMap(Kiln::timeZone).orElse(clock.getZone());
  }

  private static Kiln kiln(Document document) {
    return KilnFile.readContent(document.text(), document.name()).kiln();
  }

  private static Optional<Learned> learned(Kiln kiln) {
    return kiln.learned().filter(l -> l.engine().equals(Learned.ENGINE));
  }

  private static Optional<FiringLog> shown(List<FiringLog> logs, String id) {
    return logs.stream()
        .filter(log -> log.id().equals(id))
        .findFirst()
        .or(() -> logs.stream().reduce((older, newer) -> newer));
  }

  private static KilnPage.Log listed(String kiln, FiringLog log, Optional<FiringLog> shown) {
    return new KilnPage.Log(
        log.id(),
        log.name(),
        DAY.format(log.date()),
        state(log),
        log.part() != FiringLog.Part.ASIDE,
        address(kiln) + "&log=" + encoded(log.id()) + "#watched",
        shown.isPresent() && shown.get().id().equals(log.id()));
  }

  private static String state(FiringLog log) {
    String missed =
        log.missedKelvins().isPresent()
            ? degrees(log.missedKelvins().getAsDouble(), unit(log))
            : "";
    return switch (log.part()) {
      case NEW -> "new: nothing is learned from it yet";
      case TAUGHT -> "learned from: the fit is within %s of its display".formatted(missed);
      case ODD ->
          "left out: the fit misses its display by %s, so that something in it is not told"
              .formatted(missed);
      case ASIDE -> "put aside";
    };
  }

  private static TemperatureUnit unit(FiringLog log) {
    try {
      return ScheduleFile.read(log.schedule(), log.name()).unit();
    } catch (InputException e) {
      return TemperatureUnit.CELSIUS;
    }
  }

  private static String degrees(double kelvins, TemperatureUnit unit) {
    double size = unit.value(TemperatureChange.ofKelvins(kelvins));
    return "%d %s".formatted(Math.max(1, Math.round(size)), unit.differenceSymbol());
  }

  private static String count(long number, String what) {
    return number == 1 ? "1 " + what : number + " " + what + "s";
  }

  // ---- facts

  private List<Page.Fact> facts(Kiln kiln, List<FiringLog> logs, Optional<KilnPage.Health> health) {
    List<Page.Fact> facts = new ArrayList<>();
    long fresh = logs.stream().filter(l -> l.part() == FiringLog.Part.NEW).count();
    String now =
        logs.isEmpty()
            ? "Bring the log of a firing: a dozen readings with their times are enough to begin."
            : fresh > 0
                ? "Learn: %s not taught anything yet."
                    .formatted(fresh == 1 ? "1 log has" : fresh + " logs have")
                : "Nothing to learn. Bring the next log when there is one.";
    if (health.stream().anyMatch(h -> h.told().stream().anyMatch(KilnPage.Health.Told::heavy))) {
      now = "See what has changed over its firings, below, and do what stands there. " + now;
    }
    facts.add(new Page.Fact("What now", now));
    TemperatureUnit unit =
        logs.isEmpty() ? TemperatureUnit.CELSIUS : unit(logs.get(logs.size() - 1));
    rise(kiln, unit).ifPresent(words -> facts.add(new Page.Fact("How sure", words)));
    return facts;
  }

  /** How long full power takes: what people know of a kiln, and what knowing it better changes. */
  private Optional<String> rise(Kiln kiln, TemperatureUnit unit) {
    double wanted = Math.min(RISE_CELSIUS, 0.8 * kiln.limit().celsius());
    double shown = Math.floor(unit.value(Temperature.ofCelsius(wanted)) / 50) * 50;
    Schedule schedule =
        Schedule.of(
            "rise",
            unit,
            List.of(new Segment(Ramp.fastest(), unit.temperature(shown), Duration.ofMinutes(1))));
    Optional<Band> now = arrival(schedule, kiln);
    if (now.isEmpty()) {
      return Optional.empty();
    }
    String words =
        "From cold to %d %s at full power, empty: %s."
            .formatted(Math.round(shown), unit.symbol(), minutes(now.get()));
    if (learned(kiln).isEmpty()) {
      return Optional.of(words + " That is the nameplate’s guess; one log narrows it.");
    }
    return Optional.of(
        arrival(schedule, kiln.withoutLearned())
            .map(before -> words + " From the nameplate alone: %s.".formatted(minutes(before)))
            .orElse(words));
  }

  private Optional<Band> arrival(Schedule schedule, Kiln kiln) {
    return forecasts
        .of(ForecastRequest.of(schedule, kiln, Charge.empty()))
        .segments()
        .get(0)
        .arrivedSeconds();
  }

  /** "28 to 35 min", opened outward to whole minutes. */
  private static String minutes(Band seconds) {
    long low = (long) Math.floor(seconds.low() / 60);
    long high = (long) Math.ceil(seconds.high() / 60);
    return high <= LONGEST_IN_MINUTES
        ? "%d to %d min".formatted(low, high)
        : "%s to %s"
            .formatted(
                HourMinute.words(Duration.ofMinutes(low)),
                HourMinute.words(Duration.ofMinutes(high)));
  }

  // ---- what was learned

  private KilnPage.Learned taught(String name, Kiln kiln, Learned learned, List<FiringLog> logs) {
    KilnBeliefs beliefs = learned.beliefs();
    List<KilnQuantity> untold = Lesson.untold(beliefs);
    List<String> news = new ArrayList<>();
    List<String> usual = new ArrayList<>();
    for (KilnQuantity quantity : KilnQuantity.values()) {
      if (!quantity.learnable() || untold.contains(quantity)) {
        continue;
      }
      double low = quantity.score(beliefs.low(quantity));
      double high = quantity.score(beliefs.high(quantity));
      if (low <= 0 && high >= 0) {
        usual.add(inSentence(quantity));
      } else {
        news.add(
            "%s: %s than usual, %s %s."
                .formatted(
                    QuantityWords.name(quantity),
                    low > 0 ? "more" : "less",
                    QuantityWords.range(beliefs, quantity),
                    QuantityWords.unit(quantity)));
      }
    }
    List<String> rest = new ArrayList<>();
    if (!usual.isEmpty()) {
      rest.add("As usual: %s.".formatted(String.join(", ", usual)));
    }
    if (!untold.isEmpty()) {
      rest.add(
          "Not told by the logs, still the nameplate’s: %s."
              .formatted(
                  untold.stream().map(KilnDesk::inSentence).collect(Collectors.joining(", "))));
    }
    Optional<List<String>> still = stillNameplate(kiln, beliefs, logs);
    rest.addAll(still.orElse(List.of()));
    return new KilnPage.Learned(
        plot(learnedFigure(kiln, learned), "learned", name, ""), news, rest, still.isEmpty());
  }

  /**
   * Why some of it is, as far as the logs that taught it can be read; nothing while they are being
   * read.
   */
  private Optional<List<String>> stillNameplate(
      Kiln kiln, KilnBeliefs beliefs, List<FiringLog> logs) {
    List<FiringLog> taught =
        logs.stream().filter(log -> log.part() == FiringLog.Part.TAUGHT).toList();
    if (taught.isEmpty()) {
      return Optional.of(List.of());
    }
    try {
      List<LoggedFiring> firings = new ArrayList<>();
      for (FiringLog log : taught) {
        Optional<LogAlignment> aligned = aligned(kiln, log, PATIENCE);
        if (aligned.isEmpty()) {
          return Optional.empty();
        }
        firings.add(aligned.get().firing());
      }
      return Optional.of(
          Coverage.of(kiln, beliefs, firings)
              .words(Lesson.untold(beliefs), unit(taught.get(taught.size() - 1))));
    } catch (InputException e) {
      return Optional.of(List.of()); // a log that cannot be read is told where it is shown
    }
  }

  private static String inSentence(KilnQuantity quantity) {
    String name = QuantityWords.name(quantity);
    return name.substring(0, 1).toLowerCase(Locale.UK) + name.substring(1);
  }

  private static Figure learnedFigure(Kiln kiln, Learned learned) {
    return LearnedPlot.of(
        kiln.name(), learned.firings(), learned.beliefs(), Lesson.untold(learned.beliefs()));
  }

  // ---- health over time

  /** The logs that health rests on: not those put aside, and not too many. */
  private static List<FiringLog> followed(List<FiringLog> logs) {
    List<FiringLog> used =
        logs.stream()
            .filter(log -> log.part() != FiringLog.Part.ASIDE)
            .sorted(Comparator.comparing(FiringLog::date))
            .toList();
    if (used.size() <= MOST_FOLLOWED) {
      return used;
    }
    List<FiringLog> few =
        new ArrayList<>(used.subList(used.size() - MOST_FOLLOWED + 1, used.size()));
    few.add(0, used.get(0));
    return few;
  }

  private Optional<KilnPage.Health> health(String name, Kiln kiln, List<FiringLog> logs) {
    List<FiringLog> used = followed(logs);
    if (used.stream().map(FiringLog::date).distinct().count() < 2) {
      return Optional.empty();
    }
    try {
      Optional<KilnHealth> found = health(kiln, used, PATIENCE);
      List<String> notes = new ArrayList<>();
      long left = logs.stream().filter(l -> l.part() != FiringLog.Part.ASIDE).count() - used.size();
      if (left > 0) {
        notes.add(
            "Compared are the oldest log and the newest %d; %s between them are not."
                .formatted(used.size() - 1, count(left, "log")));
      }
      if (found.isEmpty()) {
        notes.add(
            "Being worked out from %s; it comes here by itself."
                .formatted(count(used.size(), "log")));
        return Optional.of(new KilnPage.Health(List.of(), notes, Optional.empty(), true));
      }
      KilnHealth health = found.get();
      notes.addAll(health.notes());
      return Optional.of(
          new KilnPage.Health(
              health.findings().stream()
                  .sorted(Comparator.comparing(KilnHealth.Finding::concern).reversed())
                  .map(
                      f ->
                          new KilnPage.Health.Told(
                              f.concern().compareTo(KilnHealth.Concern.WARNING) >= 0, f.sentence()))
                  .toList(),
              notes,
              Optional.of(plot(HealthPlot.of(kiln, health), "health", name, "")),
              false));
    } catch (InputException e) {
      return Optional.of(
          new KilnPage.Health(
              List.of(), List.of(Objects.requireNonNull(e.getMessage())), Optional.empty(), false));
    }
  }

  private Optional<KilnHealth> health(Kiln kiln, List<FiringLog> used, Duration patience) {
    Kiln nameplate = kiln.withoutLearned();
    return healths.within(
        new HealthQuestion(nameplate, used.stream().map(FiringLog::id).toList()),
        () -> KilnHealth.of(nameplate, dated(kiln, used)),
        patience);
  }

  private List<DatedFiring> dated(Kiln kiln, List<FiringLog> logs) {
    return logs.stream()
        .map(
            log -> {
              LoggedFiring firing = aligned(kiln, log).firing();
              return new DatedFiring(
                  log.date(),
                  firing.named("%s of %s".formatted(log.name(), DAY.format(log.date()))));
            })
        .toList();
  }

  /** A line is drawn through so many readings, and not through fewer. */
  private static final int LEAST_READINGS = 3;

  /** Fewer than a dozen are called few. Our choice. */
  private static final int FEW_READINGS = 12;

  private static final int REMARKS_KEPT = 8;
  private static final int MOST_FOLLOWED = 16;
  private static final Duration HEALTH_PATIENCE = Duration.ofMinutes(2);
  private static final int HEALTHS_KEPT = 8;

  /** So long a page waits for what is worked out beside it; then it comes by itself. */
  private static final Duration PATIENCE = Duration.ofMillis(300);

  // ---- a log against its forecast

  private KilnPage.Watched watched(String name, Kiln kiln, FiringLog log) {
    WatchedFiring firing = watched(kiln, log);
    String query = query(name, log.id());
    return new KilnPage.Watched(
        head(log),
        log.showed().happened(),
        log.showed().notShown(),
        remarks.of(log.csv(), KilnDesk::remarks),
        opened(aligned(kiln, log).firing().session()),
        CurveFigure.of(
            "watched-firing",
            Curves.watched(
                firing,
                List.of(new CurveData.Limit(kiln.limit().celsius(), "the kiln")),
                Optional.empty()),
            FiringPlot.told(firing),
            "The display's log against its forecast: " + FiringPlot.told(firing)),
        "/kiln/forecast.svg" + query,
        "/kiln/forecast.png" + query,
        "/pieces?kiln=%s&log=%s".formatted(encoded(name), encoded(log.id())),
        firing.comparable()
            ? Optional.of(plot(ResidualPlot.of(firing), "missed", name, log.id()))
            : Optional.empty());
  }

  /** What is odd in a log, a sentence each. */
  private static List<String> remarks(String csv) {
    LogFile.Log log = LogFile.read(csv, "The log");
    List<String> remarks = new ArrayList<>(log.remarks());
    if (log.rows().size() < FEW_READINGS) {
      remarks.add(
          "There are only %d readings: what the display said between them, nobody saw."
              .formatted(log.rows().size()));
    }
    return remarks;
  }

  private static String head(FiringLog log) {
    return "%s, %s".formatted(log.name(), DAY.format(log.date()));
  }

  private static String opened(DoorSession session) {
    int count = session.openings().size();
    if (count == 0) {
      return "";
    }
    return "%s of the door %s in this log. The forecast takes them and usual cold pieces into account, and so does learning."
        .formatted(
            count(count, "opening"),
            session.told()
                ? (count == 1 ? "is told" : "are told")
                : (count == 1 ? "shows" : "show"));
  }

  private WatchedFiring watched(Kiln kiln, FiringLog log) {
    LogAlignment aligned = aligned(kiln, log);
    LoggedFiring firing = aligned.firing();
    boolean known = learned(kiln).isPresent();
    String basis =
        !known
            ? "Of the kiln only the nameplate is known."
            : log.part() == FiringLog.Part.TAUGHT
                ? "The forecast has learned from this log."
                : "The forecast has not learned from this log.";
    LogFile.Log read = LogFile.read(log.csv(), log.name()).startingAt(aligned.startSeconds());
    FiringConditions asItWas = firing.asItWas();
    return new WatchedFiring(
        forecasts.of(
            ForecastRequest.of(firing.schedule(), kiln, firing.charge()).withConditions(asItWas)),
        String.join(" ", with(basis, aligned.told())),
        Optional.of(firing.readings()),
        firing.schedule().unit(),
        WatchedFiring.start(read, zone(Optional.of(kiln))),
        WatchedFiring.happenings(asItWas, Optional.of(read)));
  }

  private static List<String> with(String first, List<String> rest) {
    List<String> all = new ArrayList<>(List.of(first));
    all.addAll(rest);
    return all;
  }

  /** What a log's clock is put right by; what a log says never changes. */
  private record Aligning(Kiln kiln, String log) {}

  /** The log on the program's clock, as the nameplate alone tells it. */
  private LogAlignment aligned(Kiln kiln, FiringLog log) {
    return alignments.of(aligning(kiln, log), () -> LogAlignment.of(nameplate(kiln), logged(log)));
  }

  /** The same, or nothing if it takes longer than that. */
  private Optional<LogAlignment> aligned(Kiln kiln, FiringLog log, Duration patience) {
    return alignments.within(
        aligning(kiln, log), () -> LogAlignment.of(nameplate(kiln), logged(log)), patience);
  }

  private static Aligning aligning(Kiln kiln, FiringLog log) {
    return new Aligning(nameplate(kiln), log.id());
  }

  private static Kiln nameplate(Kiln kiln) {
    return kiln.withoutLearned();
  }

  static LoggedFiring logged(FiringLog log) {
    Firing firing =
        log.firing().isBlank() ? Firing.usual() : FiringFile.read(log.firing(), log.name());
    LogFile.Log read = LogFile.read(log.csv(), log.name());
    return WatchedFiring.opened(
        new LoggedFiring(
            log.id(),
            ScheduleFile.read(log.schedule(), log.name()),
            firing.conditions(),
            firing.load().orElse(Charge.empty()),
            WatchedFiring.readings(read)),
        read);
  }

  private static KilnPage.Plot plot(Figure figure, String what, String kiln, String log) {
    String query = query(kiln, log);
    return new KilnPage.Plot(
        Svg.inPage(figure, what + "-wide", Figure.Size.WIDE),
        Svg.inPage(figure, what + "-narrow", Figure.Size.NARROW),
        figure.told(),
        "/kiln/" + what + ".svg" + query,
        "/kiln/" + what + ".png" + query);
  }

  private static String query(String kiln, String log) {
    return "?name=" + encoded(kiln) + (log.isEmpty() ? "" : "&log=" + encoded(log));
  }

  /**
   * A plot of the page, to take away.
   *
   * @param what "learned", "health", "forecast" or "missed"
   * @return empty if there is no such plot
   */
  Optional<Figure> figure(String name, String what, String logId) {
    Optional<Kiln> kiln = store.find(Kind.KILN, name).map(KilnDesk::kiln);
    if (what.equals("learned")) {
      return kiln.flatMap(k -> learned(k).map(l -> learnedFigure(k, l)));
    }
    if (what.equals("health")) {
      List<FiringLog> used = followed(store.logs(name));
      return used.stream().map(FiringLog::date).distinct().count() < 2
          ? Optional.empty()
          : kiln.flatMap(k -> health(k, used, HEALTH_PATIENCE).map(h -> HealthPlot.of(k, h)));
    }
    Optional<WatchedFiring> firing =
        kiln.flatMap(
            k ->
                store.logs(name).stream()
                    .filter(log -> log.id().equals(logId))
                    .findFirst()
                    .map(log -> watched(k, log)));
    return switch (what) {
      case "forecast" -> firing.map(FiringPlot::of);
      case "missed" -> firing.filter(WatchedFiring::comparable).map(ResidualPlot::of);
      default -> Optional.empty();
    };
  }

  // ---- learning

  /**
   * Learns from the ticked logs and keeps it; the others are put aside.
   *
   * @param say is told what it is at, a sentence; what it throws ends the learning, and nothing is
   *     kept
   * @return why it was not done, one sentence; empty if it was
   */
  String learn(String name, Set<String> ticked, Consumer<String> say) {
    Optional<Document> document = store.find(Kind.KILN, name);
    List<FiringLog> logs = store.logs(name);
    List<FiringLog> used = logs.stream().filter(log -> ticked.contains(log.id())).toList();
    if (document.isEmpty() || used.isEmpty()) {
      return "Tick the logs to learn from, one at least.";
    }
    try {
      Kiln kiln = kiln(document.get());
      Optional<String> twice = twice(used);
      if (twice.isPresent()) {
        return twice.get();
      }
      List<DatedFiring> dated = new ArrayList<>();
      for (FiringLog log : used) {
        say.accept("“%s” is put on its program’s clock.".formatted(log.name()));
        LoggedFiring firing = aligned(kiln, log).firing();
        Optional<String> silent = firing.silent();
        if (silent.isPresent()) {
          return "Nothing was learned from “%s”: %s".formatted(log.name(), silent.get());
        }
        dated.add(new DatedFiring(log.date(), firing));
      }
      Lesson lesson = KilnLearner.learnDated(kiln, dated, progress(used, say));
      if (lesson.firings().isEmpty()) {
        return "Nothing was learned: on its schedule no kiln like this shows such a display."
            + " Another schedule ran, something happened that is not told, or the thermocouple"
            + " had slipped.";
      }
      Kiln known =
          kiln.withLearned(
              new Learned(
                  LocalDate.ofInstant(clock.instant(), zone(Optional.of(kiln))),
                  lesson.firings().size(),
                  Learned.ENGINE,
                  lesson.beliefs()));
      List<FiringLog> after = new ArrayList<>();
      for (FiringLog log : logs) {
        if (ticked.contains(log.id())) {
          say.accept("What the display of “%s” could not have shown.".formatted(log.name()));
        }
        after.add(after(lesson, log, showed(known, lesson, dated, log)));
      }
      store.keepLesson(name, KilnFile.write(known), after);
      return "";
    } catch (InputException e) {
      return Objects.requireNonNull(e.getMessage());
    }
  }

  /** One firing that counts twice would make a kiln look surer than it is. */
  private static Optional<String> twice(List<FiringLog> logs) {
    List<LogFile.Log> read = new ArrayList<>();
    for (FiringLog log : logs) {
      read.add(LogFile.read(log.csv(), log.name()));
      for (int i = 0; i < read.size() - 1; i++) {
        if (read.get(i).isSameAs(read.get(read.size() - 1))) {
          return Optional.of(
              "“%s” of %s and “%s” of %s are the same log: tick one of the two."
                  .formatted(
                      logs.get(i).name(),
                      DAY.format(logs.get(i).date()),
                      log.name(),
                      DAY.format(log.date())));
        }
      }
    }
    return Optional.empty();
  }

  private static Progress progress(List<FiringLog> logs, Consumer<String> say) {
    Map<String, String> names =
        logs.stream().collect(Collectors.toMap(FiringLog::id, FiringLog::name));
    return (step, firing) ->
        say.accept(
            switch (step) {
              case FIT -> "The kiln is fitted to all of the logs.";
              case SEARCH ->
                  "“%s” is searched for what went wrong."
                      .formatted(names.getOrDefault(firing, firing));
            });
  }

  private FiringLog.Showed showed(
      Kiln known, Lesson lesson, List<DatedFiring> dated, FiringLog log) {
    Optional<ZonedDateTime> started =
        WatchedFiring.start(
            LogFile.read(log.csv(), log.name()).startingAt(aligned(known, log).startSeconds()),
            zone(Optional.of(known)));
    List<String> happened =
        lesson.happened().stream()
            .filter(one -> one.firing().equals(log.id()))
            .map(one -> one.what().happened(started) + " " + one.what().check())
            .toList();
    List<String> notShown =
        dated.stream()
            .map(DatedFiring::firing)
            .filter(firing -> firing.name().equals(log.id()))
            .filter(firing -> lesson.firings().contains(firing.name()))
            .flatMap(firing -> Unseen.in(known, firing).stream())
            .map(Unseen::words)
            .toList();
    return new FiringLog.Showed(happened, notShown);
  }

  private static FiringLog after(Lesson lesson, FiringLog log, FiringLog.Showed showed) {
    int index = lesson.firings().indexOf(log.id());
    if (index >= 0) {
      return log.after(
          FiringLog.Part.TAUGHT, OptionalDouble.of(lesson.misfitKelvins(index)), showed);
    }
    return lesson.leftOut().stream()
        .filter(left -> left.firing().equals(log.id()))
        .findFirst()
        .map(left -> log.after(FiringLog.Part.ODD, OptionalDouble.of(left.misfitKelvins()), showed))
        .orElseGet(() -> log.after(FiringLog.Part.ASIDE, OptionalDouble.empty(), showed));
  }

  // ---- bringing a log

  /** The shelf's schedules and those that ran before; each once. */
  private List<KilnPage.Choice> schedules(List<FiringLog> logs, String chosen) {
    List<KilnPage.Choice> choices = new ArrayList<>();
    for (Document document : store.all(Kind.SCHEDULE)) {
      String value = "shelf:" + document.id();
      choices.add(new KilnPage.Choice(value, document.name(), value.equals(chosen)));
    }
    List<String> texts = new ArrayList<>();
    for (int i = logs.size() - 1; i >= 0; i--) {
      FiringLog log = logs.get(i);
      if (!texts.contains(log.schedule())) {
        texts.add(log.schedule());
        String value = "log:" + log.id();
        choices.add(
            new KilnPage.Choice(
                value,
                "the one of %s, %s".formatted(DAY.format(log.date()), log.name()),
                value.equals(chosen)));
      }
    }
    return choices;
  }

  /** What came of bringing a log. */
  record Brought(Optional<FiringLog> log, KilnPage.Bringing bringing) {}

  /**
   * Puts a log beside its kiln, if it and what ran can be read.
   *
   * @param form the fields as typed
   */
  Brought bring(String kiln, Map<String, String> form) {
    KilnPage.Bringing typed =
        new KilnPage.Bringing(
            field(form, "logname").strip(),
            field(form, "date").strip(),
            field(form, "csv"),
            field(form, "chosen"),
            field(form, "schedule"),
            field(form, "firing"),
            "",
            Optional.empty());
    try {
      if (isOurs(typed.csv())) {
        return new Brought(
            Optional.of(kept(kiln, typed, typed.csv())), KilnPage.Bringing.nothing());
      }
      ForeignLog.Read read = ForeignLog.read(store, typed.csv(), form);
      typed = typed.read(ForeignLog.page(read));
      if (!form.containsKey("agreed")) {
        return new Brought(Optional.empty(), typed);
      }
      FiringLog log = kept(kiln, typed, read.written());
      ForeignLog.remember(store, read);
      return new Brought(Optional.of(log), KilnPage.Bringing.nothing());
    } catch (InputException e) {
      return new Brought(Optional.empty(), typed.wrong(Objects.requireNonNull(e.getMessage())));
    }
  }

  /** Whether a text is, or is meant as, a log of ours: then our own reader says what is wrong. */
  private static boolean isOurs(String csv) {
    if (csv.isBlank()) {
      throw InputException.in("The log", "there is none; choose its file or paste its rows.");
    }
    if (csv.length() > LONGEST_LOG) {
      throw InputException.in("This file", "it is too long.");
    }
    if (ForeignLog.meantAsOurs(csv)) {
      return true;
    }
    try {
      LogFile.read(csv, "The log");
      return true;
    } catch (InputException foreign) {
      return false;
    }
  }

  private FiringLog kept(String kiln, KilnPage.Bringing typed, String csv) {
    if (typed.schedule().length() > LONGEST_FILE || typed.firing().length() > LONGEST_FILE) {
      throw InputException.in("This file", "it is too long.");
    }
    LogFile.Log log = LogFile.read(csv, "The log");
    String schedule = schedule(kiln, typed);
    String ran = ScheduleFile.read(schedule, "The schedule").name();
    if (!typed.firing().isBlank()) {
      FiringFile.read(typed.firing(), "What was so that day");
    }
    LocalDate date = date(kiln, typed, log);
    if (log.rows().size() < LEAST_READINGS) {
      throw InputException.in(
          "The log",
          "it has %s; a firing needs %d at least, and tells something from a dozen on."
              .formatted(count(log.rows().size(), "reading"), LEAST_READINGS));
    }
    requireAnother(kiln, log);
    String name = typed.name().isEmpty() ? ran : typed.name();
    return store.keepLog(
        kiln,
        name.length() > LONGEST_NAME ? name.substring(0, LONGEST_NAME) : name,
        date,
        csv,
        schedule,
        typed.firing());
  }

  /** The same log lies beside its kiln once. */
  private void requireAnother(String kiln, LogFile.Log log) {
    for (FiringLog kept : store.logs(kiln)) {
      if (isSame(kept, log)) {
        throw InputException.in(
            "The log",
            "it is that of “%s”, %s, which lies beside this kiln already; put that one away on the shelf first if you mean to bring it anew."
                .formatted(kept.name(), DAY.format(kept.date())));
      }
    }
  }

  private static boolean isSame(FiringLog kept, LogFile.Log log) {
    try {
      return LogFile.read(kept.csv(), kept.name()).isSameAs(log);
    } catch (InputException cannotBeRead) {
      return false;
    }
  }

  private String schedule(String kiln, KilnPage.Bringing typed) {
    if (typed.chosen().isEmpty()) {
      if (typed.schedule().isBlank()) {
        throw InputException.in(
            "The schedule", "there is none; choose the one that ran, or paste its file.");
      }
      return typed.schedule();
    }
    return store.all(Kind.SCHEDULE).stream()
        .filter(d -> typed.chosen().equals("shelf:" + d.id()))
        .map(Document::text)
        .findFirst()
        .or(
            () ->
                store.logs(kiln).stream()
                    .filter(l -> typed.chosen().equals("log:" + l.id()))
                    .map(FiringLog::schedule)
                    .findFirst())
        .orElseThrow(
            () -> InputException.in("The schedule", "it is not there any more; choose another."));
  }

  /** The log's own date counts where it has one. */
  private LocalDate date(String kiln, KilnPage.Bringing typed, LogFile.Log log) {
    Optional<LocalDate> told = log.date(zone(store.find(Kind.KILN, kiln).map(KilnDesk::kiln)));
    if (told.isPresent()) {
      return told.get();
    }
    try {
      return LocalDate.parse(typed.date());
    } catch (DateTimeException e) {
      throw InputException.in(
          "The date", "“%s” is none; write it like 2026-11-14.".formatted(typed.date()));
    }
  }

  private static String field(Map<String, String> form, String name) {
    return form.getOrDefault(name, "");
  }
}
