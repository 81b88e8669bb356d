package org.heatwright.app.logs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Numbers as fields of a file write them. */
final class Numbers {

  private static final String UNIT =
      "(?:\\s?(?<unit>[°º]\\s?[CFKcfk]|℃|℉|[CFKcfk]|%|[kK]?[wW]|s|sec|min|h))?";
  private static final String EXPONENT = "(?:[eE][-+]?\\d{1,3})?";

  private static final Pattern POINT =
      Pattern.compile(
          "[-+]?(?:\\d+|\\d{1,3}(?:[,'’ \\u00a0\\u202f]\\d{3})+)?(?:(?<=\\d)\\.\\d*|\\.\\d+)?"
              + EXPONENT
              + UNIT);
  private static final Pattern COMMA =
      Pattern.compile(
          "[-+]?(?:\\d+|\\d{1,3}(?:[.'’ \\u00a0\\u202f]\\d{3})+)?(?:(?<=\\d),\\d*|,\\d+)?"
              + EXPONENT
              + UNIT);
  private static final Pattern GROUPED =
      Pattern.compile("[-+]?\\d{1,3}(?:[.,]\\d{3})+(?![.,\\d]).*");

  private static final Pattern BLANKS = Pattern.compile("[-+]?\\d{1,3}( \\d{3})+.*");
  private static final Pattern GROUP_AFTER_POINT = Pattern.compile("[,'’\\s\\u00a0\\u202f]");
  private static final Pattern GROUP_AFTER_COMMA = Pattern.compile("[.'’\\s\\u00a0\\u202f]");

  private final boolean comma;

  private Numbers(boolean comma) {
    this.comma = comma;
  }

  static Numbers with(String decimal) {
    return new Numbers(decimal.equals("comma"));
  }

  /**
   * The decimal sign of a number that is digits with one sign at most, '0' if it has none; a blank
   * if it is anything else. Most fields are this, and it is quick.
   */
  private static char plain(String field) {
    char sign = '0';
    int digits = 0;
    for (int i = 0; i < field.length(); i++) {
      char c = field.charAt(i);
      if (c >= '0' && c <= '9') {
        digits++;
      } else if ((c == '.' || c == ',') && sign == '0' && digits > 0) {
        sign = c;
      } else if (i > 0 || c != '-' && c != '+') {
        return ' ';
      }
    }
    return digits > 0 && digits < 30 ? sign : ' ';
  }

  /** Whether it is a number in one way or another. */
  static boolean looksLike(String field, boolean blanksGroup) {
    return plain(field) != ' ' || looksOtherwise(field, blanksGroup);
  }

  private static boolean looksOtherwise(String field, boolean blanksGroup) {
    return !field.isEmpty()
        && field.length() < 40
        && field.chars().anyMatch(c -> c >= '0' && c <= '9')
        && (blanksGroup || field.indexOf(' ') < 0 || !BLANKS.matcher(field).matches())
        && (POINT.matcher(field).matches() || COMMA.matcher(field).matches());
  }

