package org.heatwright.sensing;

import org.heatwright.material.Origin;

/**
 * What use does to a couple, in a sentence a type: no class and no formula says how far a used
 * couple is off, so there is nothing to compute here.
 */
public final class Drift {

  private Drift() {}

  /** One sentence for people about a used couple of that type in a kiln. */
  public static String caution(ThermocoupleType type) {
    return switch (type) {
      case K ->
          "Used type K shifts besides, by up to 5 K after hours between 340 and 600 °C, and creeps up by some kelvins in hundreds of hours above 800 °C.";
      case E -> "Used type E shifts besides, in the same way as type K.";
      case N -> "Used type N drifts besides, though several times less than type K.";
      case J -> "The iron leg of a type J oxidises fast above 540 °C: it drifts there.";
      case T -> "The copper leg of a type T oxidises above 370 °C: it does not belong in a kiln.";
      case B, R, S ->
          "Type %s drifts little in clean air; metal vapour, or silica with carbon, spoils it."
              .formatted(type);
    };
  }

  /** Where that is from. */
  public static Origin origin(ThermocoupleType type) {
    return switch (type) {
      case K ->
          Origin.read(
              "a thermocouple-wire maker's note on the shift; the creep from memory: Bentley, Theory and Practice of Thermoelectric Thermometry, 1998");
      case N -> Origin.memory("Burley and others, NBS Monograph 161, 1978");
      case B, E, J, R, S, T ->
          Origin.memory(
              "ASTM MNL 12, Manual on the Use of Thermocouples in Temperature Measurement");
    };
  }
}
