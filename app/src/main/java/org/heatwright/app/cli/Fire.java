package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.app.files.Firing;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.report.KilnOnKeypad;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.CostEstimate;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.SessionPieces;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.forecast.StartPlanner.LocalChoice;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.Readings;
import org.heatwright.learn.RunningFiring;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.Outcome;
import org.heatwright.work.Work;
import picocli.CommandLine.Option;

/** The options that say what is fired where and when, shared by forecast and card. */
final class Fire {

  @Option(names = "--kiln", required = true, paramLabel = "K", description = "Kiln file.")
  private Path kilnPath;

  @Option(
      names = "--work",
      paramLabel = "W",
      description = "Work file: what must happen to what is in the kiln.")
  private Optional<Path> workPath;

  @Option(
      names = "--firing",
      paramLabel = "F",
      description =
          "Firing file: what is so that day. Where it names moulds, they hold the heat; the work's"
              + " are judged.")
  private Optional<Path> firingPath;

  @Option(
      names = "--start",
      paramLabel = "TIME",
      description =
          "When the first segment begins: now, or 2026-12-03T10:00 or 10:00 in the kiln's time"
              + " zone.")
  private Optional<String> startText;

  @Option(
      names = "--ready-by",
      paramLabel = "TIME",
      description =
          "When the work must be ready; gives the latest safe start and the delay to set.")
  private Optional<String> readyByText;

  @Option(
      names = "--press-at",
      paramLabel = "TIME",
      description =
          "When start will be pressed: the delay counts from then. Now if left out; alone, the"
              + " program starts after the schedule's own delay.")
  private Optional<String> pressText;

  /**
   * A schedule forecast and put on the clock.
   *
   * @param conditions what is so on that day
   * @param work what must happen to the load, where it was given
   * @param pressed when start is pressed: the delay counts from there
   * @param update what display readings have changed, if any were given
   * @param noStart why no start can be reckoned, where a ready-by was asked for that has none
   * @param notes what to know about these results
   */
  record Planned(
      Kiln kiln,
      FiringConditions conditions,
      Charge charge,
      Optional<Work> work,
      Optional<Composition> composition,
      Forecast forecast,
      StartPlanner.Ready ready,
      ZonedDateTime pressed,
      Optional<StartPlan> start,
      Optional<CostEstimate> cost,
      Optional<RunningFiring.Update> update,
      Optional<Finding> noStart,
      List<String> notes) {

    /** What an inspection found, behind what stops the plan itself. */
    List<Finding> findings(List<Finding> inspected) {
      return Stream.concat(noStart.stream(), inspected.stream()).toList();
    }

    /** What the firing does to the pieces: to be asked once, it may take a second. */
    List<Outcome> outcomes(Schedule run) {
      return composition.map(c -> c.outcomes(run, forecast)).orElse(List.of());
    }

    /** The same with another start. */
    Planned startingAt(StartPlan plan, List<String> more) {
      List<String> all = new ArrayList<>(notes);
      more.stream().filter(note -> !all.contains(note)).forEach(all::add);
      return new Planned(
          kiln,
          conditions,
          charge,
          work,
          composition,
          forecast,
          ready,
          pressed,
          Optional.of(plan),
          kiln.tariff().map(t -> CostEstimate.of(forecast, t, plan.start())),
          update,
          noStart,
          all);
    }
  }

  /** Forecasts {@code schedule} as the options say. */
  Planned plan(Schedule schedule, Optional<Keypad> keypad, ZonedDateTime now) {
    return plan(schedule, keypad, List.of(), now);
  }

