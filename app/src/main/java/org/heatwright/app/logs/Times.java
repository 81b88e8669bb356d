package org.heatwright.app.logs;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.heatwright.app.files.InputException;

/**
 * The time of every row.
 *
 * @param seconds by row; NaN where a row tells none. From the first row on, or as written where the
 *     file counts from a start
 * @param start the instant of second 0, where the file tells one
 * @param localStart the local time of second 0, where the file tells a date without an offset
 */
record Times(double[] seconds, Optional<Instant> start, Optional<LocalDateTime> localStart) {

  private static final double DAY_SECONDS = 86_400;

  /** Instants from the year 2000 to the year 2100, s. */
  private static final double EARLIEST_SECONDS = 946_684_800;

  private static final double LATEST_SECONDS = 4_102_444_800.0;

  /** 1 January 2000 and 2100 as spreadsheets count days. */
  private static final double EARLIEST_DAY = 36_526;

  private static final double LATEST_DAY = 73_051;

  private static final LocalDate DAY_NOUGHT = LocalDate.of(1899, 12, 30);

  // What a firing's log usually is; our estimate, for files that say nothing.
  private static final double SHORTEST_SECONDS = 600;
  private static final double LONGEST_SECONDS = 120 * 3600;
  private static final double CLOSEST_SECONDS = 0.2;
  private static final double WIDEST_SECONDS = 1200;
  private static final double FASTEST_KELVINS_PER_HOUR = 6000;

  /** A firing's log does not span more days. */
  private static final long MOST_DAYS = 60;

  private static final int MOST_STEPS_BACK = 3;

  static Times of(
      Columns columns, String fileName, Corrections corrections, List<Decision> decisions) {
    return new Reader(columns, fileName, corrections, decisions).read();
  }

  /** Reads one column, once. */
  private static final class Reader {

    private final Columns columns;
    private final List<Table.Row> rows;
    private final String fileName;
    private final Corrections corrections;
    private final List<Decision> decisions;

    Reader(Columns columns, String fileName, Corrections corrections, List<Decision> decisions) {
      this.columns = columns;
      this.rows = columns.table.rows();
      this.fileName = fileName;
      this.corrections = corrections;
      this.decisions = decisions;
    }

    Times read() {
      Decision form =
          corrections
              .of(Topic.TIME_FORM)
              .map(word -> decision(word, Sureness.TOLD, "You said so."))
              .orElseGet(this::form);
      decisions.add(form);
      TimeForm chosen = TimeForm.of(form.word());
      return chosen == TimeForm.DATE_TIME
          ? dateTimes()
          : chosen.isNumber() ? numbers(chosen) : clocks(chosen);
    }

    private static Decision decision(
        String word, Sureness sure, String why, String... alternatives) {
      return new Decision(Topic.TIME_FORM, word, sure, why, List.of(alternatives));
    }

    private Decision form() {
      return switch (columns.kinds[columns.time]) {
        case DATE_TIME -> decision("date-time", Sureness.SURE, "It holds dates with times of day.");
        case DATE ->
            decision(
                "date-time", Sureness.LIKELY, "It holds dates; no column of times goes with it.");
        case TIME -> columns.date == Columns.NO ? clockForm() : withDate();
        default -> numberForm();
      };
    }

    private static Decision withDate() {
      return decision("date-time", Sureness.SURE, "A date stands beside each time of day.");
    }

    private Decision clockForm() {
      String name = columns.name(columns.time).toLowerCase(java.util.Locale.ROOT);
      List<Moments.Time> times =
          columns.filled(columns.time).stream()
              .map(Moments::of)
              .flatMap(m -> m.flatMap(Moments.Moment::time).stream())
              .toList();
      boolean half = times.stream().anyMatch(t -> t.half() != ' ');
      boolean full = times.stream().anyMatch(Moments.Time::hasSeconds);
      if (half) {
        return decision("clock", Sureness.SURE, "AM and PM belong to a time of day.");
      }
      if (full) {
        return decision("clock", Sureness.SURE, "It holds hours, minutes and seconds.");
      }
      if (name.contains("mm:ss") && !name.contains("h")) {
        return decision("minutes-seconds", Sureness.SURE, "Its name says so.");
      }
      if (name.contains("h:mm")) {
        return decision("clock", Sureness.SURE, "Its name says so.");
      }
      if (times.stream().anyMatch(t -> t.hours() > 120)) {
        return decision(
            "minutes-seconds", Sureness.LIKELY, "As hours they would be more than five days.");
      }
      return decision(
          "clock",
          Sureness.GUESS,
          "Two numbers can be hours and minutes or minutes and seconds; nothing in the file decides.",
          "minutes-seconds");
    }

