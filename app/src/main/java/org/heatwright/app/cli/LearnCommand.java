package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.json.BandJson;
import org.heatwright.app.json.LearnJson;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Learned;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.learn.DatedFiring;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Unseen;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(LearnJson.class)
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
      "      --log b.csv --schedule s.yaml --firing b.yaml -o anchor-known.yaml",
      "  heatwright learn anchor.yaml --log may.csv --schedule may.yaml --plots may"
    })
final class LearnCommand implements Callable<Integer> {

  @Mixin private Logged logged;

  @Option(
      names = "-o",
      paramLabel = "K2",
      description = "Writes the kiln file with what it taught.")
  @Written(inPlace = true)
  private Optional<Path> output;

  @Option(
      names = "--plots",
      paramLabel = "DIR",
      description = "Draws each log against its forecast, and what was learned, into that folder.")
  @Written
  private Optional<Path> plotFolder;

  @Option(names = "--png", description = "Draws the plots as PNG; usual: SVG.")
  private boolean png;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  LearnCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Kiln kiln = logged.kiln();
    output.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.KILN));
    Optional<LearnPlots> plots =
        plotFolder.map(folder -> new LearnPlots(folder, png, logged.logs()));
    Watched watched = logged.read(kiln);
    List<String> notes = new ArrayList<>(watched.notes());
    List<DatedFiring> firings = watched.dated(kiln);
    if (!watched.undated().isEmpty()
        && (watched.undated().size() < firings.size() || changed(kiln))) {
      notes.add(
          "%s: no date in the log and no --date; counted as after everything in the kiln's history."
              .formatted(String.join(", ", watched.undated())));
    }
    for (LoggedFiring firing : watched.firings()) {
      firing
          .silent()
          .ifPresent(
              why -> {
                throw InputException.in(firing.name(), why);
              });
    }
    Lesson lesson = KilnLearner.learnDated(kiln, firings);
    lesson.openings().forEach(o -> notes.add(o.firing() + ": " + o.words()));
    if (lesson.firings().isEmpty()) {
      throw InputException.in(watched.firings().get(0).name(), nothing(kiln, lesson));
    }
    LocalDate today =
        LocalDate.now(
            surroundings.clock().withZone(kiln.timeZone().orElse(ZoneId.systemDefault())));
    Kiln known =
        kiln.withLearned(
            new Learned(today, lesson.firings().size(), Learned.ENGINE, lesson.beliefs()));
    Optional<String> written =
        output.map(path -> Output.write(path, Output.Kind.KILN, KilnFile.write(known)));
    List<Path> drawn =
        plots.map(p -> p.write(known, lesson, watched.firings(), watched.logs())).orElse(List.of());
    LearnJson record =
        LearnJson.of(
            kiln,
            lesson,
            watched.firings().get(0).schedule().unit(),
            watched.started(kiln),
            unseen(known, lesson, watched),
            notes,
            drawn.stream().map(Path::toString).toList());
    Page page = page(record, written);
    if (!drawn.isEmpty()) {
      page.blank().line(LearnPlots.words(drawn));
    }
    answer.give(surroundings, record, page);
    return Answer.DONE;
  }

  /** What the displays could not have shown, of the kiln as it is known now. */
  private static Map<String, List<Unseen>> unseen(Kiln known, Lesson lesson, Watched watched) {
    Map<String, List<Unseen>> all = new HashMap<>();
    for (LoggedFiring firing : watched.firings()) {
      if (lesson.firings().contains(firing.name())) {
        all.put(firing.name(), Unseen.in(known, firing));
      }
    }
    return all;
  }

  /** Why nothing was learned. */
  private static String nothing(Kiln kiln, Lesson lesson) {
    return ("nothing was learned: on this schedule no kiln like '%s' shows such a display (the best"
            + " fit misses it by %.0f K). Expected the schedule that ran, with what happened that"
            + " day in --firing; or the thermocouple had slipped.")
        .formatted(kiln.name(), lesson.leftOut().get(0).misfitKelvins());
  }

  private static boolean changed(Kiln kiln) {
    return kiln.history().stream().anyMatch(event -> event.what() != LifeEvent.What.NOTE);
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
    for (LearnJson.AnomalyJson anomaly : record.anomalies()) {
      page.blank()
          .hanging(
              "",
              "%s: %s It was kept out of what was learned. %s"
                  .formatted(anomaly.log(), anomaly.sentence(), anomaly.check()));
    }
    if (!record.notShown().isEmpty()) {
      page.blank();
    }
    for (LearnJson.UnseenJson unseen : record.notShown()) {
      page.hanging("", "%s: %s".formatted(unseen.log(), unseen.sentence()));
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
    if (!record.stillNameplate().isEmpty()) {
      page.blank();
      record.stillNameplate().forEach(sentence -> page.hanging("", sentence));
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
