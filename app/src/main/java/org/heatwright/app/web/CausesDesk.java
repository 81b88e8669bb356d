package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.heatwright.app.causes.FiringFacts;
import org.heatwright.app.causes.LastFirings;
import org.heatwright.app.files.InputException;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Watch;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.Charge;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.work.Composition;
import org.heatwright.work.causes.CauseBook;
import org.heatwright.work.causes.Clue;
import org.heatwright.work.causes.Facts;
import org.heatwright.work.causes.Ranking;

/** From a firing of the book to what may be behind its fault. Safe for several threads. */
final class CausesDesk {

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.UK);
  private static final int FACTS_KEPT = 24;

  /** A page waits so long for a log to be read. */
  private static final Duration PATIENCE = Duration.ofMillis(500);

  private final Store store;
  private final Clock clock;
  private final Function<FiringRecord, Watch> watches;
  private final Lately<FiringRecord, Facts> facts = new Lately<>(FACTS_KEPT);
  private final Beside<Key, Facts> read = new Beside<>(FACTS_KEPT);

  /** What the facts of a firing with a log depend on. */
  private record Key(FiringRecord firing, String log) {}

  /**
   * @param watches works a firing out, or has it
   */
  CausesDesk(Store store, Clock clock, Function<FiringRecord, Watch> watches) {
    this.store = store;
    this.clock = clock;
    this.watches = watches;
  }

  /**
   * What is known of a firing.
   *
   * @param reading name of the log of that day while it is still being read; else empty
   */
  record Known(Facts facts, Optional<String> reading) {}

  /**
   * What is known now; up to a second at first, at hand afterwards. A log takes several seconds at
   * first: until it is read, what is known without it.
   */
  Known known(FiringRecord firing) {
    Optional<FiringLog> log = log(firing);
    if (log.isEmpty()) {
      return new Known(withoutLog(firing), Optional.empty());
    }
    FiringLog brought = log.get();
    return read.within(
            new Key(firing, brought.id()),
            () ->
                FiringFacts.of(firing, watches.apply(firing), Optional.of(logged(firing, brought))),
            PATIENCE)
        .map(facts -> new Known(facts, Optional.empty()))
        .orElseGet(() -> new Known(withoutLog(firing), Optional.of(brought.name())));
  }

  private Facts withoutLog(FiringRecord firing) {
    return facts.of(firing, asked -> FiringFacts.of(asked, watches.apply(asked), Optional.empty()));
  }

  /** The one log that was brought of this kiln for the day on which start was pressed. */
  Optional<FiringLog> log(FiringRecord firing) {
    if (firing.pressed().isEmpty()) {
      return Optional.empty();
    }
    LocalDate day = firing.pressed().get().atZone(zone(firing)).toLocalDate();
    List<FiringLog> logs =
        store.logs(firing.entry().kiln()).stream().filter(l -> l.date().equals(day)).toList();
    return logs.size() == 1 ? Optional.of(logs.get(0)) : Optional.empty();
  }

  private ZoneId zone(FiringRecord firing) {
    return firing.kiln().timeZone().orElse(clock.getZone());
  }

  /** The log as of this firing: what stood in the kiln is what was planned. */
  private LoggedFiring logged(FiringRecord firing, FiringLog log) {
    LoggedFiring read = KilnDesk.logged(log);
    return new LoggedFiring(
        read.name(),
        firing.runs(),
        read.conditions(),
        watches.apply(firing).composition().map(Composition::charge).orElse(Charge.empty()),
        read.readings());
  }

  /** The section below a firing that came out with a fault; empty where there is nothing to say. */
  Optional<BehindPage> behind(FiringRecord firing, Function<FiringRecord, String> outcome) {
    Optional<String> fault =
        firing
            .result()
            .map(FiringRecord.Result::outcome)
            .filter(code -> !CauseBook.suspects(firing.entry().kind(), code).isEmpty());
    if (fault.isEmpty()) {
      return Optional.empty();
    }
    try {
      Known known = known(firing);
      Ranking ranking = CauseBook.rank(firing.entry().kind(), fault.get(), known.facts());
      Optional<FiringLog> log = log(firing);
      String ask = "/ask?firing=" + encoded(firing.id());
      return Optional.of(
          new BehindPage(
              CauseWords.view(
                  ranking,
                  (clue, yes) -> ask + "&c." + clue.code() + "=" + (yes ? "yes" : "no"),
                  plan(firing),
                  log.map(l -> l.showed().happened()).orElse(List.of())),
              known
                  .reading()
                  .map(
                      "The log “%s” of that day is still being read; what it tells comes here by itself."
                          ::formatted)
                  .orElseGet(() -> basis(firing, log)),
              known.reading().isPresent(),
              compared(firing, outcome),
              ask));
    } catch (InputException ofAnotherVersion) {
      return Optional.empty();
    }
  }

  /** The plan that was fired. */
  Optional<CauseWords.Plan> plan(FiringRecord firing) {
    return Optional.of(
        new CauseWords.Plan(
            Choices.of(fields(firing.entry().plan())),
            firing.planned(),
            watches.apply(firing).composition().map(Composition::demands)));
  }

  private static Map<String, String> fields(String query) {
    return Asked.fields(query);
  }

  private static String basis(FiringRecord firing, Optional<FiringLog> log) {
    if (log.isPresent()) {
      return "By the plan, the slot and the log “%s” of that day.".formatted(log.get().name());
    }
    return firing.all(org.heatwright.app.firings.Happening.SHOWN).isEmpty()
        ? "By the plan and the slot alone: nobody told what the display said, and no log of that day was brought."
        : "By the plan, the slot and what the display was told to have said. A log of that day would say more.";
  }

  /** This firing beside the last ones of its kind. */
  Optional<BehindPage.Compared> compared(
      FiringRecord firing, Function<FiringRecord, String> outcome) {
    return LastFirings.before(firing, new FiringBook(store, clock).all(), outcome)
        .map(
            last ->
                new BehindPage.Compared(
                    about(last, firing),
                    last.firings().stream().map(f -> head(f, firing)).toList(),
                    last.rows().stream()
                        .map(
                            row ->
                                new BehindPage.Line(
                                    row.what(),
                                    row.cells().stream()
                                        .map(c -> new BehindPage.Cell(c.words(), c.differs()))
                                        .toList()))
                        .toList()));
  }

  private BehindPage.Head head(FiringRecord one, FiringRecord here) {
    String day = DAY.format(one.pressed().orElse(one.entry().press()).atZone(zone(one)));
    return one.id().equals(here.id())
        ? new BehindPage.Head("this one", "")
        : new BehindPage.Head(day, FiringDesk.address(one.id()));
  }

  private static String about(LastFirings last, FiringRecord firing) {
    String kind = CauseBook.words(firing.entry().kind());
    if (last.sameWork()) {
      return last.sameKiln()
          ? "The last firings of this work in %s. What differs is marked."
              .formatted(firing.entry().kiln())
          : "The last firings of this work; %s has had none before, so they are of other kilns. What differs is marked."
              .formatted(firing.entry().kiln());
    }
    return last.sameKiln()
        ? "The last firings of this kind (%s) in %s. What differs is marked."
            .formatted(kind, firing.entry().kiln())
        : "The last firings of this kind (%s); %s has had none before, so they are of other kilns. What differs is marked."
            .formatted(kind, firing.entry().kiln());
  }

  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** The address of a page that knows these answers. */
  static String ask(Map<String, String> fields, Clue clue, boolean yes) {
    Map<String, String> all = new java.util.LinkedHashMap<>(fields);
    all.put("c." + clue.code(), yes ? "yes" : "no");
    return "/ask?" + query(all);
  }

  static String query(Map<String, String> fields) {
    return fields.entrySet().stream()
        .filter(e -> !e.getValue().isEmpty())
        .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
        .collect(java.util.stream.Collectors.joining("&"));
  }
}
