package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.DoubleUnaryOperator;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.casting.CastInput;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.firings.LogOfFiring;
import org.heatwright.app.json.InsideJson;
import org.heatwright.app.plot.CorePlot;
import org.heatwright.app.plot.SectionPlot;
import org.heatwright.app.report.DoorWords;
import org.heatwright.app.report.InsideWords;
import org.heatwright.app.report.WhenWords;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.DoorCost;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.forecast.InsideFromLog;
import org.heatwright.forecast.StartPlan;
import org.heatwright.learn.Readings;
import org.heatwright.mould.Mould;
import org.heatwright.mould.MouldFiring;
import org.heatwright.mould.PourWindow;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(InsideJson.class)
@Command(
    name = "inside",
    description = {
      "Says what happens inside the moulds: boiling, drying, burning out, pouring.",
      "By forecast, or from the log of a firing that was."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright inside schedule.yaml --kiln anchor.yaml --work work.yaml",
      "  heatwright inside schedule.yaml --kiln anchor.yaml --work work.yaml \\",
      "      --log may.csv --trace inside.csv",
      "  heatwright inside schedule.yaml --kiln anchor.yaml --work work.yaml \\",
      "      --at +2:30 --plot section.svg --curves curves.png"
    })
final class InsideCommand implements Callable<Integer> {

  static final String TRACE_HEADER =
      "time_s,chamber_c,centre_low_c,centre_c,centre_high_c,surface_c,water_share\r\n";

  /** Rows of a trace are so far apart, s. */
  private static final double TRACE_SECONDS = 60;

  private static final double THOUSANDTHS = 1000;

  private static final double LONGEST_DOOR_SECONDS = 600;

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Mixin private Fire fire;

