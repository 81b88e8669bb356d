package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.CardJson;
import org.heatwright.app.report.CalendarFile;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.CardBuilder;
import org.heatwright.app.report.CardPdf;
import org.heatwright.app.report.PageSize;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.PourSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(
    name = "card",
    description = {
      "Prints the firing card: one page for before, during and after.",
      "With a keypad it shows the digits to key; with a start, clock times."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright card schedule.yaml --kiln anchor.yaml -o card.pdf",
      "  heatwright card schedule.yaml --kiln anchor.yaml --keypad gull.yaml --slot 3 \\",
      "      --work work.yaml --ready-by 10:00 --calendar firing.ics -o card.pdf"
    })
final class CardCommand implements Callable<Integer> {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Mixin private Fire fire;

  @Option(names = "--keypad", paramLabel = "P", description = "Keypad file.")
  private Optional<Path> keypadPath;

  @Option(names = "--slot", paramLabel = "N", description = "Program slot it is keyed into.")
  private Optional<Integer> slot;

  @Option(
      names = "--responsible",
      paramLabel = "ROLE",
      description = "Who looks after the firing, e.g. caster; else a blank.")
  private Optional<String> responsible;

  @Option(names = "--phone", paramLabel = "NUMBER", description = "Whom to call; else a blank.")
  private Optional<String> phone;

  @Option(names = "--page", paramLabel = "SIZE", description = "a4 (usual) or letter.")
  private Optional<String> pageSize;

