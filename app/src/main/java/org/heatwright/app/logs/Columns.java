package org.heatwright.app.logs;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.heatwright.app.files.InputException;

/** Which column is what. Belongs to one reading. */
final class Columns {

  /** For no column. */
  static final int NO = -1;

  /** A firing's readings span this much at least, K or °F; what spans less is no firing. */
  private static final double LEAST_SPAN = 20;

  private static final double HOTTEST = 2900;

  /** Kinds of fields. */
  enum Kind {
    DATE,
    TIME,
    DATE_TIME,
    NUMBER,
    WORDS,
    NOTHING
  }

  final Table table;
  final Kind[] kinds;
  private final String fileName;
  private final Corrections corrections;
  private final List<Decision> decisions;

  int time = NO;
  int date = NO;
  int chamber = NO;
  int setpoint = NO;
  int work = NO;
  int power = NO;
  int event = NO;
  Numbers numbers = Numbers.with("point");

  Columns(Table table, String fileName, Corrections corrections, List<Decision> decisions) {
    this.table = table;
    this.fileName = fileName;
    this.corrections = corrections;
    this.decisions = decisions;
    kinds = new Kind[table.width()];
    Arrays.setAll(kinds, this::kind);
  }

  private Kind kind(int column) {
    int[] counts = new int[Kind.values().length];
    int filled = 0;
    for (Table.Row row : table.rows()) {
      String field = row.fields().get(column);
      if (Numbers.isMissing(field)) {
        counts[field.isEmpty() ? Kind.NOTHING.ordinal() : Kind.WORDS.ordinal()]++;
        continue;
      }
      filled++;
      boolean number = Numbers.looksLike(field, true);
      Optional<Moments.Moment> moment = number ? Optional.empty() : Moments.of(field);
      Kind kind =
          moment
              .map(
                  m ->
                      m.date().isEmpty()
                          ? Kind.TIME
                          : m.time().isEmpty() ? Kind.DATE : Kind.DATE_TIME)
              .orElse(number ? Kind.NUMBER : Kind.WORDS);
      counts[kind.ordinal()]++;
    }
    for (Kind kind : List.of(Kind.DATE_TIME, Kind.DATE, Kind.TIME, Kind.NUMBER)) {
      if (counts[kind.ordinal()] > filled / 2 && filled > 0) {
        return kind;
      }
    }
    return counts[Kind.NOTHING.ordinal()] == table.rows().size() ? Kind.NOTHING : Kind.WORDS;
  }

  /** The fields of a column that say something. */
  List<String> filled(int column) {
    return table.rows().stream()
        .map(row -> row.fields().get(column))
        .filter(field -> !Numbers.isMissing(field))
        .toList();
  }

  String name(int column) {
    return table.names().get(column);
  }

  /** As a sentence names it. */
  String words(int column) {
    return name(column).isEmpty()
        ? "column %d".formatted(column + 1)
        : "column \"%s\"".formatted(name(column));
  }

  /** As a correction would name it. */
  String word(int column) {
    if (column == NO) {
      return Topic.NONE;
    }
    String name = name(column);
    return name.isEmpty()
            || name.equals(Topic.NONE)
            || table.names().indexOf(name) != column
            || table.names().lastIndexOf(name) != column
            || name.matches("\\d+")
        ? Integer.toString(column + 1)
        : name;
  }

  private List<String> words(List<Integer> columns) {
    return columns.stream().map(this::word).toList();
  }

  private int told(Topic topic, String word, boolean noneFits) {
    if (noneFits && word.equals(Topic.NONE)) {
      return NO;
    }
    int byName = table.names().indexOf(word);
    if (byName >= 0) {
      return byName;
    }
    if (word.matches("\\d{1,4}")) {
      int number = Integer.parseInt(word);
      if (number >= 1 && number <= table.width()) {
        return number - 1;
      }
    }
    throw InputException.in(
        fileName,
        "%s is to be column \"%s\", but there is no such column; expected a number from 1 to %d%s."
            .formatted(
                topic.word(),
                word,
                table.width(),
                table.named() ? " or one of " + String.join(", ", table.names()) : ""));
  }

  private void decide(Topic topic, int column, Sureness sure, String why, List<Integer> others) {
    decisions.add(new Decision(topic, word(column), sure, why, words(others)));
  }

  private void asTold(Topic topic, int column) {
    decide(topic, column, Sureness.TOLD, "You said so.", List.of());
  }

  /**
   * Decides for the first column that fits.
   *
   * @param fitting one at least, the best first
   * @param ifOthers how sure that is where others fit too
   */
  private int first(Topic topic, List<Integer> fitting, Sureness ifOthers, String why) {
    int column = fitting.get(0);
    decide(
        topic,
        column,
        fitting.size() == 1 ? Sureness.SURE : ifOthers,
        why,
        fitting.subList(1, fitting.size()));
    return column;
  }

  private List<Integer> those(IntPredicate holds) {
    return IntStream.range(0, table.width()).filter(holds).boxed().toList();
  }

