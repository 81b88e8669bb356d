package org.heatwright.work;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.work.EnamelWork.Hardness;

/**
 * One coat of an enamelled piece, or several alike, each with its own firing.
 *
 * @param kind which coat
 * @param hardness of its enamel; empty: the work's
 * @param times how many firings, 1 to 20
 */
public record EnamelCoat(Kind kind, Optional<Hardness> hardness, int times) {

  /** The coats in the order in which they are fired. */
  public enum Kind {
    COUNTER("counter-enamel"),
    GROUND("ground coat"),
    COLOUR("colour"),
    OVERGLAZE("overglaze");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public EnamelCoat {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(hardness, "hardness");
    if (times < 1 || times > 20) {
      throw new IllegalArgumentException(
          "A coat (%s) is fired 1 to 20 times, not %d.".formatted(kind.words(), times));
    }
  }
}
