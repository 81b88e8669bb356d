package org.heatwright.kiln;

/** What stands in the chamber and takes up heat, as the kiln's network sees it. */
public interface Load {

  /**
   * The body to simulate.
   *
   * @param conductivityFactor this draw's multiplier of the load's conductivity
   * @param heatFactor this draw's multiplier of the load's heat content
   */
  ThermalBody body(double conductivityFactor, double heatFactor);
}