    private double[] values() {
      double[] values = new double[rows.size()];
      for (int i = 0; i < values.length; i++) {
        Table.Row row = rows.get(i);
        String field = row.fields().get(columns.time);
        OptionalDouble value = columns.numbers.value(field);
        if (value.isEmpty() && !Numbers.isMissing(field)) {
          throw garbled(row, columns.time, "is no number", "a number such as " + example());
        }
        values[i] = value.orElse(Double.NaN);
      }
      return values;
    }

    private String example() {
      return columns.filled(columns.time).stream()
          .filter(f -> columns.numbers.value(f).isPresent())
          .findFirst()
          .orElse("60");
    }

    private InputException garbled(Table.Row row, int column, String what, String right) {
      return InputException.at(
          fileName,
          row.line(),
          "\"%s\" in %s %s; expected %s."
              .formatted(row.fields().get(column), columns.words(column), what, right));
    }

    private Decision numberForm() {
      double[] known = Arrays.stream(values()).filter(v -> !Double.isNaN(v)).toArray();
      if (known.length == 0) {
        throw InputException.in(
            fileName,
            "%s holds no time at all; expected another column, named by time=…."
                .formatted(columns.words(columns.time)));
      }
      double low = Arrays.stream(known).min().orElseThrow();
      double high = Arrays.stream(known).max().orElseThrow();
      if (low >= 1000 * EARLIEST_SECONDS && high <= 1000 * LATEST_SECONDS) {
        return decision(
            "epoch-ms", Sureness.SURE, "So large a number counts milliseconds since 1970.");
      }
      Optional<TimeForm> named = Names.timeUnit(columns.name(columns.time));
      if (low >= EARLIEST_SECONDS && high <= LATEST_SECONDS) {
        return decision("epoch-s", Sureness.SURE, "So large a number counts seconds since 1970.");
      }
      if (named.isPresent()) {
        return decision(named.get().word(), Sureness.SURE, "The name of its column says so.");
      }
      Optional<String> behind =
          columns.filled(columns.time).stream().findFirst().flatMap(Numbers::unit);
      if (behind.isPresent()) {
        String unit = behind.get();
        return decision(
            unit.equals("min") ? "minutes" : unit.equals("h") ? "hours" : "seconds",
            Sureness.SURE,
            "The unit stands behind its numbers.");
      }
      if (low >= EARLIEST_DAY && high <= LATEST_DAY && high - low <= MOST_DAYS) {
        return decision(
            "serial-days",
            Sureness.LIKELY,
            "Spreadsheets count days since 1900 so, and the dates are of this century.",
            "seconds");
      }
      List<String> fits = new ArrayList<>();
      double span = high - low;
      double step = span / Math.max(1, known.length - 1);
      double kelvins = chamberSpan();
      for (TimeForm form : List.of(TimeForm.SECONDS, TimeForm.MINUTES, TimeForm.HOURS)) {
        double unit = form.unitSeconds();
        if (span * unit >= SHORTEST_SECONDS
            && span * unit <= LONGEST_SECONDS
            && step * unit >= CLOSEST_SECONDS
            && step * unit <= WIDEST_SECONDS
            && kelvins / (span * unit) * 3600 <= FASTEST_KELVINS_PER_HOUR) {
          fits.add(form.word());
        }
      }
      if (fits.isEmpty()) {
        return decision(
            "seconds",
            Sureness.GUESS,
            "Nothing says what it counts, and neither seconds nor minutes nor hours make a usual"
                + " firing.",
            "minutes",
            "hours");
      }
      return decision(
          fits.get(0),
          Sureness.GUESS,
          fits.size() == 1
              ? "Nothing says what it counts; as %s alone the log is of a usual length."
                  .formatted(fits.get(0))
              : "Nothing says what it counts, and %s make a usual firing."
                  .formatted(String.join(" as well as ", fits)),
          fits.subList(1, fits.size()).toArray(String[]::new));
    }

