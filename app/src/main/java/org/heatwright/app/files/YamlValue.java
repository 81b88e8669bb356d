package org.heatwright.app.files;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.heatwright.schedule.HourMinute;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * One value of a YAML file, with its line and its path ({@code control.kind}, {@code
 * segments[2].rate}; items count from 1). Asked for what it should be, it gives that or an {@link
 * InputException}.
 */
public final class YamlValue {

  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(\\.[0-9]+|[0-9]+(\\.[0-9]*)?)([eE][-+]?[0-9]+)?");
  private static final int SHOWN_LETTERS = 60;

  private final FileKind kind;
  private final String fileName;
  private final String path;
  private final Node node;

  YamlValue(FileKind kind, String fileName, String path, Node node) {
    this.kind = kind;
    this.fileName = fileName;
    this.path = path;
    this.node = node;
  }

  FileKind kind() {
    return kind;
  }

  public String fileName() {
    return fileName;
  }

  /** Where it stands, e.g. {@code control.kind}; empty for the whole file. */
  public String path() {
    return path;
  }

  /** Its line, 1-based. */
  public int line() {
    return YamlFile.lineOf(node.getStartMark());
  }

  String childPath(String key) {
    String shown = shorten(key);
    return path.isEmpty() ? shown : path + "." + shown;
  }

  // ---- shapes

  public boolean isMap() {
    return node instanceof MappingNode;
  }

  public boolean isList() {
    return node instanceof SequenceNode;
  }

  /** Whether it is text or a number, not a list or a mapping. */
  public boolean isScalar() {
    return node instanceof ScalarNode;
  }

  public boolean isText() {
    return node.getTag().equals(Tag.STR) && isScalar();
  }

  public YamlMap map() {
    if (node instanceof MappingNode mapping) {
      return new YamlMap(this, mapping);
    }
    throw wrong("a mapping (keys with values)");
  }

  /** A mapping with no other keys than these (and {@code notes}). */
  public YamlMap map(String... known) {
    return map().only(known);
  }

  public List<YamlValue> list() {
    if (!(node instanceof SequenceNode sequence)) {
      throw wrong("a list");
    }
    List<YamlValue> items = new ArrayList<>();
    for (Node item : sequence.getValue()) {
      items.add(new YamlValue(kind, fileName, "%s[%d]".formatted(path, items.size() + 1), item));
    }
    return items;
  }

  /** A list with at least one item. */
  public List<YamlValue> filledList() {
    List<YamlValue> items = list();
    if (items.isEmpty()) {
      throw wrong("a list with at least one item");
    }
    return items;
  }

  public <T> List<T> listOf(Function<YamlValue, T> read) {
    return list().stream().map(read).toList();
  }

  // ---- text

  /** Text, not blank. What looks like a number or true/false is text only in quotes. */
  public String text() {
    if (!isText()) {
      throw wrong(
          isScalar() && !scalar().isBlank()
              ? "text; write it in quotes: \"%s\"".formatted(shorten(scalar()))
              : "text");
    }
    if (scalar().isBlank()) {
      throw wrong("text that is not blank");
    }
    return printable();
  }

  /** Text or a number, exactly as written: {@code 2.30} stays "2.30". May be blank in quotes. */
  public String asWritten() {
    if (!isText() && !isNumber()) {
      throw wrong("text or a number");
    }
    return printable();
  }

  /** Whether it is just that word. */
  public boolean isWord(String word) {
    return isScalar() && scalar().equals(word);
  }

  /** One of a few words. */
  public String oneOf(List<String> words) {
    String expected = words.size() == 1 ? words.get(0) : either(words);
    if (!isScalar()) {
      throw wrong(expected);
    }
    if (!words.contains(scalar())) {
      throw InputException.at(
          fileName,
          line(),
          "%s is %s; expected %s%s."
              .formatted(path, found(), expected, Nearest.hint(scalar(), words)));
    }
    return scalar();
  }

  /** One of an enum's values, written in lower case with hyphens. */
  public <E extends Enum<E>> E oneOf(Class<E> type) {
    E[] constants = type.getEnumConstants();
    List<String> words = Arrays.stream(constants).map(YamlValue::word).toList();
    return constants[words.indexOf(oneOf(words))];
  }

  /** An enum's value as files write it: {@code ON_OFF} is "on-off". */
  public static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public boolean bool() {
    return oneOf(List.of("true", "false")).equals("true");
  }

  // ---- numbers

  /** A finite number. */
  public double number() {
    return number("a number");
  }

  /** A finite number above zero. */
  public double above0(String unit) {
    String expected = "a number above zero" + inUnit(unit);
    double value = number(expected);
    if (!(value > 0)) {
      throw wrong(expected);
    }
    return value;
  }

  /** A finite number, zero or more. */
  public double atLeast0(String unit) {
    String expected = "a number, zero or more" + inUnit(unit);
    double value = number(expected);
    if (!(value >= 0)) {
      throw wrong(expected);
    }
    return value;
  }

