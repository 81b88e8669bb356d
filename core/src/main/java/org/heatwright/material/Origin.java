package org.heatwright.material;

import java.util.Objects;

/**
 * Where a number comes from. It travels with the number from the rule to the screen and the card.
 *
 * @param kind how far the number may be trusted
 * @param text the source in words, e.g. "VDI Heat Atlas 2010, insulating refractories"
 */
public record Origin(Kind kind, String text) {

  public Origin {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(text, "text");
  }

  /** How far a number may be trusted, from a text that was read to a plain estimate. */
  public enum Kind {
    /** The text of the source was read. */
    READ("read"),
    /** Published, quoted from memory. */
    MEMORY("from memory"),
    /** Common practice, no source. */
    PRACTICE("common practice, no source"),
    /** An estimate made for Heatwright. */
    ESTIMATE("our estimate"),
    /** The person's own value or data sheet. */
    OWN("your own value"),
    /** Follows from other numbers by the stated rule. */
    DERIVED("derived");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public static Origin read(String text) {
    return new Origin(Kind.READ, text);
  }

  public static Origin memory(String text) {
    return new Origin(Kind.MEMORY, text);
  }

  public static Origin practice() {
    return new Origin(Kind.PRACTICE, "");
  }

  public static Origin estimate(String text) {
    return new Origin(Kind.ESTIMATE, text);
  }

  public static Origin own(String text) {
    return new Origin(Kind.OWN, text);
  }

  public static Origin derived(String text) {
    return new Origin(Kind.DERIVED, text);
  }

  /** One phrase for people: "common practice, no source" or "read: VDI Heat Atlas 2010". */
  public String words() {
    return text.isEmpty() ? kind.words() : kind.words() + ": " + text;
  }
}
