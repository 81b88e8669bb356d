package org.heatwright.app.files;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoField;
import java.time.temporal.ChronoUnit;
import java.time.temporal.Temporal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.learn.RowOrder;
import org.heatwright.units.TemperatureUnit;

/**
 * A firing's log as CSV (RFC 4180, header row). What is odd in it (gaps, rows out of order, rows
 * without a reading, columns that are not ours) is told beside the rows, never hidden; what is
 * wrong is an {@link InputException}.
 */
public final class LogFile {

  private static final List<String> COLUMNS =
      List.of(
          "time_s", "time", "chamber_c", "chamber_f", "setpoint_c", "power_w", "work_c", "event");

  /** A step this many times the usual one is a gap (our rule). */
  private static final double GAP_STEPS = 5;

  private static final double SHORTEST_GAP_SECONDS = 60;
  private static final int SHOWN_LETTERS = 60;

  /** Letters of a note about an event; our estimate. */
  private static final int LONGEST_EVENT = 1000;

  private static final int TOLD_OF_A_KIND = 5;

  /** What writing a log anew may do to its times. */
  private static final double SAME_SECONDS = 0.002;

  /** Half a tenth of a kelvin: °F to tenths of °C and back. */
  private static final double SAME_KELVINS = 0.0501;

  private static final String WITHOUT_OFFSET =
      "The times have no offset from UTC: a night when the clocks change would show as a gap or as"
          + " rows out of order.";

  private LogFile() {}

  /**
   * A log.
   *
   * @param rows rising in time, not empty
   * @param start the instant of second 0, where the log tells one with its offset
   * @param localStart the local time of the first row, where the log tells one without an offset
   * @param remarks what is odd, one sentence each
   */
  public record Log(
      List<Row> rows,
      Optional<Instant> start,
      Optional<LocalDateTime> localStart,
      List<String> remarks) {
    public Log {
      rows = List.copyOf(rows);
      remarks = List.copyOf(remarks);
    }

    /** The same log with its times, s, counted from one of them; the start is that moment. */
    public Log startingAt(double second) {
      return second == 0
          ? this
          : new Log(
              rows.stream().map(row -> row.at(row.seconds() - second)).toList(),
              start.map(instant -> instant.plusMillis(Math.round(1000 * second))),
              localStart.map(local -> local.plusNanos(Math.round(1e9 * second))),
              remarks);
    }

    /**
     * Whether it is the same log, however it was written and whatever it is called: the chamber's
     * same readings at the same times, and not told to be of another moment. In what unit, from
     * where its seconds count and what else stands in it does not matter.
     */
    public boolean isSameAs(Log other) {
      if (rows.size() != other.rows.size()
          || differ(began(start), other.began(other.start))
          || differ(began(localStart), other.began(other.localStart))) {
        return false;
      }
      double shift = other.rows.get(0).seconds() - rows.get(0).seconds();
      for (int i = 0; i < rows.size(); i++) {
        Row one = rows.get(i);
        Row two = other.rows.get(i);
        if (!(Math.abs(two.seconds() - one.seconds() - shift) <= SAME_SECONDS
            && Math.abs(two.chamberCelsius() - one.chamberCelsius()) <= SAME_KELVINS)) {
          return false;
        }
      }
      return true;
    }

    /** When its first row was, to the second. */
    private <T extends Temporal> Optional<Temporal> began(Optional<T> secondZero) {
      return secondZero.map(
          zero ->
              zero.plus(Math.round(rows.get(0).seconds()), ChronoUnit.SECONDS)
                  .with(ChronoField.NANO_OF_SECOND, 0));
    }

    private static <T> boolean differ(Optional<T> one, Optional<T> other) {
      return one.isPresent() && other.isPresent() && !one.equals(other);
    }

    /** The day of the first row where a kiln stands; empty where the log counts seconds alone. */
    public Optional<LocalDate> date(ZoneId zone) {
      return start
          .map(instant -> LocalDate.ofInstant(instant, zone))
          .or(() -> localStart.map(LocalDateTime::toLocalDate));
    }
  }

  /**
   * One row.
   *
   * @param seconds as written in time_s; with clock times, s from the first row
   * @param chamberCelsius what the thermocouple showed, °C
   * @param setpointCelsius °C
   * @param powerWatts W
   * @param workCelsius a reading in the work, °C
   * @param event what happened, e.g. "door-open"
   */
  public record Row(
      double seconds,
      double chamberCelsius,
      OptionalDouble setpointCelsius,
      OptionalDouble powerWatts,
      OptionalDouble workCelsius,
      Optional<String> event) {

    private Row at(double other) {
      return other == seconds
          ? this
          : new Row(other, chamberCelsius, setpointCelsius, powerWatts, workCelsius, event);
    }
  }

