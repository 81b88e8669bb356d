package org.heatwright.work.heattreat;

/**
 * Metals that are heat treated.
 *
 * <p>Emissivities are ranges from instrument makers' tables and a handbook compilation (read in
 * excerpts) from clean metal to scaled, widened by us: a clean piece follows the kiln slowest, a
 * scaled one cools fastest in the hand. Heat capacities: our estimate over 20 to 700 °C.
 */
public enum TreatedMetal {
  FINE_SILVER("fine silver", "silver", 10_490, 255, 0.05, 0.3),
  STERLING_925("sterling silver", "sterling-silver", 10_360, 265, 0.05, 0.7),
  GERMANIUM_SILVER_925("germanium-bearing sterling", "sterling-silver", 10_300, 265, 0.05, 0.4),
  COPPER("copper", "copper", 8960, 420, 0.1, 0.8),
  BRASS("brass", "brass", 8400, 420, 0.1, 0.6),
  BRONZE("bronze", "tin-bronze", 8800, 410, 0.1, 0.7),
  YELLOW_GOLD_14K("14 k yellow gold", "gold", 13_070, 240, 0.05, 0.6),
  YELLOW_GOLD_18K("18 k yellow gold", "gold", 15_580, 180, 0.05, 0.5),
  YELLOW_GOLD_22K("22 k yellow gold", "gold", 17_700, 150, 0.05, 0.3),
  RED_GOLD_14K("14 k red gold", "gold", 13_260, 245, 0.05, 0.7),
  RED_GOLD_18K("18 k red gold", "gold", 15_180, 185, 0.05, 0.6),
  WHITE_GOLD_NICKEL_14K("14 k nickel white gold", "gold", 12_610, 260, 0.1, 0.6),
  WHITE_GOLD_NICKEL_18K("18 k nickel white gold", "gold", 14_640, 195, 0.1, 0.6),
  WHITE_GOLD_PALLADIUM_14K("14 k palladium white gold", "gold", 13_900, 210, 0.1, 0.5),
  WHITE_GOLD_PALLADIUM_18K("18 k palladium white gold", "gold", 15_700, 175, 0.1, 0.5),
  PALLADIUM_950("palladium 950", "platinum", 11_900, 255, 0.1, 0.5),
  PLATINUM_950("platinum 950", "platinum", 20_700, 140, 0.1, 0.3);

  private final String words;
  private final String material;
  private final double density;
  private final double heat;
  private final double clean;
  private final double scaled;

  TreatedMetal(
      String words, String material, double density, double heat, double clean, double scaled) {
    this.words = words;
    this.material = material;
    this.density = density;
    this.heat = heat;
    this.clean = clean;
    this.scaled = scaled;
  }

  public String words() {
    return words;
  }

  /** The nearest material of the library, for conduction; density and heat are our own. */
  public String material() {
    return material;
  }

  /** kg/m³, bench tables where they have it. */
  public double kilogramsPerCubicMetre() {
    return density;
  }

  /** J/(kg K). */
  public double joulesPerKilogramKelvin() {
    return heat;
  }

  /** Emissivity of a clean piece: the slowest to follow a kiln. */
  public double cleanEmissivity() {
    return clean;
  }

  /** Emissivity of a scaled or fluxed piece: the fastest to cool. */
  public double scaledEmissivity() {
    return scaled;
  }

  public boolean isSilver() {
    return this == FINE_SILVER || this == STERLING_925 || this == GERMANIUM_SILVER_925;
  }

  public boolean isRedGold() {
    return this == RED_GOLD_14K || this == RED_GOLD_18K;
  }

  /** Whether it scales or stains in hot air. */
  public boolean oxidises() {
    return switch (this) {
      case FINE_SILVER, YELLOW_GOLD_22K, PLATINUM_950 -> false;
      default -> true;
    };
  }
}
