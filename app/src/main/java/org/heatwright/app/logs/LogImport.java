package org.heatwright.app.logs;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.files.YamlText;
import org.heatwright.units.TemperatureUnit;

/** Reads a log of any logger: recognises its form, row by row makes a log of ours of it. */
public final class LogImport {

  private static final int PREVIEW_ROWS = 12;
  private static final int TOLD_OF_A_KIND = 5;
  private static final double ZERO_CELSIUS_KELVINS = 273.15;

  // What a log of ours holds.
  private static final double COLDEST_CELSIUS = -100;
  private static final double HOTTEST_CELSIUS = 2500;

  // Where a firing begins and how far it goes, °C; our estimate, for files without a unit.
  private static final double COLDEST_ROOM_CELSIUS = 0;
  private static final double HOTTEST_ROOM_CELSIUS = 45;
  private static final double LOWEST_PEAK_CELSIUS = 60;
  private static final double HIGHEST_PEAK_CELSIUS = 1400;

  private LogImport() {}

  /**
   * Reads a file.
   *
   * @param bytes all of it
   * @param fileName as sentences about it call it
   * @param corrections what a person said about it; it goes before what is recognised
   * @throws InputException in one sentence, if no log can be made of it
   */
  public static LogReading read(byte[] bytes, String fileName, Corrections corrections) {
    return new Reading(fileName, corrections).read(bytes);
  }

  /**
   * By what the next file of the same logger is known, whatever was corrected: the separator and
   * the names of its columns.
   *
   * @throws InputException in one sentence, if the file has no rows
   */
  public static String shape(byte[] bytes, String fileName) {
    Decoded decoded = Decoded.of(bytes, fileName, Optional.empty());
    return Table.of(decoded.text(), fileName, Corrections.none()).shape();
  }

  /** One reading of one file. */
  private static final class Reading {

    private final String fileName;
    private final Corrections corrections;
    private final List<Decision> decisions = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();
    private final Map<String, Integer> leftOut = new LinkedHashMap<>();

    Reading(String fileName, Corrections corrections) {
      this.fileName = fileName;
      this.corrections = corrections;
    }

    LogReading read(byte[] bytes) {
      Decoded decoded = Decoded.of(bytes, fileName, corrections.of(Topic.ENCODING));
      decisions.add(decoded.decision());
      Table table = Table.of(decoded.text(), fileName, corrections);
      decisions.addAll(table.decisions());
      remarks.addAll(table.remarks());
      Columns columns = new Columns(table, fileName, corrections, decisions);
      columns.decide();
      Decision unit = unit(columns);
      decisions.add(unit);
      double perWatt = watts(columns);
      Times times = Times.of(columns, fileName, corrections, decisions);
      String setpointUnit = unitOf(columns, columns.setpoint, unit.word());
      String workUnit = unitOf(columns, columns.work, unit.word());
      List<LogFile.Row> rows = new ArrayList<>();
      List<Integer> lines = new ArrayList<>();
      List<LogReading.PreviewRow> preview = new ArrayList<>();
      int outside = 0;
      int worst = 0;
      for (int i = 0; i < table.rows().size(); i++) {
        Table.Row row = table.rows().get(i);
        double seconds = times.seconds()[i];
        OptionalDouble chamber = number(columns, columns.chamber, row);
        if (Double.isNaN(seconds)) {
          leaveOut("without a time", row.line());
          continue;
        }
        if (chamber.isEmpty()) {
          leaveOut("without a reading of the chamber", row.line());
          continue;
        }
        double celsius = celsius(unit.word(), chamber.getAsDouble());
        if (!(celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS)) {
          outside++;
          worst = worst == 0 ? i : worst;
          leaveOut("with a reading that no kiln has", row.line());
          continue;
        }
        LogFile.Row read =
            new LogFile.Row(
                seconds,
                celsius,
                temperature(columns, columns.setpoint, setpointUnit, row),
                perWatt > 0
                    ? scaled(number(columns, columns.power, row), perWatt)
                    : OptionalDouble.empty(),
                temperature(columns, columns.work, workUnit, row),
                event(columns, row));
        rows.add(read);
        lines.add(row.line());
        if (preview.size() < PREVIEW_ROWS) {
          preview.add(new LogReading.PreviewRow(row.line(), row.fields(), read));
        }
      }
      refuseWhatIsNoLog(columns, unit, rows, outside, worst);
      tellSums();
      LogFile.Log log =
          LogFile.inOrder(fileName, rows, lines, times.start(), times.localStart(), remarks);
      if (log.rows().size() < 2) {
        throw InputException.at(
            fileName,
            lines.get(lines.size() - 1),
            "%s tells the same time as in every row; expected times that go on, or another column by time=…."
                .formatted(columns.words(columns.time)));
      }
      decisions.sort(Comparator.comparing(Decision::topic));
      return new LogReading(
          fileName,
          decisions,
          columns.told(),
          preview,
          log,
          corrections.changeLayout() ? shapeOr(table, bytes) : table.shape());
    }

