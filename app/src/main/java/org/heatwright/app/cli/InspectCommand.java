package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.json.InspectJson;
import org.heatwright.app.report.KilnOnKeypad;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.Outcome;
import org.heatwright.work.Work;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(InspectJson.class)
@Command(
    name = "inspect",
    description = {
      "Looks a schedule over before the heat: stop, warn, note.",
      "The more it is told, the more it checks. Exit code 1 if anything says stop."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright inspect schedule.yaml",
      "  heatwright inspect schedule.yaml --kiln anchor.yaml --keypad gull.yaml \\",
      "      --work work.yaml"
    })
final class InspectCommand implements Callable<Integer> {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Option(names = "--kiln", paramLabel = "K", description = "Kiln file; adds a forecast.")
  private Optional<Path> kilnPath;

  @Option(names = "--keypad", paramLabel = "P", description = "Keypad file.")
  private Optional<Path> keypadPath;

  @Option(names = "--work", paramLabel = "W", description = "Work file.")
  private Optional<Path> workPath;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  InspectCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Schedule schedule = Input.schedule(schedulePath);
    Optional<Kiln> alone = kilnPath.map(Input::kiln).map(KilnFile.Content::kiln);
    Optional<Keypad> keypad = keypadPath.map(Input::keypad);
    Optional<Kiln> kiln = alone.map(k -> KilnOnKeypad.of(k, keypad));
    Optional<Work> work = workPath.map(Input::work);
    Optional<Composition> composed =
        kiln.flatMap(k -> work.map(w -> Composer.compose(w, k, keypad)));
    Optional<Forecast> forecast =
        kiln.map(
            k ->
                Forecaster.forecast(
                    ForecastRequest.of(
                        schedule, k, composed.map(Composition::charge).orElse(Charge.empty()))));
    List<Finding> inspected =
        Inspector.inspect(
            new Inspection(
                schedule, kiln, keypad, work.map(w -> Judging.demands(w, kiln, keypad)), forecast));
    List<Finding> findings =
        Outcome.among(
            inspected,
            composed.map(c -> c.outcomes(schedule, forecast.orElseThrow())).orElse(List.of()));
    Page page = new Page();
    page.line(schedule.name() + ": " + FindingWords.sum(findings));
    FindingWords.print(findings, page);
    answer.give(surroundings, InspectJson.of(schedule, findings), page);
    return FindingWords.stops(findings) ? Answer.STOP : Answer.DONE;
  }
}