  public static Log read(String text, String fileName) {
    return new Reading(fileName).read(text);
  }

  /**
   * A log of rows that something else has read: put in order, with what is odd in them told.
   *
   * @param rows in the order of the file, with times from the first of them on
   * @param lines of the file that they stand in, counted from 1
   * @param remarks what was odd so far
   */
  public static Log inOrder(
      String fileName,
      List<Row> rows,
      List<Integer> lines,
      Optional<Instant> start,
      Optional<LocalDateTime> localStart,
      List<String> remarks) {
    Reading reading = new Reading(fileName);
    reading.remarks.addAll(remarks);
    reading.rows.addAll(rows);
    lines.forEach(line -> reading.lines.add(line.longValue()));
    reading.zero = start;
    reading.localZero = localStart;
    if (localStart.isPresent()) {
      reading.remarks.add(WITHOUT_OFFSET);
    }
    return reading.ordered();
  }

  /** Writes {@code time_s} and °C; optional columns only where some row has them. */
  public static String write(Log log) {
    return write(log, "time_s", row -> YamlText.number(row.seconds()));
  }

  /** The same with {@code time} in ISO 8601, if the log tells a date; else with seconds. */
  public static String writeDated(Log log) {
    if (log.start().isPresent()) {
      Instant start = log.start().get();
      return write(
          log, "time", row -> start.plusMillis(Math.round(row.seconds() * 1000)).toString());
    }
    return log.localStart()
        .map(
            start ->
                write(
                    log,
                    "time",
                    row ->
                        DateTimeFormatter.ISO_LOCAL_DATE_TIME.format(
                            start.plusNanos(Math.round(row.seconds() * 1000) * 1_000_000))))
        .orElseGet(() -> write(log));
  }

  private static String write(Log log, String timeColumn, Function<Row, String> time) {
    List<Row> rows = log.rows();
    StringBuilder out = new StringBuilder(timeColumn).append(",chamber_c");
    boolean setpoint = rows.stream().anyMatch(r -> r.setpointCelsius().isPresent());
    boolean power = rows.stream().anyMatch(r -> r.powerWatts().isPresent());
    boolean work = rows.stream().anyMatch(r -> r.workCelsius().isPresent());
    boolean event = rows.stream().anyMatch(r -> r.event().isPresent());
    out.append(setpoint ? ",setpoint_c" : "").append(power ? ",power_w" : "");
    out.append(work ? ",work_c" : "").append(event ? ",event" : "").append("\r\n");
    for (Row row : rows) {
      out.append(time.apply(row)).append(',');
      out.append(YamlText.number(row.chamberCelsius()));
      appendIf(setpoint, out, row.setpointCelsius());
      appendIf(power, out, row.powerWatts());
      appendIf(work, out, row.workCelsius());
      if (event) {
        out.append(',').append(row.event().map(LogFile::quoted).orElse(""));
      }
      out.append("\r\n");
    }
    return out.toString();
  }

  private static void appendIf(boolean column, StringBuilder out, OptionalDouble value) {
    if (column) {
      out.append(',');
      value.ifPresent(v -> out.append(YamlText.number(v)));
    }
  }

  private static String quoted(String text) {
    return '"' + text.replace("\"", "\"\"") + '"';
  }

  /** What to do with what another logger wrote. */
  private static final String IMPORT =
      "; heatwright log import makes a log of ours of what another logger wrote";

  private static final Pattern FIELDS =
      Pattern.compile("Record (\\d+) has (\\d+) fields?, but .*?(\\d+) fields?.*");

  /** One reading of one log; used by one thread, once. */
  private static final class Reading {

    private final String fileName;
    private final List<String> remarks = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();
    private final List<Long> lines = new ArrayList<>();
    private Optional<Instant> zero = Optional.empty();
    private Optional<LocalDateTime> localZero = Optional.empty();

    Reading(String fileName) {
      this.fileName = fileName;
    }

    Log read(String text) {
      try (CsvReader<NamedCsvRecord> csv =
          CsvReader.builder().skipEmptyLines(true).ofNamedCsvRecord(text)) {
        boolean first = true;
        for (NamedCsvRecord record : csv) {
          if (first) {
            checkColumns(record.getHeader());
            first = false;
          }
          requireClosed(record);
          readRow(record);
        }
        if (first) {
          throw InputException.in(
              fileName,
              "the log has no rows; expected a header such as time_s,chamber_c and rows below"
                  + " it.");
        }
      } catch (CsvParseException e) {
        throw notCsv(e);
      } catch (java.io.IOException e) {
        throw new java.io.UncheckedIOException(e); // text in memory cannot fail
      }
      if (rows.isEmpty()) {
        throw InputException.in(fileName, "no row of the log has a reading of the chamber.");
      }
      return ordered();
    }

