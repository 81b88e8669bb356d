package org.heatwright.work.causes;

import java.util.Objects;

/**
 * A test that a person can do to tell one cause from the others.
 *
 * @param effort what it takes
 * @param words what to do and what it tells, a sentence or two
 */
public record Trial(Effort effort, String words) {

  /** What a test takes, the cheapest first. */
  public enum Effort {
    LOOK("a look"),
    MINUTES("a few minutes"),
    COLD_KILN("some minutes at a cold kiln"),
    FIRING("a firing"),
    CRAFTSMAN("somebody licensed for it");

    private final String words;

    Effort(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Trial {
    Objects.requireNonNull(effort, "effort");
    if (words.isBlank()) {
      throw new IllegalArgumentException("A test must say what to do.");
    }
  }
}
