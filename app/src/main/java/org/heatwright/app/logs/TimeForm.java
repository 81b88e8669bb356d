package org.heatwright.app.logs;

/** How a column tells the time. */
enum TimeForm {
  SECONDS("seconds"),
  MINUTES("minutes"),
  HOURS("hours"),
  /** Hours, minutes and perhaps seconds: of the day, or since the start. */
  CLOCK("clock"),
  /** Minutes and seconds since the start. */
  MINUTES_SECONDS("minutes-seconds"),
  /** A date and a time, in one column or in two. */
  DATE_TIME("date-time"),
  EPOCH_SECONDS("epoch-s"),
  EPOCH_MILLIS("epoch-ms"),
  /** Days since 30 December 1899, as spreadsheets count. */
  SERIAL_DAYS("serial-days");

  static final String[] WORDS = {
    "seconds",
    "minutes",
    "hours",
    "clock",
    "minutes-seconds",
    "date-time",
    "epoch-s",
    "epoch-ms",
    "serial-days"
  };

  private final String word;

  TimeForm(String word) {
    this.word = word;
  }

  String word() {
    return word;
  }

  static TimeForm of(String word) {
    for (TimeForm form : values()) {
      if (form.word.equals(word)) {
        return form;
      }
    }
    throw new IllegalArgumentException(word);
  }

  boolean isNumber() {
    return this != CLOCK && this != MINUTES_SECONDS && this != DATE_TIME;
  }

  /** Seconds of one, for numbers that count from a start. */
  double unitSeconds() {
    return switch (this) {
      case MINUTES -> 60;
      case HOURS -> 3600;
      case SERIAL_DAYS -> 86_400;
      case EPOCH_MILLIS -> 0.001;
      default -> 1;
    };
  }
}
