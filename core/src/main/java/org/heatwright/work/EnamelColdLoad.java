package org.heatwright.work;

import java.util.List;
import org.heatwright.kiln.LumpedLoad;

/**
 * What is cold when it goes into the hot kiln: one piece, and the trivet and mesh it stands on. All
 * of it cools the chamber as much as the chamber heats it.
 *
 * <p>Limits: the piece counts as a square of its longest side, which is the most it can be; a mesh
 * that goes back in warm takes less than this.
 */
final class EnamelColdLoad {

  /** Stainless steel between a room and 800 °C, J/(kg K). Memory: data sheets give 500 to 630. */
  private static final double STEEL_JOULES_PER_KILOGRAM_KELVIN = 570;

  /** Surface of a wire 1.8 mm thick for its mass, 4/(density x diameter), m²/kg. */
  private static final double WIRE_SQUARE_METRES_PER_KILOGRAM = 0.28;

  private EnamelColdLoad() {}

  /** Trivet and mesh, kg: as the work says, or as we think. */
  static double trivetKilograms(EnamelWork work) {
    return work.build().trivetKilograms().orElse(EnamelRules.trivetKilograms(work.pieceMetres()));
  }

  /** All that goes in with one piece. */
  static List<LumpedLoad> of(EnamelWork work) {
    double face = work.pieceMetres() * work.pieceMetres();
    LumpedLoad piece =
        LumpedLoad.ofHeat(
            "piece", EnamelOutlook.body(work).joulesPerSquareMetreKelvin() * face, 2 * face);
    double kilograms = trivetKilograms(work);
    return kilograms == 0
        ? List.of(piece)
        : List.of(
            piece,
            new LumpedLoad(
                "trivet",
                kilograms,
                kilograms * WIRE_SQUARE_METRES_PER_KILOGRAM,
                STEEL_JOULES_PER_KILOGRAM_KELVIN));
  }
}
