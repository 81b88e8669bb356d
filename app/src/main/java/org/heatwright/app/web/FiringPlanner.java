package org.heatwright.app.web;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.report.CardBuilder;
import org.heatwright.app.report.KilnOnKeypad;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.CostEstimate;
import org.heatwright.forecast.EnsembleProgress;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.Outcome;
import org.heatwright.work.PourSheet;
import org.heatwright.work.Work;
import org.heatwright.work.WorkRefusedException;

/**
 * Takes choices through the whole chain: shelf, composer, edits, keypad, forecast, start,
 * inspection, card. Safe for use from several threads.
 */
final class FiringPlanner {

  /** Time allowed for keying and reading back before start is pressed. */
  private static final Duration TO_KEY = Duration.ofMinutes(15);

  private static final int ROUND_TO_MINUTES = 5;

  /** Who does not say when start is pressed does not mean a wait longer than this. */
  private static final Duration USUAL_WAIT = Duration.ofHours(8);

  private static final LocalTime AWAKE_FROM = LocalTime.of(7, 0);
  private static final LocalTime AWAKE_UNTIL = LocalTime.of(21, 0);
  private static final LocalTime USUAL_READY = LocalTime.of(10, 0);

  /** Texts from the shelf, and what was composed of them, that need not be read again. */
  private static final int READ_KEPT = 12;

  private final Store store;
  private final Clock clock;
  private final Forecasts forecasts;
  private final Lately<Document, Work> works = new Lately<>(READ_KEPT);
  private final Lately<Document, Kiln> kilns = new Lately<>(READ_KEPT);
  private final Lately<Document, Keypad> keypads = new Lately<>(READ_KEPT);
  private final Lately<Composing, Composition> compositions = new Lately<>(READ_KEPT);
  private final Lately<Pouring, Optional<PourSheet>> pours = new Lately<>(READ_KEPT);

  FiringPlanner(Store store, Clock clock) {
    this(store, clock, new Forecasts());
  }

  /**
   * @param forecasts that others make and ask for, too
   */
  FiringPlanner(Store store, Clock clock, Forecasts forecasts) {
    this.store = store;
    this.clock = clock;
    this.forecasts = forecasts;
  }

  /**
   * The whole plan.
   *
   * @param draws size of the ensemble: 1 for a quick sketch
   * @param asker is told how far the ensemble is; throws {@link
   *     java.util.concurrent.CancellationException} when it does not want it any more
   */
  PlanResult plan(Choices typed, int draws, EnsembleProgress asker) {
    return new Attempt(typed, draws, false, asker).run();
  }

  /** The same, however long it takes. */
  PlanResult plan(Choices typed, int draws) {
    return plan(typed, draws, EnsembleProgress.UNTOLD);
  }

  /**
   * One draw, and only what its curve and its answer need: while a value is still being changed.
   */
  PlanResult sketch(Choices typed) {
    return new Attempt(typed, 1, true, EnsembleProgress.UNTOLD).run();
  }

  /** What the pour depends on. */
  private record Pouring(Work work, Schedule schedule, Temperature room) {}

  /** What a composition depends on. */
  private record Composing(Work work, Kiln kiln, Keypad keypad) {}

  /**
   * The display of a firing by a usual ensemble, without the inside of the work: what can be shown
   * while the rest is still being worked out.
   *
   * @param asker as for {@link #plan}
   */
  Forecast display(Firing firing, EnsembleProgress asker) {
    return forecasts.ofDisplay(
        ForecastRequest.of(
            firing.program().expressible().withStartDelay(Duration.ZERO),
            firing.kiln(),
            firing.composition().charge()),
        asker);
  }

  /** One run through the chain; gathers errors and notes on the way. */
  private final class Attempt {

    private final Choices typed;
    private final int draws;
    private final boolean brief;
    private final EnsembleProgress asker;
    private final Map<String, String> errors = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();
    private Choices choices;

