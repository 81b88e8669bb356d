package org.heatwright.work.casting;

import org.heatwright.material.Origin;

/** How much used metal (buttons, sprues) a melt bears. */
public final class UsedMetal {

  /**
   * Share of used metal in a melt: at most half is the common rule; careful shops stay at a third,
   * and some take two thirds of clean, once-melted metal.
   */
  public static final Spread AT_MOST_SHARE = new Spread(1 / 3.0, 0.5, 2 / 3.0);

  public static final Origin ORIGIN =
      new Origin(
          Origin.Kind.PRACTICE, "half is the rule told at benches; the ends are our estimate");

  public static final String WHY =
      "Each melt burns off zinc and deoxidiser and picks up oxide, gas and sulphur from the mould:"
          + " too much used metal gives pores, hard spots and a drifting fineness. Clean off all"
          + " investment, know the alloy, never mix unknown scrap into a marked fineness.";

  private UsedMetal() {}

  /** The most used metal in a melt, kg. */
  public static Spread atMostKilograms(double meltKilograms) {
    return AT_MOST_SHARE.times(meltKilograms);
  }
}
