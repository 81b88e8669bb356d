package org.heatwright.keypad;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Displayed texts, compared by what they mean: tolerant to blanks, case, leading zeros and a
 * decimal comma, never to a different value.
 */
final class Texts {

  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,7}(\\.\\d{1,4})?");

  private static final Pattern BLANKS = Pattern.compile("[\\s\\u00a0\\u202f]");

  private Texts() {}

  /** Without blanks, with a point for a comma and a plain minus. */
  static String clean(String text) {
    boolean isClean = true;
    for (int i = 0; i < text.length() && isClean; i++) {
      char c = text.charAt(i);
      isClean = c > ' ' && c != '\u00a0' && c != '\u202f' && c != ',' && c != '\u2212';
    }
    if (isClean) {
      return text;
    }
    return BLANKS.matcher(text).replaceAll("").replace(',', '.').replace('\u2212', '-');
  }

  /** Clean, and in one case. */
  static String folded(String text) {
    return clean(text).toLowerCase(Locale.ROOT);
  }

  /** Whether two texts mean the same: equal but for blanks and case, or equal as numbers. */
  static boolean same(String one, String other) {
    if (folded(one).equals(folded(other))) {
      return true;
    }
    Optional<BigDecimal> number = number(one);
    return number.isPresent()
        && number(other).filter(n -> n.compareTo(number.orElseThrow()) == 0).isPresent();
  }

  static Optional<BigDecimal> number(String text) {
    String clean = clean(text);
    return NUMBER.matcher(clean).matches() ? Optional.of(new BigDecimal(clean)) : Optional.empty();
  }
}