    Attempt(Choices typed, int draws, boolean brief, EnsembleProgress asker) {
      this.typed = typed;
      this.draws = draws;
      this.brief = brief;
      this.asker = asker;
      this.choices = typed;
    }

    PlanResult run() {
      try {
        Optional<Firing> firing = Optional.of(firing()); // first: it fills in the choices
        return new PlanResult(choices, errors, Optional.empty(), notes, firing);
      } catch (Refusal refusal) {
        return new PlanResult(
            choices, errors, Optional.of(refusal.sentence()), notes, Optional.empty());
      }
    }

    private Firing firing() {
      Document workText = choose(Kind.WORK, typed.work());
      choices = choices.withWork(workText.name());
      Document kilnText = choose(Kind.KILN, typed.kiln());
      choices = choices.withKiln(kilnText.name());
      Document keypadText = choose(Kind.KEYPAD, typed.keypad());
      choices = choices.withKeypad(keypadText.name());
      Work work = read(workText, works, d -> WorkFile.read(d.text(), d.name()));
      Kiln alone = read(kilnText, kilns, d -> KilnFile.read(d.text(), d.name()));
      Keypad keypad = read(keypadText, keypads, d -> KeypadFile.read(d.text(), d.name()));
      Kiln kiln = KilnOnKeypad.of(alone, Optional.of(keypad));
      int slot = slot(keypad);
      ZoneId zone = kiln.timeZone().orElse(clock.getZone());
      ZonedDateTime press = press(zone);
      ZonedDateTime at = at(work, press);

      Composition composed = compose(work, kiln, keypad);
      Schedule asked = edited(composed, workText.name(), kilnText.name());
      FittedProgram fitted = KeypadFit.fit(asked, keypad);
      // As the book of firings names it: a firing that begins has its forecast already.
      Schedule toForecast = fitted.expressible().withName(workText.name());
      ForecastRequest request =
          ForecastRequest.of(toForecast, kiln, composed.charge()).withDraws(draws);
      Forecast forecast = brief ? forecasts.sketch(request) : forecasts.of(request, asker);

      StartPlanner.Ready ready = composed.ready(forecast);
      StartPlan wanted = wanted(forecast, ready, at, press);
      if (typed.press().isEmpty()) {
        press = usualPress(press, wanted.start());
        choices = choices.withPress(text(press));
        wanted = wanted(forecast, ready, at, press);
      }
      Duration delay = Duration.between(press, wanted.start());
      if (delay.isNegative()
          || choices.readyBy() && delay.compareTo(Duration.ofMinutes(ROUND_TO_MINUTES)) < 0) {
        delay = Duration.ZERO; // a few minutes early are not worth keying a delay
      }
      FittedProgram program =
          KeypadFit.fit(asked.withStartDelay(delay.truncatedTo(ChronoUnit.MINUTES)), keypad);
      StartPlan start =
          StartPlanner.startingAt(
              forecast, ready, press.plus(program.expressible().startDelay()), press);
      Set<String> timeNotes = new LinkedHashSet<>(wanted.notes());
      timeNotes.addAll(start.notes());
      Optional<Finding> noStart =
          choices.readyBy() && StartPlanner.readyBy(forecast, ready, at, press).isEmpty()
              ? Optional.of(Inspector.noStart(forecast, at))
              : Optional.empty();
      if (noStart.isPresent()) {
        timeNotes.add("The times here are for a start without a delay, as soon as it is pressed.");
      }
      Composition composition = composed.settledFor(program.expressible());
      List<Outcome> outcomes = composition.outcomes(program.expressible(), forecast);
      List<Finding> findings =
          Outcome.among(
              Stream.concat(
                      noStart.stream(),
                      Inspector.inspect(
                          Inspection.of(program.expressible())
                              .in(kiln)
                              .on(keypad)
                              .forWork(composition.demands())
                              .with(forecast))
                          .stream())
                  .toList(),
              outcomes);
      CardBuilder card =
          program.fits()
              ? CardBuilder.of(program, keypad, kiln, forecast)
              : CardBuilder.of(program.expressible(), kiln, forecast);
      Optional<PourSheet> pour =
          brief
              ? Optional.empty()
              : pours.of(
                  new Pouring(
                      work, program.expressible().withStartDelay(Duration.ZERO), kiln.room()),
                  p -> PourSheet.of(p.work(), p.schedule(), p.room()));
      pour.ifPresent(card::pour);
      return new Firing(
          choices,
          kiln,
          keypad,
          slot,
          work,
          composition,
          choices.edits(),
          program,
          forecast,
          press,
          start,
          wanted.inTime(),
          List.copyOf(timeNotes),
          kiln.tariff().map(t -> CostEstimate.of(forecast, t, start.start())),
          outcomes,
          findings,
          pour,
          card.composition(composition, outcomes)
              .slot(slot)
              .start(start.start(), List.copyOf(timeNotes))
              .findings(findings)
              .build(),
          draws == 1);
    }

