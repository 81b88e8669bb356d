package org.heatwright.learn;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntUnaryOperator;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The linear problem of one Gauss-Newton step: a matrix and a right side, to which priors and
 * readings add what they say.
 */
final class NormalEquations {

  /** A step of more than so many spreads at once leaves where the sensitivities hold. */
  private static final double LONGEST_STEP = 2;

  private final RealMatrix matrix;
  private final RealVector right;

  /** What holds the unknowns in a plane, whatever else is said. */
  private final RealMatrix held;

  NormalEquations(int unknowns) {
    this.matrix = new Array2DRowRealMatrix(unknowns, unknowns);
    this.right = new ArrayRealVector(unknowns);
    this.held = new Array2DRowRealMatrix(unknowns, unknowns);
  }

  /** What has been added up, without what is held; shared, not copied. */
  RealMatrix matrix() {
    return matrix;
  }

  /**
   * A normal prior about zero of the first unknowns.
   *
   * @param at where the step begins, one an unknown of the prior
   */
  void addPrior(RealMatrix precision, double[] at) {
    addForce(precision, at);
    addInformation(precision);
  }

  /** What a prior adds to the right side. */
  void addForce(RealMatrix precision, double[] at) {
    for (int i = 0; i < precision.getRowDimension(); i++) {
      double sum = 0;
      for (int j = 0; j < precision.getRowDimension(); j++) {
        sum -= precision.getEntry(i, j) * at[j];
      }
      right.addToEntry(i, sum);
    }
  }

  /** What a prior adds to the matrix. */
  void addInformation(RealMatrix precision) {
    for (int i = 0; i < precision.getRowDimension(); i++) {
      for (int j = 0; j < precision.getRowDimension(); j++) {
        matrix.addToEntry(i, j, precision.getEntry(i, j));
      }
    }
  }

  /** A normal prior of one unknown about zero. */
  void addPrior(int unknown, double precision, double at) {
    matrix.addToEntry(unknown, unknown, precision);
    right.addToEntry(unknown, -precision * at);
  }

  /**
   * Lets a step, damped or not, leave a weighed sum of the unknowns all but as it is.
   *
   * @param spread how far the sum may move, one standard deviation
   */
  void hold(RealVector weights, double spread) {
    RealMatrix weighed = weights.outerProduct(weights).scalarMultiply(1 / (spread * spread));
    held.setSubMatrix(held.add(weighed).getData(), 0, 0);
  }

  /**
   * Readings.
   *
   * @param jacobian one row an unknown
   * @param weight one a residual
   */
  void addReadings(double[][] jacobian, double[] weight, double[] residual) {
    double[] weighed = new double[weight.length];
    for (int i = 0; i < jacobian.length; i++) {
      for (int r = 0; r < weight.length; r++) {
        weighed[r] = weight[r] * jacobian[i][r];
      }
      double force = right.getEntry(i);
      for (int r = 0; r < weight.length; r++) {
        force -= weighed[r] * residual[r];
      }
      right.setEntry(i, force);
      for (int j = 0; j <= i; j++) {
        double sum = matrix.getEntry(i, j);
        for (int r = 0; r < weight.length; r++) {
          sum += weighed[r] * jacobian[j][r];
        }
        matrix.setEntry(i, j, sum);
        matrix.setEntry(j, i, sum);
      }
    }
  }

  /**
   * What was added up of some of the unknowns.
   *
   * @param place which unknown here one of the part is
   */
  void add(NormalEquations part, IntUnaryOperator place) {
    for (int i = 0; i < part.right.getDimension(); i++) {
      int row = place.applyAsInt(i);
      right.addToEntry(row, part.right.getEntry(i));
      for (int j = 0; j < part.right.getDimension(); j++) {
        matrix.addToEntry(row, place.applyAsInt(j), part.matrix.getEntry(i, j));
      }
    }
  }

  RealVector solve() {
    return new CholeskyDecomposition(matrix.add(held)).getSolver().solve(right);
  }

  /**
   * The step with the diagonal made larger (Levenberg and Marquardt, from memory).
   *
   * @param share by this share of itself
   * @param floor and by this much
   */
  RealVector solve(double share, double floor) {
    RealMatrix damped = matrix.add(held);
    for (int i = 0; i < right.getDimension(); i++) {
      damped.addToEntry(i, i, share * matrix.getEntry(i, i) + floor);
    }
    return new CholeskyDecomposition(damped).getSolver().solve(right);
  }

  static double dot(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      sum += a[i] * b[i];
    }
    return sum;
  }

  static double clamp(double value, double most) {
    return Math.max(-most, Math.min(most, value));
  }

  /** How much steps are damped, from one round of a descent to the next. */
  static final class Damping {
    private static final double FIRST = 0.01;
    private static final double LEAST = 1e-4;
    private static final double MOST = 1e3;
    private static final double FACTOR = 5;

    private double now = FIRST;

    /**
     * The first of ever shorter steps that gains.
     *
     * @param from where the step begins
     * @param tried what a place is worth
     * @param cost of it
     * @param least a cost that must be undercut
     * @return empty if none does
     */
    <T> Optional<T> step(
        NormalEquations equations,
        double[] from,
        Function<double[], T> tried,
        ToDoubleFunction<T> cost,
        double least) {
      while (now < MOST) {
        RealVector change = equations.solve(now, 0);
        double[] to = from.clone();
        for (int i = 0; i < to.length; i++) {
          to[i] += clamp(change.getEntry(i), LONGEST_STEP);
        }
        T place = tried.apply(to);
        if (cost.applyAsDouble(place) < least) {
          now = Math.max(LEAST, now / FACTOR);
          return Optional.of(place);
        }
        now *= FACTOR;
      }
      return Optional.empty();
    }
  }
}
