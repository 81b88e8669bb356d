package org.heatwright.learn;

import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * A kiln with a tenth more power, walls, leaks and fittings shows the same display: without a meter
 * its readings say nothing about that, whatever a simple model makes of them. What a fit took from
 * the readings along this direction is given back to the prior. So it is along others that change
 * no display, such as more power of the kiln and as much less of the day's mains: else a day would
 * keep what the kiln has given back.
 *
 * @param moved the unknowns, given back
 * @param information of prior and readings, with none of the readings along the directions
 */
@SuppressWarnings("ArrayRecordComponent") // read, never written
record ScaleUnknown(double[] moved, RealMatrix information) {

  /**
   * @param precision the prior's
   * @param data what the readings say
   * @param at where the fit came to
   * @param directions how the unknowns move while the display stays the same, a row each,
   *     independent of each other
   */
  static ScaleUnknown of(
      RealMatrix precision, RealMatrix data, double[] at, double[]... directions) {
    RealMatrix along = new Array2DRowRealMatrix(directions).transpose();
    RealMatrix across = along.transpose();
    // Information that has none along the directions.
    RealMatrix keep =
        MatrixUtils.createRealIdentityMatrix(at.length)
            .subtract(along.multiply(inverse(across.multiply(along))).multiply(across));
    RealMatrix kept = keep.multiply(data).multiply(keep);
    RealMatrix information = precision.add(kept.add(kept.transpose()).scalarMultiply(0.5));
    RealMatrix weighed = across.multiply(precision);
    double[] back = along.multiply(inverse(weighed.multiply(along))).multiply(weighed).operate(at);
    double[] moved = at.clone();
    for (int i = 0; i < moved.length; i++) {
      moved[i] -= back[i];
    }
    return new ScaleUnknown(moved, information);
  }

  private static RealMatrix inverse(RealMatrix symmetric) {
    return new LUDecomposition(symmetric).getSolver().getInverse();
  }
}