  /** A number; empty where it is none. */
  OptionalDouble value(String field) {
    char sign = plain(field);
    if (sign == '0' || sign == (comma ? ',' : '.')) {
      return OptionalDouble.of(Double.parseDouble(comma ? field.replace(',', '.') : field));
    }
    Matcher m = (comma ? COMMA : POINT).matcher(field);
    if (field.isEmpty() || field.length() >= 40 || !m.matches()) {
      return OptionalDouble.empty();
    }
    String unit = m.group("unit");
    String digits = unit == null ? field : field.substring(0, m.start("unit"));
    digits = (comma ? GROUP_AFTER_COMMA : GROUP_AFTER_POINT).matcher(digits).replaceAll("");
    digits = comma ? digits.replace(',', '.') : digits;
    if (digits.chars().noneMatch(c -> c >= '0' && c <= '9')) {
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(digits);
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  /** The unit behind a number, in lower case. */
  static Optional<String> unit(String field) {
    Matcher m = POINT.matcher(field);
    if (!m.matches()) {
      m = COMMA.matcher(field);
    }
    return m.matches()
        ? Optional.ofNullable(m.group("unit"))
            .map(u -> u.toLowerCase(Locale.ROOT).replaceAll("[°º\\s]", ""))
            .map(u -> u.equals("℃") ? "c" : u.equals("℉") ? "f" : u)
        : Optional.empty();
  }

  /**
   * Which decimal sign columns of numbers use.
   *
   * @param columns the fields of each, without those that say nothing
   */
  static Decision decimal(List<List<String>> columns, Optional<String> told) {
    if (told.isPresent()) {
      return new Decision(Topic.DECIMAL, told.get(), Sureness.TOLD, "You said so.", List.of());
    }
    String onlyComma = "";
    String onlyPoint = "";
    int commas = 0;
    int points = 0;
    List<List<String>> grouped = new ArrayList<>();
    for (List<String> fields : columns) {
      boolean open = false;
      for (String field : fields) {
        boolean hasComma = field.indexOf(',') >= 0;
        boolean hasPoint = field.indexOf('.') >= 0;
        if (!hasComma && !hasPoint) {
          continue;
        }
        if (!(hasComma && hasPoint)
            && GROUPED.matcher(field).matches()
            && !field.matches("[-+]?0[.,].*")) {
          open = true;
        } else if (field.lastIndexOf(',') > field.lastIndexOf('.')
            && COMMA.matcher(field).matches()) {
          commas++;
          onlyComma = onlyComma.isEmpty() ? field : onlyComma;
        } else if (POINT.matcher(field).matches()) {
          points++;
          onlyPoint = onlyPoint.isEmpty() ? field : onlyPoint;
        }
      }
      if (open) {
        grouped.add(fields);
      }
    }
    if (commas > points) {
      return sure("comma", onlyComma);
    }
    if (points > 0) {
      return sure("point", onlyPoint);
    }
    if (grouped.isEmpty()) {
      return new Decision(
          Topic.DECIMAL, "point", Sureness.SURE, "There are whole numbers alone.", List.of());
    }
    return byRise(grouped.get(0));
  }

  private static Decision sure(String word, String field) {
    return new Decision(
        Topic.DECIMAL,
        word,
        Sureness.SURE,
        "\"%s\" makes sense with a decimal %s alone.".formatted(field, word),
        List.of());
  }

  /** "1.234" and the like alone: read so that the numbers do not leap. */
  private static Decision byRise(List<String> fields) {
    String example = fields.stream().filter(f -> f.matches(".*[.,].*")).findFirst().orElseThrow();
    boolean comma = example.indexOf(',') >= 0;
    double whole = roughness(fields, with(comma ? "point" : "comma"));
    double parts = roughness(fields, with(comma ? "comma" : "point"));
    boolean asDecimal = parts <= whole;
    String word = asDecimal == comma ? "comma" : "point";
    return new Decision(
        Topic.DECIMAL,
        word,
        Sureness.GUESS,
        ("\"%s\" can be a number with three decimals or one above a thousand; read as %s, the numbers"
                + " leap less.")
            .formatted(example, asDecimal ? "the first" : "the second"),
        List.of(word.equals("comma") ? "point" : "comma"));
  }

  /** The largest step over the range. */
  private static double roughness(List<String> fields, Numbers numbers) {
    double[] values =
        fields.stream()
            .map(numbers::value)
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .toArray();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double step = 0;
    for (int i = 0; i < values.length; i++) {
      low = Math.min(low, values[i]);
      high = Math.max(high, values[i]);
      step = i == 0 ? 0 : Math.max(step, Math.abs(values[i] - values[i - 1]));
    }
    return high > low ? step / (high - low) : 0;
  }

  /** Where there is no value: nothing, a dash, or a word such as "open". */
  static boolean isMissing(String field) {
    return field.chars().noneMatch(c -> c >= '0' && c <= '9');
  }
}