    private double chamberSpan() {
      double[] values =
          columns.filled(columns.chamber).stream()
              .map(columns.numbers::value)
              .filter(OptionalDouble::isPresent)
              .mapToDouble(OptionalDouble::getAsDouble)
              .toArray();
      return values.length == 0
          ? 0
          : Arrays.stream(values).max().orElseThrow() - Arrays.stream(values).min().orElseThrow();
    }

    private Times numbers(TimeForm form) {
      double[] values = values();
      double first = Arrays.stream(values).filter(v -> !Double.isNaN(v)).findFirst().orElse(0);
      double unit = form.unitSeconds();
      boolean epoch = form == TimeForm.EPOCH_MILLIS || form == TimeForm.EPOCH_SECONDS;
      boolean counts = !epoch && form != TimeForm.SERIAL_DAYS;
      boolean dated = epoch && first * unit >= EARLIEST_SECONDS;
      double base = counts || epoch && !dated ? 0 : first;
      double[] seconds =
          Arrays.stream(values).map(v -> Math.rint((v - base) * unit * 1000) / 1000).toArray();
      return new Times(
          seconds,
          dated
              ? Optional.of(Instant.ofEpochMilli(Math.round(first * unit * 1000)))
              : Optional.empty(),
          form == TimeForm.SERIAL_DAYS
              ? Optional.of(
                  DAY_NOUGHT
                      .atStartOfDay()
                      .plusNanos(Math.round(first * DAY_SECONDS * 1000) * 1_000_000))
              : Optional.empty());
    }

    private Times clocks(TimeForm form) {
      double[] seconds = new double[rows.size()];
      double before = Double.NaN;
      double days = 0;
      double first = Double.NaN;
      for (int i = 0; i < seconds.length; i++) {
        Table.Row row = rows.get(i);
        String field = row.fields().get(columns.time);
        if (Numbers.isMissing(field)) {
          seconds[i] = Double.NaN;
          continue;
        }
        Moments.Time time =
            Moments.of(field)
                .flatMap(Moments.Moment::time)
                .filter(t -> t.minutes() < 60 && t.fullSeconds() < 60)
                .filter(t -> t.half() == ' ' || t.isOfADay())
                .orElseThrow(
                    () -> garbled(row, columns.time, "is no time", "one such as 14:05:10"));
        double now = form == TimeForm.CLOCK ? time.clockSeconds() : time.shortSeconds();
        if (Double.isNaN(now)) {
          throw garbled(
              row, columns.time, "has hours", "minutes and seconds alone, or time-form=clock");
        }
        // Past midnight a clock begins again.
        if (form == TimeForm.CLOCK && now + days < before - DAY_SECONDS / 2 && now < DAY_SECONDS) {
          days += DAY_SECONDS;
        }
        before = now + days;
        first = Double.isNaN(first) ? before : first;
        seconds[i] = before - first;
      }
      return new Times(seconds, Optional.empty(), Optional.empty());
    }