    /** What needs corrections to be cut into rows at all is known by how it is cut then. */
    private String shapeOr(Table corrected, byte[] bytes) {
      try {
        return shape(bytes, fileName);
      } catch (InputException notWithoutThem) {
        return corrected.shape();
      }
    }

    private void refuseWhatIsNoLog(
        Columns columns, Decision unit, List<LogFile.Row> rows, int outside, int worst) {
      if (outside > 2 && outside > (rows.size() + outside) / 10) {
        Table.Row row = columns.table.rows().get(worst);
        throw InputException.at(
            fileName,
            row.line(),
            "\"%s\" in %s and %d more readings are outside of -100 to 2500 °C in %s; expected another unit=… or another column by chamber=…."
                .formatted(
                    row.fields().get(columns.chamber),
                    columns.words(columns.chamber),
                    outside - 1,
                    unit.word()));
      }
      if (rows.size() < 2) {
        throw InputException.in(
            fileName,
            "%d %s with a time and a reading of the chamber in %s; expected two at least."
                .formatted(
                    rows.size(),
                    rows.size() == 1 ? "row is there" : "rows are there",
                    columns.words(columns.chamber)));
      }
    }

    private void leaveOut(String what, int line) {
      if (leftOut.merge(what, 1, Integer::sum) <= TOLD_OF_A_KIND) {
        remarks.add("Line %d is %s and is left out.".formatted(line, what));
      }
    }

    private void tellSums() {
      leftOut.forEach(
          (what, count) -> {
            if (count > TOLD_OF_A_KIND) {
              remarks.add("In all, %d lines are %s.".formatted(count, what));
            }
          });
    }

    private OptionalDouble number(Columns columns, int column, Table.Row row) {
      if (column == Columns.NO) {
        return OptionalDouble.empty();
      }
      String field = row.fields().get(column);
      if (Numbers.isMissing(field)) {
        return OptionalDouble.empty();
      }
      OptionalDouble value = columns.numbers.value(field);
      if (value.isEmpty()) {
        throw InputException.at(
            fileName,
            row.line(),
            "\"%s\" in %s is no number with a decimal %s; expected one, or nothing where there was no reading."
                .formatted(field, columns.words(column), decimalWord()));
      }
      return value;
    }

    private String decimalWord() {
      return decisions.stream()
          .filter(d -> d.topic() == Topic.DECIMAL)
          .findFirst()
          .map(Decision::word)
          .orElse("point");
    }

    private String unitOf(Columns columns, int column, String chamberUnit) {
      return corrections
          .of(Topic.UNIT)
          .or(
              () ->
                  column == Columns.NO
                      ? Optional.empty()
                      : Names.temperatureUnit(columns.name(column)))
          .orElse(chamberUnit);
    }

