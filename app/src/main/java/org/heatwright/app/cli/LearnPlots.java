package org.heatwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.plot.FiringPlot;
import org.heatwright.app.plot.LearnedPlot;
import org.heatwright.app.plot.ResidualPlot;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LoggedFiring;

/** The plots of one lesson, in a folder: two for each log, and what was learned. */
final class LearnPlots {

  private final List<Path> forecasts = new ArrayList<>();
  private final List<Path> residuals = new ArrayList<>();
  private final Path learned;

  /** Makes the folder if it is not there, and refuses before the fit what could not be written. */
  LearnPlots(Path folder, boolean png, List<Path> logs) {
    try {
      if (!Files.isDirectory(folder)) {
        Files.createDirectory(folder);
      }
    } catch (IOException e) {
      throw InputException.in(
          folder.toString(),
          "the folder for the plots cannot be made; expected a folder, or a new name in one that is"
              + " there.");
    }
    String ending = png ? ".png" : ".svg";
    Set<String> taken = new LinkedHashSet<>();
    for (Path log : logs) {
      String name = stem(log);
      for (int number = 2; !taken.add(name); number++) {
        name = stem(log) + "-" + number;
      }
      forecasts.add(folder.resolve(name + "-forecast" + ending));
      residuals.add(folder.resolve(name + "-missed" + ending));
    }
    learned = folder.resolve("learned" + ending);
    all().forEach(PlotFile::require);
  }

  private static String stem(Path log) {
    return String.valueOf(log.getFileName()).replaceFirst("\\.[^.]*$", "");
  }

  private List<Path> all() {
    List<Path> all = new ArrayList<>();
    for (int i = 0; i < forecasts.size(); i++) {
      all.add(forecasts.get(i));
      all.add(residuals.get(i));
    }
    all.add(learned);
    return all;
  }

  /**
   * Draws and writes.
   *
   * @param known the kiln with what was learned
   * @param firings one a log, in their order
   * @return what was written
   */
  List<Path> write(Kiln known, Lesson lesson, List<LoggedFiring> firings, List<LogFile.Log> logs) {
    List<Path> written = new ArrayList<>();
    for (int i = 0; i < firings.size(); i++) {
      LoggedFiring firing = firings.get(i);
      LogFile.Log log = logs.get(i);
      FiringConditions asItWas = firing.asItWas();
      Forecast forecast =
          Forecaster.forecast(
              ForecastRequest.of(firing.schedule(), known, firing.charge())
                  .withConditions(asItWas));
      boolean used = lesson.firings().contains(firing.name());
      WatchedFiring watched =
          new WatchedFiring(
                  forecast,
                  used
                      ? "The forecast has learned from this log."
                      : "This log was left out of what was learned.",
                  Optional.of(firing.readings()),
                  firing.schedule().unit(),
                  known.timeZone().flatMap(zone -> WatchedFiring.start(log, zone)),
                  WatchedFiring.happenings(asItWas, Optional.of(log)))
              .with(WatchedFiring.happenings(lesson.happened(firing.name())));
      PlotFile.write(forecasts.get(i), FiringPlot.of(watched));
      written.add(forecasts.get(i));
      if (watched.comparable()) {
        PlotFile.write(residuals.get(i), ResidualPlot.of(watched));
        written.add(residuals.get(i));
      }
    }
    PlotFile.write(
        learned,
        LearnedPlot.of(known.name(), lesson.firings().size(), lesson.beliefs(), lesson.untold()));
    written.add(learned);
    return written;
  }

  /** One sentence. */
  static String words(List<Path> written) {
    return "Plots written: %s."
        .formatted(String.join(", ", written.stream().map(Path::toString).toList()));
  }
}
