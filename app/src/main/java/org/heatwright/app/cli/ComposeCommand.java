package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.YamlValue;
import org.heatwright.app.json.ComposeJson;
import org.heatwright.app.report.KilnOnKeypad;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.HourMinute;
import org.heatwright.work.Caution;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.Moment;
import org.heatwright.work.Reason;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(ComposeJson.class)
@Command(
    name = "compose",
    description = "Makes a schedule for a piece of work, every number with its reason.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright compose work.yaml --kiln anchor.yaml",
      "  heatwright compose work.yaml --kiln anchor.yaml --keypad gull.yaml \\",
      "      -o schedule.yaml"
    })
final class ComposeCommand implements Callable<Integer> {

  @Parameters(paramLabel = "WORK", description = "Work file.")
  private Path workPath;

  @Option(names = "--kiln", required = true, paramLabel = "K", description = "Kiln file.")
  private Path kilnPath;

  @Option(
      names = "--keypad",
      paramLabel = "P",
      description = "Keypad file: its unit and limits are kept to.")
  private Optional<Path> keypadPath;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "S",
      description =
          "Write the schedule there. A schedule that is there already is kept under its name with ~"
              + " at the end; any other file is left alone.")
  @Written
  private Optional<Path> output;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  ComposeCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    output.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.SCHEDULE));
    Kiln alone = Input.kiln(kilnPath).kiln();
    Optional<Keypad> keypad = keypadPath.map(Input::keypad);
    Kiln kiln = KilnOnKeypad.of(alone, keypad);
    Composition composition = Composer.compose(Input.work(workPath), kiln, keypad);
    Inspection inspection =
        Inspection.of(composition.schedule()).in(kiln).forWork(composition.demands());
    List<Finding> findings = Inspector.inspect(keypad.map(inspection::on).orElse(inspection));
    Optional<String> written =
        output.map(
            path ->
                Output.write(
                    path, Output.Kind.SCHEDULE, ScheduleFile.write(composition.schedule())));
    answer.give(
        surroundings,
        ComposeJson.of(composition, findings),
        page(composition, kiln, findings, written));
    return FindingWords.stops(findings) ? Answer.STOP : Answer.DONE;
  }

  private static Page page(
      Composition composition, Kiln kiln, List<Finding> findings, Optional<String> written) {
    Page page = new Page();
    page.line("%s for %s".formatted(composition.schedule().name(), kiln.name()));
    ScheduleWords.print(composition.schedule(), page);
    page.blank().line("Why:");
    for (Reason reason : composition.reasons()) {
      String place = reason.segment() == 0 ? "" : String.valueOf(reason.segment());
      page.hanging("%3s  ".formatted(place), reasonWords(reason));
    }
    if (!composition.moments().isEmpty()) {
      page.blank().line("To do, and until when to change one's mind:");
      for (Moment moment : composition.moments()) {
        page.hanging("  - ", momentWords(moment));
      }
    }
    if (!composition.cautions().isEmpty()) {
      page.blank().line("Before the heat:");
      for (Caution caution : composition.cautions()) {
        page.hanging("  - ", caution.message());
      }
    }
    page.blank().line("Inspection: " + FindingWords.sum(findings));
    FindingWords.print(findings, page);
    written.ifPresent(sentence -> page.blank().line(sentence));
    return page;
  }

  private static String reasonWords(Reason reason) {
    String range = reason.range().isEmpty() ? "" : "; " + reason.range();
    return "%s %s (%s): %s%s. [%s]"
        .formatted(
            YamlValue.word(reason.part()),
            reason.value(),
            reason.purpose(),
            stripped(reason.rule()),
            stripped(range),
            reason.origin().words());
  }

  private static String momentWords(Moment moment) {
    String anchor =
        switch (moment.anchor()) {
          case PROGRAM_START -> "the program starts";
          case SEGMENT_REACHED -> "segment %d reaches its target".formatted(moment.segment());
          case SEGMENT_END -> "segment %d ends".formatted(moment.segment());
          case WORK_READY -> "the work is ready";
          case PROGRAM_END -> "the program ends";
        };
    boolean last = moment.kind() == Moment.Kind.LAST_CHANGE;
    String when =
        moment.after().isZero()
            ? (last ? "until " : "when ") + anchor
            : (last ? "until " : "") + HourMinute.words(moment.after()) + " after " + anchor;
    return "%s %s. %s".formatted(Wording.capital(moment.what()), when, moment.why());
  }

  private static String stripped(String sentence) {
    return sentence.endsWith(".") ? sentence.substring(0, sentence.length() - 1) : sentence;
  }
}
