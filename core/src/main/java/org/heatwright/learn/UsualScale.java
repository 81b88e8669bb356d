package org.heatwright.learn;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;

/**
 * No display tells how large all powers and heat flows of a kiln are together; what a fit would
 * take for it would bend the rest. So a fit without a meter leaves that where the prior has it.
 */
final class UsualScale {

  /** How far the logarithm of the scale may go from the prior's, one spread. Our estimate. */
  private static final double SPREAD = 0.005;

  private final double[] along;
  private final double[] weighed;

  /**
   * @param precision the prior's
   * @param along how the unknowns move where the logarithms of all powers and heat flows grow by
   *     one
   */
  UsualScale(RealMatrix precision, double[] along) {
    this.along = along.clone();
    double[] weight = precision.operate(along);
    double all = NormalEquations.dot(weight, along);
    this.weighed = new ArrayRealVector(weight).mapDivide(all).toArray();
  }

  double[] along() {
    return along.clone();
  }

  /** How far the logarithm of the scale is from the prior's. */
  private double beyond(double[] at) {
    return NormalEquations.dot(weighed, at);
  }

  /** What that costs, chi-squared. */
  double cost(double[] at) {
    double spreads = beyond(at) / SPREAD;
    return spreads * spreads;
  }

  void addTo(NormalEquations equations, double[] at) {
    equations.addSum(weighed, 1 / (SPREAD * SPREAD), beyond(at));
  }

  /** The kiln that shows the same display at the prior's scale. */
  double[] usual(double[] at) {
    return new ArrayRealVector(at).combine(1, -beyond(at), new ArrayRealVector(along)).toArray();
  }
}
