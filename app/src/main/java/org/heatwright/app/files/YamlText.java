package org.heatwright.app.files;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Values as our files write them. */
public final class YamlText {

  private static final Pattern PLAIN =
      Pattern.compile("[A-Za-z][A-Za-z0-9_./()+-]*( [A-Za-z0-9_./()+-]+)*");

  /** Plain words that some reader takes for something else than text. */
  private static final Set<String> RESERVED =
      Set.of("true", "false", "null", "yes", "no", "on", "off", "y", "n", "nan", "inf");

  private static final int DECIMALS = 9;

  private YamlText() {}

  /** Text, in quotes where YAML could take it for something else. */
  public static String text(String text) {
    boolean plain =
        PLAIN.matcher(text).matches() && !RESERVED.contains(text.toLowerCase(Locale.ROOT));
    return plain ? text : quoted(text);
  }

  /** Text in double quotes. */
  public static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    for (char c : text.toCharArray()) {
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\n' -> out.append("\\n");
        default -> {
          if (c < ' ' || (c >= 0x7f && c < 0xa0) || c == '\u2028' || c == '\u2029') {
            out.append("\\u%04x".formatted((int) c));
          } else {
            out.append(c);
          }
        }
      }
    }
    return out.append('"').toString();
  }

  /** A number without exponent or conversion noise: nine decimals, no trailing zeros. */
  public static String number(double value) {
    BigDecimal rounded =
        BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros();
    return rounded.signum() == 0 ? "0" : rounded.toPlainString();
  }

  /** A mapping on one line; values are YAML already. */
  public static String flow(Map<String, String> entries) {
    return entries.entrySet().stream()
        .map(e -> e.getKey() + ": " + e.getValue())
        .collect(Collectors.joining(", ", "{", "}"));
  }
}
