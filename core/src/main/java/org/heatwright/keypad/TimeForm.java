package org.heatwright.keypad;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How a keypad writes a length of time. Inside, it is minutes always. */
public enum TimeForm {
  /** 2 h 30 min is {@code 150}. */
  MINUTES("minutes"),
  /** 2 h 30 min is {@code 2.30}. */
  HOURS_DOT_MINUTES("h.mm"),
  /** 2 h 30 min is {@code 02:30}. */
  HOURS_COLON_MINUTES("hh:mm"),
  /** 2 h 30 min is {@code 2.5}. */
  DECIMAL_HOURS("decimal-hours"),
  /**
   * Hours and a fraction, but nobody has found out yet whether it counts minutes or hundredths.
   * Only whole hours can be keyed safely: 1.50 may be 1 h 50 min or 1 h 30 min.
   */
  HOURS_UNSURE("hours-unsure");

  private static final Pattern HOURS_MINUTES = Pattern.compile("(\\d{1,4})[.:]([0-5]\\d)");
  private static final Pattern NUMBER = Pattern.compile("\\d{1,6}(\\.\\d{1,4})?");
  private static final Pattern WHOLE = Pattern.compile("\\d{1,6}");
  private static final BigDecimal SIXTY = BigDecimal.valueOf(60);

  private final String word;

  TimeForm(String word) {
    this.word = word;
  }

  /** As files write it. */
  public String word() {
    return word;
  }

  public static Optional<TimeForm> ofWord(String word) {
    for (TimeForm form : values()) {
      if (form.word.equals(word.strip())) {
        return Optional.of(form);
      }
    }
    return Optional.empty();
  }

  /**
   * What the display reads.
   *
   * @param minutes zero or more, exact on this form's grid
   * @param decimals decimals of decimal hours, otherwise not used
   */
  String text(BigDecimal minutes, int decimals) {
    if (this == DECIMAL_HOURS) {
      return minutes.divide(SIXTY, decimals, RoundingMode.UNNECESSARY).toPlainString();
    }
    long whole = minutes.longValueExact();
    return switch (this) {
      case MINUTES -> Long.toString(whole);
      case HOURS_COLON_MINUTES -> two(whole / 60) + ":" + two(whole % 60);
      default -> whole / 60 + "." + two(whole % 60);
    };
  }

  /** With a leading zero below ten; a whole scale of times is written so. */
  private static String two(long number) {
    return number < 10 ? "0" + number : Long.toString(number);
  }

  /**
   * What a displayed text means, in minutes; empty if it means nothing in this form (or, unsure,
   * more than one thing).
   *
   * @param text without blanks, with a decimal point for a comma
   */
  Optional<BigDecimal> minutes(String text) {
    switch (this) {
      case MINUTES -> {
        return WHOLE.matcher(text).matches() ? Optional.of(new BigDecimal(text)) : Optional.empty();
      }
      case DECIMAL_HOURS -> {
        return NUMBER.matcher(text).matches()
            ? Optional.of(new BigDecimal(text).multiply(SIXTY))
            : Optional.empty();
      }
      default -> {
        Matcher matcher = HOURS_MINUTES.matcher(text);
        if (!matcher.matches()) {
          return Optional.empty();
        }
        BigDecimal hours = new BigDecimal(matcher.group(1)).multiply(SIXTY);
        BigDecimal rest = new BigDecimal(matcher.group(2));
        return this == HOURS_UNSURE && rest.signum() != 0
            ? Optional.empty()
            : Optional.of(hours.add(rest));
      }
    }
  }
}