    private OptionalDouble temperature(Columns columns, int column, String unit, Table.Row row) {
      OptionalDouble value = number(columns, column, row);
      if (value.isEmpty()) {
        return value;
      }
      double celsius = celsius(unit, value.getAsDouble());
      return celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS
          ? OptionalDouble.of(celsius)
          : OptionalDouble.empty();
    }

    private static OptionalDouble scaled(OptionalDouble value, double by) {
      return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * by) : value;
    }

    private static Optional<String> event(Columns columns, Table.Row row) {
      return columns.event == Columns.NO
          ? Optional.empty()
          : Optional.of(row.fields().get(columns.event)).filter(e -> !e.isEmpty());
    }

    private static double celsius(String unit, double value) {
      return switch (unit) {
        case "fahrenheit" -> TemperatureUnit.FAHRENHEIT.temperature(value).celsius();
        case "kelvin" -> value - ZERO_CELSIUS_KELVINS;
        default -> value;
      };
    }

    private Decision unit(Columns columns) {
      Optional<String> said = corrections.of(Topic.UNIT);
      if (said.isPresent()) {
        return new Decision(Topic.UNIT, said.get(), Sureness.TOLD, "You said so.", List.of());
      }
      Optional<String> named = Names.temperatureUnit(columns.name(columns.chamber));
      if (named.isPresent()) {
        return new Decision(
            Topic.UNIT,
            named.get(),
            Sureness.SURE,
            "The name of the chamber's column says so.",
            List.of());
      }
      Optional<String> behind =
          columns.filled(columns.chamber).stream()
              .map(Numbers::unit)
              .flatMap(Optional::stream)
              .findFirst()
              .flatMap(Reading::temperatureUnit);
      if (behind.isPresent()) {
        return new Decision(
            Topic.UNIT,
            behind.get(),
            Sureness.SURE,
            "The unit stands behind the chamber's readings.",
            List.of());
      }
      Optional<String> beside =
          columns.setpoint == Columns.NO
              ? Optional.empty()
              : Names.temperatureUnit(columns.name(columns.setpoint));
      if (beside.isPresent()) {
        return new Decision(
            Topic.UNIT, beside.get(), Sureness.LIKELY, "The setpoint is in it.", List.of());
      }
      Optional<String> above =
          columns.table.above().stream()
              .map(line -> line.toLowerCase(Locale.ROOT).replace('º', '°'))
              .map(Reading::unitIn)
              .flatMap(Optional::stream)
              .findFirst();
      if (above.isPresent()) {
        return new Decision(
            Topic.UNIT, above.get(), Sureness.LIKELY, "A line above the rows names it.", List.of());
      }
      return guessedUnit(columns);
    }

    private static Optional<String> temperatureUnit(String letter) {
      return switch (letter) {
        case "c" -> Optional.of("celsius");
        case "f" -> Optional.of("fahrenheit");
        case "k" -> Optional.of("kelvin");
        default -> Optional.empty();
      };
    }

    private static Optional<String> unitIn(String line) {
      return line.matches(".*(° ?f\\b|℉|fahrenheit|deg\\.? ?f\\b).*")
          ? Optional.of("fahrenheit")
          : line.matches(".*(° ?c\\b|℃|celsius|deg\\.? ?c\\b).*")
              ? Optional.of("celsius")
              : line.contains("kelvin") ? Optional.of("kelvin") : Optional.empty();
    }

