package org.heatwright.kiln;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * What a nameplate lets one believe about a kiln: a median and an honest spread for everything it
 * does not say.
 *
 * <p>Draws form a Latin hypercube: every parameter visits each of {@code n} equally likely slices
 * once, in an order shuffled by the seed. The same kiln, number and seed give the same draws.
 *
 * <p>Medians and spreads are our estimates, from the ranges named at each constant.
 */
public final class KilnPrior {

  /** A log-normal factor: median and standard deviation of its logarithm. */
  private record Spread(double median, double sigma) {
    double at(double z) {
      return median * Math.exp(sigma * z);
    }
  }

  /** Supply within 3 %, elements within 3 %: power goes with the square. Estimate. */
  private static final Spread POWER = new Spread(1.0, 0.05);

  /**
   * Materials of one name differ by a quarter; joints and edges conduct too, so that measured kilns
   * lose 1.3 to 2 times what the layers say. Estimate; the leak below carries the rest.
   */
  private static final Spread CONDUCTIVITY = new Spread(1.2, 0.2);

  /** Density and heat capacity of a batch. Estimate. */
  private static final Spread CAPACITY = new Spread(1.0, 0.10);

  /** Air past the door, element tails and holes, by door perimeter, W/(K m). Estimate. */
  private static final Spread LEAK_PER_METRE = new Spread(0.35, 0.5);

  /**
   * Hearth plate and element carriers, by floor area, J/(K m²): about 10 mm of dense ceramic.
   * Estimate; range 8 to 55 kJ/(K m²).
   */
  private static final Spread FITTINGS_PER_SQUARE_METRE = new Spread(20_000, 0.5);

  /** Bare tips are quicker than a rod, insulated junctions slower. Estimate; range 0.35 to 1.6. */
  private static final Spread SENSOR = new Spread(0.75, 0.45);

  private static final double OFFSET_KELVINS_AT_1000 = 3.75; // half of class 2 of type K, IEC 60584

  /** A proportional band of 50 K. Practice; range 20 to 120 K. */
  private static final Spread GAIN = new Spread(0.02, 0.45);

  /** Estimate; range 2 to 12 min. */
  private static final Spread INTEGRAL = new Spread(300, 0.45);

  /** From the edge of the hysteresis to the switch. Estimate; range 6 to 40 s. */
  private static final Spread SWITCH = new Spread(15, 0.5);

  private static final Spread ELEMENT = new Spread(1.0, 0.25);
  private static final double ROOM_KELVINS = 2;

  /** Investment conductivity 0.35 to 0.65 W/(m K). Estimate. */
  private static final Spread LOAD_CONDUCTIVITY = new Spread(1.0, 0.18);

  private static final Spread LOAD_HEAT = new Spread(1.0, 0.06);
  private static final int PARAMETERS = 14;

  private KilnPrior() {}

  /** The median kiln. */
  public static KilnParameters median(Kiln kiln) {
    return at(kiln, new double[PARAMETERS]);
  }

  /**
   * An ensemble.
   *
   * @param kiln the nameplate
   * @param draws how many, 1 or more; 1 gives the median
   * @param seed of the shuffle
   */
  public static List<KilnParameters> ensemble(Kiln kiln, int draws, long seed) {
    if (draws == 1) {
      return List.of(median(kiln));
    }
    Random random = new Random(seed);
    NormalDistribution normal = new NormalDistribution();
    double[][] z = new double[draws][PARAMETERS];
    for (int p = 0; p < PARAMETERS; p++) {
      List<Integer> slices = new ArrayList<>();
      for (int i = 0; i < draws; i++) {
        slices.add(i);
      }
      Collections.shuffle(slices, random);
      for (int i = 0; i < draws; i++) {
        z[i][p] = normal.inverseCumulativeProbability((slices.get(i) + 0.5) / draws);
      }
    }
    List<KilnParameters> ensemble = new ArrayList<>();
    for (double[] draw : z) {
      ensemble.add(at(kiln, draw));
    }
    return ensemble;
  }

  private static KilnParameters at(Kiln kiln, double[] z) {
    double side = Math.sqrt(kiln.openingSquareMetres());
    return new KilnParameters(
        POWER.at(z[0]),
        CONDUCTIVITY.at(z[1]),
        CAPACITY.at(z[2]),
        LEAK_PER_METRE.at(z[3]) * 4 * side,
        FITTINGS_PER_SQUARE_METRE.at(z[12]) * kiln.chamber().floorSquareMetres(),
        SENSOR.at(z[4]),
        OFFSET_KELVINS_AT_1000 * z[5],
        GAIN.at(z[6]),
        INTEGRAL.at(z[7]),
        SWITCH.at(z[13]),
        ELEMENT.at(z[8]),
        ROOM_KELVINS * z[9],
        LOAD_CONDUCTIVITY.at(z[10]),
        LOAD_HEAT.at(z[11]));
  }
}
