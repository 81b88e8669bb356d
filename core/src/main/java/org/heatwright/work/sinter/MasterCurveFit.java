package org.heatwright.work.sinter;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The activation energy and the curve that densities after several firings say.
 *
 * <p>For each Q of a grid the middle and the width of the sigmoid are fitted by least squares of
 * density; the Q with the least scatter wins, and the range where the scatter is up to twice as
 * great is told with it.
 *
 * @param curve the best one; empty where the firings are too much alike to tell any
 * @param scatterShare root mean square of density about it, share of full density
 * @param lowJoulesPerMole the scatter is at most twice the least from here, J/mol
 * @param highJoulesPerMole to here, J/mol
 * @param open whether one of these is an end of what was tried, so that the range goes on
 * @param firings how many clearly different firings there were
 */
public record MasterCurveFit(
    Optional<MasterSinteringCurve> curve,
    double scatterShare,
    double lowJoulesPerMole,
    double highJoulesPerMole,
    boolean open,
    int firings) {

  /** Fewer clearly different firings cannot tell time from temperature. */
  public static final int LEAST_FIRINGS = 3;

  /** The range of Q that is tried, J/mol. */
  static final double LEAST_JOULES_PER_MOLE = 60e3;

  static final double MOST_JOULES_PER_MOLE = 320e3;

  private static final double STEP_JOULES_PER_MOLE = 2e3;

  /**
   * A density that was measured.
   *
   * @param heat the firing up to then
   * @param densityShare over full density, above the green density and below 1
   */
  public record Point(SinterHeat heat, double densityShare) {}

  /**
   * Fits.
   *
   * @param points at least one
   * @param greenShare density before sintering over full density, measured
   */
  public static MasterCurveFit of(List<Point> points, double greenShare) {
    if (points.isEmpty()) {
      throw new IllegalArgumentException("A fit needs at least one density.");
    }
    int firings = different(points.stream().map(Point::heat).toList());
    if (firings < LEAST_FIRINGS) {
      return new MasterCurveFit(
          Optional.empty(), 0, LEAST_JOULES_PER_MOLE, MOST_JOULES_PER_MOLE, true, firings);
    }
    int steps =
        (int) Math.round((MOST_JOULES_PER_MOLE - LEAST_JOULES_PER_MOLE) / STEP_JOULES_PER_MOLE);
    double[] scatter = new double[steps + 1];
    int best = 0;
    for (int i = 0; i <= steps; i++) {
      scatter[i] = at(points, greenShare, grid(i)).scatterShare();
      best = scatter[i] < scatter[best] ? i : best;
    }
    // Between the neighbours of the best, by thirds: the scatter has one valley there.
    double low = grid(Math.max(0, best - 1));
    double high = grid(Math.min(steps, best + 1));
    while (high - low > 10) {
      double a = low + (high - low) / 3;
      double b = high - (high - low) / 3;
      if (at(points, greenShare, a).scatterShare() <= at(points, greenShare, b).scatterShare()) {
        high = b;
      } else {
        low = a;
      }
    }
    Fit fit = at(points, greenShare, (low + high) / 2);
    int from = best;
    int to = best;
    while (from > 0 && scatter[from - 1] <= 2 * fit.scatterShare()) {
      from--;
    }
    while (to < steps && scatter[to + 1] <= 2 * fit.scatterShare()) {
      to++;
    }
    return new MasterCurveFit(
        Optional.of(fit.curve()),
        fit.scatterShare(),
        Math.min(grid(from), fit.curve().activationJoulesPerMole()),
        Math.max(grid(to), fit.curve().activationJoulesPerMole()),
        from == 0 || to == steps,
        firings);
  }

  /**
   * Scatter of density about the best sigmoid at one activation energy, share of full density.
   *
   * @param activationJoulesPerMole Q, J/mol
   */
  public static double scatterShareAt(
      List<Point> points, double greenShare, double activationJoulesPerMole) {
    return at(points, greenShare, activationJoulesPerMole).scatterShare();
  }

  /** How many firings of a list differ clearly from all that were counted before. */
  static int different(List<SinterHeat> heats) {
    List<SinterHeat> counted = new ArrayList<>();
    for (SinterHeat heat : heats) {
      if (counted.stream().allMatch(heat::differsFrom)) {
        counted.add(heat);
      }
    }
    return counted.size();
  }

  private static double grid(int i) {
    return LEAST_JOULES_PER_MOLE + i * STEP_JOULES_PER_MOLE;
  }

  private record Fit(MasterSinteringCurve curve, double scatterShare) {}

  /** Middle and width by damped Gauss-Newton steps, begun from the straight line. */
  private static Fit at(List<Point> points, double greenShare, double activation) {
    int n = points.size();
    double[] x = new double[n];
    double[] d = new double[n];
    double sumX = 0;
    double sumY = 0;
    double sumXx = 0;
    double sumXy = 0;
    for (int i = 0; i < n; i++) {
      x[i] = points.get(i).heat().exactLogTheta(activation);
      d[i] = points.get(i).densityShare();
      double y = MasterSinteringCurve.line(d[i], greenShare);
      sumX += x[i];
      sumY += y;
      sumXx += x[i] * x[i];
      sumXy += x[i] * y;
    }
    double slope = (n * sumXy - sumX * sumY) / (n * sumXx - sumX * sumX);
    // Densities that do not rise with the work of sintering fit no curve; a flat one says so.
    double width = slope > 1e-3 ? 1 / slope : 5;
    double middle = (sumX - width * sumY) / n;
    double damping = 1e-3;
    double squares = squares(x, d, greenShare, middle, width);
    for (int iteration = 0; iteration < 200 && damping < 1e12; iteration++) {
      double mm = 0;
      double mw = 0;
      double ww = 0;
      double gm = 0;
      double gw = 0;
      for (int i = 0; i < n; i++) {
        double u = (x[i] - middle) / width;
        double s = 1 / (1 + Math.exp(-u));
        double residual = d[i] - greenShare - (1 - greenShare) * s;
        double common = (1 - greenShare) * s * (1 - s) / width;
        double byMiddle = -common;
        double byWidth = -common * u;
        mm += byMiddle * byMiddle;
        mw += byMiddle * byWidth;
        ww += byWidth * byWidth;
        gm += byMiddle * residual;
        gw += byWidth * residual;
      }
      double a = mm * (1 + damping) + 1e-300;
      double c = ww * (1 + damping) + 1e-300;
      double det = a * c - mw * mw;
      double nextMiddle = middle + (c * gm - mw * gw) / det;
      double nextWidth = width + (a * gw - mw * gm) / det;
      double next =
          nextWidth > 1e-3 && nextWidth < 100
              ? squares(x, d, greenShare, nextMiddle, nextWidth)
              : Double.POSITIVE_INFINITY;
      if (next <= squares) {
        boolean done = squares - next <= 1e-15 * squares;
        middle = nextMiddle;
        width = nextWidth;
        squares = next;
        damping = Math.max(1e-12, damping / 10);
        if (done) {
          break;
        }
      } else {
        damping *= 10;
      }
    }
    return new Fit(
        new MasterSinteringCurve(activation, middle, width, greenShare), Math.sqrt(squares / n));
  }

  private static double squares(
      double[] x, double[] d, double greenShare, double middle, double width) {
    double sum = 0;
    for (int i = 0; i < x.length; i++) {
      double s = 1 / (1 + Math.exp(-(x[i] - middle) / width));
      double residual = d[i] - greenShare - (1 - greenShare) * s;
      sum += residual * residual;
    }
    return sum;
  }
}
