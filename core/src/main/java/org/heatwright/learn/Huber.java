package org.heatwright.learn;

/**
 * How much a residual counts: as its square up to a bend, linearly beyond it, so that a stretch the
 * model cannot explain does not rule the fit (Huber 1964, from memory).
 *
 * @param bend in sizes of a residual, above zero
 */
record Huber(double bend) {

  /** Weight of a residual's square in a linear problem, above 0 and at most 1. */
  double weight(double residual) {
    double size = Math.abs(residual);
    return size <= bend ? 1 : bend / size;
  }

  double[] weights(double[] residual) {
    double[] weights = new double[residual.length];
    for (int r = 0; r < weights.length; r++) {
      weights[r] = weight(residual[r]);
    }
    return weights;
  }

  double cost(double residual) {
    double size = Math.abs(residual);
    return size <= bend ? size * size : bend * (2 * size - bend);
  }

  double cost(double[] residual) {
    double sum = 0;
    for (double r : residual) {
      sum += cost(r);
    }
    return sum;
  }

  /** Residuals made smaller so that their squares add up to their weighed squares. */
  double[] tempered(double[] residual) {
    double[] all = new double[residual.length];
    for (int r = 0; r < all.length; r++) {
      all[r] = residual[r] * Math.sqrt(weight(residual[r]));
    }
    return all;
  }
}
