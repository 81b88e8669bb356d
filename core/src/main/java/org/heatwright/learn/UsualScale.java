package org.heatwright.learn;

import java.util.Arrays;
import org.heatwright.kiln.KilnQuantity;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A kiln with a tenth more power, walls, leaks and fittings shows the same display: without a meter
 * its readings say nothing about that, whatever a simple model makes of them, and what a fit would
 * take for it would bend the rest. So a fit leaves it where the prior has it. Nor do readings say
 * what is the kiln's power and what the mains' of all days that it was fired on.
 */
final class UsualScale {

  /** A step may move the logarithm of the scale by about this; it is taken back then. */
  private static final double SPREAD = 1e-3;

  /** How the most probable unknowns move with the scale: a day's mains have their part in it. */
  private final RealVector along;

  /** How far the logarithm of the scale is from the prior's, an unknown's part each. */
  private final RealVector weighed;

  /**
   * @param precision the prior's
   * @param along how the unknowns move where the logarithms of all powers and heat flows grow by
   *     one, the mains' left as they are
   * @param power which unknown is the power of the elements, a firing each; firings may share one
   * @param mains which one is the mains of its day
   */
  UsualScale(RealMatrix precision, double[] along, int[] power, int[] mains) {
    RealVector scale = new ArrayRealVector(along);
    int[] powers = Arrays.stream(power).distinct().toArray();
    RealMatrix swaps = new Array2DRowRealMatrix(along.length, powers.length);
    for (int p = 0; p < powers.length; p++) {
      swaps.setEntry(powers[p], p, 1 / KilnQuantity.POWER.logarithmPerScore());
      for (int f = 0; f < power.length; f++) {
        if (power[f] == powers[p]) {
          swaps.setEntry(mains[f], p, -1 / KilnQuantity.MAINS.logarithmPerScore());
        }
      }
    }
    RealMatrix weighedSwaps = swaps.transpose().multiply(precision);
    this.along =
        scale.subtract(
            swaps.operate(
                inverse(weighedSwaps.multiply(swaps)).operate(weighedSwaps.operate(scale))));
    RealVector weight = precision.operate(this.along);
    this.weighed = weight.mapDivide(weight.dotProduct(this.along));
  }

  private static RealMatrix inverse(RealMatrix symmetric) {
    return new LUDecomposition(symmetric).getSolver().getInverse();
  }

  /** Keeps a step of a fit at a scale. */
  void hold(NormalEquations equations) {
    equations.hold(weighed, SPREAD);
  }

  /** The kiln of the prior's scale that shows the same display. */
  double[] usual(double[] at) {
    RealVector from = new ArrayRealVector(at);
    return from.subtract(along.mapMultiply(weighed.dotProduct(from))).toArray();
  }

  /** What readings tell of all but the scale, of what they seem to tell. */
  RealMatrix told(RealMatrix information) {
    RealMatrix rest =
        MatrixUtils.createRealIdentityMatrix(along.getDimension())
            .subtract(along.outerProduct(weighed));
    RealMatrix told = rest.transpose().multiply(information).multiply(rest);
    return told.add(told.transpose()).scalarMultiply(0.5);
  }
}
