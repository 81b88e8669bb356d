package org.heatwright.mould;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.special.BesselJ;

/**
 * A cylinder or slab at one temperature put under a film: theta as a series of eigenfunctions.
 *
 * @see "memory: Carslaw and Jaeger, Conduction of Heat in Solids, 1959"
 */
final class Series {

  private final double[] root;
  private final double[] coefficient;
  private final boolean cylinder;

  private Series(double[] root, double[] coefficient, boolean cylinder) {
    this.root = root;
    this.coefficient = coefficient;
    this.cylinder = cylinder;
  }

  static Series cylinder(double biot, int terms) {
    double[] root = new double[terms];
    double[] coefficient = new double[terms];
    DoubleUnaryOperator law = z -> z * j(1, z) - biot * j(0, z);
    double low = 1e-9;
    for (int i = 0; i < terms; i++) {
      // One root between each zero of J1 (a maximum of J0's slope) and the next.
      root[i] = next(law, low);
      low = root[i] + 1e-3;
      double z = root[i];
      coefficient[i] = 2 * j(1, z) / (z * (j(0, z) * j(0, z) + j(1, z) * j(1, z)));
    }
    return new Series(root, coefficient, true);
  }

  static Series slab(double biot, int terms) {
    double[] root = new double[terms];
    double[] coefficient = new double[terms];
    DoubleUnaryOperator law = z -> z * Math.sin(z) - biot * Math.cos(z);
    double low = 1e-9;
    for (int i = 0; i < terms; i++) {
      root[i] = next(law, low);
      low = root[i] + 1e-3;
      double z = root[i];
      coefficient[i] = 4 * Math.sin(z) / (2 * z + Math.sin(2 * z));
    }
    return new Series(root, coefficient, false);
  }

  /** The first change of sign above a place, by steps far shorter than between two roots. */
  private static double next(DoubleUnaryOperator law, double from) {
    double low = from;
    double sign = Math.signum(law.applyAsDouble(low));
    double high = low + 0.05;
    while (Math.signum(law.applyAsDouble(high)) == sign) {
      low = high;
      high += 0.05;
    }
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (Math.signum(law.applyAsDouble(middle)) == sign) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  double root(int i) {
    return root[i];
  }

  double coefficient(int i) {
    return coefficient[i];
  }

  /** Share of the step left at a share of the half thickness or radius. */
  double at(double place, double fourier) {
    double sum = 0;
    for (int i = 0; i < root.length; i++) {
      double z = root[i];
      double shape = cylinder ? j(0, z * place) : Math.cos(z * place);
      sum += coefficient[i] * Math.exp(-z * z * fourier) * shape;
    }
    return sum;
  }

  double mean(double fourier) {
    double sum = 0;
    for (int i = 0; i < root.length; i++) {
      double z = root[i];
      double shape = cylinder ? 2 * j(1, z) / z : Math.sin(z) / z;
      sum += coefficient[i] * Math.exp(-z * z * fourier) * shape;
    }
    return sum;
  }

  private static double j(double order, double x) {
    return x == 0 ? (order == 0 ? 1 : 0) : BesselJ.value(order, x);
  }
}
