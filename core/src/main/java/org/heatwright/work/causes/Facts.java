package org.heatwright.work.causes;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What is known of one firing, clue by clue. What is not in it is not known. Immutable.
 *
 * @param known what is so or is not so, and how that is known
 */
public record Facts(Map<Clue, Fact> known) {

  /**
   * One of them.
   *
   * @param isSo whether it is so
   * @param words how that is known, a sentence with its numbers
   */
  public record Fact(boolean isSo, String words) {
    public Fact {
      Objects.requireNonNull(words, "words");
    }
  }

  public Facts {
    Map<Clue, Fact> copy = new EnumMap<>(Clue.class);
    copy.putAll(known);
    known = java.util.Collections.unmodifiableMap(copy);
  }

  public static Facts none() {
    return new Facts(Map.of());
  }

  public Optional<Fact> of(Clue clue) {
    return Optional.ofNullable(known.get(clue));
  }

  /** With one more; it takes the place of what was known of that clue. */
  public Facts with(Clue clue, boolean isSo, String words) {
    Map<Clue, Fact> more = new EnumMap<>(Clue.class);
    more.putAll(known);
    more.put(clue, new Fact(isSo, words));
    return new Facts(more);
  }

  /** With what a person says, in the clue's own words. */
  public Facts told(Clue clue, boolean isSo) {
    return with(clue, isSo, "You say that " + clue.words(isSo) + ".");
  }

  /** With what others know; where both know something, what is here stands. */
  public Facts or(Facts others) {
    Map<Clue, Fact> more = new EnumMap<>(Clue.class);
    more.putAll(others.known);
    more.putAll(known);
    return new Facts(more);
  }
}
