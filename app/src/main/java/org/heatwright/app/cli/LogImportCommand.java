package org.heatwright.app.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.heatwright.app.api.Answers;
import org.heatwright.app.api.Written;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.TextFile;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.json.LogImportJson;
import org.heatwright.app.logs.Corrections;
import org.heatwright.app.logs.Decision;
import org.heatwright.app.logs.LogColumn;
import org.heatwright.app.logs.LogImport;
import org.heatwright.app.logs.LogReading;
import org.heatwright.app.store.Store;
import org.heatwright.schedule.HourMinute;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Answers(LogImportJson.class)
@Command(
    name = "import",
    description = {
      "Reads the log of any logger: separator, columns, units, decimal sign and time are recognised, told with how sure that is, and can be corrected.",
      "With --out it is written in our own form, for forecast, learn, inside and health."
    },
    footerHeading = "%nExamples:%n",
    footer = {
      "  heatwright log import tuesday.csv",
      "  heatwright log import tuesday.csv --set date-order=month-day-year \\",
      "      --set chamber=\"Temp 2\" --remember --out tuesday-log.csv"
    })
final class LogImportCommand implements Callable<Integer> {

  @Parameters(paramLabel = "FILE", description = "What the logger wrote, as text (CSV).")
  private Path file;

  @Option(
      names = "--out",
      paramLabel = "LOG",
      description =
          "Write the log in our own form; a log that is there is kept, under its name with ~.")
  @Written
  private Optional<Path> out;

  @Option(
      names = "--set",
      paramLabel = "WHAT=WORD",
      description =
          "Corrects a decision, by the words of the answer, e.g. unit=fahrenheit; a column by its"
              + " name or number. May be given several times.")
  private List<String> corrections = List.of();

  @Option(
      names = "--remember",
      description = "Keep the corrections for the next file of this form, in your store.")
  private boolean remember;

  @Option(names = "--fresh", description = "Use no corrections that were kept.")
  private boolean fresh;

  @Mixin private OwnStore ownStore;

  @Mixin private Answer answer;

  private final Surroundings surroundings;

  LogImportCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() {
    out.ifPresent(path -> Output.requireReplaceable(path, Output.Kind.LOG));
    String name = String.valueOf(file.getFileName());
    byte[] bytes = TextFile.logBytes(file);
    Corrections typed = Corrections.of(corrections, "--set");
    Optional<Corrections> kept = fresh ? Optional.empty() : kept(bytes, name);
    Corrections all = kept.map(typed::over).orElse(typed);
    LogReading reading = LogImport.read(bytes, name, all);
    List<String> written = new ArrayList<>();
    out.ifPresent(
        path ->
            written.add(Output.write(path, Output.Kind.LOG, LogFile.writeDated(reading.log()))));
    if (remember) {
      try (Store store = Store.open(ownStore.file(surroundings), surroundings.clock())) {
        store.keepLogForm(reading.shape(), all.text());
      }
      written.add("The corrections are kept for files of this form.");
    }
    answer.give(
        surroundings,
        LogImportJson.of(reading, kept.isPresent(), written),
        page(reading, kept.isPresent(), written));
    return Answer.DONE;
  }

  private Optional<Corrections> kept(byte[] bytes, String name) {
    if (!Files.exists(ownStore.file(surroundings))) {
      return Optional.empty();
    }
    String shape;
    try {
      shape = LogImport.shape(bytes, name);
    } catch (InputException toldWhenItIsRead) {
      return Optional.empty();
    }
    try (Store store = Store.open(ownStore.file(surroundings), surroundings.clock())) {
      return store.logForm(shape).map(Corrections::read);
    }
  }

  private static Page page(LogReading reading, boolean kept, List<String> written) {
    Page page = new Page();
    List<LogFile.Row> rows = reading.log().rows();
    double last = rows.get(rows.size() - 1).seconds();
    page.line(
        "%s: %d rows over %s, from %.0f to %.0f °C%s."
            .formatted(
                reading.fileName(),
                rows.size(),
                HourMinute.words(
                    Duration.ofMinutes(Math.round((last - rows.get(0).seconds()) / 60))),
                rows.stream().mapToDouble(LogFile.Row::chamberCelsius).min().orElseThrow(),
                rows.stream().mapToDouble(LogFile.Row::chamberCelsius).max().orElseThrow(),
                begins(reading.log())));
    if (kept) {
      page.line("Corrections of an earlier file of this form are used; --fresh leaves them out.");
    }
    page.blank();
    for (Decision decision : reading.decisions()) {
      page.hanging(
          "%-13s ".formatted(decision.topic().word()),
          "%s (%s): %s%s"
              .formatted(
                  decision.word(),
                  decision.sure().word(),
                  decision.why(),
                  decision.alternatives().isEmpty()
                      ? ""
                      : " Fits too: %s.".formatted(String.join(", ", decision.alternatives()))));
    }
    List<String> unused =
        reading.columns().stream()
            .filter(c -> c.use().isEmpty())
            .map(LogImportCommand::called)
            .toList();
    if (!unused.isEmpty()) {
      page.hanging("not used      ", String.join(", ", unused));
    }
    page.blank().raw(" line   time s  chamber °C  setpoint °C   power W\n");
    for (LogReading.PreviewRow row : reading.preview()) {
      page.raw(
          "%5d %8s %11s %12s %9s\n"
              .formatted(
                  row.line(),
                  YamlText.number(row.row().seconds()),
                  tenths(OptionalDouble.of(row.row().chamberCelsius())),
                  tenths(row.row().setpointCelsius()),
                  tenths(row.row().powerWatts())));
    }
    page.blank();
    reading.log().remarks().forEach(remark -> page.hanging("note  ", remark));
    written.forEach(page::line);
    return page;
  }

  private static String begins(LogFile.Log log) {
    return log.start()
        .map("; it begins %s"::formatted)
        .or(
            () ->
                log.localStart()
                    .map(
                        start ->
                            "; it begins %s local time"
                                .formatted(start.toString().replace('T', ' '))))
        .orElse("");
  }

  private static String called(LogColumn column) {
    return column.name().isEmpty() ? "column " + column.number() : column.name();
  }

  private static String tenths(OptionalDouble value) {
    return value.isPresent() ? String.format(Locale.ROOT, "%.1f", value.getAsDouble()) : "-";
  }
}
