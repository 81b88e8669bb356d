package org.heatwright.app.web;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.logs.Corrections;
import org.heatwright.app.logs.Decision;
import org.heatwright.app.logs.LogColumn;
import org.heatwright.app.logs.LogImport;
import org.heatwright.app.logs.LogReading;
import org.heatwright.app.logs.Topic;
import org.heatwright.app.store.Store;
import org.heatwright.inspect.Wording;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.TemperatureUnit;

/** A log of any logger, as the bench shows how it was read and takes what is wrong with that. */
final class ForeignLog {

  /** Rows shown beside what was made of them. */
  private static final int SHOWN = 6;

  private static final String AS = "as-";
  private static final String WAS = "was-";

  private ForeignLog() {}

  /**
   * A reading and what a person said about it.
   *
   * @param said everything that was corrected, now and before
   */
  record Read(LogReading reading, Corrections said) {

    /** The same as a log of ours; dated where it tells a date. */
    String written() {
      return LogFile.writeDated(reading.log());
    }
  }

  /**
   * Reads it by what the form says, else by what was said of the last log of this form.
   *
   * @throws InputException in one sentence, if no log can be made of it
   */
  static Read read(Store store, String text, Map<String, String> form) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    List<String> changed = new ArrayList<>();
    for (Topic topic : Topic.values()) {
      String as = form.getOrDefault(AS + topic.word(), "").strip();
      if (!as.isEmpty() && !as.equals(form.getOrDefault(WAS + topic.word(), ""))) {
        changed.add(topic.word() + "=" + as);
      }
    }
    Corrections now = Corrections.of(changed, "How it is read");
    Corrections before =
        form.containsKey("said")
            ? Corrections.read(form.get("said"))
            : store
                .logForm(LogImport.shape(bytes, "The log"))
                .map(Corrections::read)
                .orElseGet(Corrections::none);
    Corrections said = now.over(before);
    return new Read(LogImport.read(bytes, "The log", said), said);
  }

  /** Keeps what was corrected for the next log of this form. */
  static void remember(Store store, Read read) {
    if (!read.said().words().isEmpty()) {
      store.keepLogForm(read.reading().shape(), read.said().text());
    }
  }

  /** How it was read, to be looked at and corrected. */
  static KilnPage.Recognised page(Read read) {
    LogReading reading = read.reading();
    TemperatureUnit unit = unit(reading);
    return new KilnPage.Recognised(
        read.said().text(),
        told(reading, unit),
        reading.log().remarks(),
        reading.decisions().stream()
            .filter(d -> d.topic() != Topic.ENCODING) // the browser has decoded it
            .map(d -> decided(d, reading))
            .toList(),
        reading.columns().stream().map(ForeignLog::head).toList(),
        reading.preview().stream()
            .limit(SHOWN)
            .map(
                row ->
                    new KilnPage.ReadRow(
                        row.line(),
                        row.fields(),
                        "%s h, %s"
                            .formatted(
                                hours(row.row().seconds()),
                                Wording.whole(row.row().chamberCelsius(), unit))))
            .toList());
  }

  /** The unit that the file is in, where it is one that kilns show. */
  private static TemperatureUnit unit(LogReading reading) {
    return reading
        .decision(Topic.UNIT)
        .filter(d -> d.word().equals("fahrenheit"))
        .map(d -> TemperatureUnit.FAHRENHEIT)
        .orElse(TemperatureUnit.CELSIUS);
  }

  private static String told(LogReading reading, TemperatureUnit unit) {
    List<LogFile.Row> rows = reading.log().rows();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (LogFile.Row row : rows) {
      low = Math.min(low, row.chamberCelsius());
      high = Math.max(high, row.chamberCelsius());
    }
    int guesses = reading.guesses().size();
    return "%d rows over %s h, from %s to %s.%s"
        .formatted(
            rows.size(),
            hours(rows.get(rows.size() - 1).seconds() - rows.get(0).seconds()),
            Wording.whole(low, unit),
            Wording.whole(high, unit),
            guesses == 0
                ? ""
                : guesses == 1
                    ? " Look at the one guess."
                    : " Look at the %d guesses.".formatted(guesses));
  }

  private static KilnPage.Decided decided(Decision decision, LogReading reading) {
    Topic topic = decision.topic();
    List<KilnPage.Choice> options = new ArrayList<>();
    Optional<LogColumn> used =
        reading.columns().stream().filter(c -> c.use().equals(topic.word())).findFirst();
    String word = decision.word();
    if (!topic.choices().isEmpty()) {
      topic
          .choices()
          .forEach(c -> options.add(new KilnPage.Choice(c, c, c.equals(decision.word()))));
    } else if (isColumn(topic)) {
      word = used.map(c -> Integer.toString(c.number())).orElse(Topic.NONE);
      for (LogColumn column : reading.columns()) {
        String number = Integer.toString(column.number());
        options.add(new KilnPage.Choice(number, head(column), number.equals(word)));
      }
      if (topic != Topic.TIME && topic != Topic.CHAMBER) {
        options.add(new KilnPage.Choice(Topic.NONE, Topic.NONE, word.equals(Topic.NONE)));
      }
    }
    return new KilnPage.Decided(
        AS + topic.word(),
        WAS + topic.word(),
        topic.words().substring(0, 1).toUpperCase(Locale.UK) + topic.words().substring(1),
        word,
        options,
        decision.sure().word(),
        decision.why());
  }

  private static boolean isColumn(Topic topic) {
    return switch (topic) {
      case TIME, DATE, CHAMBER, SETPOINT, WORK, POWER, EVENT -> true;
      default -> false;
    };
  }

  private static String head(LogColumn column) {
    return column.name().isEmpty()
        ? "column %d".formatted(column.number())
        : "%d: %s".formatted(column.number(), column.name());
  }

  private static String hours(double seconds) {
    return HourMinute.format(Duration.ofMinutes(Math.round(seconds / 60)));
  }

  /** Whether a text seems meant as a log of ours, so that our own reader's sentence is the one. */
  static boolean meantAsOurs(String text) {
    String head =
        text.lines().filter(l -> !l.isBlank() && !l.startsWith("#")).findFirst().orElse("");
    return head.matches("(?i)\\s*time(_s)?\\s*,\\s*chamber_[cf]\\b.*");
  }
}
