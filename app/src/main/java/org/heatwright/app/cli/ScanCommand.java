package org.heatwright.app.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.ScheduleCode;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.json.ScheduleJson;
import org.heatwright.app.qr.QrFinder;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(ScheduleJson.class)
@Command(
    name = "scan",
    description = {
      "Reads the schedule back from the code on a card: from a photograph (PNG, JPEG), from the card's PDF, or from the code's text."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright scan card.jpg -o schedule.yaml",
      "  heatwright scan card.pdf",
      "  heatwright scan --text 'HEATWRIGHT:1:...' -o schedule.yaml"
    })
final class ScanCommand implements Callable<Integer> {

  @Parameters(arity = "0..1", paramLabel = "FILE", description = "Photograph or PDF of a card.")
  private Optional<Path> path;

  @Option(
      names = "--text",
      paramLabel = "CODE",
      description = "The code's text instead, as any phone shows it.")
  private Optional<String> text;

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

  ScanCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    if (path.isPresent() == text.isPresent()) {
      throw InputException.in("scan", "give either a FILE or --text with the code's text.");
    }
    output.ifPresent(out -> Output.requireReplaceable(out, Output.Kind.SCHEDULE));
    Schedule schedule =
        path.map(ScanCommand::scanned)
            .orElseGet(() -> ScheduleCode.read(text.orElseThrow(), "--text"));
    Optional<String> written =
        output.map(out -> Output.write(out, Output.Kind.SCHEDULE, ScheduleFile.write(schedule)));
    answer.give(surroundings, ScheduleJson.of(schedule), page(schedule, written));
    return Answer.DONE;
  }

  private static Schedule scanned(Path path) {
    String name = String.valueOf(path.getFileName());
    return ScheduleCode.read(QrFinder.text(bytes(path), name, ScheduleCode::isOurs), name);
  }

  private static byte[] bytes(Path path) {
    if (!Files.exists(path)) {
      throw InputException.in(
          path.toString(), "there is no such file; give the path of a file that exists.");
    }
    if (!Files.isRegularFile(path)) {
      throw InputException.in(path.toString(), "this is not a file; give the path of a file.");
    }
    try {
      if (Files.size(path) > QrFinder.MOST_BYTES) {
        throw InputException.in(
            path.toString(),
            "the file has %d bytes; expected a picture of at most %d."
                .formatted(Files.size(path), QrFinder.MOST_BYTES));
      }
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw InputException.in(
          path.toString(), "the file cannot be read (%s).".formatted(e.getClass().getSimpleName()));
    }
  }

  private static Page page(Schedule schedule, Optional<String> written) {
    Page page = new Page();
    page.line(schedule.name() + ", in " + schedule.unit().symbol());
    if (!schedule.startDelay().isZero()) {
      page.line("Start delay " + HourMinute.words(schedule.startDelay()) + ".");
    }
    ScheduleWords.print(schedule, page);
    page.blank().line(written.orElse("Not kept: -o schedule.yaml writes it to a file."));
    return page;
  }
}