  private boolean free(int column) {
    return column != time
        && column != date
        && column != chamber
        && column != setpoint
        && column != work
        && column != power;
  }

  void decide() {
    Decision decimal =
        Numbers.decimal(
            those(c -> kinds[c] == Kind.NUMBER).stream().map(this::filled).toList(),
            corrections.of(Topic.DECIMAL));
    decisions.add(decimal);
    numbers = Numbers.with(decimal.word());
    decideTime();
    decideTemperatures();
    decidePower();
    decideEvent();
  }

  private void decideTime() {
    Optional<String> told = corrections.of(Topic.TIME);
    if (told.isPresent()) {
      time = told(Topic.TIME, told.get(), false);
      asTold(Topic.TIME, time);
    } else {
      recogniseTime();
    }
    Optional<String> toldDate = corrections.of(Topic.DATE);
    if (toldDate.isPresent()) {
      date = told(Topic.DATE, toldDate.get(), true);
      asTold(Topic.DATE, date);
    } else if (kinds[time] == Kind.TIME) {
      List<Integer> dates = those(c -> kinds[c] == Kind.DATE);
      if (!dates.isEmpty()) {
        date = first(Topic.DATE, dates, Sureness.GUESS, "It holds dates.");
      }
    }
  }

  private void recogniseTime() {
    List<Integer> both = those(c -> kinds[c] == Kind.DATE_TIME);
    List<Integer> clocks = those(c -> kinds[c] == Kind.TIME);
    List<Integer> found = both.isEmpty() ? clocks : both;
    if (!found.isEmpty()) {
      List<Integer> named = found.stream().filter(c -> Names.isTime(name(c))).toList();
      List<Integer> sorted = new ArrayList<>(named);
      found.stream().filter(c -> !sorted.contains(c)).forEach(sorted::add);
      if (both.isEmpty()) {
        clocks.stream().filter(c -> !sorted.contains(c)).forEach(sorted::add);
      }
      time =
          first(
              Topic.TIME,
              sorted,
              Sureness.LIKELY,
              both.isEmpty() ? "It holds times." : "It holds dates with times.");
      return;
    }
    List<Integer> rising = those(c -> kinds[c] == Kind.NUMBER && rises(c));
    List<Integer> named = those(c -> kinds[c] == Kind.NUMBER && Names.isTime(name(c)));
    if (!named.isEmpty()) {
      time = first(Topic.TIME, named, Sureness.LIKELY, "Its name says so.");
      return;
    }
    if (rising.isEmpty()) {
      throw InputException.in(
          fileName,
          "no column rises from row to row as a time does; expected one with a time, named by time=….");
    }
    // A number of the row rises by one; a time beside it is the better.
    List<Integer> sorted = new ArrayList<>(rising);
    sorted.sort(Comparator.comparing(this::counts));
    time = sorted.get(0);
    decide(
        Topic.TIME,
        time,
        Sureness.GUESS,
        "It rises in every row; nothing says that it is the time.",
        sorted.subList(1, sorted.size()));
  }

  private double[] values(int column) {
    return filled(column).stream()
        .map(numbers::value)
        .filter(OptionalDouble::isPresent)
        .mapToDouble(OptionalDouble::getAsDouble)
        .toArray();
  }

  private boolean rises(int column) {
    double[] values = values(column);
    if (values.length < table.rows().size() || values.length < 2) {
      return false;
    }
    int up = 0;
    for (int i = 1; i < values.length; i++) {
      up += values[i] > values[i - 1] ? 1 : 0;
    }
    return up >= 0.98 * (values.length - 1);
  }

  private boolean counts(int column) {
    double[] values = values(column);
    return IntStream.range(1, values.length).allMatch(i -> values[i] == values[i - 1] + 1);
  }

  private void decideTemperatures() {
    Optional<String> toldSetpoint = corrections.of(Topic.SETPOINT);
    toldSetpoint.ifPresent(word -> setpoint = told(Topic.SETPOINT, word, true));
    Optional<String> toldWork = corrections.of(Topic.WORK);
    toldWork.ifPresent(word -> work = told(Topic.WORK, word, true));
    corrections.of(Topic.POWER).ifPresent(word -> power = told(Topic.POWER, word, true));
    decideChamber();
    if (toldSetpoint.isPresent()) {
      asTold(Topic.SETPOINT, setpoint);
    } else {
      setpoint = other(Topic.SETPOINT, Names::isSetpoint);
    }
    if (toldWork.isPresent()) {
      asTold(Topic.WORK, work);
    } else {
      work = other(Topic.WORK, name -> Names.isWork(name) && Names.powerUnit(name).isEmpty());
    }
  }

  private int other(Topic topic, Predicate<String> holds) {
    List<Integer> named = those(c -> kinds[c] == Kind.NUMBER && free(c) && holds.test(name(c)));
    if (named.isEmpty()) {
      return topic == Topic.SETPOINT ? setpoint : NO;
    }
    return first(topic, named, Sureness.LIKELY, "Its name says so.");
  }