    /** Where no start can be reckoned, as soon as start is pressed. */
    private StartPlan wanted(
        Forecast forecast, StartPlanner.Ready ready, ZonedDateTime at, ZonedDateTime press) {
      return choices.readyBy()
          ? StartPlanner.readyBy(forecast, ready, at, press)
              .orElseGet(() -> StartPlanner.startingAt(forecast, ready, press, press))
          : StartPlanner.startingAt(forecast, ready, at, press);
    }

    private Document choose(Kind kind, String name) {
      List<Document> shelf = store.all(kind);
      if (shelf.isEmpty()) {
        throw new Refusal(
            "There is no %s on the shelf yet: put one there below.".formatted(kind.word()));
      }
      if (name.isEmpty()) {
        return shelf.get(0);
      }
      return shelf.stream()
          .filter(d -> d.name().equals(name))
          .findFirst()
          .orElseThrow(
              () -> {
                errors.put(
                    kind.word(),
                    "There is no %s named “%s” on the shelf: choose another."
                        .formatted(kind.word(), name));
                return new Refusal(errors.get(kind.word()));
              });
    }

    private <T> T read(
        Document document, Lately<Document, T> lately, Function<Document, T> reader) {
      try {
        return lately.of(document, reader);
      } catch (InputException e) {
        errors.put(document.kind().word(), Objects.requireNonNull(e.getMessage()));
        throw new Refusal(Objects.requireNonNull(e.getMessage()));
      }
    }

    private int slot(Keypad keypad) {
      if (typed.slot().isEmpty()) {
        choices = choices.withSlot("1");
        return 1;
      }
      int slot = typed.slot().matches("\\d{1,3}") ? Integer.parseInt(typed.slot()) : 0;
      if (slot < 1 || slot > keypad.slots()) {
        errors.put(
            "slot",
            "%s has program slots 1 to %d; “%s” is none of them."
                .formatted(keypad.name(), keypad.slots(), typed.slot()));
        return 1;
      }
      return slot;
    }

    private ZonedDateTime press(ZoneId zone) {
      ZonedDateTime usual = rounded(clock.instant().atZone(zone).plus(TO_KEY));
      ZonedDateTime press = time("press", typed.press(), usual);
      choices = choices.withPress(errors.containsKey("press") ? typed.press() : text(press));
      if (press.plusMinutes(30).isBefore(clock.instant().atZone(zone))) {
        notes.add(
            "The time to press start has passed: choose a new one, or the delay will be wrong.");
      }
      return press;
    }

    private ZonedDateTime at(Work work, ZonedDateTime press) {
      ZonedDateTime usual = choices.readyBy() ? usualReady(work, press) : press;
      ZonedDateTime at = time("at", typed.at(), usual);
      choices = choices.withAt(errors.containsKey("at") ? typed.at() : text(at));
      return at;
    }

