package org.heatwright.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;

/**
 * The cold pieces of an enamelling session whose heat nobody stated. A door that is opened again
 * and again lets something in each time, and that something cold takes more heat than the opening
 * itself.
 */
public final class SessionPieces {

  /** Fewer openings than this are looks into the kiln. Our choice. */
  public static final int FEWEST_OPENINGS = 3;

  // A cold piece with what carries it: 45 mm of thin copper on 50 g of steel; 10 to 200 J/K. Our
  // estimate.
  private static final double JOULES_PER_KELVIN = 45;

  /** Spread of the logarithm of a session's pieces. Our estimate. */
  public static final double SPREAD = 0.8;

  /** Surface of such a piece and its mesh by its heat, m² K/J. Our estimate. */
  private static final double SQUARE_METRES = 4.7e-4;

  private SessionPieces() {}

  /** Heat of a piece with what carries it, J/K, at a score: spreads from the median. */
  public static double joulesPerKelvin(double score) {
    return JOULES_PER_KELVIN * Math.exp(SPREAD * score);
  }

  /**
   * Pieces of a heat.
   *
   * @param joulesPerKelvin J/K, above zero
   * @param changes when they went in and came out
   */
  public static ColdPieces of(double joulesPerKelvin, List<ColdPieces.Change> changes) {
    return new ColdPieces(joulesPerKelvin, SQUARE_METRES * joulesPerKelvin, changes);
  }

  /** The openings of the door among what happened on a day, in order. */
  public static List<Disturbance> openings(List<Disturbance> disturbances) {
    return disturbances.stream()
        .filter(d -> d.kind() == Disturbance.Kind.DOOR_OPEN)
        .sorted(Comparator.comparingDouble(Disturbance::atSeconds))
        .toList();
  }

  /**
   * When pieces went in, if one did at each opening but the last, at which the last came out.
   *
   * @param disturbances of the day
   */
  public static List<ColdPieces.Change> changes(List<Disturbance> disturbances) {
    List<Disturbance> openings = openings(disturbances);
    List<ColdPieces.Change> changes = new ArrayList<>();
    for (int i = 0; i < openings.size(); i++) {
      Disturbance opening = openings.get(i);
      changes.add(
          new ColdPieces.Change(
              opening.atSeconds() + opening.lengthSeconds(), i + 1 < openings.size()));
    }
    return changes;
  }

  /**
   * Whether a day states so many openings, and nothing of pieces, that pieces are likely: not where
   * moulds are fired.
   */
  public static boolean likely(FiringConditions day, Charge charge) {
    return day.pieces().isEmpty()
        && charge.moulds().isEmpty()
        && openings(day.disturbances()).size() >= FEWEST_OPENINGS;
  }

  /**
   * A day with the pieces that are likely on it, if they are.
   *
   * @param score of their heat
   */
  public static FiringConditions on(FiringConditions day, Charge charge, double score) {
    return likely(day, charge)
        ? day.with(List.of(), Optional.of(of(joulesPerKelvin(score), changes(day.disturbances()))))
        : day;
  }

  /** A day that states what goes in: what is likely, of its median heat, else nothing. */
  public static FiringConditions stated(FiringConditions day, Charge charge) {
    FiringConditions likely = on(day, charge, 0);
    return likely.with(List.of(), likely.pieces().or(() -> Optional.of(ColdPieces.NONE)));
  }
}
