package org.heatwright.work.casting;

import java.util.Locale;
import java.util.Optional;

/** Metals that are poured by the same rules of practice. */
public enum AlloyFamily {
  SILVER("silver"),
  GOLD("yellow or red gold"),
  WHITE_GOLD("white gold"),
  BRONZE("bronze"),
  BRASS("brass"),
  PLATINUM("platinum or palladium"),
  OTHER("another metal");

  private final String words;

  AlloyFamily(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Too hot for a gypsum-bonded mould. */
  public boolean needsPhosphate() {
    return this == PLATINUM;
  }

  /** The family that the words of a name tell, e.g. of "gold-14k" or "bronze-90-10". */
  public static Optional<AlloyFamily> ofName(String alloy) {
    String name = alloy.toLowerCase(Locale.ROOT);
    if (name.contains("gold")) {
      return Optional.of(name.contains("white") ? WHITE_GOLD : GOLD);
    }
    if (name.contains("platinum") || name.contains("palladium")) {
      return Optional.of(PLATINUM);
    }
    if (name.contains("sterling") || name.contains("silver")) {
      return Optional.of(SILVER);
    }
    if (name.contains("bronze")) {
      return Optional.of(BRONZE);
    }
    return name.contains("brass") ? Optional.of(BRASS) : Optional.empty();
  }

  /** By what is in it: gold from a quarter on, white with a tenth of nickel or palladium. */
  static AlloyFamily ofMix(Mix mix) {
    double white = mix.share(Metal.NICKEL) + mix.share(Metal.PALLADIUM);
    if (mix.share(Metal.PLATINUM) + mix.share(Metal.PALLADIUM) >= 0.5) {
      return PLATINUM;
    }
    if (mix.share(Metal.GOLD) >= 0.25) {
      return white >= 0.1 ? WHITE_GOLD : GOLD;
    }
    if (mix.share(Metal.SILVER) >= 0.5) {
      return SILVER;
    }
    if (mix.share(Metal.COPPER) >= 0.5 && mix.shares().size() > 1) {
      return mix.share(Metal.ZINC) >= mix.share(Metal.TIN) ? BRASS : BRONZE;
    }
    return OTHER;
  }
}
