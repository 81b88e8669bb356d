package org.heatwright.kiln;

import org.heatwright.material.HeatCurves;

/** What stands in the chamber and takes up heat, as the kiln's network sees it. */
public interface Load {

  /**
   * The body to simulate.
   *
   * @param curves where its materials' heat curves come from
   * @param conductivityFactor this draw's multiplier of the load's conductivity
   * @param heatFactor this draw's multiplier of the load's heat content
   */
  ThermalBody body(HeatCurves curves, double conductivityFactor, double heatFactor);
}
