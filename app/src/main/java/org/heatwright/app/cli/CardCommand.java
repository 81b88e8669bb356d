package org.heatwright.app.cli;

import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.InputException;
import org.heatwright.app.json.CardJson;
import org.heatwright.app.report.CalendarFile;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.CardPdf;
import org.heatwright.app.report.Ending;
import org.heatwright.app.report.PageSize;
import org.heatwright.forecast.ClockWords;
import org.heatwright.inspect.Finding;
import org.heatwright.keypad.Keypad;
import org.heatwright.schedule.Schedule;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(CardJson.class)
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
  @Written
  private Optional<Path> calendarPath;

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "OUT.pdf",
      description = "Write the card there; only another PDF is replaced.")
  @Written
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
    ZonedDateTime now = ZonedDateTime.now(surroundings.clock());
    FiredCard fired =
        FiredCard.of(
            asked,
            String.valueOf(schedulePath.getFileName()),
            keypad,
            fire,
            now,
            planned -> {
              if (calendarPath.isPresent()
                  && planned.start().isEmpty()
                  && planned.noStart().isEmpty()) {
                throw InputException.in(
                    "--calendar", "clock times need --start or --ready-by; give one of them.");
              }
            },
            builder -> {
              slot.ifPresent(builder::slot);
              responsible.ifPresent(builder::responsible);
              phone.ifPresent(builder::phone);
            });
    Fire.Planned planned = fired.planned();
    List<Finding> findings = fired.findings();
    Card card = fired.card();
    String written = Output.write(output, Output.Kind.PDF, CardPdf.render(card, size));
    // Where no start can be reckoned there is nothing to put into a calendar.
    Optional<Path> calendar = calendarPath.filter(path -> planned.start().isPresent());
    calendar.ifPresent(
        path ->
            Output.write(
                path,
                Output.Kind.CALENDAR,
                CalendarFile.write(
                    CalendarFile.events(card, uidRoot(card)), surroundings.clock().instant())));
    answer.give(
        surroundings,
        CardJson.of(
            fired.schedule().name(),
            planned.kiln().name(),
            output.toString(),
            calendar.map(Path::toString),
            planned.start(),
            Ending.of(planned.forecast()),
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
    calendarPath.ifPresent(
        path ->
            page.line(
                planned.start().isPresent()
                    ? "Calendar written to " + path + "."
                    : "No calendar was written: it would have no times."));
    page.line("Inspection: " + FindingWords.sum(findings));
    FindingWords.print(findings, page);
    return page;
  }
}
