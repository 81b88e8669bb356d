package org.heatwright.material;

/** Melting points of pure metals at which the ITS-90 is fixed, °C. */
public final class FixedPoints {

  public static final Origin ORIGIN = Origin.read("ITS-90, table of fixed points");

  public static final double TIN_CELSIUS = 231.928;
  public static final double ZINC_CELSIUS = 419.527;
  public static final double SILVER_CELSIUS = 961.78;
  public static final double GOLD_CELSIUS = 1064.18;
  public static final double COPPER_CELSIUS = 1084.62;

  private FixedPoints() {}
}
