package org.heatwright.material;

import java.util.List;
import java.util.OptionalDouble;

/**
 * Heat capacities of small things that stand in a kiln, as one number over 20 to 800 °C, J/(kg K).
 *
 * <p>Source: our estimate, some tenths above the handbook values at 25 °C, because heat capacity
 * rises with temperature. Good for how much heat a load takes, not for its melting.
 */
public final class PieceMaterials {

  private record Piece(String name, double joulesPerKilogramKelvin) {}

  private static final List<Piece> ALL =
      List.of(
          new Piece("copper", 420),
          new Piece("silver", 255),
          new Piece("gold", 138),
          new Piece("brass", 420),
          new Piece("bronze", 410),
          new Piece("steel", 620),
          new Piece("stainless-steel", 560),
          new Piece("glass", 1050),
          new Piece("ceramic", 1000));

  private PieceMaterials() {}

  public static List<String> names() {
    return ALL.stream().map(Piece::name).toList();
  }

  /** The heat capacity of that material, J/(kg K), if it is known. */
  public static OptionalDouble heatCapacityJoulesPerKilogramKelvin(String name) {
    return ALL.stream()
        .filter(piece -> piece.name().equals(name))
        .mapToDouble(Piece::joulesPerKilogramKelvin)
        .findFirst();
  }
}
