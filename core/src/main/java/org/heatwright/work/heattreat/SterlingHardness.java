package org.heatwright.work.heattreat;

import org.heatwright.material.Origin;
import org.heatwright.numerics.LinearTable;

/**
 * How hard sterling silver may become, as a range between what the cautious and the hopeful of a
 * few sources say. No curve of one laboratory stands behind it: the sources are a supplier's note,
 * bench-forum posts and an abstract, and they disagree about the solution heat.
 *
 * <p>Points: 60 HV in solution, 60 to 70 as cast, 110 to 140 after 30 to 60 min at 300 °C; a
 * solution heat of 650 °C gains little, 700 °C all or part of it, 750 °C all.
 */
public final class SterlingHardness {

  /** Softest and hardest before ageing, HV. */
  public static final Hardness BEFORE = new Hardness(60, 70);

  /** Fully aged, HV. */
  public static final Hardness AGED = new Hardness(110, 140);

  /** The temperature at which time of ageing is counted. */
  public static final double AGES_AT_CELSIUS = 300;

  /** Activation energies between which ageing may be compared, J/mol. */
  public static final double LOW_JOULES_PER_MOLE = 100_000;

  public static final double HIGH_JOULES_PER_MOLE = 190_000;

  public static final Origin ORIGIN =
      Origin.read(
          "a supplier's note, 120 to 140 HV; bench-forum posts, 60 to 110 or 120 HV, little after"
              + " 650 °C; a symposium abstract, as cast 60 to 70, up to 150 HV attainable. Straight"
              + " lines between these points are ours");

  public static final String NARROWED_BY =
      "a strip of the same sheet beside the pieces, tried before and after by a hardness tester, or by"
          + " bending round a rod or by a scratch beside a piece of known temper";

  /** Share of the full gain by solution temperature, cautious: 650 none, 700 a third, 750 all. */
  private static final LinearTable CAUTIOUS = LinearTable.points(650, 0, 700, 0.3, 750, 1);

  /** The same, hopeful: 650 a quarter ("minor"), 700 all. */
  private static final LinearTable HOPEFUL = LinearTable.points(600, 0, 650, 0.25, 700, 1);

  /** Share by minutes at 300 °C, cautious: an hour for all of it; longer was not seen. */
  private static final LinearTable CAUTIOUS_TIME = LinearTable.points(0, 0, 60, 1);

  private static final LinearTable HOPEFUL_TIME = LinearTable.points(0, 0, 30, 1);

  /** What is sure to be left by the hottest of the ageing, cautious: our estimate. */
  private static final LinearTable KEPT = LinearTable.points(330, 1, 350, 0.7, 450, 0);

  /** The same, hopeful: softening is only said to begin above 350 °C. */
  private static final LinearTable HOPED_KEPT = LinearTable.points(350, 1, 500, 0);

  private SterlingHardness() {}

  /**
   * A range of hardness, HV.
   *
   * @param low the least to expect
   * @param high the most
   */
  public record Hardness(double low, double high) {
    public Hardness {
      if (!(low > 0 && low <= high)) {
        throw new IllegalArgumentException(
            "A hardness (%s to %s HV) rises from above zero.".formatted(low, high));
      }
    }
  }

  /**
   * What to expect after solution heat, water and ageing.
   *
   * @param coolestSolutionCelsius the least that the piece had, °C
   * @param hottestSolutionCelsius the most, °C
   * @param leastMinutes ageing counted at 300 °C, the least it may be worth
   * @param mostMinutes the most
   * @param hottestAgeCelsius the hottest of the ageing in the piece, °C
   */
  public static Hardness expected(
      double coolestSolutionCelsius,
      double hottestSolutionCelsius,
      double leastMinutes,
      double mostMinutes,
      double hottestAgeCelsius) {
    double cautious =
        CAUTIOUS.at(coolestSolutionCelsius)
            * CAUTIOUS_TIME.at(leastMinutes)
            * KEPT.at(hottestAgeCelsius);
    double hopeful =
        HOPEFUL.at(hottestSolutionCelsius)
            * HOPEFUL_TIME.at(mostMinutes)
            * HOPED_KEPT.at(hottestAgeCelsius);
    return new Hardness(
        BEFORE.low() + cautious * (AGED.low() - BEFORE.low()),
        BEFORE.high() + hopeful * (AGED.high() - BEFORE.high()));
  }
}
