package org.heatwright.app.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.QuestionsJson;
import org.heatwright.app.json.ReadbackJson;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.ReadbackReport;
import org.heatwright.keypad.ReadbackReport.Outcome;
import org.heatwright.keypad.ReadbackReport.VerdictKind;
import org.heatwright.keypad.UnitCheck;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers({ReadbackJson.class, QuestionsJson.class})
@Command(
    name = "readback",
    description = {
      "Compares what the keypad's review shows with the schedule, value by value.",
      "Exit code 0 only if it is proven; 1 if anything is wrong or the unit is still open.",
      "With --questions it prints a file to fill in while looking at the display."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright readback schedule.yaml --keypad gull.yaml --questions \\",
      "      > shown.yaml",
      "  heatwright readback schedule.yaml --keypad gull.yaml --shown shown.yaml",
      "  heatwright readback schedule.yaml --keypad gull.yaml --shown shown.yaml \\",
      "      --display-reads 68 --thermometer 20C --unheated-overnight"
    })
final class ReadbackCommand implements Callable<Integer> {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Option(names = "--keypad", required = true, paramLabel = "P", description = "Keypad file.")
  private Path keypadPath;

  @Option(names = "--shown", paramLabel = "FILE", description = "What the review showed.")
  private Optional<Path> shownPath;

  @Option(
      names = "--slot",
      paramLabel = "N",
      description = "The slot it was keyed into, to compare with the slot the review showed.")
  private Optional<Integer> slot;

  @Option(names = "--questions", description = "Print a file to fill in, without the answers.")
  private boolean questions;

  @Mixin private ColdKiln coldKiln;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  ReadbackCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    if (shownPath.isPresent() == questions) {
      throw InputException.in("--shown", "expected one of --shown FILE and --questions.");
    }
    Keypad keypad = Input.keypad(keypadPath);
    slot.ifPresent(number -> Slots.require(number, keypad));
    FittedProgram program = KeypadFit.fit(Input.schedule(schedulePath), keypad);
    if (!program.fits()) {
      throw InputException.in(
          String.valueOf(schedulePath.getFileName()),
          "the schedule does not fit %s, so there is nothing to read back: %s"
              .formatted(keypad.name(), program.refusals().get(0).message()));
    }
    String name = program.requested().name();
    if (questions) {
      List<ReadbackQuestion> asked = Readback.questions(program, keypad);
      answer.give(
          surroundings,
          QuestionsJson.of(name, keypad.name(), asked),
          new Page().raw(form(asked, keypad)));
      return Answer.DONE;
    }
    Optional<UnitCheck.Result> unitCheck = coldKiln.check();
    ReadbackReport report =
        Readback.compare(
            program,
            keypad,
            Input.shown(shownPath.orElseThrow()),
            slot.map(OptionalInt::of).orElse(OptionalInt.empty()),
            unitCheck);
    answer.give(
        surroundings, ReadbackJson.of(name, keypad.name(), report), page(report, name, keypad));
    return report.outcome() == Outcome.PROVEN ? Answer.DONE : Answer.STOP;
  }

  /** A shown file without answers: position and label only, so that nobody copies the plan. */
  private static String form(List<ReadbackQuestion> questions, Keypad keypad) {
    StringBuilder out =
        new StringBuilder(
            "# What %s shows in its review. Fill in each text exactly as displayed.\n"
                .formatted(keypad.name()));
    out.append("# slot: 1  # if the review shows the slot: remove the first # and put it here\n");
    out.append("# unit: C  # likewise C or F, if the display shows a sign for it\n");
    out.append("shown:\n");
    for (ReadbackQuestion question : questions) {
      out.append("  - [%d, \"\"]  # %s\n".formatted(question.position(), question.words()));
    }
    return out.toString();
  }

  private static Page page(ReadbackReport report, String schedule, Keypad keypad) {
    Page page = new Page();
    page.line(
        switch (report.outcome()) {
          case PROVEN -> "Proven: what %s shows is %s.".formatted(keypad.name(), schedule);
          case UNIT_OPEN ->
              "Not proven yet: every value shown is right, but the unit in force is not settled.";
          case NOT_PROVEN -> "Not proven: do not start.";
        });
    report.findings().forEach(finding -> page.hanging("  - ", finding));
    report.correction().ifPresent(correction -> page.line("What to do: " + correction));
    report.verdicts().stream()
        .filter(v -> v.kind() != VerdictKind.MATCH && !report.findings().contains(v.message()))
        .forEach(v -> page.hanging("%3d  ".formatted(v.position()), v.message()));
    page.blank().line("Check figures:");
    for (ReadbackReport.Figure figure : report.figures()) {
      page.hanging(
          "  ",
          "%s: planned %s, shown %s%s"
              .formatted(
                  figure.name(),
                  figure.planned(),
                  figure.shown(),
                  figure.agrees() ? "" : "  <- differs"));
    }
    if (!report.unproven().isEmpty()) {
      page.blank().line("What this cannot show:");
      report.unproven().forEach(sentence -> page.hanging("  - ", sentence));
    }
    return page;
  }
}