  @Option(
      names = "--log",
      paramLabel = "L.csv",
      description = "Log of the firing: the inside is worked out from what the display said.")
  private Optional<Path> logPath;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description =
          "The moment to tell and draw: +H:MM after the start, or a clock time. The program's end"
              + " if left out.")
  private Optional<String> atText;

  @Option(
      names = "--mould",
      paramLabel = "N",
      description = "Which kind to draw and trace, counted from 1; the thickest if left out.")
  private Optional<Integer> mouldNumber;

  @Option(
      names = "--pattern-mm",
      paramLabel = "MM",
      description = "How deep the outermost pattern lies under the investment's face (8).")
  private Optional<Double> patternMillimetres;

  @Option(
      names = "--door-s",
      paramLabel = "S",
      defaultValue = "20",
      description = "How long the door stands open when a mould is drawn, s (20).")
  private double doorSeconds;

  @Option(
      names = "--plot",
      paramLabel = "FILE",
      description = "Draw the temperatures in the cut mould at that moment, .svg or .png.")
  @Written
  private Optional<Path> plotPath;

  @Option(
      names = "--curves",
      paramLabel = "FILE",
      description = "Draw core, outer face and difference over time, .svg or .png.")
  @Written
  private Optional<Path> curvesPath;

  @Mixin private TraceFile traceFile;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  InsideCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  /** What is told about: by forecast or from a log. */
  private record Told(
      Fire.Planned planned,
      List<InsideForecast> inside,
      DoubleUnaryOperator display,
      double lastSecond,
      double endSeconds,
      Optional<ZonedDateTime> start,
      List<String> notes) {}

  @Override
  public Integer call() {
    traceFile.require();
    plotPath.ifPresent(PlotFile::require);
    curvesPath.ifPresent(PlotFile::require);
    Optional<LogFile.Log> log = logPath.map(Input::log);
    Schedule schedule = Input.schedule(schedulePath);
    ZonedDateTime now = ZonedDateTime.now(surroundings.clock());
    Fire.Planned planned = fire.plan(schedule, Optional.empty(), now);
    if (planned.charge().moulds().isEmpty()) {
      throw InputException.in(
          "--work",
          "no moulds are named; expected a work or firing file with moulds and their binder.");
    }
    Told told = log.map(l -> fromLog(schedule, planned, l)).orElseGet(() -> byForecast(planned));
    double at = at(told, now);
    int chosen = chosen(planned.charge().moulds());
    WhenWords when = new WhenWords(told.start());
    Page page = new Page();
    page.line(
        "%s in %s, %s."
            .formatted(
                schedule.name(),
                planned.kiln().name(),
                log.isPresent() ? "from what the display said" : "by forecast"));
    List<InsideJson.MouldJson> moulds = new ArrayList<>();
    for (InsideForecast inside : told.inside()) {
      Mould mould = planned.charge().moulds().get(inside.mould() - 1);
      InsideWords words = new InsideWords(inside, mould, schedule.unit(), when);
      Optional<InsideWords.Pour> pour = pour(words, planned, at);
      page.blank().line(words.name());
      words.sentences(at).forEach(page::line);
      page.line(
          pour.map(words::words)
              .orElse("It is wet, or too cool, to tell how it keeps its heat out of the kiln."));
      moulds.add(InsideJson.of(inside, mould, at, pour));
    }
    Optional<DoorCost> door = log.isPresent() ? Optional.empty() : door(schedule, planned);
    door.ifPresent(
        cost -> {
          page.blank();
          new DoorWords(cost, schedule.unit(), when).sentences().forEach(page::line);
        });
    page.blank();
    told.notes().forEach(note -> page.hanging("note  ", note));
    InsideForecast inside = told.inside().get(chosen);
    List<String> written = written(schedule, told, inside, at, when);
    written.forEach(page::line);
    answer.give(
        surroundings,
        new InsideJson(
            schedule.name(),
            planned.kiln().name(),
            log.isPresent() ? "log" : "forecast",
            at,
            moulds,
            door.map(InsideJson.DoorJson::of),
            told.notes(),
            files()),
        page);
    return Answer.DONE;
  }

  /** When all are ready one is drawn: what the others feel of it, if there are others. */
  private Optional<DoorCost> door(Schedule schedule, Fire.Planned planned) {
    if (!(doorSeconds >= 1 && doorSeconds <= LONGEST_DOOR_SECONDS)) {
      throw InputException.in(
          "--door-s",
          "%s s is not possible; expected 1 to 600.".formatted(YamlText.number(doorSeconds)));
    }
    int moulds = planned.charge().moulds().stream().mapToInt(Mould::count).sum();
    double end = planned.forecast().endSeconds().low();
    return planned
        .forecast()
        .workReadySeconds()
        .map(ready -> Math.rint(ready.median()))
        .filter(at -> moulds > 1 && at + doorSeconds < end)
        .map(
            at ->
                DoorCost.of(
                    ForecastRequest.of(schedule, planned.kiln(), planned.charge())
                        .withConditions(planned.conditions()),
                    at,
                    doorSeconds));
  }

  private List<String> files() {
    List<String> files = new ArrayList<>();
    plotPath.ifPresent(path -> files.add(path.toString()));
    curvesPath.ifPresent(path -> files.add(path.toString()));
    traceFile.path().ifPresent(path -> files.add(path.toString()));
    return files;
  }

  private Told byForecast(Fire.Planned planned) {
    double[] grid = planned.forecast().trace().seconds();
    double last = grid[grid.length - 1];
    return new Told(
        planned,
        planned.forecast().inside(),
        second -> planned.forecast().trace().displayCelsiusAt(second).median(),
        last,
        Math.min(last, planned.forecast().endSeconds().median()),
        planned.start().map(StartPlan::start),
        planned.notes());
  }

  private Told fromLog(Schedule schedule, Fire.Planned planned, LogFile.Log log) {
    AlignedLog aligned = AlignedLog.of(logPath.orElseThrow(), log, schedule, planned);
    Readings readings = aligned.readings();
    if (readings.size() < 2 || readings.lastSecond() < TRACE_SECONDS) {
      throw InputException.in(
          "--log",
          "the log is over before the program has begun; expected readings of the firing.");
    }
    requireOfThisFiring(planned, readings);
    List<InsideForecast> inside =
        InsideFromLog.estimate(
            ForecastRequest.of(schedule, planned.kiln(), planned.charge())
                .withConditions(planned.conditions()),
            readings.seconds(),
            readings.celsius());
    List<String> notes = new ArrayList<>(planned.notes());
    notes.addAll(aligned.notes());
    double end = inside.get(0).endSeconds();
    if (end > readings.lastSecond()) {
      notes.add("The log ends before the program does; what is told ends with it.");
    }
    return new Told(
        planned,
        inside,
        second -> at(readings, second),
        readings.lastSecond(),
        Math.min(end, readings.lastSecond()),
        aligned.start(planned),
        notes);
  }

  private static void requireOfThisFiring(Fire.Planned planned, Readings readings) {
    LogOfFiring.strange(planned.forecast(), readings)
        .ifPresent(
            why -> {
              throw InputException.in(
                  "--log", why + "; expected the log of this schedule from its start.");
            });
  }

  /** What a log said at a time: straight lines between readings. */
  private static double at(Readings readings, double second) {
    int i = 0;
    while (i < readings.size() - 1 && readings.second(i + 1) < second) {
      i++;
    }
    if (i == readings.size() - 1 || second <= readings.second(i)) {
      return readings.celsius(i);
    }
    double share = (second - readings.second(i)) / (readings.second(i + 1) - readings.second(i));
    return readings.celsius(i) + share * (readings.celsius(i + 1) - readings.celsius(i));
  }

  private double at(Told told, ZonedDateTime now) {
    if (atText.isEmpty()) {
      return told.endSeconds();
    }
    String text = atText.get();
    double second;
    if (text.startsWith("+")) {
      second =
          HourMinute.parse(text.substring(1))
              .map(Duration::toSeconds)
              .orElseThrow(
                  () ->
                      InputException.in(
                          "--at",
                          "\"%s\" is not a time; expected +H:MM after the start, such as +2:30, or a clock time."
                              .formatted(text)));
    } else {
      ZonedDateTime start =
          told.start()
              .orElseThrow(
                  () ->
                      InputException.in(
                          "--at",
                          "a clock time needs a start; give --start too, or +H:MM after the start."));
      ZonedDateTime at =
          When.exactly(
              "--at",
              text,
              told.planned().kiln().timeZone(),
              "--kiln",
              start,
              start.plusSeconds((long) told.lastSecond()),
              now);
      second = Duration.between(start, at).toSeconds();
    }
    if (second < 0 || second > told.lastSecond()) {
      throw InputException.in(
          "--at",
          "%s lies outside of what is known; expected a moment from the start to +%s."
              .formatted(
                  text,
                  HourMinute.format(
                      Duration.ofMinutes((long) Math.floor(told.lastSecond() / 60)))));
    }
    return second;
  }

  /** 0-based. */
  private int chosen(List<Mould> moulds) {
    if (mouldNumber.isPresent()) {
      int number = mouldNumber.get();
      if (number < 1 || number > moulds.size()) {
        throw InputException.in(
            "--mould",
            "there is no kind number %d; expected 1 to %d.".formatted(number, moulds.size()));
      }
      return number - 1;
    }
    return moulds.indexOf(
        moulds.stream().max(Comparator.comparingDouble(Mould::diameterMetres)).orElseThrow());
  }

  private Optional<InsideWords.Pour> pour(InsideWords words, Fire.Planned planned, double at) {
    Mould mould = words.mould();
    double radius = mould.investmentDiameterMetres() / 2;
    patternMillimetres
        .filter(depth -> !(depth > 0 && depth / 1000 < radius))
        .ifPresent(
            depth -> {
              throw InputException.in(
                  "--pattern-mm",
                  "%s mm lies outside mould %d; expected more than 0 and less than %.0f."
                      .formatted(CastInput.typed(depth), words.inside().mould(), radius * 1000));
            });
    Temperature room = planned.conditions().room().orElse(planned.kiln().room());
    return words.pour(
        planned.charge().investment().orElseThrow(),
        room,
        at,
        patternMillimetres
            .map(depth -> depth / 1000)
            .orElseGet(() -> PourWindow.usualDepthMetres(mould)));
  }

  private List<String> written(
      Schedule schedule, Told told, InsideForecast inside, double at, WhenWords when) {
    List<String> written = new ArrayList<>();
    plotPath.ifPresent(
        path -> {
          MouldFiring middle = inside.middle(at);
          written.add(
              PlotFile.write(
                  path,
                  SectionPlot.of(
                      middle.sectionAt(at),
                      middle.setting(),
                      schedule.unit(),
                      "Mould %d at %s".formatted(inside.mould(), when.full(at)))));
        });
    curvesPath.ifPresent(
        path ->
            written.add(
                PlotFile.write(
                    path,
                    CorePlot.of(
                        new CorePlot.Curves(
                            "mould %d, %s in %s"
                                .formatted(
                                    inside.mould(), schedule.name(), told.planned().kiln().name()),
                            inside,
                            told.lastSecond(),
                            told.display(),
                            logPath.isPresent(),
                            schedule.unit(),
                            told.start())))));
    traceFile.write(() -> trace(told, inside)).ifPresent(written::add);
    return written;
  }

  private static String trace(Told told, InsideForecast inside) {
    StringBuilder out = new StringBuilder(TRACE_HEADER);
    int rows = (int) Math.floor(told.lastSecond() / TRACE_SECONDS);
    for (int row = 0; row <= rows; row++) {
      double second = row * TRACE_SECONDS;
      Band centre = inside.centreCelsiusAt(second);
      double[] cells = {
        second,
        told.display().applyAsDouble(second),
        centre.low(),
        centre.median(),
        centre.high(),
        inside.surfaceCelsiusAt(second).median(),
        inside.band(d -> d.waterShareAt(second)).median()
      };
      for (int i = 0; i < cells.length; i++) {
        out.append(i == 0 ? "" : ",")
            .append(YamlText.number(Math.rint(cells[i] * THOUSANDTHS) / THOUSANDTHS));
      }
      out.append("\r\n");
    }
    return out.toString();
  }
}