  private void decideChamber() {
    Optional<String> told = corrections.of(Topic.CHAMBER);
    if (told.isPresent()) {
      chamber = told(Topic.CHAMBER, told.get(), false);
      asTold(Topic.CHAMBER, chamber);
      return;
    }
    List<Integer> named =
        those(
            c ->
                kinds[c] == Kind.NUMBER
                    && free(c)
                    && Names.isTemperature(name(c))
                    && !Names.isSetpoint(name(c))
                    && !Names.isWork(name(c))
                    && Names.powerUnit(name(c)).isEmpty());
    if (!named.isEmpty()) {
      List<Integer> chambers = named.stream().filter(c -> Names.isChamber(name(c))).toList();
      List<Integer> best = chambers.isEmpty() ? named : chambers;
      chamber = best.get(0);
      decide(
          Topic.CHAMBER,
          chamber,
          best.size() > 1 ? Sureness.GUESS : named.size() > 1 ? Sureness.LIKELY : Sureness.SURE,
          best.size() > 1
              ? "It is the first of %d that can be by their names.".formatted(best.size())
              : "Its name says so.",
          named.stream().filter(c -> c != chamber).toList());
      return;
    }
    byValues();
  }

  /** No name helps: a firing spans hundreds of degrees, and a setpoint has no noise. */
  private void byValues() {
    List<Integer> hot =
        those(
            c ->
                kinds[c] == Kind.NUMBER
                    && free(c)
                    && !Names.isAmbient(name(c))
                    && !Names.isPower(name(c))
                    && !Names.isSetpoint(name(c))
                    && !counts(c)
                    && isFiring(values(c)));
    if (hot.isEmpty()) {
      throw InputException.in(
          fileName,
          ("no column holds readings of a firing (at least %.0f degrees between lowest and highest, none above %.0f); expected one, named by chamber=….")
              .formatted(LEAST_SPAN, HOTTEST));
    }
    List<Integer> rough = new ArrayList<>(hot);
    rough.sort(Comparator.comparingDouble(c -> -roughness(values(c))));
    chamber = rough.get(0);
    decide(
        Topic.CHAMBER,
        chamber,
        Sureness.GUESS,
        hot.size() == 1
            ? "Its values alone are those of a firing; no name says so."
            : "No name says so; of %d columns with a firing's values it is the one with noise."
                .formatted(hot.size()),
        rough.subList(1, rough.size()));
    if (hot.size() == 2 && corrections.of(Topic.SETPOINT).isEmpty()) {
      setpoint = rough.get(1);
      decide(
          Topic.SETPOINT,
          setpoint,
          Sureness.GUESS,
          "It goes with the chamber's reading, without noise.",
          List.of(chamber));
    }
  }

  private static boolean isFiring(double[] values) {
    double low = Arrays.stream(values).min().orElse(0);
    double high = Arrays.stream(values).max().orElse(0);
    return high - low >= LEAST_SPAN && high > 60 && high <= HOTTEST && low > -60;
  }

  /** Mean of second differences over the range. */
  private static double roughness(double[] values) {
    double sum = 0;
    for (int i = 2; i < values.length; i++) {
      sum += Math.abs(values[i] - 2 * values[i - 1] + values[i - 2]);
    }
    double low = Arrays.stream(values).min().orElse(0);
    double high = Arrays.stream(values).max().orElse(0);
    return high > low ? sum / (high - low) : 0;
  }

  private void decidePower() {
    Optional<String> told = corrections.of(Topic.POWER);
    if (told.isPresent()) {
      asTold(Topic.POWER, power);
      return;
    }
    List<Integer> named = those(c -> kinds[c] == Kind.NUMBER && free(c) && Names.isPower(name(c)));
    if (!named.isEmpty()) {
      power = first(Topic.POWER, named, Sureness.LIKELY, "Its name says so.");
    }
  }

  private void decideEvent() {
    Optional<String> told = corrections.of(Topic.EVENT);
    if (told.isPresent()) {
      event = told(Topic.EVENT, told.get(), true);
      asTold(Topic.EVENT, event);
      return;
    }
    List<Integer> named = those(c -> kinds[c] == Kind.WORDS && free(c) && Names.isEvent(name(c)));
    if (!named.isEmpty()) {
      event = named.get(0);
      decide(
          Topic.EVENT, event, Sureness.SURE, "Its name says so.", named.subList(1, named.size()));
    }
  }

  /** What each column is read as. */
  List<LogColumn> told() {
    List<LogColumn> told = new ArrayList<>();
    for (int c = 0; c < table.width(); c++) {
      int column = c;
      told.add(
          new LogColumn(
              c + 1,
              name(c),
              c == time
                  ? Topic.TIME.word()
                  : c == date
                      ? Topic.DATE.word()
                      : c == chamber
                          ? Topic.CHAMBER.word()
                          : c == setpoint
                              ? Topic.SETPOINT.word()
                              : c == work
                                  ? Topic.WORK.word()
                                  : c == power
                                      ? Topic.POWER.word()
                                      : c == event ? Topic.EVENT.word() : "",
              table.rows().stream().limit(3).map(row -> row.fields().get(column)).toList()));
    }
    return told;
  }
}
