package org.heatwright.work;

import java.util.List;
import java.util.Objects;

/**
 * What a person may find when the kiln is opened, to tick on the card and to write into a record.
 * Its code is the same in every kind of work in which the same thing is meant, and never changes,
 * so that records of years can be compared.
 *
 * @param code stable, in kebab-case
 * @param words the trade's, short enough for a box on the card
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
          new Found("porous", "gas porosity"),
          new Found("shrinkage", "shrinkage porosity"),
          new Found("flash", "fins"),
          new Found("bubbles", "beads"),
          new Found("rough", "rough skin"),
          new Found("inclusions", "investment in the metal"),
          new Found("carbon", "carbon left"),
          new Found("crack", "mould cracked"),
          OTHER);

  private static final List<Found> ENAMEL =
      List.of(
          GOOD,
          new Found("under-fired", "sugary"),
          new Found("orange-peel", "orange peel"),
          new Found("over-fired", "burnt out"),
          new Found("pulled-through", "pulled through"),
          new Found("pits", "pits"),
          new Found("bubbles", "bubbles"),
          CRACK,
          new Found("chip", "chipped"),
          WARPED,
          new Found("melted", "metal or solder melted"),
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
          WARPED,
          new Found("oxidised", "black inside"),
          new Found("inset-hurt", "stone or glass hurt"),
          OTHER);

  private static final List<Found> HEAT_TREATMENT =
      List.of(
          GOOD,
          new Found("too-hard", "still too hard"),
          new Found("too-soft", "still too soft"),
          new Found("coarse-grain", "orange peel when bent"),
          new Found("fire-stain", "fire stain"),
          new Found("scale", "scale"),
          new Found("colour-off", "colour off"),
          CRACK,
          WARPED,
          new Found("melted", "metal or solder melted"),
          OTHER);

  private static final List<Found> GLASS =
      List.of(
          GOOD,
          new Found("under-fired", "not far enough"),
          new Found("over-fired", "too far"),
          new Found("bubbles", "bubbles"),
          new Found("devit", "devitrified"),
          new Found("crack-round", "crack, edges round"),
          new Found("crack", "crack, edges sharp"),
          new Found("stress", "light between polarisers"),
          new Found("spikes", "spiky edges"),
          new Found("shelf-stuck", "shelf sticks to it"),
          new Found("uneven", "uneven slump"),
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
