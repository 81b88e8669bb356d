package org.heatwright.app.cli;

import org.heatwright.app.files.InputException;
import org.heatwright.keypad.Keypad;

/** Program slots as people name them. */
final class Slots {

  private Slots() {}

  static void require(int slot, Keypad keypad) {
    if (slot < 1 || slot > keypad.slots()) {
      throw InputException.in(
          "--slot",
          "%d is not a slot of %s; expected 1 to %d."
              .formatted(slot, keypad.name(), keypad.slots()));
    }
  }
}
