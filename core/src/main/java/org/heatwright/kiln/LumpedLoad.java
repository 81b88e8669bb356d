package org.heatwright.kiln;

import java.util.List;
import org.heatwright.material.HeatCurves;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;

/**
 * Shelves, props and small pieces: the same temperature all through.
 *
 * @param name what it is
 * @param massKilograms kg, above zero
 * @param faceSquareMetres area that faces the chamber, m², above zero
 * @param heatCapacityJoulesPerKilogramKelvin J/(kg K), above zero
 */
public record LumpedLoad(
    String name,
    double massKilograms,
    double faceSquareMetres,
    double heatCapacityJoulesPerKilogramKelvin)
    implements Load {

  private static final double DENSITY = 1000; // any: mass and capacity alone matter here

  /** Shelves and props: cordierite-like ceramic, 15 mm thick, both sides free. Our estimate. */
  public static LumpedLoad furniture(double massKilograms) {
    return new LumpedLoad("furniture", massKilograms, 0.067 * massKilograms, 1050);
  }

  /**
   * Something whose heat is known, whatever it is made of.
   *
   * @param name what it is
   * @param joulesPerKelvin heat it takes up, J/K, above zero
   * @param faceSquareMetres area that faces the chamber, m², above zero
   */
  public static LumpedLoad ofHeat(String name, double joulesPerKelvin, double faceSquareMetres) {
    double capacity = 1050; // that of ceramic; any would do: mass times capacity is what is told
    return new LumpedLoad(name, joulesPerKelvin / capacity, faceSquareMetres, capacity);
  }

  /**
   * Hearth plate and element carriers of 1 J/K: part of the kiln, seen from one side and the edges.
   * A draw's heat factor makes them as heavy as they are.
   */
  static LumpedLoad fittings(Kiln kiln) {
    return ofHeat("fittings", 1, 1.3 * kiln.chamber().floorSquareMetres());
  }

  @Override
  public ThermalBody body(HeatCurves curves, double conductivityFactor, double heatFactor) {
    Material material =
        new Material(
            name,
            DENSITY,
            LinearTable.constant(1),
            LinearTable.constant(heatCapacityJoulesPerKilogramKelvin),
            List.of(),
            Origin.estimate("lumped load"));
    return ThermalBody.lumped(
        name,
        faceSquareMetres,
        KilnNetwork.WALL_EMISSIVITY,
        curves.of(material),
        heatFactor * massKilograms / DENSITY);
  }
}