    private InputException notCsv(CsvParseException e) {
      String reason = reason(e);
      Matcher fields = FIELDS.matcher(reason);
      if (fields.matches()) {
        return InputException.in(
            fileName,
            "row %s, the header counted, has %s columns and the header has %s, as in a file that was cut off; remove that row, or give it its columns."
                .formatted(fields.group(1), fields.group(2), fields.group(3)));
      }
      return InputException.in(
          fileName, "this is not CSV (%s)%s.".formatted(shortened(reason), IMPORT));
    }

    /** Refuses a quote that is never closed: it makes one field of all that follows. */
    private void requireClosed(NamedCsvRecord record) {
      for (String field : record.getFields()) {
        boolean lines = field.indexOf('\n') >= 0 || field.indexOf('\r') >= 0;
        boolean event = field.length() <= LONGEST_EVENT && isEvent(record, field);
        if (lines && !event) {
          throw InputException.at(
              fileName,
              (int) record.getStartingLineNumber(),
              "a quote (\") is opened in this row and not closed in it; remove it or close it.");
        }
      }
    }

    /** What a person writes about an event may have lines. */
    private static boolean isEvent(NamedCsvRecord record, String field) {
      return record.findField("event").filter(field::equals).isPresent();
    }

    private static String shortened(String text) {
      String line = text.replaceAll("\\s+", " ");
      return line.length() <= SHOWN_LETTERS ? line : line.substring(0, SHOWN_LETTERS) + "…";
    }

    private static String reason(CsvParseException e) {
      Throwable cause = e.getCause() == null ? e : e.getCause();
      return String.valueOf(cause.getMessage()).replaceAll("\\s+", " ").replaceAll("[. ]+$", "");
    }

    private void checkColumns(List<String> header) {
      requireOneOf(header, "time_s", "time");
      requireOneOf(header, "chamber_c", "chamber_f");
      for (String column : header) {
        if (!COLUMNS.contains(column)) {
          remarks.add(
              "Column \"%s\" is not one of ours and is not used%s."
                  .formatted(column, Nearest.hint(column, COLUMNS)));
        }
      }
      Set<String> once = new LinkedHashSet<>();
      for (String column : header) {
        if (!once.add(column)) {
          throw InputException.at(
              fileName, 1, "the column %s stands twice; keep one.".formatted(column));
        }
      }
    }

    private void requireOneOf(List<String> header, String one, String other) {
      if (header.contains(one) == header.contains(other)) {
        throw InputException.at(
            fileName,
            1,
            "expected one of the columns %s and %s; found %s%s."
                .formatted(one, other, shortened(String.join(", ", header)), IMPORT));
      }
    }

    private void readRow(NamedCsvRecord record) {
      long line = record.getStartingLineNumber();
      double seconds = seconds(record, line);
      boolean fahrenheit = record.findField("chamber_f").isPresent();
      OptionalDouble chamber = number(record, fahrenheit ? "chamber_f" : "chamber_c", line);
      Optional<String> event =
          record.findField("event").map(String::strip).filter(e -> !e.isEmpty());
      if (chamber.isEmpty()) {
        tell("without a reading of the chamber", line);
        return;
      }
      double celsius =
          fahrenheit
              ? TemperatureUnit.FAHRENHEIT.temperature(chamber.getAsDouble()).celsius()
              : chamber.getAsDouble();
      if (!(celsius >= -100 && celsius <= 2500)) {
        throw InputException.at(
            fileName,
            (int) line,
            "the chamber reads %s; expected -100 to 2500 °C."
                .formatted(YamlText.number(chamber.getAsDouble())));
      }
      rows.add(
          new Row(
              seconds,
              celsius,
              number(record, "setpoint_c", line),
              number(record, "power_w", line),
              number(record, "work_c", line),
              event));
      lines.add(line);
    }

    private double seconds(NamedCsvRecord record, long line) {
      if (record.findField("time_s").isPresent()) {
        return number(record, "time_s", line)
            .orElseThrow(
                () ->
                    InputException.at(fileName, (int) line, "time_s is empty; expected seconds."));
      }
      String text = record.findField("time").orElse("").strip().replace(' ', 'T');
      try {
        Instant instant = OffsetDateTime.parse(text).toInstant();
        if (zero.isEmpty()) {
          zero = Optional.of(instant);
        }
        return (instant.toEpochMilli() - zero.get().toEpochMilli()) / 1000.0;
      } catch (DateTimeParseException e) {
        return localSeconds(text, line);
      }
    }

