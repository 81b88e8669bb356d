package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.json.ForecastJson;
import org.heatwright.app.plot.FiringPlot;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.app.report.Ending;
import org.heatwright.app.report.SeenWords;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.CostEstimate;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.InsideFromLog;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.forecast.WorkForecast;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Outcome;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(ForecastJson.class)
@Command(
    name = "forecast",
    description = {
      "Says when a firing is ready, how sure that is, and what it costs.",
      "Every time is given as a band: nine times in ten it is inside."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright forecast schedule.yaml --kiln anchor.yaml",
      "  heatwright forecast schedule.yaml --kiln anchor.yaml --work work.yaml \\",
      "      --ready-by 10:00",
      "  heatwright forecast schedule.yaml --kiln anchor.yaml --start now \\",
      "      --trace curve.csv",
      "  heatwright forecast schedule.yaml --kiln anchor.yaml --start 18:40 \\",
      "      --seen 21:40=312",
      "  heatwright forecast schedule.yaml --kiln anchor.yaml --log may.csv \\",
      "      --plot may.svg"
    })
final class ForecastCommand implements Callable<Integer> {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Mixin private Fire fire;

  @Mixin private TraceFile traceFile;

  @Option(
      names = "--log",
      paramLabel = "L.csv",
      description = "Log of the firing: says how well the forecast held.")
  private Optional<Path> logPath;

  @Option(
      names = "--plot",
      paramLabel = "FILE",
      description = "Draw the forecast, and the log where there is one, as .svg or .png.")
  @Written
  private Optional<Path> plotPath;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  @Option(
      names = "--seen",
      paramLabel = "TIME=READING",
      description =
          "What the display said while it runs, e.g. 21:40=312; may be repeated; needs --start, of"
              + " which a time of day is then the last one.")
  private List<String> seen = new ArrayList<>();

  ForecastCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    traceFile.require();
    plotPath.ifPresent(PlotFile::require);
    Optional<LogFile.Log> log = logPath.map(Input::log);
    Schedule schedule = Input.schedule(schedulePath);
    ZonedDateTime now = ZonedDateTime.now(surroundings.clock());
    Fire.Planned planned = fire.plan(schedule, Optional.empty(), seen, now);
    List<Outcome> outcomes = planned.outcomes(schedule);
    List<Finding> findings = findings(schedule, planned, outcomes);
    Optional<String> written = traceFile.write(() -> Trace.csv(planned.forecast().trace()));
    Optional<AlignedLog> aligned =
        log.map(l -> AlignedLog.of(logPath.orElseThrow(), l, schedule, planned));
    WatchedFiring watched = watched(schedule, planned, aligned);
    Optional<String> drawn = plotPath.map(path -> PlotFile.write(path, FiringPlot.of(watched)));
    List<Outcome> byLog = aligned.map(a -> byLog(schedule, planned, a)).orElse(List.of());
    Page page = page(schedule, planned, outcomes, findings, now);
    OutcomeWords.print("What happened in the piece, by the log", byLog, page);
    watched
        .compared()
        .map(c -> c.words(schedule.unit(), watched.when()) + " " + c.missed(schedule.unit()))
        .ifPresent(words -> page.blank().line("The log: " + words));
    aligned.ifPresent(a -> a.notes().forEach(note -> page.hanging("note  ", note)));
    drawn.ifPresent(sentence -> page.blank().line(sentence));
    written.ifPresent(sentence -> page.blank().line(sentence));
    answer.give(
        surroundings,
        ForecastJson.of(planned.forecast(), planned.cost(), planned.start(), findings)
            .withOutcomes(outcomes, byLog)
            .withSeen(planned.update())
            .withLog(watched.compared())
            .withPlot(plotPath.map(Path::toString)),
        page);
    return FindingWords.stops(findings) ? Answer.STOP : Answer.DONE;
  }

  private static WatchedFiring watched(
      Schedule schedule, Fire.Planned planned, Optional<AlignedLog> aligned) {
    Kiln kiln = planned.kiln();
    return new WatchedFiring(
        planned.forecast(),
        kiln.learned()
            .filter(learned -> learned.engine().equals(Learned.ENGINE))
            .map(
                learned ->
                    learned.firings() == 1
                        ? "The kiln is known from 1 firing."
                        : "The kiln is known from %d firings.".formatted(learned.firings()))
            .orElse("Of the kiln only the nameplate is known."),
        aligned.map(AlignedLog::readings),
        schedule.unit(),
        aligned.map(a -> a.start(planned)).orElseGet(() -> planned.start().map(StartPlan::start)),
        WatchedFiring.happenings(planned.conditions(), aligned.map(AlignedLog::log)));
  }

  private static List<Finding> findings(
      Schedule schedule, Fire.Planned planned, List<Outcome> outcomes) {
    Inspection inspection = Inspection.of(schedule).in(planned.kiln()).with(planned.forecast());
    return Outcome.among(
        planned.findings(
            Inspector.inspect(
                planned
                    .composition()
                    .map(c -> inspection.forWork(c.demands()))
                    .orElse(inspection))),
        outcomes);
  }

  /** What the pieces did, judged by what the display said. */
  private static List<Outcome> byLog(Schedule schedule, Fire.Planned planned, AlignedLog aligned) {
    if (planned.charge().followed().isEmpty() || planned.composition().isEmpty()) {
      return List.of();
    }
    Readings readings = aligned.readings();
    return planned
        .composition()
        .get()
        .judge()
        .outcomes(
            schedule,
            InsideFromLog.pieces(
                new ForecastRequest(
                    schedule,
                    planned.kiln(),
                    planned.conditions(),
                    planned.charge(),
                    ForecastRequest.USUAL_DRAWS,
                    1L),
                readings.seconds(),
                readings.celsius()))
        .stream()
        .map(outcome -> outcome.in(schedule.unit()))
        .toList();
  }

  // ---- for people

  private static final int TIMES_WIDTH = 17;

  private static Page page(
      Schedule schedule,
      Fire.Planned planned,
      List<Outcome> outcomes,
      List<Finding> findings,
      ZonedDateTime now) {
    Forecast forecast = planned.forecast();
    Page page = new Page();
    page.line(ready(planned.ready(), planned.start()));
    Duration untilPressed = Duration.between(now, planned.pressed());
    planned.start().ifPresent(plan -> page.line(start(plan, untilPressed)));
    page.line(end(forecast, planned.start()));
    planned
        .update()
        .ifPresent(update -> page.line(SeenWords.words(update, schedule.unit(), planned.start())));
    for (String note : planned.notes()) {
      page.line(note);
    }
    page.blank().line("%s in %s".formatted(forecast.schedule(), forecast.kiln()));
    List<String> reached =
        forecast.segments().stream()
            .map(segment -> segment.arrivedSeconds().map(a -> times(a, planned.start())))
            .map(times -> times.orElse("not in every case"))
            .toList();
    // Times in an hour that comes twice are longer.
    int width = reached.stream().mapToInt(String::length).reduce(TIMES_WIDTH, Math::max);
    page.raw("     %-38s %s  %s%n".formatted("", wide("target reached", width), "segment ends"));
    for (SegmentForecast segment : forecast.segments()) {
      page.raw(
          "%3d  %-38s %s  %s%n"
              .formatted(
                  segment.index(),
                  ScheduleWords.segment(
                      schedule.segments().get(segment.index() - 1), schedule.unit()),
                  wide(reached.get(segment.index() - 1), width),
                  Ending.isTold(segment)
                      ? times(segment.endSeconds(), planned.start())
                      : "may be never"));
    }
    page.blank();
    Band energy = forecast.energyKilowattHours();
    page.line("Energy %s kWh".formatted(band("%.1f", energy)) + cost(planned.cost()));
    for (WorkForecast place : forecast.work()) {
      page.line(work(place, schedule.unit(), planned.start()));
    }
    OutcomeWords.print("What happens in the piece", outcomes, page);
    page.blank().line("Inspection: " + FindingWords.sum(findings));
    FindingWords.print(findings, page);
    return page;
  }

  private static String ready(StartPlanner.Ready ready, Optional<StartPlan> plan) {
    if (ready.seconds().isEmpty()) {
      return "No ready time can be promised.";
    }
    String when =
        plan.flatMap(StartPlan::ready)
            .map(StartPlan.Window::words)
            .orElseGet(() -> elapsed(ready.seconds().get()) + " after the start");
    String what = ready.what().equals("the work") ? "" : " (" + ready.what() + ")";
    return "Ready %s%s.".formatted(when, what);
  }

  private static String start(StartPlan plan, Duration untilPressed) {
    String delay =
        plan.delayToSet()
            .map(d -> delay(d, plan, untilPressed.compareTo(Duration.ofMinutes(1)) < 0))
            .orElse("");
    return "Start %s%s.".formatted(ClockWords.moment(plan.start()), delay);
  }

  private static String delay(Duration delay, StartPlan plan, boolean now) {
    String pressed = now ? "now" : ClockWords.moment(plan.start().minus(delay));
    return delay.isZero()
        ? now ? ", that is now" : ""
        : ", a delay of %s from %s".formatted(HourMinute.words(delay), pressed);
  }

  private static String end(Forecast forecast, Optional<StartPlan> plan) {
    Ending ending = Ending.of(forecast);
    if (!ending.isTold()) {
      return ending.sentence();
    }
    return "Ends %s."
        .formatted(
            plan.map(p -> p.end().words())
                .orElseGet(() -> elapsed(forecast.endSeconds()) + " after the start"));
  }

  private static String wide(String text, int width) {
    return text + " ".repeat(Math.max(0, width - text.length()));
  }

  /** "19:50 to 20:05", or "1:50 to 2:05" after the start. */
  private static String times(Band seconds, Optional<StartPlan> plan) {
    return plan.map(
            p ->
                span(
                    ClockWords.time(p.at(seconds.low())),
                    ClockWords.time(ClockWords.roundedUp(p.at(seconds.high())))))
        .orElseGet(
            () ->
                span(
                    HourMinute.format(duration(seconds.low())),
                    HourMinute.format(duration(seconds.high()))));
  }

  private static String span(String from, String to) {
    return from.equals(to) ? from : from + " to " + to;
  }

  private static String work(WorkForecast place, TemperatureUnit unit, Optional<StartPlan> plan) {
    String ready =
        place
            .readySeconds()
            .map(seconds -> "ready " + times(seconds, plan))
            .orElse("not ready in every case");
    Band end = place.atEndCelsius();
    return "Mould %d, %s: %s; at the end %.0f %s (%.0f to %.0f)."
        .formatted(
            place.mould(),
            place.probe(),
            ready,
            degrees(end.median(), unit),
            unit.symbol(),
            degrees(end.low(), unit),
            degrees(end.high(), unit));
  }

  private static double degrees(double celsius, TemperatureUnit unit) {
    return unit.value(Temperature.ofCelsius(celsius));
  }

  private static String cost(Optional<CostEstimate> cost) {
    return cost.map(c -> ", cost %s %s".formatted(c.currency(), band("%.2f", c.cost())))
        .map(words -> words + ".")
        .orElse(".");
  }

  private static String band(String format, Band band) {
    return (format + " (" + format + " to " + format + ")")
        .formatted(band.median(), band.low(), band.high());
  }

  private static String elapsed(Band seconds) {
    return span(
        HourMinute.words(duration(seconds.low())), HourMinute.words(duration(seconds.high())));
  }

  private static Duration duration(double seconds) {
    return Duration.ofMillis(Math.round(seconds * 1000));
  }
}
