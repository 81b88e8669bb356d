package org.heatwright.keypad;

import java.util.List;
import java.util.Optional;

/** Was it keyed right? */
public final class Readback {

  private Readback() {}

  public static List<ReadbackQuestion> questions(FittedProgram program, Keypad keypad) {
    throw new UnsupportedOperationException("lands next");
  }

  public static ReadbackReport compare(FittedProgram program, Keypad keypad, Shown shown) {
    return compare(program, keypad, shown, Optional.empty());
  }

  public static ReadbackReport compare(
      FittedProgram program, Keypad keypad, Shown shown, Optional<UnitCheck.Result> unitCheck) {
    throw new UnsupportedOperationException("lands next");
  }
}
