package org.heatwright.app.report;

import java.math.BigDecimal;
import java.math.MathContext;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;

/** What a kiln hides, in words for the people who fire it. */
public final class QuantityWords {

  private QuantityWords() {}

  /** E.g. "Full power". */
  public static String name(KilnQuantity quantity) {
    return switch (quantity) {
      case POWER -> "Full power";
      case CONDUCTIVITY -> "Heat through the walls";
      case CAPACITY -> "Heat kept in the walls";
      case LEAK -> "Heat lost past the door";
      case FITTINGS -> "Heat kept in built-in plates";
      case SENSOR -> "Lag of the thermocouple";
      case GAIN -> "Strength of the controller";
      case INTEGRAL -> "Settling time of the controller";
      case DERIVATIVE -> "Foresight of the controller";
      case SWITCH -> "Delay of the switch";
      case CREST -> "Crests above the display’s line";
      case ELEMENT -> "Heat kept in the elements";
      case STEEPNESS -> "Growth of that with heat";
      case CONVECTION -> "Moving air inside";
      case VIEW -> "Elements seen by the thermocouple";
      case DOOR -> "Loss through the open door";
      case MAINS -> "Mains of the day";
      case OFFSET -> "What the display adds";
      case ROOM -> "Room above the stated";
      case LOAD_CONDUCTIVITY -> "Heat through the load";
      case LOAD_HEAT -> "Heat kept in the load";
    };
  }

  /** What its numbers count, e.g. "% of the nameplate's". */
  public static String unit(KilnQuantity quantity) {
    return switch (quantity) {
      case POWER -> "% of the nameplate’s";
      case MAINS -> "% of the kiln’s own";
      case STEEPNESS -> "% of the tables’";
      case VIEW -> "% of what it receives";
      case CONDUCTIVITY, CAPACITY, LOAD_CONDUCTIVITY, LOAD_HEAT -> "% of the tables’";
      case LEAK -> "W/K a metre of door";
      case FITTINGS -> "kJ/K a m² of floor";
      case SENSOR -> "% of a plain rod’s";
      case GAIN -> "% power a kelvin";
      case INTEGRAL -> "min";
      case DERIVATIVE, SWITCH -> "s";
      case ELEMENT, CONVECTION -> "% of the usual";
      case DOOR -> "% of the full exchange";
      case OFFSET -> "K at 1000 °C";
      case ROOM, CREST -> "K";
    };
  }

  /** "93 to 100": where it lies nine times in ten, in the unit of {@link #unit}. */
  public static String range(KilnBeliefs beliefs, KilnQuantity quantity) {
    String low = number(quantity, beliefs.low(quantity));
    String high = number(quantity, beliefs.high(quantity));
    return low.equals(high) ? low : low + " to " + high;
  }

  private static String number(KilnQuantity quantity, double value) {
    double shown =
        switch (quantity) {
          case POWER, CONDUCTIVITY, CAPACITY, SENSOR, GAIN, ELEMENT -> 100 * value;
          case STEEPNESS, CONVECTION, VIEW, DOOR, MAINS -> 100 * value;
          case LOAD_CONDUCTIVITY, LOAD_HEAT -> 100 * value;
          case FITTINGS -> value / 1000;
          case INTEGRAL -> value / 60;
          default -> value;
        };
    if (Math.abs(shown) >= 20) {
      return Long.toString(Math.round(shown));
    }
    return new BigDecimal(shown).round(new MathContext(2)).stripTrailingZeros().toPlainString();
  }
}
