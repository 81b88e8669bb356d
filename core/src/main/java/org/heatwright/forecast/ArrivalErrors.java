package org.heatwright.forecast;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.KilnParameters;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How far the displays of an ensemble are off the model's when they arrive at their targets. A
 * display that creeps tells its arrival minutes sooner or later by a kelvin; a hold's clock that
 * waits for it, and all that comes after, move with that. What arrivals of a kiln have in common is
 * its crests; no quantity of the kiln says by how much they differ. Nor does one say where in the
 * swing of its switch the display of an on-off kiln is then.
 */
final class ArrivalErrors {

  /** Standard deviation, K. Our estimate, tried on kilns simulated apart. */
  private static final double KELVINS = 1.2;

  private final List<KilnParameters> kilns;
  private final double[][] soonerKelvins;
  private final double[][] swingShares;

  private ArrivalErrors(
      List<KilnParameters> kilns, double[][] soonerKelvins, double[][] swingShares) {
    this.kilns = kilns;
    this.soonerKelvins = soonerKelvins;
    this.swingShares = swingShares;
  }

  /**
   * Errors of an ensemble: at each target every draw has another of as many equally likely ones,
   * and another of as many places in a swing, in orders shuffled by the request's seed. A single
   * draw is the median kiln, has none and arrives in the mean of its swing.
   *
   * @param kilns of the draws, one or more
   */
  static ArrivalErrors of(ForecastRequest request, List<KilnParameters> kilns) {
    int draws = kilns.size();
    int segments = request.schedule().segments().size();
    if (draws == 1) {
      return new ArrivalErrors(kilns, new double[1][segments], new double[1][0]);
    }
    Random random = new Random(request.seed());
    List<Integer> slices = new ArrayList<>(IntStream.range(0, draws).boxed().toList());
    NormalDistribution normal = new NormalDistribution(0, KELVINS);
    double[][] sooner = evenly(slices, segments, random);
    for (double[] one : sooner) {
      Arrays.setAll(one, s -> normal.inverseCumulativeProbability(one[s]));
    }
    return new ArrivalErrors(kilns, sooner, evenly(slices, segments, random));
  }

  /** For each draw and segment the middle of another of as many equal slices of 0 to 1. */
  private static double[][] evenly(List<Integer> slices, int segments, Random random) {
    double[][] middles = new double[slices.size()][segments];
    for (int s = 0; s < segments; s++) {
      Collections.shuffle(slices, random);
      for (int d = 0; d < middles.length; d++) {
        middles[d][s] = (slices.get(d) + 0.5) / middles.length;
      }
    }
    return middles;
  }

  /** By how much sooner a draw's display is near enough to each target, K. */
  double[] soonerKelvins(int draw) {
    return soonerKelvins[draw];
  }

  /**
   * Where in the swing of its switch a draw's display is at each target, 0 to 1; empty for the
   * median kiln, which arrives in the mean.
   */
  double[] swingShares(int draw) {
    return swingShares[draw];
  }

  /**
   * Within how many kelvins of a target a draw's display has arrived, where its controller asks for
   * some.
   */
  double withinKelvins(double asked, int draw, int segment) {
    return FiringSimulation.nearKelvins(
        asked, kilns.get(draw).crestKelvins(), soonerKelvins[draw][segment]);
  }
}
