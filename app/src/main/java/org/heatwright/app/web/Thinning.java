package org.heatwright.app.web;

import java.util.ArrayDeque;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;

/** Leaves out points of curves that straight lines between the others tell as well. */
final class Thinning {

  private Thinning() {}

  /**
   * Which points to keep so that straight lines between them miss no other by more than {@code
   * tolerance} (after Douglas and Peucker, with upright distances).
   *
   * @param x rising, two points at least
   * @param columns curves on that grid, in one unit
   * @return indices, rising, the first and the last among them
   */
  static int[] kept(double[] x, List<double[]> columns, double tolerance) {
    int last = x.length - 1;
    BitSet keep = new BitSet(x.length);
    keep.set(0);
    keep.set(last);
    Deque<int[]> open = new ArrayDeque<>();
    open.push(new int[] {0, last});
    while (!open.isEmpty()) {
      int[] span = open.pop();
      int worst = -1;
      double most = tolerance;
      for (double[] y : columns) {
        double slope = (y[span[1]] - y[span[0]]) / (x[span[1]] - x[span[0]]);
        for (int i = span[0] + 1; i < span[1]; i++) {
          double missed = Math.abs(y[i] - y[span[0]] - slope * (x[i] - x[span[0]]));
          if (missed > most) {
            most = missed;
            worst = i;
          }
        }
      }
      if (worst > 0) {
        keep.set(worst);
        open.push(new int[] {span[0], worst});
        open.push(new int[] {worst, span[1]});
      }
    }
    return keep.stream().toArray();
  }
}
