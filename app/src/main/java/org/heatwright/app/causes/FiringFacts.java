package org.heatwright.app.causes;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.LogOfFiring;
import org.heatwright.app.firings.Watch;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.InsideFromLog;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.Outcome;
import org.heatwright.work.Work;
import org.heatwright.work.WorkRefusedException;
import org.heatwright.work.causes.Clue;
import org.heatwright.work.causes.DisplayFacts;
import org.heatwright.work.causes.Facts;
import org.heatwright.work.causes.InspectedFacts;
import org.heatwright.work.causes.KeyedFacts;
import org.heatwright.work.causes.WorkFacts;

/**
 * What is known of one firing, from whatever is there of it.
 *
 * @param planned what was meant to run
 * @param keyed what the slot held, where that is known
 * @param kiln where
 * @param keypad on what
 * @param work what was fired
 * @param readings what the display showed, s from the program's start
 */
public record FiringFacts(
    Optional<Schedule> planned,
    Optional<Schedule> keyed,
    Optional<Kiln> kiln,
    Optional<Keypad> keypad,
    Optional<Work> work,
    Optional<Readings> readings) {

  /** Draws of the forecast that a display is held against: its band need not be fine. */
  private static final int DRAWS = 32;

  /** A thermocouple that was changed so lately counts as touched, days. */
  private static final long LATELY_DAYS = 60;

  /**
   * What was found.
   *
   * @param strange why the log tells nothing of the inside of the work: a sentence; empty if it
   *     does, or if there is none
   */
  public record Found(Facts facts, Optional<String> strange) {
    private static Found of(Facts facts) {
      return new Found(facts, Optional.empty());
    }
  }

  /** A log in rows this many tells the inside of the work; a few readings do not. */
  private static final int ROWS_OF_A_LOG = 20;

  /**
   * Of a firing in the book, for a page: what the inside of the work did is known by the readings
   * that were told, not by a log, which would take seconds.
   *
   * @param log what a logger wrote that day, where a log was brought
   * @throws org.heatwright.app.files.InputException if a kept text cannot be read any more
   */
  public static Facts of(FiringRecord firing, Watch watch, Optional<LoggedFiring> log) {
    Kiln kiln = firing.kiln();
    Optional<Readings> readings = log.map(l -> aligned(kiln, l)).or(watch::seen);
    FiringFacts known =
        new FiringFacts(
            Optional.of(firing.planned()),
            firing.keyed(),
            Optional.of(kiln),
            Optional.of(firing.keypad()),
            Optional.of(firing.work()),
            readings);
    Facts facts = known.find(watch.composition(), false).facts();
    if (log.isEmpty() && watch.update().isPresent()) {
      facts = ran(watch.schedule(), kiln, watch.composition(), watch.forecast()).or(facts);
    }
    Facts out =
        firing
            .out()
            .map(
                at ->
                    WorkFacts.out(
                        Duration.between(watch.start().toInstant(), at).toSeconds(),
                        watch.ready().map(ready -> ready.fromSeconds())))
            .orElse(Facts.none());
    return out.or(facts).or(lately(kiln, watch.start()));
  }

  private static Readings aligned(Kiln kiln, LoggedFiring log) {
    return LogAlignment.of(kiln.withoutLearned(), log).firing().readings();
  }

  private static Facts lately(Kiln kiln, ZonedDateTime when) {
    LocalDate day = when.toLocalDate();
    return kiln.history().stream()
        .filter(
            event ->
                event.what() == LifeEvent.What.THERMOCOUPLE_REPLACED
                    || event.what() == LifeEvent.What.OFFSET_CHANGED)
        .filter(event -> !event.date().isAfter(day))
        .filter(event -> ChronoUnit.DAYS.between(event.date(), day) <= LATELY_DAYS)
        .reduce((earlier, later) -> later)
        .map(
            event ->
                Facts.none()
                    .with(
                        Clue.TIP_MOVED,
                        true,
                        "By the kiln's file its thermocouple or offset was changed on %s."
                            .formatted(event.date())))
        .orElse(Facts.none());
  }

  /**
   * Everything that can be found. A forecast of the plan stands behind it, and with a log the
   * inside of the work is worked out from it: some seconds.
   */
  public Found find() {
    return find(composed(), true);
  }

  /**
   * @param inside whether to work out the inside of the work from a log
   */
  private Found find(Optional<Composition> composition, boolean inside) {
    Facts facts = work.map(WorkFacts::of).orElse(Facts.none());
    facts = facts.or(kiln.map(WorkFacts::of).orElse(Facts.none()));
    if (planned.isEmpty()) {
      return Found.of(facts);
    }
    Schedule plan = planned.get();
    Facts slot = keyed.map(k -> KeyedFacts.of(plan, k)).orElse(Facts.none());
    // What the slot is known to have held goes before what a display lets guess of it.
    facts = slot.or(shown(plan, composition)).or(facts);
    if (composition.isPresent()) {
      facts = facts.or(InspectedFacts.ofPlan(findings(plan, composition.get().demands())));
    }
    if (!inside
        || kiln.isEmpty()
        || readings.filter(r -> r.size() >= ROWS_OF_A_LOG && r.lastSecond() > 0).isEmpty()) {
      return Found.of(facts);
    }
    Found byLog = fromLog(keyed.orElse(plan), composition);
    return new Found(facts.or(byLog.facts()), byLog.strange());
  }

  private Optional<Composition> composed() {
    if (work.isEmpty() || kiln.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Composer.compose(work.get(), kiln.get(), keypad));
    } catch (WorkRefusedException noSuchFiring) {
      return Optional.empty();
    }
  }

  private Facts shown(Schedule plan, Optional<Composition> composition) {
    if (readings.isEmpty()) {
      return Facts.none();
    }
    // Where the slot held something else, the display cannot be held against the plan's forecast.
    Optional<Forecast> forecast =
        kiln.filter(k -> keyed.isEmpty() || keyed.get().segments().equals(plan.segments()))
            .map(
                k ->
                    Forecaster.forecastDisplay(
                        ForecastRequest.of(
                                plan,
                                k,
                                composition.map(Composition::charge).orElse(Charge.empty()))
                            .withDraws(DRAWS)));
    return new DisplayFacts(
            plan,
            readings.get(),
            forecast,
            composition.map(Composition::demands),
            kiln.map(k -> k.control().kind() == Control.Kind.ON_OFF).orElse(false),
            work.map(w -> w instanceof EnamelWork).orElse(false))
        .find();
  }

  private List<Finding> findings(Schedule plan, Demands demands) {
    Inspection inspection = Inspection.of(plan).forWork(demands);
    if (kiln.isPresent()) {
      inspection = inspection.in(kiln.get());
    }
    return Inspector.inspect(keypad.isPresent() ? inspection.on(keypad.get()) : inspection);
  }

  /** What the inside did by a log. */
  private Found fromLog(Schedule ran, Optional<Composition> composition) {
    if (composition.isEmpty() || composition.get().charge().isEmpty()) {
      return Found.of(Facts.none());
    }
    ForecastRequest request =
        new ForecastRequest(
            ran,
            kiln.orElseThrow(),
            FiringConditions.usual(),
            composition.get().charge(),
            DRAWS,
            1L);
    Forecast meant = Forecaster.forecastDisplay(request);
    Optional<String> strange = LogOfFiring.strange(meant, readings.orElseThrow());
    if (strange.isPresent()) {
      return new Found(
          Facts.none(),
          strange.map(
              why ->
                  "Of the log: %s. Perhaps another slot ran. What happened inside the work is not worked out from it."
                      .formatted(why)));
    }
    if (!composition.get().charge().followed().isEmpty()) {
      List<Outcome> outcomes =
          composition
              .get()
              .judge()
              .outcomes(
                  ran,
                  InsideFromLog.pieces(
                      request, readings.orElseThrow().seconds(), readings.orElseThrow().celsius()));
      return Found.of(InspectedFacts.ofWhatRan(Outcome.among(List.of(), outcomes)));
    }
    Forecast inside =
        new Forecast(
            meant.schedule(),
            meant.kiln(),
            meant.segments(),
            meant.endSeconds(),
            meant.energyKilowattHours(),
            meant.meanWatts(),
            meant.work(),
            meant.trace(),
            InsideFromLog.estimate(
                request, readings.orElseThrow().seconds(), readings.orElseThrow().celsius()),
            List.of());
    return Found.of(ran(ran, kiln.orElseThrow(), composition, inside));
  }

  /** What a forecast that knows the readings says of what ran. */
  private static Facts ran(
      Schedule ran, Kiln kiln, Optional<Composition> composition, Forecast forecast) {
    if (composition.isEmpty()) {
      return Facts.none();
    }
    List<Finding> inspected =
        Inspector.inspect(
            Inspection.of(ran).in(kiln).forWork(composition.get().demands()).with(forecast));
    return InspectedFacts.ofWhatRan(
        Outcome.among(inspected, composition.get().outcomes(ran, forecast)));
  }
}
