package org.heatwright.keypad.register;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * How a slot's program stands: still proven, no longer, or never.
 *
 * @param proof the last proof of this program, if there ever was one
 * @param ended what ended it
 */
public record Standing(Optional<Proof> proof, Optional<Ending> ended) {

  static final Standing NEVER = new Standing(Optional.empty(), Optional.empty());

  public Standing {
    if (proof.isEmpty() && ended.isPresent()) {
      throw new IllegalArgumentException("What was never proven cannot end.");
    }
  }

  public Kind kind() {
    return proof.isEmpty() ? Kind.NEVER : ended.isPresent() ? Kind.EXPIRED : Kind.GOOD;
  }

  /**
   * In one sentence.
   *
   * @param now for the age
   * @param zone for dates
   */
  public String sentence(Instant now, ZoneId zone) {
    if (proof.isEmpty()) {
      return "Never proven.";
    }
    Proof held = proof.get();
    String when = DayWords.day(held.at(), zone);
    if (ended.isPresent()) {
      Ending end = ended.get();
      return "Proof of %s expired: %s%s."
          .formatted(
              when,
              end.cause().words(),
              end.cause() == Cause.AGE || end.cause() == Cause.CLOCK
                  ? ""
                  : ", told " + DayWords.day(end.at(), zone));
    }
    String words = held.words();
    return "%s: read back %s by the %s, %s."
        .formatted(
            Character.toUpperCase(words.charAt(0)) + words.substring(1),
            when,
            held.by().word(),
            DayWords.age(held.at(), now, zone));
  }

  /** The three ways it can be. */
  public enum Kind {
    GOOD,
    EXPIRED,
    NEVER
  }
}
