package org.heatwright.app.logs;

import java.util.Locale;

/** How sure a decision is. */
public enum Sureness {
  /** A person said so. */
  TOLD,
  /** The file says so, or nothing else fits. */
  SURE,
  /** A custom speaks for it, and nothing against it. */
  LIKELY,
  /** Something else fits as well, or the file does not say. */
  GUESS;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
