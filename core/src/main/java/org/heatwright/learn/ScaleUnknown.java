package org.heatwright.learn;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * A kiln with a tenth more power, walls, leaks and fittings shows the same display: without a meter
 * its readings say nothing about that, whatever a simple model makes of them. What a fit took from
 * the readings along this direction is given back to the prior.
 *
 * @param moved the unknowns, given back
 * @param information of prior and readings, with none of the readings along the direction
 */
@SuppressWarnings("ArrayRecordComponent") // read, never written
record ScaleUnknown(double[] moved, RealMatrix information) {

  /**
   * @param precision the prior's
   * @param data what the readings say
   * @param at where the fit came to
   * @param direction how the unknowns move when all powers and heat flows grow together
   */
  static ScaleUnknown of(RealMatrix precision, RealMatrix data, double[] at, double[] direction) {
    RealVector along = new ArrayRealVector(direction);
    int unknowns = direction.length;
    // Information that has none along the direction: (I - u v') D (I - v u'), v = u / u'u.
    RealMatrix keep = new Array2DRowRealMatrix(unknowns, unknowns);
    double square = along.dotProduct(along);
    for (int i = 0; i < unknowns; i++) {
      for (int j = 0; j < unknowns; j++) {
        keep.setEntry(i, j, (i == j ? 1 : 0) - along.getEntry(i) * along.getEntry(j) / square);
      }
    }
    RealMatrix kept = keep.multiply(data).multiply(keep);
    RealMatrix information = precision.add(kept.add(kept.transpose()).scalarMultiply(0.5));
    RealVector moved = new ArrayRealVector(at);
    RealVector weighed = precision.operate(along);
    double back = -weighed.dotProduct(moved) / weighed.dotProduct(along);
    return new ScaleUnknown(moved.add(along.mapMultiply(back)).toArray(), information);
  }
}
