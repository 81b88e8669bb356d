package org.heatwright.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.Load;
import org.heatwright.kiln.LumpedLoad;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.mould.MouldLoad;
import org.heatwright.piece.FollowedPiece;
import org.heatwright.piece.SlabLoad;

/**
 * What stands in the kiln and takes up heat.
 *
 * @param furnitureKilograms shelves and props, kg, zero or more
 * @param moulds moulds, all of one mix
 * @param investment the mix; present where there are moulds
 * @param pieces other things that heat through quickly
 * @param followed work whose own temperature is followed
 */
public record Charge(
    double furnitureKilograms,
    List<Mould> moulds,
    Optional<Investment> investment,
    List<Piece> pieces,
    List<FollowedPiece> followed) {

  /** Area of small pieces a kilogram: 1 mm sheet of copper, both sides. Our estimate, m²/kg. */
  private static final double PIECE_SQUARE_METRES_PER_KILOGRAM = 0.22;

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
    followed = List.copyOf(followed);
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
    return new Charge(0, List.of(), Optional.empty(), List.of(), List.of());
  }

  /** Work whose own temperature is followed, and nothing else. */
  public static Charge followed(List<FollowedPiece> followed) {
    return new Charge(0, List.of(), Optional.empty(), List.of(), followed);
  }

  public static Charge moulds(List<Mould> moulds, Investment investment) {
    return new Charge(0, moulds, Optional.of(investment), List.of(), List.of());
  }

  public boolean isEmpty() {
    return furnitureKilograms == 0 && moulds.isEmpty() && pieces.isEmpty() && followed.isEmpty();
  }

  /** What the kiln's network sees: the moulds first, in their order, then the rest. */
  public List<Load> loads() {
    List<Load> loads = new ArrayList<>();
    for (Mould mould : moulds) {
      loads.add(new MouldLoad(mould, investment.orElseThrow()));
    }
    for (FollowedPiece piece : followed) {
      loads.add(new SlabLoad(piece));
    }
    if (furnitureKilograms > 0) {
      loads.add(LumpedLoad.furniture(furnitureKilograms));
    }
    for (Piece piece : pieces) {
      loads.add(
          new LumpedLoad(
              piece.name(),
              piece.massKilograms(),
              PIECE_SQUARE_METRES_PER_KILOGRAM * piece.massKilograms(),
              piece.heatCapacityJoulesPerKilogramKelvin()));
    }
    return loads;
  }
}
