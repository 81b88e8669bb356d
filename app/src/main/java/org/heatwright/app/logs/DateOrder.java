package org.heatwright.app.logs;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Optional;

/** In which order a date tells its parts. */
enum DateOrder {
  DAY_MONTH_YEAR("day-month-year", "day first"),
  MONTH_DAY_YEAR("month-day-year", "month first"),
  YEAR_MONTH_DAY("year-month-day", "year first");

  static final String[] WORDS = {"day-month-year", "month-day-year", "year-month-day"};

  private final String word;
  private final String words;

  DateOrder(String word, String words) {
    this.word = word;
    this.words = words;
  }

  String word() {
    return word;
  }

  String words() {
    return words;
  }

  static DateOrder of(String word) {
    for (DateOrder order : values()) {
      if (order.word.equals(word)) {
        return order;
      }
    }
    throw new IllegalArgumentException(word);
  }

  /** The date that three numbers make; years of two digits are of this century. */
  Optional<LocalDate> date(Moments.Date date) {
    int year = this == YEAR_MONTH_DAY ? date.first() : date.third();
    int month = this == MONTH_DAY_YEAR ? date.first() : date.second();
    int day =
        this == DAY_MONTH_YEAR
            ? date.first()
            : this == MONTH_DAY_YEAR ? date.second() : date.third();
    year += year < 100 ? 2000 : 0;
    return year >= 1990
            && year <= 2099
            && month >= 1
            && month <= 12
            && day >= 1
            && day <= YearMonth.of(year, month).lengthOfMonth()
        ? Optional.of(LocalDate.of(year, month, day))
        : Optional.empty();
  }
}
