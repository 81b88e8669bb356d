package org.heatwright.keypad.register;

/**
 * What holds for the proofs of one keypad.
 *
 * @param goodForDays a proof is good for so many days, 1 to 366
 * @param keepsPrograms true only if somebody tried it: programs read the same after the power was
 *     off
 */
public record Rules(int goodForDays, boolean keepsPrograms) {

  /** Thirty days is common practice, no source. Nothing is taken for granted of a power cut. */
  public static final Rules USUAL = new Rules(30, false);

  public Rules {
    if (goodForDays < 1 || goodForDays > 366) {
      throw new IllegalArgumentException(
          "A proof is good for 1 to 366 days, not %d.".formatted(goodForDays));
    }
  }
}
