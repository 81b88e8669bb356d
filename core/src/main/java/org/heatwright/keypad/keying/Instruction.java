package org.heatwright.keypad.keying;

import java.util.Objects;
import org.heatwright.keypad.machine.KeyAction;

/** One thing that a sheet tells a person to do. The set of kinds is closed. */
public sealed interface Instruction {

  /** A key, exactly so. */
  record Press(KeyAction action) implements Instruction {

    public Press {
      Objects.requireNonNull(action, "action");
    }
  }

  /**
   * The keys that make values, until the display shows a text: what stands there is not known.
   *
   * @param shows what it must show
   */
  record Until(String shows) implements Instruction {

    public Until {
      Objects.requireNonNull(shows, "shows");
    }
  }
}