  /** A number from {@code low} to {@code high}, both included. */
  public double between(double low, double high, String unit) {
    String expected =
        "a number from %s to %s%s"
            .formatted(YamlText.number(low), YamlText.number(high), inUnit(unit));
    double value = number(expected);
    if (!(value >= low && value <= high)) {
      throw wrong(expected);
    }
    return value;
  }

  /** A whole number from {@code low} to {@code high}, both included. */
  public int whole(int low, int high) {
    String expected = "a whole number from %d to %d".formatted(low, high);
    double value = number(expected);
    if (!(value >= low && value <= high) || value != Math.rint(value)) {
      throw wrong(expected);
    }
    return (int) value;
  }

  /** Whether it is written as a number. */
  public boolean isNumber() {
    return node instanceof ScalarNode s && s.isPlain() && NUMBER.matcher(s.getValue()).matches();
  }

  private double number(String expected) {
    if (!isNumber()) {
      boolean quoted = isScalar() && NUMBER.matcher(scalar()).matches();
      throw wrong(quoted ? expected + ", without quotes" : expected);
    }
    double value = Double.parseDouble(scalar());
    if (!Double.isFinite(value)) {
      throw wrong(expected);
    }
    return value + 0.0; // -0 is 0
  }

  // ---- times

  /** A duration written h:mm, at most 999:59. */
  public Duration hourMinute() {
    String expected = "hours and minutes such as \"1:30\", at most 999:59";
    if (!isScalar() || scalar().indexOf(':') > 3) {
      throw wrong(expected);
    }
    return HourMinute.parse(scalar()).orElseThrow(() -> wrong(expected));
  }

  /** A time of day written hh:mm. */
  public LocalTime clock() {
    return parsed(LocalTime::parse, "a time of day such as \"22:00\"");
  }

  /** A date written yyyy-mm-dd. */
  public LocalDate date() {
    return parsed(LocalDate::parse, "a date such as 2026-12-03");
  }

  /** A local date and time written yyyy-mm-ddThh:mm. */
  public LocalDateTime dateTime() {
    return parsed(LocalDateTime::parse, "a date and time such as 2026-12-03T10:00");
  }

  private <T> T parsed(Function<String, T> parse, String expected) {
    if (!isScalar()) {
      throw wrong(expected);
    }
    try {
      return parse.apply(scalar());
    } catch (DateTimeParseException e) {
      throw wrong(expected);
    }
  }

  // ---- building and errors

  /** What {@code build} gives; what it refuses is told as an error at this place. */
  public <T> T build(Supplier<T> build) {
    try {
      return build.get();
    } catch (IllegalArgumentException e) {
      String where = path.isEmpty() ? "" : path + ": ";
      throw InputException.at(fileName, line(), where + e.getMessage());
    }
  }

  /** "kiln.yaml, line 7: control.kind is …; expected …." */
  public InputException wrong(String expected) {
    String subject = path.isEmpty() ? "the file" : path;
    return InputException.at(
        fileName, line(), "%s is %s; expected %s.".formatted(subject, found(), expected));
  }

  /** An error at this place in other words; the sentence is put behind the path. */
  public InputException error(String sentence) {
    return InputException.at(fileName, line(), path.isEmpty() ? sentence : path + ": " + sentence);
  }

  private String found() {
    if (node instanceof MappingNode) {
      return "a mapping";
    }
    if (node instanceof SequenceNode sequence) {
      return sequence.getValue().isEmpty() ? "an empty list" : "a list";
    }
    if (scalar().isEmpty()) {
      return "empty";
    }
    return isNumber() ? scalar() : "\"" + shorten(scalar()) + "\"";
  }

  /** One line without control characters, which could play tricks on a terminal or a page. */
  private String printable() {
    String text = scalar().stripTrailing(); // a folded text ends with a line end
    if (text.chars().anyMatch(YamlValue::isControl)) {
      throw wrong("text on one line, without control characters");
    }
    return text;
  }

  private static boolean isControl(int letter) {
    return Character.isISOControl(letter) || letter == 0x2028 || letter == 0x2029;
  }

  private String scalar() {
    return ((ScalarNode) node).getValue();
  }

  private static String shorten(String text) {
    String oneLine = text.replaceAll("\\s+", " ").replaceAll("\\p{Cntrl}", "\uFFFD");
    return oneLine.length() <= SHOWN_LETTERS ? oneLine : oneLine.substring(0, SHOWN_LETTERS) + "…";
  }

  private static String either(List<String> words) {
    int last = words.size() - 1;
    return String.join(", ", words.subList(0, last)) + " or " + words.get(last);
  }

  private static String inUnit(String unit) {
    return unit.isEmpty() ? "" : " (" + unit + ")";
  }

  // ---- copying what Heatwright does not use itself

  /** The value as YAML on one line, for parts of a file that are kept but not used. */
  public String asFlow() {
    if (node instanceof MappingNode) {
      List<String> parts = new ArrayList<>();
      map().ordered().forEach((k, v) -> parts.add(YamlText.text(k) + ": " + v.asFlow()));
      return "{" + String.join(", ", parts) + "}";
    }
    if (node instanceof SequenceNode) {
      return "[" + String.join(", ", listOf(YamlValue::asFlow)) + "]";
    }
    return isText() ? YamlText.text(scalar()) : scalar();
  }
}
