package org.heatwright.forecast;

import java.util.List;
import java.util.Optional;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;

/**
 * What stands in the kiln and takes up heat.
 *
 * @param furnitureKilograms shelves and props, kg, zero or more
 * @param moulds moulds, all of one mix
 * @param investment the mix; present where there are moulds
 * @param pieces other things that heat through quickly
 */
public record Charge(
    double furnitureKilograms,
    List<Mould> moulds,
    Optional<Investment> investment,
    List<Piece> pieces) {

  /**
   * Something small that is the same temperature all through.
   *
   * @param name what it is, e.g. "copper"
   * @param massKilograms kg, above zero
   * @param heatCapacityJoulesPerKilogramKelvin J/(kg K), above zero
   */
  public record Piece(
      String name, double massKilograms, double heatCapacityJoulesPerKilogramKelvin) {
    public Piece {
      if (!(massKilograms > 0) || !(heatCapacityJoulesPerKilogramKelvin > 0)) {
        throw new IllegalArgumentException(
            "The piece '%s' (%s kg, %s J/(kg K)) needs mass and heat capacity above zero."
                .formatted(name, massKilograms, heatCapacityJoulesPerKilogramKelvin));
      }
    }
  }

  public Charge {
    moulds = List.copyOf(moulds);
    pieces = List.copyOf(pieces);
    if (!(furnitureKilograms >= 0)) {
      throw new IllegalArgumentException(
          "The furniture (%s kg) must not be negative.".formatted(furnitureKilograms));
    }
    if (!moulds.isEmpty() && investment.isEmpty()) {
      throw new IllegalArgumentException(
          "Moulds need an investment: say what binds them and the water to powder ratio.");
    }
  }

  public static Charge empty() {
    return new Charge(0, List.of(), Optional.empty(), List.of());
  }

  public static Charge moulds(List<Mould> moulds, Investment investment) {
    return new Charge(0, moulds, Optional.of(investment), List.of());
  }

  public boolean isEmpty() {
    return furnitureKilograms == 0 && moulds.isEmpty() && pieces.isEmpty();
  }
}
