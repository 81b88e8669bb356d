package org.heatwright.app.report;

import java.util.Optional;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Control.AfterPowerCut;
import org.heatwright.kiln.Kiln;

/**
 * A kiln with the controller that a keypad belongs to. Both files may tell what follows a power
 * cut: the keypad's, if it is given and knows it, else the kiln's. Forecast, composition and card
 * go by this one rule.
 */
public final class KilnOnKeypad {

  private KilnOnKeypad() {}

  public static Kiln of(Kiln kiln, Optional<Keypad> keypad) {
    Control told = kiln.control();
    AfterPowerCut after =
        keypad
            .map(k -> after(k.afterPowerCut(), told.afterPowerCut()))
            .orElse(told.afterPowerCut());
    return after == told.afterPowerCut()
        ? kiln
        : kiln.withControl(
            new Control(
                told.kind(),
                told.cycleSeconds(),
                told.hysteresis(),
                told.holdWaitsWithin(),
                after));
  }

  private static AfterPowerCut after(Keypad.PowerCut keypad, AfterPowerCut kiln) {
    return switch (keypad) {
      case RESUMES -> AfterPowerCut.CONTINUE;
      case RESTARTS -> AfterPowerCut.RESTART;
      case STOPS -> AfterPowerCut.STOP;
      case UNKNOWN -> kiln;
    };
  }
}
