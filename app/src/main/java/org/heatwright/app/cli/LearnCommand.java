package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.files.Firing;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.json.BandJson;
import org.heatwright.app.json.LearnJson;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
    name = "learn",
    description = {
      "Fits a kiln to the logs of its firings, and says what changed.",
      "A log of a few readings with their times is enough to begin with."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright learn anchor.yaml --log may.csv --schedule may.yaml \\",
      "      -o anchor-known.yaml",
      "  heatwright learn anchor.yaml --log a.csv --schedule s.yaml --firing a.yaml \\",
      "      --log b.csv --schedule s.yaml --firing b.yaml -o anchor-known.yaml"
    })
final class LearnCommand implements Callable<Integer> {

  @Parameters(paramLabel = "K", description = "Kiln file.")
  private Path kilnPath;

  @Option(
      names = "--log",
      required = true,
      paramLabel = "L",
      description = "Log of a firing (CSV); may be repeated.")
  private List<Path> logPaths;

  @Option(
      names = "--schedule",
      required = true,
      paramLabel = "S",
      description = "Schedule that ran, one a log, in the order of the logs.")
  private List<Path> schedulePaths;

  @Option(
      names = "--firing",
      paramLabel = "F",
      description = "What was so on that day, one a log, or none at all.")
  private List<Path> firingPaths = new ArrayList<>();

  @Option(
      names = "-o",
      paramLabel = "K2",
      description = "Writes the kiln file with what it taught.")
  private Optional<Path> output;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  LearnCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    requireOneEach("--schedule", schedulePaths.size());
    if (!firingPaths.isEmpty()) {
      requireOneEach("--firing", firingPaths.size());
    }
    Kiln kiln = Input.kiln(kilnPath).kiln();
    output.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.KILN));
    List<String> notes = new ArrayList<>();
    List<LoggedFiring> firings = new ArrayList<>();
    for (int i = 0; i < logPaths.size(); i++) {
      Path path = logPaths.get(i);
      LogFile.Log log = Input.log(path);
      String name = path.toString();
      log.remarks().forEach(remark -> notes.add(name + ": " + remark));
      Firing firing = firingPaths.isEmpty() ? Firing.usual() : Input.firing(firingPaths.get(i));
      if (firing.load().isEmpty()) {
        notes.add(name + ": no load is stated; taken as an empty kiln.");
      }
      firings.add(
          new LoggedFiring(
              name,
              Input.schedule(schedulePaths.get(i)),
              firing.conditions(),
              firing.load().orElse(Charge.empty()),
              Readings.of(
                  log.rows().stream().mapToDouble(LogFile.Row::seconds).toArray(),
                  log.rows().stream().mapToDouble(LogFile.Row::chamberCelsius).toArray())));
    }
    Lesson lesson = KilnLearner.learn(kiln, firings);
    LocalDate today =
        LocalDate.now(
            surroundings.clock().withZone(kiln.timeZone().orElse(ZoneId.systemDefault())));
    Kiln known =
        kiln.withLearned(
            new Learned(today, lesson.firings().size(), Learned.ENGINE, lesson.beliefs()));
    Optional<String> written =
        output.map(path -> Output.write(path, Output.Kind.KILN, KilnFile.write(known)));
    LearnJson record = LearnJson.of(kiln, lesson, notes);
    answer.give(surroundings, record, page(record, written));
    return Answer.DONE;
  }

  private void requireOneEach(String option, int given) {
    if (given != logPaths.size()) {
      throw InputException.in(
          option,
          "given %d times for %d logs; expected one a log, in the order of the logs."
              .formatted(given, logPaths.size()));
    }
  }

  private static Page page(LearnJson record, Optional<String> written) {
    Page page = new Page();
    page.line(
        "%s, learned from %s:"
            .formatted(
                record.kiln(),
                record.firings().size() == 1 ? "1 firing" : record.firings().size() + " firings"));
    for (LearnJson.FiringJson firing : record.firings()) {
      page.hanging(
          "  ",
          "%s: the fit is within %.0f K of its display"
              .formatted(firing.log(), Math.max(1, firing.misfitKelvin())));
    }
    for (LearnJson.FiringJson firing : record.leftOut()) {
      page.hanging(
          "  ",
          ("%s: left out, the fit misses its display by %.0f K. Something in it is not told: a mains"
                  + " cut, a door, another schedule, a slipped thermocouple.")
              .formatted(firing.log(), firing.misfitKelvin()));
    }
    page.blank().line("                         believed before            now");
    List<String> untold = new ArrayList<>();
    for (LearnJson.QuantityJson quantity : record.quantities()) {
      if (quantity.told()) {
        page.line(
            "  %-22s %-26s %s"
                .formatted(quantity.name(), band(quantity.before()), band(quantity.after())));
      } else {
        untold.add(quantity.name());
      }
    }
    if (!untold.isEmpty()) {
      page.blank()
          .hanging(
              "",
              "Not told by these firings, still the nameplate's: "
                  + String.join(", ", untold)
                  + ".");
    }
    record.notes().forEach(note -> page.hanging("note  ", note));
    written.ifPresent(sentence -> page.blank().line(sentence));
    return page;
  }

  private static String band(BandJson band) {
    return "%s (%s to %s)"
        .formatted(figure(band.median()), figure(band.low()), figure(band.high()));
  }

  /** Three figures, plainly written. */
  private static String figure(double value) {
    return new java.math.BigDecimal(value)
        .round(new java.math.MathContext(3))
        .stripTrailingZeros()
        .toPlainString();
  }
}
