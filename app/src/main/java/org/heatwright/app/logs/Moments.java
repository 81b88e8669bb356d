package org.heatwright.app.logs;

import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates and times as fields of a file write them. */
final class Moments {

  private static final String DATE =
      "(?:(?<a>\\d{1,4})(?<dash>[./-])(?<b>\\d{1,2})\\k<dash>(?<c>\\d{1,4})"
          + "|(?<dn>\\d{1,2})[ .-]+(?<mn>\\p{L}{3,9})\\.?[ .,-]+(?<yn>\\d{4}|\\d{2})"
          + "|(?<mu>\\p{L}{3,9})\\.?[ -]+(?<du>\\d{1,2}),?[ -]+(?<yu>\\d{4}))";
  private static final String TIME =
      "(?<h>\\d{1,4}):(?<m>\\d{2})(?::(?<s>\\d{2})(?:[.,](?<f>\\d{1,9}))?)?"
          + "(?:\\s?(?<half>[AaPp])\\.?\\s?[Mm]\\.?)?";
  private static final String OFFSET = "(?:\\s?(?<offset>[Zz]|[+-](?:0\\d|1[0-7]):?[0-5]\\d))?";

  private static final Pattern DATE_ALONE = Pattern.compile(DATE);
  private static final Pattern TIME_ALONE = Pattern.compile(TIME + OFFSET);
  private static final Pattern BOTH = Pattern.compile(DATE + "(?:[Tt]|[ ,]+)" + TIME + OFFSET);

  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  private Moments() {}

  /**
   * Three numbers of a date, in the order of the file.
   *
   * @param named whether the month is a name, so that the order is day, month, year here
   * @param dash what stands between them
   */
  record Date(int first, int second, int third, boolean named, char dash) {

    boolean fits(DateOrder order) {
      return named ? order == DateOrder.DAY_MONTH_YEAR : order.date(this).isPresent();
    }
  }

  /**
   * A time.
   *
   * @param hours as written; with {@code half} 1 to 12
   * @param half 'a', 'p', or blank where the day has 24 hours
   */
  record Time(
      int hours,
      int minutes,
      double fullSeconds,
      boolean hasSeconds,
      char half,
      Optional<ZoneOffset> offset) {

    boolean isOfADay() {
      boolean twelve = half != ' ';
      return minutes < 60 && fullSeconds < 60 && (twelve ? hours >= 1 && hours <= 12 : hours <= 24);
    }

    /** Since midnight, or since the start, s. */
    double clockSeconds() {
      int hour = half == ' ' ? hours : hours % 12 + (half == 'p' ? 12 : 0);
      return hour * 3600.0 + minutes * 60.0 + fullSeconds;
    }

    /** Of minutes and seconds since the start, s. */
    double shortSeconds() {
      return hours * 60.0 + minutes + (hasSeconds ? Double.NaN : 0);
    }
  }

  /** A field that tells a date, a time or both. */
  record Moment(Optional<Date> date, Optional<Time> time) {}

  static Optional<Moment> of(String field) {
    char first = field.length() < 4 || field.length() > 40 ? ' ' : field.charAt(0);
    if (!(first >= '0' && first <= '9') && !Character.isLetter(first)) {
      return Optional.empty();
    }
    Matcher both = BOTH.matcher(field);
    if (both.matches()) {
      return date(both)
          .flatMap(d -> Optional.of(new Moment(Optional.of(d), Optional.of(time(both)))));
    }
    Matcher time = TIME_ALONE.matcher(field);
    if (time.matches()) {
      return Optional.of(new Moment(Optional.empty(), Optional.of(time(time))));
    }
    Matcher date = DATE_ALONE.matcher(field);
    return date.matches()
        ? date(date).map(d -> new Moment(Optional.of(d), Optional.empty()))
        : Optional.empty();
  }

  private static Optional<Date> date(Matcher m) {
    if (m.group("a") != null) {
      // A date has two digits somewhere, or four: 1.2.3 is a version.
      if (m.group("a").length() == 3
          || m.group("c").length() == 3
          || m.group("c").length() == 1 && m.group("a").length() == 1) {
        return Optional.empty();
      }
      return Optional.of(
          new Date(
              Integer.parseInt(m.group("a")),
              Integer.parseInt(m.group("b")),
              Integer.parseInt(m.group("c")),
              false,
              m.group("dash").charAt(0)));
    }
    boolean dayFirst = m.group("mn") != null;
    String name = m.group(dayFirst ? "mn" : "mu").toLowerCase(Locale.ROOT);
    int month = MONTHS.indexOf(name.substring(0, 3)) + 1;
    return month == 0
        ? Optional.empty()
        : Optional.of(
            new Date(
                Integer.parseInt(m.group(dayFirst ? "dn" : "du")),
                month,
                Integer.parseInt(m.group(dayFirst ? "yn" : "yu")),
                true,
                ' '));
  }

  private static Time time(Matcher m) {
    String fraction = m.group("f");
    String seconds = m.group("s");
    String half = m.group("half");
    String offset = m.group("offset");
    return new Time(
        Integer.parseInt(m.group("h")),
        Integer.parseInt(m.group("m")),
        seconds == null
            ? 0
            : Double.parseDouble(seconds + (fraction == null ? "" : "." + fraction)),
        seconds != null,
        half == null ? ' ' : Character.toLowerCase(half.charAt(0)),
        offset == null
            ? Optional.empty()
            : Optional.of(
                offset.length() == 1
                    ? ZoneOffset.UTC
                    : ZoneOffset.of(
                        offset.length() == 5
                            ? offset.substring(0, 3) + ":" + offset.substring(3)
                            : offset)));
  }
}