    private static Decision guessedUnit(Columns columns) {
      double[] values =
          columns.filled(columns.chamber).stream()
              .map(columns.numbers::value)
              .filter(OptionalDouble::isPresent)
              .mapToDouble(OptionalDouble::getAsDouble)
              .toArray();
      double first = values.length == 0 ? 20 : values[0];
      double peak = Arrays.stream(values).max().orElse(20);
      List<String> fromRoom = new ArrayList<>();
      List<String> warm = new ArrayList<>();
      for (String unit : Topic.UNIT.choices()) {
        double start = celsius(unit, first);
        double top = celsius(unit, peak);
        if (top < LOWEST_PEAK_CELSIUS || top > HIGHEST_PEAK_CELSIUS || start < -20) {
          continue;
        }
        warm.add(unit);
        if (start >= COLDEST_ROOM_CELSIUS && start <= HOTTEST_ROOM_CELSIUS) {
          fromRoom.add(unit);
        }
      }
      String word =
          !fromRoom.isEmpty() ? fromRoom.get(0) : warm.isEmpty() ? "celsius" : warm.get(0);
      return new Decision(
          Topic.UNIT,
          word,
          Sureness.GUESS,
          "The file does not say. A first reading of %s and a peak of %s fit %s%s."
              .formatted(
                  YamlText.number(first),
                  YamlText.number(peak),
                  word,
                  fromRoom.isEmpty() ? " best" : " from a cold kiln"),
          warm.stream().filter(u -> !u.equals(word)).toList());
    }

    /** W of one in the power's column; zero where it is not used. */
    private double watts(Columns columns) {
      if (columns.power == Columns.NO) {
        return 0;
      }
      Decision unit = powerUnit(columns);
      decisions.add(unit);
      Optional<Double> full = corrections.of(Topic.FULL_POWER).map(this::fullPower);
      full.ifPresent(
          w ->
              decisions.add(
                  new Decision(
                      Topic.FULL_POWER,
                      Objects.requireNonNull(corrections.words().get(Topic.FULL_POWER)),
                      Sureness.TOLD,
                      "You said so.",
                      List.of())));
      return switch (unit.word()) {
        case "w" -> 1;
        case "kw" -> 1000;
        default -> {
          if (full.isEmpty()) {
            remarks.add(
                "The duty in %s is not used: watts come of it with the kiln's full power, full-power-w=…."
                    .formatted(columns.words(columns.power)));
          }
          yield full.orElse(0.0) / 100;
        }
      };
    }

    private double fullPower(String word) {
      OptionalDouble watts = Numbers.with("point").value(word);
      if (watts.isEmpty() || !(watts.getAsDouble() > 0 && watts.getAsDouble() <= 100_000)) {
        throw InputException.in(
            fileName,
            "full-power-w is \"%s\"; expected watts, more than 0 and at most 100000."
                .formatted(word));
      }
      return watts.getAsDouble();
    }

    private Decision powerUnit(Columns columns) {
      Optional<String> said = corrections.of(Topic.POWER_UNIT);
      if (said.isPresent()) {
        return new Decision(Topic.POWER_UNIT, said.get(), Sureness.TOLD, "You said so.", List.of());
      }
      Optional<String> named =
          Names.powerUnit(columns.name(columns.power))
              .or(
                  () ->
                      columns.filled(columns.power).stream()
                          .map(Numbers::unit)
                          .flatMap(Optional::stream)
                          .findFirst()
                          .map(u -> u.equals("%") ? "percent" : u)
                          .filter(Topic.POWER_UNIT.choices()::contains));
      if (named.isPresent()) {
        return new Decision(
            Topic.POWER_UNIT,
            named.get(),
            Sureness.SURE,
            "It stands in the column's name or behind its numbers.",
            List.of());
      }
      double most =
          columns.filled(columns.power).stream()
              .map(columns.numbers::value)
              .filter(OptionalDouble::isPresent)
              .mapToDouble(OptionalDouble::getAsDouble)
              .max()
              .orElse(0);
      String word = most > 100 ? "w" : "percent";
      return new Decision(
          Topic.POWER_UNIT,
          word,
          Sureness.GUESS,
          "The file does not say; its largest number is %s.".formatted(YamlText.number(most)),
          most > 100 ? List.of() : List.of("kw", "w"));
    }
  }
}
