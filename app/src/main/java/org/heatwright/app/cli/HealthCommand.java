package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.HealthJson;
import org.heatwright.app.plot.HealthPlot;
import org.heatwright.kiln.Kiln;
import org.heatwright.learn.KilnHealth;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

@Answers(HealthJson.class)
@Command(
    name = "health",
    description = {
      "Follows a kiln over its firings: power of the elements, heat lost, lag of the thermocouple; what to expect and what to look at.",
      "Two logs with their dates or more. The kiln file's history (new elements, a new thermocouple, a new door seal) begins anew what it touches."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright health anchor.yaml --log may.csv --schedule s.yaml \\",
      "      --log june.csv --schedule s.yaml --plot anchor-health.svg",
      "  heatwright health anchor.yaml --log a.csv --schedule s.yaml --date 2026-05-01 \\",
      "      --log b.csv --schedule s.yaml --date 2026-09-12"
    })
final class HealthCommand implements Callable<Integer> {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ROOT);

  @Mixin private Logged logged;

  @Option(
      names = "--plot",
      paramLabel = "P",
      description = "Draws it; a name that ends in .svg or .png.")
  @Written
  private Optional<Path> plotPath;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  HealthCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Kiln kiln = logged.kiln();
    plotPath.ifPresent(PlotFile::require);
    Watched watched = logged.read(kiln);
    if (watched.firings().size() < 2) {
      throw InputException.in("--log", "given once; health over time takes two firings or more.");
    }
    if (!watched.undated().isEmpty()) {
      throw InputException.in(
          watched.undated().get(0),
          "its rows count seconds and have no date; expected --date, one a log, such as --date"
              + " 2026-05-01.");
    }
    KilnHealth health = KilnHealth.of(kiln, watched.dated(kiln));
    Optional<String> written =
        plotPath.map(path -> PlotFile.write(path, HealthPlot.of(kiln, health)));
    List<String> notes = new ArrayList<>(health.notes());
    notes.addAll(watched.notes());
    HealthJson record = HealthJson.of(kiln, health, notes, plotPath.map(Path::toString));
    answer.give(surroundings, record, page(kiln, health, notes, written));
    return Answer.DONE;
  }

  private static Page page(
      Kiln kiln, KilnHealth health, List<String> notes, Optional<String> written) {
    Page page = new Page();
    int used = health.lesson().firings().size();
    page.line("%s, %d %s:".formatted(kiln.name(), used, used == 1 ? "firing" : "firings")).blank();
    health.findings().forEach(finding -> page.hanging("  ", finding.sentence()).blank());
    page.line("                 power            heat lost        lag of the");
    page.line("                 of the elements  at the top       thermocouple");
    int firings = health.points().size() / KilnHealth.Aspect.values().length;
    for (int f = 0; f < firings; f++) {
      StringBuilder line =
          new StringBuilder("  %-15s".formatted(DAY.format(health.points().get(f).date())));
      for (int a = 0; a < KilnHealth.Aspect.values().length; a++) {
        line.append("%-17s".formatted(cell(health.points().get(a * firings + f))));
      }
      page.raw(line.toString().stripTrailing() + "\n");
    }
    page.hanging(
        "  ",
        "In percent of the first firing with the same elements, door seal or thermocouple; nine"
            + " times in ten inside; - where the firings do not tell.");
    if (!notes.isEmpty()) {
      page.blank();
      notes.forEach(note -> page.hanging("note  ", note));
    }
    written.ifPresent(sentence -> page.blank().line(sentence));
    return page;
  }

  private static String cell(KilnHealth.Point point) {
    return !point.told()
        ? "-"
        : point.relative().low() == point.relative().high()
            ? "100"
            : "%d to %d"
                .formatted(
                    Math.round(100 * point.relative().low()),
                    Math.round(100 * point.relative().high()));
  }
}