  /**
   * The same for a firing that is under way.
   *
   * @param seen what the display said, each {@code TIME=READING} in the schedule's unit; needs a
   *     start
   */
  Planned plan(Schedule schedule, Optional<Keypad> keypad, List<String> seen, ZonedDateTime now) {
    List<String> notes = new ArrayList<>();
    KilnFile.Content content = Input.kiln(kilnPath);
    if (content.learned().isPresent()) {
      notes.add(
          "The kiln file holds what another version learned; it is kept but not used: learn again.");
    }
    Kiln kiln = KilnOnKeypad.of(content.kiln(), keypad);
    if (startText.isPresent() && readyByText.isPresent()) {
      throw InputException.in("--ready-by", "--start is given too; keep one of the two.");
    }
    Optional<Work> work = workPath.map(Input::work);
    Firing firing = firingPath.map(Input::firing).orElse(Firing.usual());
    Optional<Composition> composition = work.map(w -> Composer.compose(w, kiln, keypad));
    Charge charge = charge(firing, composition);
    // Times that cannot be understood are told before the forecast takes its time.
    Optional<LocalChoice> press = pressText.map(t -> began("--press-at", t, kiln, seen, now, now));
    ZonedDateTime pressed =
        press
            .map(LocalChoice::time)
            .orElse(kiln.timeZone().map(now::withZoneSameInstant).orElse(now));
    Optional<LocalChoice> readyBy = readyBy(work, kiln, pressed, notes);
    // Pressing alone tells the start, too: the program waits for its own delay from then.
    Optional<LocalChoice> start =
        startText
            .map(t -> began("--start", t, kiln, seen, pressed, now))
            .or(
                () ->
                    press
                        .filter(p -> readyBy.isEmpty())
                        .map(
                            p -> new LocalChoice(p.time().plus(schedule.startDelay()), List.of())));
    Optional<Readings> readings =
        seen.isEmpty()
            ? Optional.empty()
            : Optional.of(
                Seen.parse(
                    seen,
                    schedule.unit(),
                    start.map(LocalChoice::time),
                    now,
                    time -> seen(time, kiln, start.orElseThrow().time(), now)));
    ForecastRequest request =
        ForecastRequest.of(schedule, kiln, charge).withConditions(firing.conditions());
    Optional<RunningFiring.Update> update = readings.map(r -> RunningFiring.update(request, r));
    Forecast forecast =
        update.map(RunningFiring.Update::forecast).orElseGet(() -> Forecaster.forecast(request));
    notes.addAll(tooLate(firing.conditions(), forecast));
    if (SessionPieces.likely(firing.conditions(), charge)) {
      notes.add(
          "The door is opened three times or more: a cold piece is taken to go in each time but the last. If none does, write goes-in-cold: none into the firing file; if its heat is known, goes-in-cold: {j-per-k: 45}.");
    }
    StartPlanner.Ready ready = ready(forecast, composition);
    press.ifPresent(choice -> notes.addAll(choice.notes()));
    start.ifPresent(choice -> notes.addAll(choice.notes()));
    readyBy.ifPresent(choice -> notes.addAll(choice.notes()));
    Optional<StartPlan> plan =
        start
            .map(choice -> StartPlanner.startingAt(forecast, ready, choice.time(), pressed))
            .or(
                () ->
                    readyBy.flatMap(c -> StartPlanner.readyBy(forecast, ready, c.time(), pressed)));
    Optional<Finding> noStart =
        plan.isEmpty() ? readyBy.map(c -> Inspector.noStart(forecast, c.time())) : Optional.empty();
    noStart.map(Finding::message).ifPresent(notes::add);
    plan.ifPresent(p -> notes.addAll(p.notes()));
    return new Planned(
        kiln,
        firing.conditions(),
        charge,
        work,
        composition,
        forecast,
        ready,
        pressed,
        plan,
        cost(forecast, kiln, plan, pressed),
        update,
        noStart,
        notes);
  }

  /** Events that come when the program is over, as likely as not. */
  private static List<String> tooLate(FiringConditions conditions, Forecast forecast) {
    double end = forecast.endSeconds().median();
    return conditions.disturbances().stream()
        .filter(d -> d.atSeconds() >= end)
        .map(
            d ->
                "The \"%s\" of the firing file begins %s after the program's start, and the program is likely over after %s: it changes nothing before that."
                    .formatted(d.kind().words(), hours(d.atSeconds()), hours(end)))
        .toList();
  }