    private double localSeconds(String text, long line) {
      try {
        LocalDateTime local = LocalDateTime.parse(text);
        if (zero.isPresent()) {
          throw InputException.at(
              fileName,
              (int) line,
              "time is \"%s\" without an offset, but rows above have one; keep one form."
                  .formatted(text));
        }
        if (localZero.isEmpty()) {
          localZero = Optional.of(local);
          remarks.add(
              "The times have no offset from UTC: a night when the clocks change would show as a"
                  + " gap or as rows out of order.");
        }
        return (local.toInstant(ZoneOffset.UTC).toEpochMilli()
                - localZero.get().toInstant(ZoneOffset.UTC).toEpochMilli())
            / 1000.0;
      } catch (DateTimeParseException e) {
        throw InputException.at(
            fileName,
            (int) line,
            "time is \"%s\"; expected ISO 8601 such as 2026-12-03T10:00:00+00:00."
                .formatted(shortened(text)));
      }
    }

    private OptionalDouble number(NamedCsvRecord record, String column, long line) {
      String text = record.findField(column).orElse("").strip();
      if (text.isEmpty()) {
        return OptionalDouble.empty();
      }
      if (!text.matches("[-+]?(\\.[0-9]+|[0-9]+(\\.[0-9]*)?)([eE][-+]?[0-9]+)?")
          || !Double.isFinite(Double.parseDouble(text))) {
        throw InputException.at(
            fileName,
            (int) line,
            "%s is \"%s\"; expected a number.".formatted(column, shortened(text)));
      }
      return OptionalDouble.of(Double.parseDouble(text));
    }

    private final List<String> told = new ArrayList<>();

    private void tell(String what, long line) {
      long sofar = told.stream().filter(what::equals).count();
      told.add(what);
      if (sofar < TOLD_OF_A_KIND) {
        remarks.add("Line %d is %s and is left out.".formatted(line, what));
      }
    }

    private Log ordered() {
      RowOrder order = RowOrder.of(rows.stream().mapToDouble(Row::seconds).toArray());
      for (RowOrder.Setback back : order.setbacks()) {
        remarks.add(
            ("Line %d: the clock goes back, from %s s to %s s; the rows were kept in the order of"
                    + " the file, and the times from there on count on from the row before.")
                .formatted(
                    lines.get(back.row()),
                    YamlText.number(back.fromSeconds()),
                    YamlText.number(back.toSeconds())));
      }
      int misplaced = order.misplaced();
      if (misplaced >= 0) {
        remarks.add(
            "Line %d is out of order (%s s after a row of %s s); the rows are sorted by time."
                .formatted(
                    lines.get(misplaced),
                    YamlText.number(rows.get(misplaced).seconds()),
                    YamlText.number(rows.get(misplaced - 1).seconds())));
      }
      int[] places = order.rows();
      double[] seconds = order.seconds();
      List<Row> kept = new ArrayList<>();
      for (int i = 0; i < places.length; i++) {
        kept.add(rows.get(places[i]).at(seconds[i]));
      }
      int same = rows.size() - kept.size();
      if (same > 0) {
        remarks.add(
            "%d rows have the time of the row before them and are left out.".formatted(same));
      }
      tellGaps(kept);
      tellSums();
      return new Log(kept, zero, localZero, remarks);
    }

    private void tellSums() {
      told.stream()
          .distinct()
          .forEach(
              what -> {
                long count = told.stream().filter(what::equals).count();
                if (count > TOLD_OF_A_KIND) {
                  remarks.add("In all, %d lines are %s.".formatted(count, what));
                }
              });
    }

    private void tellGaps(List<Row> kept) {
      if (kept.size() < 3) {
        return;
      }
      double[] steps = new double[kept.size() - 1];
      for (int i = 0; i < steps.length; i++) {
        steps[i] = kept.get(i + 1).seconds() - kept.get(i).seconds();
      }
      double[] sorted = steps.clone();
      Arrays.sort(sorted);
      double limit = Math.max(SHORTEST_GAP_SECONDS, GAP_STEPS * sorted[sorted.length / 2]);
      int gaps = 0;
      for (int i = 0; i < steps.length; i++) {
        if (steps[i] > limit) {
          gaps++;
          if (gaps <= TOLD_OF_A_KIND) {
            remarks.add(
                "The log has a gap of %s s after %s s."
                    .formatted(YamlText.number(steps[i]), YamlText.number(kept.get(i).seconds())));
          }
        }
      }
      if (gaps > TOLD_OF_A_KIND) {
        remarks.add("In all, the log has %d gaps.".formatted(gaps));
      }
    }
  }
}
