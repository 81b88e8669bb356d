package org.heatwright.kiln;

/** What a nameplate lets one believe about a kiln. */
public final class KilnPrior {
  private KilnPrior() {}
}
