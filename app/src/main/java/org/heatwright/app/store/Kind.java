package org.heatwright.app.store;

import java.util.Locale;

/** What a stored text describes. */
public enum Kind {
  KILN,
  KEYPAD,
  WORK,
  SCHEDULE,
  /** What a person knows of a material of their own. */
  VALUES;

  /** The lower-case word for people and for the database, e.g. "kiln". */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The word for several, e.g. "kilns". */
  public String several() {
    return this == VALUES ? word() : word() + "s";
  }
}