  @Option(
      names = "--calendar",
      paramLabel = "OUT.ics",
      description = "Write ready and act-now times there too; needs a start.")
  private Optional<Path> calendarPath;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "OUT.pdf",
      description = "Write the card there; only another PDF is replaced.")
  private Path output;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  CardCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    Output.requireReplaceable(output, Output.Kind.PDF);
    calendarPath.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.CALENDAR));
    PageSize size = size();
    Schedule asked = Input.schedule(schedulePath);
    Optional<Keypad> keypad = keypadPath.map(Input::keypad);
    keypad.ifPresent(k -> slot.ifPresent(number -> Slots.require(number, k)));
    Optional<FittedProgram> program = keypad.map(k -> fitted(asked, k));
    Schedule fired = program.map(FittedProgram::expressible).orElse(asked);
    ZonedDateTime now = ZonedDateTime.now(surroundings.clock());
    Fire.Planned planned = fire.plan(fired, keypad, now);
    if (calendarPath.isPresent() && planned.start().isEmpty()) {
      throw InputException.in(
          "--calendar", "clock times need --start or --ready-by; give one of them.");
    }
    Timed timed = timed(asked, keypad, program, planned);
    planned = timed.planned();
    Schedule schedule = timed.schedule();
    List<Finding> findings = findings(schedule, planned, keypad);
    Card card = card(schedule, planned, keypad, timed.program(), findings);
    String written = Output.write(output, Output.Kind.PDF, CardPdf.render(card, size));
    calendarPath.ifPresent(
        path ->
            Output.write(
                path,
                Output.Kind.CALENDAR,
                CalendarFile.write(
                    CalendarFile.events(card, uidRoot(card)), surroundings.clock().instant())));
    answer.give(
        surroundings,
        CardJson.of(
            schedule.name(),
            planned.kiln().name(),
            output.toString(),
            calendarPath.map(Path::toString),
            planned.start(),
            findings),
        page(planned, findings, written));
    return FindingWords.stops(findings) ? Answer.STOP : Answer.DONE;
  }

  private PageSize size() {
    String text = pageSize.orElse("a4");
    return switch (text) {
      case "a4", "A4" -> PageSize.A4;
      case "letter" -> PageSize.LETTER;
      default ->
          throw InputException.in(
              "--page", "\"%s\" is not a page size; expected a4 or letter.".formatted(text));
    };
  }

  private FittedProgram fitted(Schedule schedule, Keypad keypad) {
    FittedProgram program = KeypadFit.fit(schedule, keypad);
    if (!program.fits()) {
      throw InputException.in(
          String.valueOf(schedulePath.getFileName()),
          "there is no card for what must not be keyed: %s"
              .formatted(program.refusals().get(0).message()));
    }
    return program;
  }

  /** What is keyed, delay included, and the clock times that follow from it. */
  private record Timed(Schedule schedule, Optional<FittedProgram> program, Fire.Planned planned) {}

  /**
   * The delay goes from pressing start to the start, as the keypad can express it, in place of the
   * schedule's own; where it cannot wait that long, the card says when to press start instead.
   */
  private static Timed timed(
      Schedule asked,
      Optional<Keypad> keypad,
      Optional<FittedProgram> program,
      Fire.Planned planned) {
    Optional<Duration> delay = planned.start().flatMap(StartPlan::delayToSet);
    if (delay.isEmpty()) {
      return new Timed(program.map(FittedProgram::expressible).orElse(asked), program, planned);
    }
    if (program.isEmpty()) {
      return new Timed(asked.withStartDelay(delay.get()), program, planned);
    }
    FittedProgram delayed = KeypadFit.fit(asked.withStartDelay(delay.get()), keypad.orElseThrow());
    if (!delayed.fits()) {
      String note =
          "%s Press start at %s, without a delay."
              .formatted(
                  delayed.refusals().get(0).message(),
                  ClockWords.moment(planned.start().orElseThrow().start()));
      FittedProgram atOnce =
          KeypadFit.fit(asked.withStartDelay(Duration.ZERO), keypad.orElseThrow());
      return new Timed(
          atOnce.expressible(),
          Optional.of(atOnce),
          planned.startingAt(planned.start().orElseThrow(), List.of(note)));
    }
    StartPlan plan =
        StartPlanner.startingAt(
            planned.forecast(),
            planned.ready(),
            planned.pressed().plus(delayed.expressible().startDelay()),
            planned.pressed());
    return new Timed(
        delayed.expressible(), Optional.of(delayed), planned.startingAt(plan, plan.notes()));
  }

  private static List<Finding> findings(
      Schedule schedule, Fire.Planned planned, Optional<Keypad> keypad) {
    return Inspector.inspect(
        new Inspection(
            schedule,
            Optional.of(planned.kiln()),
            keypad,
            planned.composition().map(c -> c.demands()),
            Optional.of(planned.forecast())));
  }

  private Card card(
      Schedule schedule,
      Fire.Planned planned,
      Optional<Keypad> keypad,
      Optional<FittedProgram> program,
      List<Finding> findings) {
    CardBuilder builder =
        program
            .map(p -> CardBuilder.of(p, keypad.orElseThrow(), planned.kiln(), planned.forecast()))
            .orElseGet(() -> CardBuilder.of(schedule, planned.kiln(), planned.forecast()));
    planned.composition().ifPresent(builder::composition);
    planned
        .work()
        .flatMap(work -> PourSheet.of(work, schedule, planned.kiln().room()))
        .ifPresent(builder::pour);
    slot.ifPresent(builder::slot);
    planned.start().ifPresent(plan -> builder.start(plan.start(), planned.notes()));
    responsible.ifPresent(builder::responsible);
    phone.ifPresent(builder::phone);
    return builder.findings(findings).build();
  }

  /** The same firing gives the same root, so that a second calendar replaces the first. */
  private static String uidRoot(Card card) {
    String start = card.timing().start().map(s -> s.toInstant().toString()).orElse("");
    return "%s-%s-%s"
        .formatted(card.header().job(), card.header().kiln(), start)
        .replaceAll("[^A-Za-z0-9-]+", "-");
  }

  private Page page(Fire.Planned planned, List<Finding> findings, String written) {
    Page page = new Page();
    planned
        .start()
        .ifPresent(
            plan -> {
              plan.ready().ifPresent(ready -> page.line("Ready " + ready.words() + "."));
              page.line("Start " + ClockWords.moment(plan.start()) + ".");
            });
    planned.notes().forEach(page::line);
    page.line(written);
    calendarPath.ifPresent(path -> page.line("Calendar written to " + path + "."));
    page.line("Inspection: " + FindingWords.sum(findings));
    FindingWords.print(findings, page);
    return page;
  }
}