    private Times dateTimes() {
      int dateColumn = columns.date == Columns.NO ? columns.time : columns.date;
      Map<Moments.Date, Table.Row> dates = new LinkedHashMap<>();
      Moments.Date[] date = new Moments.Date[rows.size()];
      Moments.Time[] time = new Moments.Time[rows.size()];
      boolean half = false;
      Moments.Date last = null;
      for (int i = 0; i < date.length; i++) {
        Table.Row row = rows.get(i);
        String field = row.fields().get(columns.time);
        String day = row.fields().get(dateColumn);
        if (Numbers.isMissing(field)) {
          continue;
        }
        if (!Numbers.isMissing(day)) {
          last =
              Moments.of(day)
                  .flatMap(Moments.Moment::date)
                  .orElseThrow(
                      () -> garbled(row, dateColumn, "is no date", "one such as 2026-04-03"));
          dates.putIfAbsent(last, row);
        }
        if (last == null) {
          continue;
        }
        date[i] = last;
        Optional<Moments.Time> read = Moments.of(field).flatMap(Moments.Moment::time);
        if (read.isEmpty() && columns.kinds[columns.time] == Columns.Kind.DATE) {
          read = Optional.of(new Moments.Time(0, 0, 0, false, ' ', Optional.empty()));
        }
        time[i] =
            read.filter(Moments.Time::isOfADay)
                .orElseThrow(
                    () -> garbled(row, columns.time, "is no time of day", "one such as 14:05:10"));
        half |= time[i].half() != ' ';
      }
      if (dates.isEmpty()) {
        throw InputException.in(
            fileName,
            "%s holds no dates; expected another column, named by date=…, or time-form=clock."
                .formatted(columns.words(dateColumn)));
      }
      return timed(order(dates, dateColumn, half), date, time, dateColumn);
    }

    private Times timed(DateOrder order, Moments.Date[] date, Moments.Time[] time, int dateColumn) {
      double[] seconds = new double[rows.size()];
      boolean offset = Arrays.stream(time).anyMatch(t -> t != null && t.offset().isPresent());
      double first = Double.NaN;
      for (int i = 0; i < seconds.length; i++) {
        Moments.Date written = date[i];
        Moments.Time clock = time[i];
        if (written == null || clock == null) {
          seconds[i] = Double.NaN;
          continue;
        }
        Table.Row row = rows.get(i);
        LocalDate day =
            day(order, written)
                .orElseThrow(
                    () ->
                        garbled(
                            row,
                            dateColumn,
                            "is no date read " + order.words(),
                            "a day that is in the calendar, or another date-order"));
        if (offset && clock.offset().isEmpty()) {
          throw garbled(
              row, columns.time, "has no offset from UTC as other rows have", "one form in all");
        }
        double since =
            day.toEpochDay() * DAY_SECONDS
                + clock.clockSeconds()
                - clock.offset().map(ZoneOffset::getTotalSeconds).orElse(0);
        first = Double.isNaN(first) ? since : first;
        seconds[i] = Math.rint((since - first) * 1000) / 1000;
      }
      long millis = Math.round(first * 1000);
      return new Times(
          seconds,
          offset ? Optional.of(Instant.ofEpochMilli(millis)) : Optional.empty(),
          offset
              ? Optional.empty()
              : Optional.of(LocalDateTime.ofInstant(Instant.ofEpochMilli(millis), ZoneOffset.UTC)));
    }

    private static Optional<LocalDate> day(DateOrder order, Moments.Date date) {
      return date.named() ? DateOrder.DAY_MONTH_YEAR.date(date) : order.date(date);
    }

    private DateOrder order(Map<Moments.Date, Table.Row> dates, int column, boolean half) {
      Optional<String> told = corrections.of(Topic.DATE_ORDER);
      Decision decision =
          told.map(
                  word ->
                      new Decision(
                          Topic.DATE_ORDER, word, Sureness.TOLD, "You said so.", List.of()))
              .orElseGet(() -> recognised(dates, column, half));
      decisions.add(decision);
      return DateOrder.of(decision.word());
    }

