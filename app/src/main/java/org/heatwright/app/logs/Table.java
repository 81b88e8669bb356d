package org.heatwright.app.logs;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.heatwright.app.files.InputException;
import org.jspecify.annotations.Nullable;

/**
 * A file cut into rows and columns.
 *
 * @param names of the columns, as many as there are; empty ones where the file has none
 * @param named whether the file names them
 * @param rows with as many fields each
 * @param above what stands above the names and the rows
 * @param remarks about lines that are no rows
 */
record Table(
    int width,
    List<String> names,
    boolean named,
    List<Row> rows,
    List<String> above,
    List<Decision> decisions,
    List<String> remarks,
    String shape) {

  static final String[] SEPARATORS = {"tab", "semicolon", "pipe", "comma", "space"};

  /** Enough lines to see how a file is cut. */
  private static final int LOOKED_AT_LINES = 200;

  private static final int TOLD_OF_A_KIND = 5;
  private static final int LONGEST_SHAPE = 900;
  private static final int LONGEST_UNIT = 10;
  private static final Pattern UNIT =
      Pattern.compile(
          "(?i)[(\\[]?([°º]\\s?[CFK]|[CFK]|℃|℉|deg\\.?\\s?[CFK]|celsius|fahrenheit|kelvin|%|k?W"
              + "|s|sec|seconds|min|minutes|h|hours|h+:mm(:ss)?|dd.mm.yy(yy)?|yyyy.mm.dd)[)\\]]?");

  private static final Pattern MONTH = Pattern.compile("\\p{L}{3,9}\\.?");
  private static final Pattern DAY = Pattern.compile("\\d{1,2}\\.?");
  private static final Pattern YEAR = Pattern.compile("\\d{2}|\\d{4}");
  private static final Pattern HALF = Pattern.compile("(?i)[ap]\\.?m\\.?");
  private static final Pattern CLOCK = Pattern.compile("\\d{1,2}:\\d{2}(:\\d{2}([.,]\\d+)?)?");

  /** A line of values. */
  record Row(int line, List<String> fields) {}

  private record Line(int number, String text) {}

  /** How well a separator cuts. */
  private record Cut(String separator, int width, double score) {}

  static Table of(String text, String fileName, Corrections corrections) {
    return new Cutting(text, fileName, corrections).table();
  }

  /** Cuts one file, once. */
  private static final class Cutting {

    private final String fileName;
    private final Corrections corrections;
    private final List<Line> lines = new ArrayList<>();
    private final List<Decision> decisions = new ArrayList<>();
    private final List<String> remarks = new ArrayList<>();

    Cutting(String text, String fileName, Corrections corrections) {
      this.fileName = fileName;
      this.corrections = corrections;
      int[] number = {0};
      text.lines()
          .forEach(
              line -> {
                number[0]++;
                String stripped = line.replace("\u001a", "").strip();
                // A tab at an end is an empty field.
                if (!stripped.isEmpty()) {
                  lines.add(new Line(number[0], stripLines(line)));
                }
              });
    }

    private static String stripLines(String line) {
      String text = line.replace("\u001a", "");
      int begin = 0;
      int end = text.length();
      while (begin < end && text.charAt(begin) == ' ') {
        begin++;
      }
      while (end > begin && text.charAt(end - 1) == ' ') {
        end--;
      }
      return text.substring(begin, end);
    }

    Table table() {
      Cut cut = cut();
      int first = firstRow(cut);
      Header header = header(cut, first);
      List<Row> rows = rows(cut, first);
      List<String> above = lines.subList(0, header.begins()).stream().map(Line::text).toList();
      return new Table(
          cut.width(),
          header.names(),
          header.named(),
          rows,
          above,
          decisions,
          remarks,
          shape(cut, header, rows));
    }

    private Cut cut() {
      Optional<String> told = corrections.of(Topic.SEPARATOR);
      List<Cut> cuts =
          Arrays.stream(SEPARATORS)
              .filter(s -> told.isEmpty() || told.get().equals(s))
              .map(this::tried)
              .filter(c -> c.width() > 1)
              .toList();
      Cut best = null;
      for (Cut cut : cuts) {
        best = best == null || cut.score() > best.score() + 1e-9 ? cut : best;
      }
      if (best == null) {
        throw InputException.at(
            fileName,
            lines.get(Math.min(lines.size() - 1, 1)).number(),
            told.map(
                    s ->
                        "no line holds two values with a %s between them; expected another separator."
                            .formatted(s))
                .orElse(
                    "no line holds two values side by side; expected rows with a time and a"
                        + " temperature, with a comma, semicolon, tab or blank between them."));
      }
      Cut chosen = best;
      List<String> others =
          cuts.stream()
              .filter(c -> c != chosen && c.score() >= chosen.score() - 1e-9)
              .map(Cut::separator)
              .toList();
      decisions.add(
          new Decision(
              Topic.SEPARATOR,
              chosen.separator(),
              told.isPresent() ? Sureness.TOLD : others.isEmpty() ? Sureness.SURE : Sureness.LIKELY,
              told.isPresent()
                  ? "You said so."
                  : "With it, lines have %d values each.".formatted(chosen.width()),
              others));
      return chosen;
    }

    private Cut tried(String separator) {
      Map<Integer, Double> byWidth = new HashMap<>();
      int looked = 0;
      for (Line line : lines.subList(0, Math.min(lines.size(), LOOKED_AT_LINES))) {
        List<String> fields = split(line.text(), separator);
        looked++;
        if (fields != null && isRow(fields, separator)) {
          long said = fields.stream().filter(f -> !Numbers.isMissing(f)).count();
          byWidth.merge(fields.size(), values(fields, separator) / (double) said, Double::sum);
        }
      }
      Cut best = new Cut(separator, 0, 0);
      for (Map.Entry<Integer, Double> each : byWidth.entrySet()) {
        double score = each.getValue() / looked;
        if (score > best.score()) {
          best = new Cut(separator, each.getKey(), score);
        }
      }
      return best;
    }

    private int firstRow(Cut cut) {
      Optional<String> told = corrections.of(Topic.FIRST_ROW);
      int first =
          told.isPresent()
              ? indexOfLine(told.get(), Topic.FIRST_ROW)
              : IntStream.range(0, lines.size())
                  .filter(
                      i -> {
                        List<String> fields = split(lines.get(i).text(), cut.separator());
                        return fields != null
                            && fitted(fields, cut.width()) != null
                            && isRow(fields, cut.separator());
                      })
                  .findFirst()
                  .orElseThrow();
      int number = lines.get(first).number();
      decisions.add(
          new Decision(
              Topic.FIRST_ROW,
              Integer.toString(number),
              told.isPresent() ? Sureness.TOLD : Sureness.SURE,
              told.isPresent()
                  ? "You said so."
                  : "It is the first line with %d values of which most are numbers or times."
                      .formatted(cut.width()),
              List.of()));
      return first;
    }

    private int indexOfLine(String word, Topic topic) {
      return IntStream.range(0, lines.size())
          .filter(i -> Integer.toString(lines.get(i).number()).equals(word))
          .findFirst()
          .orElseThrow(
              () ->
                  InputException.in(
                      fileName,
                      "%s is \"%s\", but no such line holds anything; expected the number of a line, up to %d."
                          .formatted(topic.word(), word, lines.get(lines.size() - 1).number())));
    }

    /** Names of columns, and the index of the line where they begin. */
    private record Header(List<String> names, boolean named, int begins) {}

    private Header header(Cut cut, int first) {
      Optional<String> told = corrections.of(Topic.HEADER);
      if (told.isPresent() && told.get().equals(Topic.NONE)) {
        return noHeader(cut, first, Sureness.TOLD, "You said so.");
      }
      int at = told.isPresent() ? indexOfLine(told.get(), Topic.HEADER) : first - 1;
      if (at < 0) {
        return noHeader(cut, first, Sureness.SURE, "The file begins with a row of values.");
      }
      List<String> names = names(lines.get(at).text(), cut, first);
      if (names == null
          || told.isEmpty() && names.stream().anyMatch(n -> isValue(n, cut.separator()))) {
        if (told.isPresent()) {
          throw InputException.at(
              fileName,
              lines.get(at).number(),
              "this line has no %d names, one for each column; expected the line that names them."
                  .formatted(cut.width()));
        }
        return noHeader(
            cut,
            first,
            Sureness.LIKELY,
            "The line above the rows, \"%s\", does not have %d names."
                .formatted(brief(lines.get(at).text()), cut.width()));
      }
      int begins = at;
      String why = "It has %d names above the rows.".formatted(cut.width());
      if (told.isEmpty() && at > 0 && isUnits(names)) {
        List<String> over = names(lines.get(at - 1).text(), cut, first);
        if (over != null && over.stream().noneMatch(n -> isValue(n, cut.separator()))) {
          List<String> units = names;
          names =
              IntStream.range(0, over.size())
                  .mapToObj(
                      i ->
                          units.get(i).isEmpty()
                              ? over.get(i)
                              : over.get(i)
                                  + " ("
                                  + units.get(i).replaceAll("[()\\[\\]]", "")
                                  + ")")
                  .toList();
          begins = at - 1;
          why += " Line %d has their units.".formatted(lines.get(at).number());
        }
      }
      boolean known =
          names.stream().anyMatch(Names::isTime) && names.stream().anyMatch(Names::isTemperature);
      decisions.add(
          new Decision(
              Topic.HEADER,
              Integer.toString(lines.get(begins).number()),
              told.isPresent() ? Sureness.TOLD : known ? Sureness.SURE : Sureness.LIKELY,
              told.isPresent() ? "You said so." : why,
              told.isPresent() || known ? List.of() : List.of(Topic.NONE)));
      return new Header(names, true, begins);
    }

    private Header noHeader(Cut cut, int first, Sureness sure, String why) {
      decisions.add(new Decision(Topic.HEADER, Topic.NONE, sure, why, List.of()));
      return new Header(java.util.Collections.nCopies(cut.width(), ""), false, first);
    }

    private static String brief(String text) {
      return text.length() > 60 ? text.substring(0, 57) + "…" : text;
    }

    private @Nullable List<String> names(String line, Cut cut, int first) {
      String text = line.replaceFirst("^(#|//|%)\\s*", "");
      List<String> fields = split(text, cut.separator());
      List<String> fit = fields == null ? null : fitted(fields, cut.width());
      if (cut.separator().equals("space") && fields != null && fit == null) {
        List<String> wide = Arrays.asList(text.split("\\s{2,}|\t"));
        if (wide.size() == cut.width()) {
          return wide;
        }
        List<String> row = split(lines.get(first).text(), "space");
        // A date and a time of day under one name.
        if (fields.size() == cut.width() - 1
            && row != null
            && Moments.of(row.get(0)).filter(m -> m.date().isPresent()).isPresent()) {
          List<String> both = new ArrayList<>(fields);
          both.add(0, "date");
          return both;
        }
      }
      return fit != null && fit.stream().anyMatch(n -> !n.isEmpty()) ? fit : null;
    }

    /** Short signs alone, and those of what a log holds among them. */
    private static boolean isUnits(List<String> names) {
      return names.stream().allMatch(name -> name.length() <= LONGEST_UNIT)
          && names.stream().anyMatch(name -> UNIT.matcher(name).matches());
    }

    private List<Row> rows(Cut cut, int first) {
      List<Row> rows = new ArrayList<>();
      List<Line> odd = new ArrayList<>();
      int lastRow = -1;
      for (int i = first; i < lines.size(); i++) {
        Line line = lines.get(i);
        List<String> fields = split(line.text(), cut.separator());
        List<String> fit = fields == null ? null : fitted(fields, cut.width());
        if (fields == null && i > first) {
          throw InputException.at(
              fileName,
              line.number(),
              "a quotation mark is opened there and not closed; expected two of them around a"
                  + " value, or none.");
        }
        if (fit != null && fit.stream().anyMatch(f -> isValue(f, cut.separator()))) {
          rows.add(new Row(line.number(), fit));
          lastRow = line.number();
        } else {
          odd.add(line);
        }
      }
      int end = lastRow;
      List<Line> between = odd.stream().filter(line -> line.number() < end).toList();
      if (rows.isEmpty() || between.size() > Math.max(2, rows.size() / 10)) {
        Line worst = between.isEmpty() ? odd.get(0) : between.get(0);
        List<String> fields = split(worst.text(), cut.separator());
        throw InputException.at(
            fileName,
            worst.number(),
            "this line has %d values, and so have other lines another number than %d; expected %d in every row, with a %s between them."
                .formatted(
                    fields == null ? 0 : fields.size(), cut.width(), cut.width(), cut.separator()));
      }
      tell(between, cut);
      List<Line> below = odd.stream().filter(line -> line.number() > end).toList();
      if (!below.isEmpty()) {
        Line line = below.get(0);
        List<String> fields = split(line.text(), cut.separator());
        remarks.add(
            fields != null && fields.size() > 1 && below.size() == 1
                ? "Line %d is cut off (%d of %d values) and is left out."
                    .formatted(line.number(), fields.size(), cut.width())
                : "From line %d on there are no rows (\"%s\"); that is left out."
                    .formatted(line.number(), brief(line.text())));
      }
      return rows;
    }

    private void tell(List<Line> odd, Cut cut) {
      for (Line line : odd.subList(0, Math.min(odd.size(), TOLD_OF_A_KIND))) {
        remarks.add(
            "Line %d is no row of %d values (\"%s\") and is left out."
                .formatted(line.number(), cut.width(), brief(line.text())));
      }
      if (odd.size() > TOLD_OF_A_KIND) {
        remarks.add("In all, %d lines between rows are no rows.".formatted(odd.size()));
      }
    }

    private static String shape(Cut cut, Header header, List<Row> rows) {
      StringBuilder shape = new StringBuilder(cut.separator());
      for (int c = 0; c < cut.width(); c++) {
        shape.append('|');
        if (header.named()) {
          shape.append(header.names().get(c).strip().toLowerCase(java.util.Locale.ROOT));
        } else {
          String field = rows.get(0).fields().get(c);
          shape.append(Moments.of(field).isPresent() ? ":" : Numbers.isMissing(field) ? "-" : "0");
        }
      }
      return shape.length() > LONGEST_SHAPE ? shape.substring(0, LONGEST_SHAPE) : shape.toString();
    }
  }

  /**
   * Whether a line tells values: two at least, or a date with its time, and no fewer than half of
   * its fields.
   */
  private static boolean isRow(List<String> fields, String separator) {
    int values = values(fields, separator);
    long filled = fields.stream().filter(f -> !f.isEmpty()).count();
    return fields.size() > 1
        && 2 * values >= filled
        && (values >= 2
            || fields.stream()
                .flatMap(f -> Moments.of(f).stream())
                .anyMatch(m -> m.date().isPresent() && m.time().isPresent()));
  }

  private static int values(List<String> fields, String separator) {
    int values = 0;
    for (String field : fields) {
      values += isValue(field, separator) ? 1 : 0;
    }
    return values;
  }

  private static boolean isValue(String field, String separator) {
    boolean blanksGroup = separator.equals("semicolon") || separator.equals("tab");
    return Numbers.looksLike(field, blanksGroup) || Moments.of(field).isPresent();
  }

  /** So many fields; more only if they are empty, which are cut off. */
  private static @Nullable List<String> fitted(List<String> fields, int width) {
    if (fields.size() < width
        || fields.subList(width, fields.size()).stream().anyMatch(f -> !f.isEmpty())) {
      return null;
    }
    return fields.size() == width ? fields : List.copyOf(fields.subList(0, width));
  }

  /** The fields of a line, without quotation marks; null where one is not closed. */
  static @Nullable List<String> split(String line, String separator) {
    boolean blanks = separator.equals("space");
    char between =
        switch (separator) {
          case "tab" -> '\t';
          case "semicolon" -> ';';
          case "pipe" -> '|';
          case "comma" -> ',';
          default -> ' ';
        };
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    boolean some = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (quoted) {
        if (c != '"') {
          field.append(c);
        } else if (i + 1 < line.length() && line.charAt(i + 1) == '"') {
          field.append('"');
          i++;
        } else {
          quoted = false;
        }
      } else if (c == '"' && field.toString().isBlank()) {
        quoted = true;
        some = true;
        field.setLength(0);
      } else if (blanks ? c == ' ' || c == '\t' : c == between) {
        if (!blanks || some || !field.isEmpty()) {
          fields.add(field.toString().strip());
        }
        field.setLength(0);
        some = false;
      } else {
        field.append(c);
      }
    }
    if (quoted) {
      return null;
    }
    if (!blanks || some || !field.isEmpty()) {
      fields.add(field.toString().strip());
    }
    return blanks ? withHalves(fields) : fields;
  }

  /** With blanks between values, "2:05 PM" is one, and "3 Apr 2026". */
  private static List<String> withHalves(List<String> fields) {
    for (int i = fields.size() - 2; i > 0; i--) {
      if (MONTH.matcher(fields.get(i)).matches()
          && DAY.matcher(fields.get(i - 1)).matches()
          && YEAR.matcher(fields.get(i + 1)).matches()) {
        String year = fields.remove(i + 1);
        String month = fields.remove(i);
        fields.set(i - 1, fields.get(i - 1) + " " + month + " " + year);
      }
    }
    for (int i = fields.size() - 1; i > 0; i--) {
      if (HALF.matcher(fields.get(i)).matches() && CLOCK.matcher(fields.get(i - 1)).matches()) {
        fields.set(i - 1, fields.get(i - 1) + " " + fields.remove(i));
      }
    }
    return fields;
  }
}
