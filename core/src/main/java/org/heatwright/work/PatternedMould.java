package org.heatwright.work;

import java.util.Objects;
import java.util.OptionalDouble;
import org.heatwright.mould.Mould;

/**
 * Equal moulds and what is inside them.
 *
 * @param mould size and number
 * @param pattern what the patterns are made of
 * @param patternKilograms mass of the pattern with its sprue in one mould, kg, 0 to 5, if weighed
 */
public record PatternedMould(Mould mould, Pattern pattern, OptionalDouble patternKilograms) {

  /** What the pattern is made of: it decides what must happen on the way up. */
  public enum Pattern {
    /** Injection or carving wax. */
    WAX("wax"),
    /** Printed resin. */
    RESIN("printed resin"),
    UNKNOWN("unknown");

    private final String words;

    Pattern(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public PatternedMould {
    Objects.requireNonNull(mould, "mould");
    Objects.requireNonNull(pattern, "pattern");
    if (patternKilograms.isPresent()
        && !(patternKilograms.getAsDouble() >= 0 && patternKilograms.getAsDouble() <= 5)) {
      throw new IllegalArgumentException(
          "The pattern's mass (%s g) must be 0 to 5000 g."
              .formatted(patternKilograms.getAsDouble() * 1000));
    }
  }

  public static PatternedMould wax(Mould mould) {
    return new PatternedMould(mould, Pattern.WAX, OptionalDouble.empty());
  }

  public static PatternedMould resin(Mould mould) {
    return new PatternedMould(mould, Pattern.RESIN, OptionalDouble.empty());
  }
}