  private static String hours(double seconds) {
    return HourMinute.words(Duration.ofMinutes(Math.round(seconds / 60)));
  }

  private static StartPlanner.Ready ready(Forecast forecast, Optional<Composition> composition) {
    return composition.map(c -> c.ready(forecast)).orElseGet(() -> StartPlanner.ready(forecast));
  }

  private LocalChoice time(String option, String text, Kiln kiln, ZonedDateTime now) {
    return When.parse(option, text, kiln.timeZone(), String.valueOf(kilnPath.getFileName()), now);
  }

  /**
   * When a firing begins or is begun: with readings it runs, and a time of day is the last one that
   * is not after the first of them.
   *
   * @param pressed without readings a time of day is the next one after it
   */
  private LocalChoice began(
      String option,
      String text,
      Kiln kiln,
      List<String> seen,
      ZonedDateTime pressed,
      ZonedDateTime now) {
    if (seen.isEmpty()) {
      return time(option, text, kiln, pressed);
    }
    ZonedDateTime first =
        seen.stream()
            .flatMap(reading -> Seen.time(reading).stream())
            .map(at -> last("--seen", at, kiln, Seen.latest(now, now), now).time())
            .reduce(now, (a, b) -> b.isBefore(a) ? b : a);
    return last(option, text, kiln, first, now);
  }

  private LocalChoice last(
      String option, String text, Kiln kiln, ZonedDateTime until, ZonedDateTime now) {
    return When.last(
        option, text, kiln.timeZone(), String.valueOf(kilnPath.getFileName()), until, now);
  }

  private ZonedDateTime seen(String text, Kiln kiln, ZonedDateTime began, ZonedDateTime now) {
    return When.exactly(
        "--seen",
        text,
        kiln.timeZone(),
        String.valueOf(kilnPath.getFileName()),
        began.minusSeconds(1), // what was seen in the minute of the start is of it
        Seen.latest(began, now),
        now);
  }

  /** What was asked for, or what the work itself asks for if that is still to come. */
  private Optional<LocalChoice> readyBy(
      Optional<Work> work, Kiln kiln, ZonedDateTime now, List<String> notes) {
    if (readyByText.isPresent()) {
      LocalChoice asked = time("--ready-by", readyByText.get(), kiln, now);
      if (!asked.time().isAfter(now)) {
        throw InputException.in(
            "--ready-by", "%s has passed; expected a time to come.".formatted(readyByText.get()));
      }
      return Optional.of(asked);
    }
    if (startText.isPresent() || kiln.timeZone().isEmpty()) {
      return Optional.empty();
    }
    Optional<LocalChoice> asked =
        work.flatMap(Work::readyBy)
            .map(local -> StartPlanner.atLocal(local, kiln.timeZone().orElseThrow()));
    if (asked.isPresent() && !asked.get().time().isAfter(now)) {
      notes.add("The work's own ready-by has passed; --start or --ready-by gives clock times.");
      return Optional.empty();
    }
    return asked;
  }

  /** The firing's moulds hold the heat where it names some, else the work's. */
  private static Charge charge(Firing firing, Optional<Composition> composition) {
    Charge fromWork = composition.map(Composition::charge).orElse(Charge.empty());
    if (firing.load().isEmpty()) {
      return fromWork;
    }
    Charge load = firing.load().get();
    return load.moulds().isEmpty()
        ? new Charge(
            load.furnitureKilograms() + fromWork.furnitureKilograms(),
            fromWork.moulds(),
            fromWork.investment(),
            load.pieces().isEmpty() ? fromWork.pieces() : load.pieces(),
            fromWork.followed())
        : load;
  }

  /** Without a start, only a flat price can be told. */
  private static Optional<CostEstimate> cost(
      Forecast forecast, Kiln kiln, Optional<StartPlan> plan, ZonedDateTime now) {
    return kiln.tariff()
        .filter(tariff -> plan.isPresent() || tariff.isFlat())
        .map(tariff -> CostEstimate.of(forecast, tariff, plan.map(StartPlan::start).orElse(now)));
  }
}
