package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.BodyFile;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.BodyJson;
import org.heatwright.mould.BodyHistory;
import org.heatwright.mould.BodyMaterials;
import org.heatwright.mould.BodyProbe;
import org.heatwright.mould.BodyShape;
import org.heatwright.mould.BodySolver;
import org.heatwright.schedule.HourMinute;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(BodyJson.class)
@Command(
    name = "body",
    description = {
      "Says how heat goes through a solid of revolution: a mould, a block, a bar.",
      "Drying and inversions, radiation, a cavity and a steel ring are in it."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright body mould.yaml",
      "  heatwright body mould.yaml --trace inside.csv",
      "  heatwright body mould.yaml --material my-powder.yaml --json"
    })
final class BodyCommand implements Callable<Integer> {

  /** Its columns before those of places that the file adds. */
  static final String TRACE_HEADER =
      "time_s" + BodyProbe.USUAL.stream().map(p -> "," + column(p)).collect(Collectors.joining());

  private static final int ROWS = 13;

  @Parameters(paramLabel = "BODY", description = "Body file.")
  private Path bodyPath;

  @Option(
      names = "--material",
      paramLabel = "M",
      description = "Material file, in place of the body's own material.")
  private Optional<Path> materialPath;

  @Option(
      names = "--trace",
      paramLabel = "OUT.csv",
      description = "Write the readings there; only another trace is replaced.")
  @Written
  private Optional<Path> tracePath;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  BodyCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    tracePath.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.TRACE));
    BodyFile.Content content = Input.body(bodyPath, materialPath);
    double end = end(content);
    List<BodyProbe> probes = new ArrayList<>(BodyProbe.USUAL);
    content.probes().stream().filter(p -> !probes.contains(p)).forEach(probes::add);
    BodyHistory history =
        BodyHistory.of(
            content.body(),
            content.surroundings(),
            end,
            content.everySeconds(),
            probes,
            BodySolver.Accuracy.FINE);
    Optional<String> written =
        tracePath.map(path -> Output.write(path, Output.Kind.TRACE, trace(history)));
    Page page = page(content, history, end);
    written.ifPresent(sentence -> page.blank().line(sentence));
    answer.give(
        surroundings, BodyJson.of(content, history, end, tracePath.map(Path::toString)), page);
    return Answer.DONE;
  }

  /**
   * The file's own end, or where its surroundings are last told. Surroundings that only step do not
   * tell an end: then until the body has come to their temperature, in whole hours.
   */
  private static double end(BodyFile.Content content) {
    if (content.endSeconds().isPresent()) {
      return content.endSeconds().getAsDouble();
    }
    if (content.lastPointSeconds() > content.everySeconds()) {
      return content.lastPointSeconds();
    }
    return BodyHistory.equalisedSeconds(content.body(), content.surroundings());
  }

  /** The four usual columns come first whatever the file lists, as programs expect them. */
  static String trace(BodyHistory history) {
    StringBuilder out = new StringBuilder(TRACE_HEADER);
    List<BodyProbe> probes = history.probes();
    probes
        .subList(BodyProbe.USUAL.size(), probes.size())
        .forEach(p -> out.append(',').append(column(p)));
    out.append("\r\n");
    double[] seconds = history.seconds();
    List<double[]> columns = history.probes().stream().map(history::celsius).toList();
    for (int row = 0; row < seconds.length; row++) {
      out.append(YamlText.number(Math.rint(seconds[row] * 1000) / 1000));
      for (double[] column : columns) {
        out.append(',').append(YamlText.number(Math.rint(column[row] * 1e4) / 1e4));
      }
      out.append("\r\n");
    }
    return out.toString();
  }

  private static String column(BodyProbe probe) {
    return probe.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_") + "_c";
  }

  // ---- for people

  private static Page page(BodyFile.Content content, BodyHistory history, double end) {
    Page page = new Page();
    page.line(words(content));
    page.line("Material: %s.".formatted(material(content)));
    page.blank();
    List<BodyProbe> shown = content.probes();
    page.raw("%8s %9s".formatted("h:mm", "around"));
    for (BodyProbe probe : shown.subList(0, Math.min(6, shown.size()))) {
      page.raw(" %10s".formatted(probe.name()));
    }
    page.raw(" °C\n");
    double[] seconds = history.seconds();
    int rows = Math.min(ROWS, seconds.length);
    for (int r = 0; r < rows; r++) {
      int i = (int) Math.round((double) r * (seconds.length - 1) / Math.max(1, rows - 1));
      page.raw(
          "%8s %9.1f"
              .formatted(
                  HourMinute.format(Duration.ofSeconds(Math.round(seconds[i]))),
                  content.surroundings().at(seconds[i])));
      for (BodyProbe probe : shown.subList(0, Math.min(6, shown.size()))) {
        page.raw(" %10.1f".formatted(history.celsius(probe)[i]));
      }
      page.raw("\n");
    }
    page.blank();
    page.line(
        "It took up %s kJ; the hottest place was at %s °C."
            .formatted(
                YamlText.number(Math.rint(history.heatTakenJoules() / 100) / 10),
                YamlText.number(Math.rint(history.hottestCelsius() * 10) / 10)));
    return page;
  }

  private static String words(BodyFile.Content content) {
    BodyShape shape = content.body().shape();
    return "A body %s mm across and %s mm high%s%s, bottom %s, from %s °C."
        .formatted(
            millimetres(shape.diameterMetres()),
            millimetres(shape.heightMetres()),
            shape
                .cavity()
                .map(
                    c ->
                        ", cavity %s mm across and %s mm deep"
                            .formatted(
                                millimetres(c.diameterMetres()), millimetres(c.depthMetres())))
                .orElse(""),
            shape
                .ring()
                .map(
                    r ->
                        ", ring of %s %s mm thick"
                            .formatted(r.material().name(), millimetres(r.thicknessMetres())))
                .orElse(""),
            shape.bottom().name().toLowerCase(Locale.ROOT),
            YamlText.number(content.body().start().celsius()));
  }

  private static String material(BodyFile.Content content) {
    var material = content.body().material();
    return material.name()
        + " ("
        + material.origin().words()
        + ")"
        + BodyMaterials.named(material.name())
            .filter(k -> k.material().equals(material))
            .map(
                k ->
                    ", meant for %s to %s °C; conductivity may be off by %s %%, heat by %s %%"
                        .formatted(
                            YamlText.number(k.fromCelsius()),
                            YamlText.number(k.toCelsius()),
                            YamlText.number(Math.rint(k.conductivityShare() * 100)),
                            YamlText.number(Math.rint(k.heatShare() * 100))))
            .orElse("");
  }

  private static String millimetres(double metres) {
    return YamlText.number(Math.rint(metres * 1e4) / 10);
  }
}
