package org.heatwright.app.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.json.SendJson;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.PocketPage;
import org.heatwright.inspect.Finding;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.schedule.Schedule;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(SendJson.class)
@Command(
    name = "send",
    description = {
      "Writes one file to send: card, keying sheet, rehearsal and blind read-back.",
      "It opens in the browser of a phone, needs no network and sends nothing.",
      "With a kiln the card says what the display should read and when."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright send schedule.yaml --keypad gull.yaml --slot 3 -o firing.html",
      "  heatwright send schedule.yaml --keypad gull.yaml --kiln anchor.yaml \\",
      "      --work work.yaml --ready-by 10:00 -o firing.html"
    })
final class SendCommand implements Callable<Integer> {

  @Parameters(paramLabel = "S", description = "Schedule file.")
  private Path schedulePath;

  @Option(names = "--keypad", required = true, paramLabel = "P", description = "Keypad file.")
  private Path keypadPath;

  @Option(
      names = "--slot",
      paramLabel = "N",
      description = "Program slot to key it into; 1 if left out.")
  private Optional<Integer> slot;

  @Option(
      names = "--held",
      paramLabel = "HELD",
      description = "Schedule file: what the slot holds now, for fewer presses.")
  private Optional<Path> heldPath;

  @ArgGroup(exclusive = false)
  private @Nullable Fire fire;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "OUT.html",
      description =
          "Write the page there; only another such page is replaced. The schedule's name with .html"
              + " if left out.")
  @Written
  private Optional<Path> output;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  SendCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    String name = String.valueOf(schedulePath.getFileName());
    Path path = output.orElseGet(() -> Path.of(name.replaceFirst("\\.[^.]+$", "") + ".html"));
    Output.requireReplaceable(path, Output.Kind.PAGE);
    Schedule asked = Input.schedule(schedulePath);
    Keypad keypad = Input.keypad(keypadPath);
    int number = slot.orElse(1);
    Slots.require(number, keypad);
    Optional<Schedule> held = heldPath.map(Input::schedule);
    Optional<FiredCard> fired =
        Optional.ofNullable(fire)
            .map(
                where ->
                    FiredCard.of(
                        asked,
                        name,
                        Optional.of(keypad),
                        where,
                        ZonedDateTime.now(surroundings.clock()),
                        planned -> {},
                        builder -> builder.slot(number)));
    Optional<Card> card = fired.map(FiredCard::card);
    FittedProgram program =
        fired.flatMap(FiredCard::program).orElseGet(() -> FiredCard.fitted(asked, name, keypad));
    List<Finding> findings = fired.map(FiredCard::findings).orElse(List.of());
    PocketPage.Content content = PocketPage.Content.of(card, program, keypad, number, held);
    String html = PocketPage.file(content);
    String written = Output.write(path, Output.Kind.PAGE, html);
    Page page = new Page();
    fired.ifPresent(f -> f.planned().notes().forEach(page::line));
    page.line(written);
    page.line(
        "%s into slot %d of %s: open it in a browser, on a phone or here."
            .formatted(program.requested().name(), number, keypad.name()));
    fired.ifPresent(
        f -> {
          page.line("Inspection: " + FindingWords.sum(findings));
          FindingWords.print(findings, page);
        });
    answer.give(
        surroundings,
        SendJson.of(
            program.requested().name(),
            keypad.name(),
            number,
            path.toString(),
            html.getBytes(StandardCharsets.UTF_8).length,
            findings),
        page);
    return FindingWords.stops(findings) ? Answer.STOP : Answer.DONE;
  }
}
