package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.LikelyJson;
import org.heatwright.app.json.SinterFitJson;
import org.heatwright.inspect.Wording;
import org.heatwright.schedule.HourMinute;
import org.heatwright.work.SinterWork;
import org.heatwright.work.sinter.ClayFacts;
import org.heatwright.work.sinter.CurveBelief;
import org.heatwright.work.sinter.Likely;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

@Answers(SinterFitJson.class)
@Command(
    name = "fit",
    description = {
      "What the measured strips of a work file (tests) teach of its clay: density and shrinkage after the usual firings, before and after the strips, and how thin that is."
    },
    footerHeading = "%nExamples:%n",
    footer = {"  heatwright sinter fit rings.yaml", "  heatwright sinter fit rings.yaml --json"})
final class SinterFitCommand implements Callable<Integer> {

  @Parameters(paramLabel = "WORK", description = "Work file of metal clay.")
  private Path workPath;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  SinterFitCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    SinterWork work = SinterInput.work(workPath);
    Optional<CurveBelief> fitted = work.belief();
    if (fitted.isEmpty()) {
      throw InputException.in(
          String.valueOf(workPath.getFileName()),
          "%s has no sintering curve, as some liquid may form: nothing can be fitted."
              .formatted(work.clay().words()));
    }
    CurveBelief after = fitted.get();
    CurveBelief before = CurveBelief.of(after.facts(), List.of()).orElseThrow();
    String said = after.basis();
    Page page = new Page();
    page.line("%s: %s".formatted(Wording.capital(work.clay().words()), said)).blank();
    List<SinterFitJson.RowJson> rows = new ArrayList<>();
    page.raw("  %-16s %-18s %-18s %s%n".formatted("firing", "shrinkage", "density", "untested"));
    for (ClayFacts.Row row : after.facts().rows()) {
      Likely shrinkage = after.shrinkage(row.heat());
      Likely density = after.density(row.heat());
      String firing =
          "%s °C %s".formatted(YamlText.number(row.at().celsius()), HourMinute.format(row.hold()));
      page.raw(
          "  %-16s %-18s %-18s %s%n"
              .formatted(
                  firing,
                  percent(shrinkage),
                  percent(density),
                  percent(before.shrinkage(row.heat()))));
      rows.add(
          new SinterFitJson.RowJson(
              row.at().celsius(),
              row.hold().toMinutes(),
              LikelyJson.of(shrinkage.map(share -> 100 * share)),
              LikelyJson.of(density.map(share -> 100 * share))));
    }
    Likely q = after.activation().map(joules -> joules / 1000);
    Likely untested = before.activation().map(joules -> joules / 1000);
    page.blank()
        .line(
            "Activation energy %.0f to %.0f kJ/mol (untested %.0f to %.0f)%s. It is this clay's in this kiln, no fact of the material."
                .formatted(
                    q.low(),
                    q.high(),
                    untested.low(),
                    untested.high(),
                    after.tellsActivation() ? "" : ": the strips do not tell it"));
    answer.give(
        surroundings,
        new SinterFitJson(
            work.clay().word(),
            after.tests(),
            after.firings(),
            after.tellsActivation(),
            after.strained(),
            LikelyJson.of(q),
            rows,
            said),
        page);
    return Answer.DONE;
  }

  private static String percent(Likely share) {
    return "%.1f to %.1f %%".formatted(100 * share.low(), 100 * share.high());
  }
}
