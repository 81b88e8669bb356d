package org.heatwright.app.tonight;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.heatwright.app.files.Firing;
import org.heatwright.app.files.FiringFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.plot.WatchedFiring;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.LogAlignment;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.schedule.Schedule;

/**
 * The table of {@code docs/performance.md} on example kilns: folders of a {@code kiln.yaml}, logs
 * to learn from in {@code train} and firings with their truth in {@code test}. One row a forecast.
 */
final class ExampleKilnsStudy {

  /** Which of the logs are learned from, in turn; none: the nameplate alone. */
  private static final int[][] LESSONS = {{}, {1}, {2}, {3}, {1, 2}, {1, 2, 3}};

  private static final int FIVE_MINUTES = 30;

  private ExampleKilnsStudy() {}

  /**
   * Prints the rows.
   *
   * @param folders of kilns
   */
  public static void main(String[] folders) throws IOException {
    for (String folder : folders) {
      Path path = Path.of(folder);
      Kiln kiln = KilnFile.read(Files.readString(path.resolve("kiln.yaml")), "kiln.yaml");
      for (int[] lesson : LESSONS) {
        Kiln known = lesson.length == 0 ? kiln : taught(kiln, path, lesson);
        for (Path test : folders(path.resolve("test"))) {
          System.out.println(row(known, test, lesson));
        }
      }
    }
  }

  private static Kiln taught(Kiln kiln, Path path, int[] logs) throws IOException {
    List<LoggedFiring> firings = new ArrayList<>();
    for (int number : logs) {
      Path folder = path.resolve("train/f" + number);
      Firing day = firing(folder);
      LogFile.Log log = LogFile.read(text(folder, "log.csv"), "log.csv");
      LoggedFiring firing =
          new LoggedFiring(
              "f" + number,
              schedule(folder),
              day.conditions(),
              day.load().orElse(Charge.empty()),
              WatchedFiring.readings(log));
      firings.add(LogAlignment.of(kiln, WatchedFiring.opened(firing, log)).firing());
    }
    Lesson lesson = KilnLearner.learn(kiln, firings);
    return kiln.withLearned(
        new Learned(LocalDate.of(2026, 11, 1), logs.length, Learned.ENGINE, lesson.beliefs()));
  }

  private static String row(Kiln kiln, Path folder, int[] lesson) throws IOException {
    Firing day = firing(folder);
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(schedule(folder), kiln, day.load().orElse(Charge.empty()))
                .withConditions(day.conditions()));
    JsonNode truth = new ObjectMapper().readTree(text(folder, "truth.json"));
    double ended = truth.get("programEnd_s").asDouble();
    double energy = truth.get("energy_kwh").asDouble();
    List<LogFile.Row> rows =
        LogFile.read(text(folder, "log.csv"), "log.csv").rows().stream()
            .filter(row -> row.seconds() <= ended)
            .toList();
    double[] miss = new double[rows.size()];
    int inside = 0;
    for (int i = 0; i < miss.length; i++) {
      Band band = forecast.trace().displayCelsiusAt(rows.get(i).seconds());
      double shown = rows.get(i).chamberCelsius();
      miss[i] = band.median() - shown;
      // Bands are read in whole degrees, rounded outward.
      inside += shown >= Math.floor(band.low()) && shown <= Math.ceil(band.high()) ? 1 : 0;
    }
    Band end = forecast.endSeconds();
    Band used = forecast.energyKilowattHours();
    return String.format(
        Locale.ROOT,
        "| %s %s | %s | %.0f | %.0f (%.0f to %.0f) | %+.1f %% | %.0f s | %+.1f %% (%s) | %.1f | %.1f | %.0f %% |",
        folder.getParent().getParent().getFileName(),
        folder.getFileName(),
        lesson.length == 0 ? "nameplate" : "log " + Arrays.toString(lesson),
        ended,
        end.median(),
        end.low(),
        end.high(),
        100 * (end.median() / ended - 1),
        truth
            .at("/floor/segmentTimeSd_s")
            .get(truth.at("/floor/segmentTimeSd_s").size() - 1)
            .asDouble(),
        100 * (used.median() / energy - 1),
        used.contains(energy) ? "in its band" : "out of it",
        fiveMinuteRmse(miss),
        truth.at("/floor/traceRmse5min_k").asDouble(),
        100.0 * inside / miss.length);
  }

  /** Root mean square of means over five minutes; the last may be over less. */
  private static double fiveMinuteRmse(double[] miss) {
    double sum = 0;
    int count = 0;
    for (int from = 0; from < miss.length; from += FIVE_MINUTES) {
      int to = Math.min(miss.length, from + FIVE_MINUTES);
      double mean = Arrays.stream(miss, from, to).average().orElseThrow();
      sum += mean * mean;
      count++;
    }
    return Math.sqrt(sum / count);
  }

  private static Firing firing(Path folder) throws IOException {
    return FiringFile.read(text(folder, "firing.yaml"), "firing.yaml");
  }

  private static Schedule schedule(Path folder) throws IOException {
    return ScheduleFile.read(text(folder, "schedule.yaml"), "schedule.yaml");
  }

  private static String text(Path folder, String name) throws IOException {
    return Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
  }

  private static List<Path> folders(Path path) throws IOException {
    try (Stream<Path> all = Files.list(path)) {
      return all.sorted().toList();
    }
  }
}
