package org.heatwright.material;

/**
 * Melting points of karat golds, °C: one value each, though such alloys melt over 20 to 60 K and
 * alloys of one name differ. The supplier's solidus goes first.
 */
public final class KaratGolds {

  /** Of all but 22 k. */
  public static final Origin ORIGIN = Origin.read("a bench page on the specific gravity of alloys");

  public static final double YELLOW_14K_CELSIUS = 879;
  public static final double RED_14K_CELSIUS = 935;
  public static final double WHITE_14K_CELSIUS = 996;
  public static final double YELLOW_18K_CELSIUS = 927;
  public static final double RED_18K_CELSIUS = 902;
  public static final double WHITE_18K_CELSIUS = 943;

  /** Well under what is told of 22 k golds. {@code estimate:} */
  public static final double ANY_22K_CELSIUS = 920;

  private KaratGolds() {}
}