    private Decision recognised(Map<Moments.Date, Table.Row> dates, int column, boolean half) {
      Moments.Date first = dates.keySet().iterator().next();
      String written = dates.values().iterator().next().fields().get(column);
      if (first.named()) {
        return decided(DateOrder.DAY_MONTH_YEAR, Sureness.SURE, "The month is a name.", List.of());
      }
      if (first.first() >= 1000) {
        return decided(
            DateOrder.YEAR_MONTH_DAY, Sureness.SURE, "The year has four digits.", List.of());
      }
      List<DateOrder> possible =
          Arrays.stream(DateOrder.values())
              .filter(order -> dates.keySet().stream().allMatch(d -> day(order, d).isPresent()))
              .toList();
      if (possible.isEmpty()) {
        return impossible(dates, column);
      }
      List<DateOrder> fits = possible.stream().filter(o -> isFiring(o, dates)).toList();
      fits = fits.isEmpty() ? possible : fits;
      List<DateOrder> recent =
          fits.stream().filter(o -> o != DateOrder.YEAR_MONTH_DAY || first.first() >= 15).toList();
      fits = recent.isEmpty() ? fits : recent;
      if (fits.size() == 1) {
        return decided(
            fits.get(0),
            // A short year in front is seldom; a wrong day can look like one.
            fits.get(0) == DateOrder.YEAR_MONTH_DAY ? Sureness.GUESS : Sureness.SURE,
            possible.size() == 1
                ? "Read otherwise, a day or a month would not be in the calendar."
                : "Read otherwise, the rows would lie months or years apart.",
            List.of());
      }
      boolean dots = first.dash() == '.' && fits.contains(DateOrder.DAY_MONTH_YEAR);
      boolean monthFirst =
          !dots && fits.contains(DateOrder.MONTH_DAY_YEAR) && (half || isFahrenheit());
      DateOrder order =
          monthFirst
              ? DateOrder.MONTH_DAY_YEAR
              : fits.contains(DateOrder.DAY_MONTH_YEAR) ? DateOrder.DAY_MONTH_YEAR : fits.get(0);
      List<DateOrder> others = fits.stream().filter(o -> o != order).toList();
      if (dots) {
        return decided(
            order,
            Sureness.LIKELY,
            "With dots between its parts a date begins with the day.",
            others);
      }
      return decided(
          order,
          Sureness.GUESS,
          "%s: %s cannot be told: nothing in the file decides%s."
              .formatted(
                  written.split("[ T]")[0],
                  fits.stream().map(DateOrder::words).collect(Collectors.joining(" or ")),
                  monthFirst
                      ? half
                          ? ", but AM and PM often go with the month first"
                          : ", but °F often goes with the month first"
                      : ""),
          others);
    }

    private Decision impossible(Map<Moments.Date, Table.Row> dates, int column) {
      DateOrder best = DateOrder.DAY_MONTH_YEAR;
      long least = Long.MAX_VALUE;
      for (DateOrder order : DateOrder.values()) {
        long wrong = dates.keySet().stream().filter(d -> day(order, d).isEmpty()).count();
        if (wrong < least) {
          least = wrong;
          best = order;
        }
      }
      DateOrder order = best;
      Table.Row row =
          dates.entrySet().stream()
              .filter(e -> day(order, e.getKey()).isEmpty())
              .findFirst()
              .orElseThrow()
              .getValue();
      throw garbled(
          row,
          column,
          "is no date, whichever part is the day",
          "a day, a month from 1 to 12 and a year, as in the other rows");
    }

    private static Decision decided(
        DateOrder order, Sureness sure, String why, List<DateOrder> others) {
      return new Decision(
          Topic.DATE_ORDER, order.word(), sure, why, others.stream().map(DateOrder::word).toList());
    }

    /** Whether the days follow each other as those of a firing. */
    private static boolean isFiring(DateOrder order, Map<Moments.Date, Table.Row> dates) {
      long[] days =
          dates.keySet().stream()
              .mapToLong(d -> day(order, d).orElseThrow().toEpochDay())
              .toArray();
      long span = Arrays.stream(days).max().orElseThrow() - Arrays.stream(days).min().orElseThrow();
      int back = 0;
      for (int i = 1; i < days.length; i++) {
        back += days[i] < days[i - 1] ? 1 : 0;
      }
      return span <= MOST_DAYS && back <= MOST_STEPS_BACK;
    }

    private boolean isFahrenheit() {
      return columns.table.names().stream()
          .anyMatch(n -> Names.temperatureUnit(n).filter("fahrenheit"::equals).isPresent());
    }
  }
}