    private ZonedDateTime usualReady(Work work, ZonedDateTime press) {
      Optional<ZonedDateTime> told = work.readyBy().map(t -> t.atZone(press.getZone()));
      if (told.isPresent() && told.get().isAfter(press)) {
        return told.get();
      }
      LocalTime time = told.map(ZonedDateTime::toLocalTime).orElse(USUAL_READY);
      ZonedDateTime tomorrow = press.plusDays(1).with(time);
      if (told.isPresent() && typed.at().isEmpty()) {
        notes.add(
            told.get().isAfter(clock.instant().atZone(press.getZone()))
                ? "Start is pressed after the work's own ready-by; the day after it, at the same time, stands instead."
                : "The work's own ready-by has passed; tomorrow at the same time stands instead.");
      }
      return tomorrow;
    }

    private ZonedDateTime time(String field, String text, ZonedDateTime usual) {
      if (text.isEmpty()) {
        return usual;
      }
      try {
        StartPlanner.LocalChoice choice =
            StartPlanner.atLocal(LocalDateTime.parse(text), usual.getZone());
        notes.addAll(choice.notes());
        return choice.time();
      } catch (DateTimeException e) {
        errors.put(
            field, "“%s” is no date and time; write it like %s.".formatted(text, text(usual)));
        return usual;
      }
    }

    private Composition compose(Work work, Kiln kiln, Keypad keypad) {
      try {
        return compositions.of(
            new Composing(work, kiln, keypad),
            c -> Composer.compose(c.work(), c.kiln(), Optional.of(c.keypad())));
      } catch (WorkRefusedException e) {
        throw new Refusal(Objects.requireNonNull(e.getMessage()));
      }
    }

    private Schedule edited(Composition composition, String work, String kiln) {
      Schedule composed = composition.schedule();
      String of =
          "%s@%s/%d%s".formatted(work, kiln, composed.segments().size(), composed.unit().letter());
      Map<String, String> edits = typed.edits();
      if (!typed.of().isEmpty() && !typed.of().equals(of)) {
        notes.add("The schedule is composed anew; values you had changed were put aside.");
        edits = Map.of();
      }
      SegmentFields.Edited edited = SegmentFields.apply(edits, composed);
      errors.putAll(edited.errors());
      choices = choices.withEdits(of, edited.kept());
      return edited.schedule();
    }
  }

  /** As soon as it can be, or the last moment before heat begins at which people are up. */
  private static ZonedDateTime usualPress(ZonedDateTime soonest, ZonedDateTime heat) {
    if (!heat.isAfter(soonest.plus(USUAL_WAIT))) {
      return soonest;
    }
    ZonedDateTime last = heat.truncatedTo(ChronoUnit.MINUTES);
    last = last.minusMinutes(last.getMinute() % ROUND_TO_MINUTES);
    if (last.toLocalTime().isBefore(AWAKE_FROM)) {
      last = last.minusDays(1).with(AWAKE_UNTIL);
    } else if (last.toLocalTime().isAfter(AWAKE_UNTIL)) {
      last = last.with(AWAKE_UNTIL);
    }
    return last.isBefore(soonest) ? soonest : last;
  }

  private static ZonedDateTime rounded(ZonedDateTime time) {
    ZonedDateTime minute = time.truncatedTo(ChronoUnit.MINUTES);
    int past = minute.getMinute() % ROUND_TO_MINUTES;
    return past == 0 ? minute : minute.plusMinutes(ROUND_TO_MINUTES - past);
  }

  private static String text(ZonedDateTime time) {
    return time.toLocalDateTime().truncatedTo(ChronoUnit.MINUTES).toString();
  }

  /** There can be no firing; the sentence says why. */
  private static final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final String sentence;

    Refusal(String sentence) {
      super(sentence);
      this.sentence = sentence;
    }

    String sentence() {
      return sentence;
    }
  }
}
