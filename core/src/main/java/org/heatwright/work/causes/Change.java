package org.heatwright.work.causes;

import java.util.Objects;
import java.util.Optional;

/**
 * The one thing to do otherwise next time.
 *
 * @param words what, a sentence
 * @param edit the same as an edit of the schedule, where it is a number of it
 */
public record Change(String words, Optional<Edit> edit) {
  public Change {
    Objects.requireNonNull(edit, "edit");
    if (words.isBlank()) {
      throw new IllegalArgumentException("A change must say what to do.");
    }
  }
}
