package org.heatwright.app.logs;

import java.io.ByteArrayOutputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;

/** The same kind of firing in a form that chance draws, and what is right about that form. */
final class RandomLog {

  private static final LocalDateTime DAY_NOUGHT = LocalDateTime.of(1899, 12, 30, 0, 0);

  private static final List<String> FORMS =
      List.of(
          "seconds",
          "minutes",
          "hours",
          "elapsed",
          "clock",
          "clock-half",
          "iso",
          "iso-offset",
          "dmy",
          "mdy",
          "mdy-half",
          "ymd",
          "named",
          "epoch-s",
          "epoch-ms",
          "serial");

  final double[] seconds;
  final double[] celsius;
  final double[] setpoint;
  final byte[] bytes;
  final String text;
  final double toleranceKelvins;
  final boolean hasSetpoint;

  /** What a reading of it has to decide. */
  final Map<Topic, String> right = new EnumMap<>(Topic.class);

  private final SplittableRandom random;
  private final String separator;
  private final boolean comma;
  private final int digits;
  private final String unit;
  private final boolean quoted;

  RandomLog(long seed) {
    random = new SplittableRandom(seed);
    int n = 30 + random.nextInt(50);
    int step = one(60, 120, 300);
    LocalDateTime start =
        LocalDateTime.of(2026, 1, 1, 0, 0).plusMinutes(random.nextInt(364 * 24 * 60));
    double[] at = new double[n];
    double[] shown = new double[n];
    double[] set = new double[n];
    double peak = 500 + random.nextInt(500);
    int gap = random.nextInt(3) == 0 ? random.nextInt(n) : n;
    for (int i = 0; i < n; i++) {
      at[i] = (i + (i > gap ? 20 : 0)) * (double) step;
      double share = Math.min(1, i / (0.7 * n));
      set[i] = 18 + (peak - 18) * share;
      shown[i] = set[i] - 15 * (share > 0 && share < 1 ? 1 : 0) + random.nextDouble(-1.5, 1.5) + 4;
    }
    separator = one("comma", "semicolon", "tab", "space", "pipe");
    boolean blanks = separator.equals("space");
    comma = random.nextBoolean();
    quoted = comma && separator.equals("comma") || !blanks && random.nextInt(5) == 0;
    digits = random.nextInt(3);
    unit = one("celsius", "fahrenheit", "kelvin");
    toleranceKelvins = 0.5 * Math.pow(10, -digits) / (unit.equals("fahrenheit") ? 1.8 : 1) + 1e-6;
    hasSetpoint = random.nextInt(3) > 0;
    boolean named = random.nextInt(4) > 0;
    int unitStands = named ? random.nextInt(3) : 2; // in the name, in a row of units, nowhere
    String form = FORMS.get(random.nextInt(FORMS.size()));
    boolean dated =
        !List.of(
                "seconds",
                "minutes",
                "hours",
                "elapsed",
                "clock",
                "clock-half",
                "epoch-s",
                "epoch-ms",
                "serial")
            .contains(form);
    boolean split =
        dated
            && (blanks || random.nextInt(3) == 0)
            && (blanks || !form.equals("named"))
            && !form.equals("iso-offset");
    String dash = form.equals("mdy") || form.equals("mdy-half") ? "/" : one(".", "/", "-");
    boolean shortYear = random.nextBoolean();
    boolean full = random.nextInt(3) > 0; // seconds told

    // Columns: a name, a unit, a value by row.
    List<Column> columns = new ArrayList<>();
    if (random.nextInt(5) == 0) {
      columns.add(new Column("No.", "", i -> Integer.toString(i + 1)));
    }
    if (split) {
      columns.add(new Column("Date", "", i -> date(form, start, at[i], dash, shortYear)));
      columns.add(new Column("Time", "", i -> timeOfDay(form, start, at[i], full)));
    } else {
      columns.add(
          new Column(
              dated ? "Timestamp" : "Time",
              timeUnit(form),
              i -> time(form, start, at[i], dash, shortYear, full)));
    }
    int temperatures = columns.size();
    columns.add(
        new Column(one("Actual", "Temp", "Kiln", "PV"), sign(), i -> temperature(shown[i])));
    if (hasSetpoint) {
      columns.add(
          random.nextBoolean() ? temperatures : columns.size(),
          new Column(one("Setpoint", "Target", "SP"), sign(), i -> temperature(set[i])));
    }
    if (random.nextInt(3) == 0) {
      columns.add(new Column("Battery", "V", i -> decimal(3.6 - i * 0.001, 3)));
    }
    boolean missing = !blanks && random.nextInt(3) == 0;
    int lost = missing ? 3 + random.nextInt(n - 4) : -1;
    String mark = one("", "---", "NaN");

    int chamberAt = indexOf(columns, "Actual", "Temp", "Kiln", "PV");
    StringBuilder file = new StringBuilder();
    int above = random.nextInt(4);
    for (int i = 0; i < above; i++) {
      file.append(
          one(
              "Logger number 7",
              "Interval" + between() + step,
              "Channel list, see the manual",
              "Firing of a Thursday"));
      file.append('\n');
    }
    if (named) {
      file.append(row(columns.stream().map(c -> heading(c, unitStands)).toList())).append('\n');
      if (unitStands == 1) {
        file.append(row(columns.stream().map(c -> c.unit().isEmpty() ? "-" : c.unit()).toList()));
        file.append('\n');
      }
    }
    for (int i = 0; i < n; i++) {
      int line = i;
      List<String> fields = new ArrayList<>(columns.stream().map(c -> c.value().at(line)).toList());
      if (i == lost) {
        fields.set(chamberAt, mark);
      }
      file.append(row(fields)).append('\n');
    }
    if (random.nextInt(6) == 0) {
      file.append("End of the log\n");
    }
    text = random.nextBoolean() ? file.toString() : file.toString().replace("\n", "\r\n");
    bytes = encoded(text);

    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      if (i != lost) {
        kept.add(i);
      }
    }
    double first = at[kept.get(0)];
    seconds = kept.stream().mapToDouble(i -> at[i] - first).toArray();
    celsius = kept.stream().mapToDouble(i -> shown[i]).toArray();
    setpoint = kept.stream().mapToDouble(i -> set[i]).toArray();
    if (digits > 0) {
      right.put(Topic.DECIMAL, comma ? "comma" : "point");
    }
    right.put(Topic.SEPARATOR, separator);
    right.put(Topic.UNIT, unit);
    right.put(Topic.TIME_FORM, timeForm(form));
    if (dated && !form.equals("iso") && !form.equals("iso-offset") && !form.equals("named")) {
      right.put(
          Topic.DATE_ORDER,
          form.equals("dmy")
              ? "day-month-year"
              : form.equals("ymd") ? "year-month-day" : "month-day-year");
    }
    right.put(Topic.TIME, number(indexOf(columns, "Timestamp", "Time")));
    right.put(Topic.CHAMBER, number(chamberAt));
    if (hasSetpoint) {
      right.put(Topic.SETPOINT, number(indexOf(columns, "Setpoint", "Target", "SP")));
    }
    if (!named) {
      right.put(Topic.HEADER, Topic.NONE);
    }
  }

  private interface Value {
    String at(int row);
  }

  private record Column(String name, String unit, Value value) {}

  @SafeVarargs
  private <T> T one(T... of) {
    return of[random.nextInt(of.length)];
  }

  private static int indexOf(List<Column> columns, String... names) {
    for (int i = 0; i < columns.size(); i++) {
      if (List.of(names).contains(columns.get(i).name())) {
        return i;
      }
    }
    throw new IllegalArgumentException(String.join(", ", names));
  }

  private static String number(int column) {
    return Integer.toString(column + 1);
  }

  private String heading(Column column, int unitStands) {
    return unitStands != 0 || column.unit().isEmpty()
        ? column.name()
        : column.name() + (separator.equals("space") ? "_" : " ") + "(" + column.unit() + ")";
  }

  private String sign() {
    return unit.equals("celsius") ? "°C" : unit.equals("fahrenheit") ? "°F" : "K";
  }

  private static String timeUnit(String form) {
    return switch (form) {
      case "seconds" -> "s";
      case "minutes" -> "min";
      case "hours" -> "h";
      default -> "";
    };
  }

  private static String timeForm(String form) {
    return switch (form) {
      case "seconds", "minutes", "hours", "epoch-s", "epoch-ms" -> form;
      case "serial" -> "serial-days";
      case "elapsed", "clock", "clock-half" -> "clock";
      default -> "date-time";
    };
  }

  private String between() {
    return switch (separator) {
      case "comma" -> ",";
      case "semicolon" -> ";";
      case "tab" -> "\t";
      case "pipe" -> "|";
      default -> " ";
    };
  }

  private String row(List<String> fields) {
    String between = separator.equals("space") ? " ".repeat(1 + random.nextInt(3)) : between();
    return String.join(between, fields.stream().map(f -> quoted ? '"' + f + '"' : f).toList());
  }

  private String decimal(double value, int places) {
    String text =
        BigDecimal.valueOf(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
    return comma ? text.replace('.', ',') : text;
  }

  private String temperature(double celsius) {
    double value =
        switch (unit) {
          case "fahrenheit" -> celsius * 1.8 + 32;
          case "kelvin" -> celsius + 273.15;
          default -> celsius;
        };
    return decimal(value, digits);
  }

  private static LocalDateTime moment(LocalDateTime start, double seconds) {
    return start.plus(Math.round(seconds * 1000), ChronoUnit.MILLIS);
  }

  private static String date(
      String form, LocalDateTime start, double seconds, String dash, boolean shortYear) {
    String year = shortYear ? "yy" : "yyyy";
    String pattern =
        switch (form) {
          case "dmy" -> "dd" + dash + "MM" + dash + year;
          case "mdy", "mdy-half" -> "M/d/" + year;
          case "named" -> "d MMM " + year;
          case "ymd" -> "yyyy" + dash + "MM" + dash + "dd";
          default -> "yyyy-MM-dd";
        };
    return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(moment(start, seconds));
  }

  private static String timeOfDay(String form, LocalDateTime start, double seconds, boolean full) {
    String pattern =
        form.endsWith("half") ? (full ? "h:mm:ss a" : "h:mm a") : full ? "HH:mm:ss" : "H:mm";
    return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(moment(start, seconds));
  }

  private String time(
      String form, LocalDateTime start, double at, String dash, boolean shortYear, boolean full) {
    LocalDateTime moment = moment(start, at);
    return switch (form) {
      case "seconds" -> decimal(at, 0);
      case "minutes" -> decimal(at / 60, 2);
      case "hours" -> decimal(at / 3600, 5);
      case "elapsed" ->
          "%d:%02d:%02d".formatted((int) at / 3600, (int) at / 60 % 60, (int) at % 60);
      case "clock" -> timeOfDay(form, start, at, true);
      case "clock-half" -> timeOfDay(form, start, at, full);
      case "iso" -> DateTimeFormatter.ISO_LOCAL_DATE_TIME.format(moment);
      case "iso-offset" ->
          DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(moment.atOffset(ZoneOffset.ofHours(2)));
      case "epoch-s" -> Long.toString(moment.toEpochSecond(ZoneOffset.UTC));
      case "epoch-ms" -> Long.toString(1000 * moment.toEpochSecond(ZoneOffset.UTC));
      case "serial" -> decimal(DAY_NOUGHT.until(moment, ChronoUnit.SECONDS) / 86_400.0, 7);
      default -> date(form, start, at, dash, shortYear) + " " + timeOfDay(form, start, at, full);
    };
  }

  private byte[] encoded(String text) {
    String word = one("utf-8", "utf-8 marked", "utf-16le", "utf-16be", "latin-1");
    Charset charset =
        switch (word) {
          case "utf-16le" -> StandardCharsets.UTF_16LE;
          case "utf-16be" -> StandardCharsets.UTF_16BE;
          case "latin-1" -> StandardCharsets.ISO_8859_1;
          default -> StandardCharsets.UTF_8;
        };
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    String marked = word.equals("utf-8") || word.equals("latin-1") ? text : "\uFEFF" + text;
    out.writeBytes(marked.getBytes(charset));
    return out.toByteArray();
  }
}
