package org.heatwright.sensing;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.sensing.OffsetCorrection.Point;
import org.heatwright.sensing.WrongType.Comparison;
import org.heatwright.sensing.WrongType.Suspect;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/**
 * What a display said beside something trusted, and what follows: first whether another couple or
 * swapped leads explain it, and only if not how far it is off. Immutable.
 *
 * @param melt a silver wire that was seen to melt
 * @param comparisons thermometers beside the sensor; one at least where no wire melted
 * @param setTo the type that the controller is set to; without it no couple is suspected
 * @param coldJunction the temperature of the controller's terminals; empty: where terminals in a
 *     workshop may be
 */
public record DisplayCheck(
    Optional<MeltCheck> melt,
    List<Comparison> comparisons,
    Optional<ThermocoupleType> setTo,
    Optional<Temperature> coldJunction) {

  /** Where the terminals of a controller at work may be, °C (our estimate). */
  private static final double[] USUAL_COLD_JUNCTIONS = {15, 25, 35, 45};

  /**
   * How well another couple must explain readings: class 2 of type K at 800 °C is 6 K, the rest is
   * the thermometer's and the terminals' (our estimate).
   */
  public static final TemperatureChange AGREEMENT = TemperatureChange.ofKelvins(10);

  private static final double SAME_KELVINS = 1e-6;

  /** What an offset at a temperature rests on. */
  public enum Standing {
    /** It was seen there. */
    SEEN,
    /** On the line between two that were seen. */
    BETWEEN,
    /** Outside what was seen. */
    FIRST_GUESS
  }

  public DisplayCheck {
    Objects.requireNonNull(melt, "melt");
    Objects.requireNonNull(setTo, "setTo");
    Objects.requireNonNull(coldJunction, "coldJunction");
    comparisons = List.copyOf(comparisons);
    if (melt.isEmpty() && comparisons.isEmpty()) {
      throw new IllegalArgumentException("A display is checked by at least one reading.");
    }
  }

  /**
   * Couples or swapped leads that explain every reading, the best first; empty where the type is
   * not known or nothing of the kind explains them. A melt enters with the middle of its limits,
   * and widens what must agree by half of what they leave open.
   */
  public List<Suspect> suspects() {
    List<Comparison> seen = new ArrayList<>(comparisons);
    double openKelvins = 0;
    if (melt.isPresent()) {
      MeltCheck.Correction correction = melt.get().correction();
      double low = correction.lowOffset().kelvins();
      double high = correction.highOffset().kelvins();
      seen.add(
          new Comparison(
              MeltCheck.SILVER_MELTS,
              MeltCheck.SILVER_MELTS.plus(TemperatureChange.ofKelvins(0.5 * (low + high)))));
      openKelvins = 0.5 * (high - low);
    }
    TemperatureChange agreement = TemperatureChange.ofKelvins(AGREEMENT.kelvins() + openKelvins);
    List<Suspect> suspects = new ArrayList<>();
    for (Temperature terminals : coldJunctions()) {
      setTo.ifPresent(
          type -> suspects.addAll(WrongType.suspects(seen, type, terminals, agreement)));
    }
    suspects.sort(Comparator.comparing(Suspect::largestMisfit));
    return bestOfEach(suspects);
  }

  private List<Temperature> coldJunctions() {
    return coldJunction
        .map(List::of)
        .orElseGet(
            () -> Arrays.stream(USUAL_COLD_JUNCTIONS).mapToObj(Temperature::ofCelsius).toList());
  }

  private static List<Suspect> bestOfEach(List<Suspect> sorted) {
    List<Suspect> best = new ArrayList<>();
    for (Suspect each : sorted) {
      boolean better =
          best.stream()
              .anyMatch(
                  b -> b.sensor() == each.sensor() && b.leadsReversed() == each.leadsReversed());
      if (!better) {
        best.add(each);
      }
    }
    return List.copyOf(best);
  }

  /** Whether what was seen can be an offset: nothing is suspected, and nothing too far off. */
  public boolean isOffset() {
    return suspects().isEmpty() && tooFarOff().isEmpty();
  }

  /** The comparison that is further off than any offset is; empty if there is none. */
  public Optional<Comparison> tooFarOff() {
    return comparisons.stream()
        .filter(
            each ->
                Math.abs(each.shown().minus(each.truth()).kelvins())
                    > MeltCheck.LARGEST_OFFSET.kelvins())
        .findFirst();
  }

  /** What was seen, the coolest display first. */
  public List<Point> points() {
    List<Point> points = new ArrayList<>();
    melt.ifPresent(m -> points.add(m.correction().point()));
    comparisons.forEach(c -> points.add(new Point(c.shown(), c.shown().minus(c.truth()))));
    points.sort(Comparator.comparing(Point::shown));
    return List.copyOf(points);
  }

  /**
   * How far the display is off: through all that was seen; from a single point above 0 °C in
   * proportion, from a colder one the same everywhere.
   *
   * @throws IllegalArgumentException if the truth does not rise with the display
   */
  public OffsetCorrection correction() {
    List<Point> points = points();
    Point first = points.get(0);
    if (points.size() > 1) {
      return new OffsetCorrection(points);
    }
    return cold(first)
        ? OffsetCorrection.constant(first.offset())
        : OffsetCorrection.inProportion(first);
  }

  private static boolean cold(Point point) {
    return point.shown().celsius() <= 0 || point.truth().celsius() <= 0;
  }

  /** What the correction rests on at a true temperature. */
  public Standing standing(Temperature truth) {
    List<Point> points = points();
    boolean seen =
        points.stream().anyMatch(p -> Math.abs(p.truth().minus(truth).kelvins()) < SAME_KELVINS);
    if (seen) {
      return Standing.SEEN;
    }
    boolean between =
        points.get(0).truth().compareTo(truth) < 0
            && points.get(points.size() - 1).truth().compareTo(truth) > 0;
    return between ? Standing.BETWEEN : Standing.FIRST_GUESS;
  }

  /**
   * The true temperature that is meant where none is named: of the melt, or of the last reading.
   */
  public Temperature usualWork() {
    return melt.isPresent()
        ? MeltCheck.SILVER_MELTS
        : comparisons.get(comparisons.size() - 1).truth();
  }

  /** Where the numbers come from. */
  public List<Origin> origins() {
    List<Origin> origins = new ArrayList<>();
    melt.ifPresent(m -> origins.addAll(m.correction().origins()));
    if (!comparisons.isEmpty()) {
      origins.add(Origin.own("what the display and the trusted thermometer said"));
    }
    if (isOffset()) {
      origins.add(Origin.estimate(guess()));
    }
    if (setTo.isPresent()) {
      origins.add(Origin.read("couples: NIST Monograph 175, ITS-90 functions"));
      origins.add(
          Origin.estimate(
              "terminals at 15 to 45 °C unless told; another couple must explain every reading to 10 K, and what a melt leaves open"));
    }
    return List.copyOf(origins);
  }

  private String guess() {
    List<Point> points = points();
    if (points.size() > 1) {
      return "straight between what was seen, the same beyond it";
    }
    return cold(points.get(0))
        ? "from one cold point the same everywhere"
        : "from one point in proportion, the same above it";
  }
}
