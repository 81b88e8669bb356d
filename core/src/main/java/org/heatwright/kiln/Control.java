package org.heatwright.kiln;

import java.util.Optional;
import org.heatwright.units.TemperatureChange;

/**
 * How the controller drives the elements.
 *
 * @param kind proportional-integral, or on-off
 * @param cycleSeconds relay cycle of a proportional controller, s; 0 where it does not matter
 * @param hysteresis the full width between switching off and on again, of an on-off controller
 * @param holdWaitsWithin the hold's clock starts when the reading is that near the target; empty:
 *     it runs from the setpoint
 * @param afterPowerCut what it does when the mains come back
 */
public record Control(
    Kind kind,
    double cycleSeconds,
    TemperatureChange hysteresis,
    Optional<TemperatureChange> holdWaitsWithin,
    AfterPowerCut afterPowerCut) {

  /** The law that turns the error into power. */
  public enum Kind {
    PID,
    ON_OFF
  }

  /** What the controller does when the mains come back. */
  public enum AfterPowerCut {
    CONTINUE,
    RESTART,
    STOP,
    UNKNOWN
  }

  public Control {
    if (!(cycleSeconds >= 0) || !(hysteresis.kelvins() >= 0)) {
      throw new IllegalArgumentException(
          "The control's cycle (%s s) and hysteresis (%s K) must not be negative."
              .formatted(cycleSeconds, hysteresis.kelvins()));
    }
    if (holdWaitsWithin.isPresent() && !(holdWaitsWithin.get().kelvins() > 0)) {
      throw new IllegalArgumentException(
          "The distance within which a hold starts (%s K) must be above zero."
              .formatted(holdWaitsWithin.get().kelvins()));
    }
  }
}
