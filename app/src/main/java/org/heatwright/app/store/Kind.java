package org.heatwright.app.store;

import java.util.Locale;

/** What a stored text describes. */
public enum Kind {
  KILN,
  KEYPAD,
  WORK,
  SCHEDULE;

  /** The lower-case word for people and for the database, e.g. "kiln". */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
