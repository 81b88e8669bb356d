package org.heatwright.work;

import java.util.List;
import java.util.Objects;

/**
 * What a person may find when the kiln is opened, to tick on the card and to write into a record.
 * Its code is the same in every kind of work in which the same thing is meant, and never changes,
 * so that records of years can be compared.
 *
 * @param code stable, in kebab-case
 * @param words the trade's, short: all boxes of a kind must fit the card with the least room
 */
public record Found(String code, String words) {

  private static final Found GOOD = new Found("good", "good");
  private static final Found OTHER = new Found("other", "other");
  private static final Found CRACK = new Found("crack", "cracked");
  private static final Found WARPED = new Found("warped", "warped");

  private static final List<Found> ANY =
      List.of(
          GOOD,
          new Found("under-fired", "under-fired"),
          new Found("over-fired", "over-fired"),
          CRACK,
          WARPED,
          OTHER);

  private static final List<Found> CASTING =
      List.of(
          GOOD,
          new Found("incomplete", "incomplete"),
          new Found("porous", "gas pores"),
          new Found("shrinkage", "shrinkage"),
          new Found("flash", "fins"),
          new Found("bubbles", "beads"),
          new Found("rough", "rough"),
          new Found("inclusions", "inclusions"),
          new Found("carbon", "carbon"),
          new Found("crack", "mould crack"),
          OTHER);

  private static final List<Found> ENAMEL =
      List.of(
          GOOD,
          new Found("under-fired", "sugary"),
          new Found("orange-peel", "orange peel"),
          new Found("over-fired", "burnt out"),
          new Found("pulled-through", "pulled through"),
          new Found("pits", "pits"),
          CRACK,
          new Found("chip", "chipped"),
          WARPED,
          new Found("melted", "melted"),
          OTHER);

  private static final List<Found> METAL_CLAY =
      List.of(
          GOOD,
          new Found("brittle", "brittle"),
          new Found("unsintered", "under-sintered"),
          CRACK,
          new Found("blisters", "blistered"),
          new Found("slumped", "slumped"),
          new Found("melted", "melted"),
          new Found("oxidised", "black inside"),
          new Found("inset-hurt", "inset hurt"),
          OTHER);

  private static final List<Found> HEAT_TREATMENT =
      List.of(
          GOOD,
          new Found("too-hard", "too hard"),
          new Found("too-soft", "too soft"),
          new Found("coarse-grain", "orange peel"),
          new Found("fire-stain", "fire stain"),
          new Found("scale", "scale"),
          new Found("colour-off", "colour off"),
          CRACK,
          WARPED,
          new Found("melted", "melted"),
          OTHER);

  private static final List<Found> GLASS =
      List.of(
          GOOD,
          new Found("under-fired", "too little"),
          new Found("over-fired", "too far"),
          new Found("bubbles", "bubbles"),
          new Found("devit", "devit"),
          new Found("crack-round", "round crack"),
          new Found("crack", "sharp crack"),
          new Found("stress", "stress"),
          new Found("spikes", "spikes"),
          new Found("shelf-stuck", "stuck"),
          OTHER);

  public Found {
    Objects.requireNonNull(words, "words");
    if (!code.matches("[a-z]+(-[a-z]+)*")) {
      throw new IllegalArgumentException("A code is in kebab-case, not '%s'.".formatted(code));
    }
  }

  /**
   * What may be found after a kind of work, good first and "other" last.
   *
   * @param kind as {@link Work#kind()} names it; anything else gets what fits every firing
   */
  public static List<Found> after(String kind) {
    return switch (kind) {
      case "burnout" -> CASTING;
      case "enamel" -> ENAMEL;
      case "sinter" -> METAL_CLAY;
      case "heat-treat" -> HEAT_TREATMENT;
      case "glass" -> GLASS;
      default -> ANY;
    };
  }

  /** After a firing of which only the schedule is known. */
  public static List<Found> afterAny() {
    return ANY;
  }
}
