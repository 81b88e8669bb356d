package org.heatwright.learn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.units.TemperatureUnit;

/** What was learned, from what, and what was not. Immutable. */
public final class Lesson {

  /** A quantity whose ignorance is still above this share of the first was not learned. */
  static final double UNKNOWN_SHARE = 0.8;

  /**
   * A firing that the fit could not explain.
   *
   * @param firing its name
   * @param misfitKelvins by how much its display was missed, root mean square, K
   */
  public record LeftOut(String firing, double misfitKelvins) {}

  /**
   * Something that went wrong in a firing, and was kept out of what was learned.
   *
   * @param firing its name
   * @param what what it was
   */
  public record Happened(String firing, Anomaly what) {}

  /**
   * Openings of the door that a firing's log told or showed, and that were simulated with it.
   *
   * @param firing its name
   * @param count how many
   * @param by what tells of them
   * @param cold whether something cold went in whose heat nobody stated
   * @param coldKilojoules heat that a piece with what carries it took up each time, kJ; empty where
   *     the log does not tell it from what the open door costs
   */
  public record Openings(
      String firing, int count, By by, boolean cold, Optional<Band> coldKilojoules) {

    /** What tells of openings. */
    public enum By {
      /** The log's own events. */
      LOG("told by the log"),
      /** What was so on that day, as somebody stated it. */
      DAY("stated for that day"),
      /** The display's falls. */
      DISPLAY("shown by the display");

      private final String words;

      By(String words) {
        this.words = words;
      }
    }

    /** In a sentence or two. */
    public String words() {
      String how = by.words;
      String seen =
          count == 1
              ? "1 opening of the door, %s, was taken into account.".formatted(how)
              : "%d openings of the door, %s, were taken into account.".formatted(count, how);
      if (!cold) {
        return seen;
      }
      return coldKilojoules
          .map(
              heat ->
                  "%s What went in cold took about %.0f kJ each time (%.0f to %.0f)."
                      .formatted(seen, heat.median(), heat.low(), heat.high()))
          .orElse(
              seen
                  + " How much of their cost was the cold piece's and how much the door's is not"
                  + " told.");
    }
  }

  private final KilnBeliefs beliefs;
  private final List<String> firings;
  private final double[] misfitKelvins;
  private final List<LeftOut> leftOut;
  private final List<Happened> happened;
  private final List<Openings> openings;
  private final Coverage coverage;

  Lesson(
      KilnBeliefs beliefs,
      List<String> firings,
      double[] misfitKelvins,
      List<LeftOut> leftOut,
      List<Happened> happened,
      List<Openings> openings,
      Coverage coverage) {
    this.beliefs = Objects.requireNonNull(beliefs, "beliefs");
    this.firings = List.copyOf(firings);
    this.misfitKelvins = misfitKelvins.clone();
    this.leftOut = List.copyOf(leftOut);
    this.happened = List.copyOf(happened);
    this.openings = List.copyOf(openings);
    this.coverage = coverage;
  }

  public KilnBeliefs beliefs() {
    return beliefs;
  }

  /** Names of the firings it rests on. */
  public List<String> firings() {
    return firings;
  }

  /** How far the fit misses the display of a firing it rests on, root mean square, K. */
  public double misfitKelvins(int firing) {
    return misfitKelvins[firing];
  }

  /** Firings that did not fit and were left out. */
  public List<LeftOut> leftOut() {
    return leftOut;
  }

  /** What the firings it rests on have shown of the kiln. */
  public Coverage coverage() {
    return coverage;
  }

  /** What is still the nameplate's and why, a sentence each, with temperatures in a unit. */
  public List<String> stillNameplate(TemperatureUnit unit) {
    return coverage.words(untold(), unit);
  }

  /**
   * What went wrong in the firings: the lesson rests on what the logs say before it, and after it
   * where it was over.
   */
  public List<Happened> happened() {
    return happened;
  }

  /** Openings of the door that were simulated with the firings it rests on. */
  public List<Openings> openings() {
    return openings;
  }

  /** What went wrong in one firing. */
  public List<Anomaly> happened(String firing) {
    return happened.stream()
        .filter(one -> one.firing().equals(firing))
        .map(Happened::what)
        .sorted(Comparator.comparingDouble(Anomaly::beganSeconds))
        .toList();
  }

  /** Quantities of the kiln that these firings could not tell: they are still the nameplate's. */
  public List<KilnQuantity> untold() {
    return untold(beliefs);
  }

  /** The same of what was learned earlier. */
  public static List<KilnQuantity> untold(KilnBeliefs beliefs) {
    List<KilnQuantity> untold = new ArrayList<>();
    for (KilnQuantity quantity : KilnQuantity.values()) {
      if (quantity.learnable() && beliefs.ignoranceFactor(quantity) > UNKNOWN_SHARE) {
        untold.add(quantity);
      }
    }
    return untold;
  }
}
