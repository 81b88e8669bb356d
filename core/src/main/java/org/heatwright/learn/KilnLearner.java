package org.heatwright.learn;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Load;
import org.heatwright.material.HeatCurves;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Fits what is believed about a kiln to what its display showed: the most probable scores given the
 * nameplate's prior and the readings (maximum a posteriori), by damped Gauss-Newton steps with
 * sensitivities from finite differences.
 *
 * <p>Readings are averaged over {@value #SPAN_SECONDS} s. A residual counts with {@link
 * #RESIDUAL_KELVINS} K, and beyond twice that it counts linearly, so that a stretch the model
 * cannot explain does not rule the fit (Huber 1964, from memory). Neighbouring residuals of one
 * model error are not independent, which that size allows for.
 */
public final class KilnLearner {

  /** Readings are averaged over this long, s. */
  public static final double SPAN_SECONDS = 120;

  /**
   * What one averaged residual is worth, K: far more than a thermometer's noise, because the model
   * is simpler than a kiln and is wrong in the same way for many spans. Our estimate, tried on
   * kilns simulated apart.
   */
  static final double RESIDUAL_KELVINS = 8;

  private static final double HUBER = 2;
  private static final double DIFFERENCE = 0.15;
  private static final int MOST_ROUNDS = 25;
  private static final double SETTLED = 1e-3;

  /** A firing whose display the fit misses by more than this does not belong to this kiln, K. */
  private static final double UNEXPLAINED_KELVINS = 30;

  private static final FiringSimulation.Accuracy ACCURACY =
      new FiringSimulation.Accuracy(0.05, 0.001, 1.35);

  private final Kiln kiln;
  private final KilnBeliefs before;
  private final RealMatrix precision;
  private final List<LoggedFiring> firings;
  private final List<Readings> averaged;
  private final List<List<Load>> loads;
  private final HeatCurves curves = new HeatCurves();
  private final KilnQuantity[] quantities;
  private final int residuals;

  private KilnLearner(Kiln kiln, KilnBeliefs before, List<LoggedFiring> firings) {
    this.kiln = kiln;
    this.before = before;
    this.firings = firings;
    this.averaged =
        firings.stream().map(firing -> firing.readings().averaged(SPAN_SECONDS)).toList();
    this.loads = firings.stream().map(firing -> firing.charge().loads()).toList();
    this.quantities =
        java.util.Arrays.stream(KilnQuantity.values())
            .filter(KilnQuantity::learnable)
            .toArray(KilnQuantity[]::new);
    this.precision = precision(before, quantities);
    this.residuals = averaged.stream().mapToInt(Readings::size).sum();
  }

  /**
   * Learns from firings.
   *
   * @param kiln the nameplate; what was learned before is not used, the nameplate's prior is
   * @param firings one or more
   * @return the beliefs, what they rest on, and which firings were left out and why
   * @throws IllegalArgumentException if there is no firing
   */
  public static Lesson learn(Kiln kiln, List<LoggedFiring> firings) {
    if (firings.isEmpty()) {
      throw new IllegalArgumentException("There is no firing to learn from.");
    }
    List<LoggedFiring> used = new ArrayList<>(firings);
    List<Lesson.LeftOut> leftOut = new ArrayList<>();
    while (true) {
      KilnLearner learner = new KilnLearner(kiln, KilnBeliefs.prior(), used);
      Fit fit = learner.fit();
      int worst = fit.worst();
      if (fit.rmsKelvins()[worst] <= UNEXPLAINED_KELVINS || used.size() == 1) {
        return learner.lesson(fit, leftOut);
      }
      leftOut.add(new Lesson.LeftOut(used.get(worst).name(), fit.rmsKelvins()[worst]));
      used.remove(worst);
    }
  }

  /**
   * What a firing that is still running adds to what is believed already.
   *
   * @param kiln the kiln and what was learned before
   * @param sofar the firing with its readings up to now
   */
  static Lesson update(Kiln kiln, LoggedFiring sofar) {
    KilnLearner learner = new KilnLearner(kiln, kiln.beliefs(), List.of(sofar));
    return learner.lesson(learner.fit(), List.of());
  }

  private static RealMatrix precision(KilnBeliefs beliefs, KilnQuantity[] quantities) {
    int n = quantities.length;
    RealMatrix covariance = new Array2DRowRealMatrix(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j < n; j++) {
        covariance.setEntry(i, j, beliefs.covarianceFactor(quantities[i], quantities[j]));
      }
    }
    return new CholeskyDecomposition(covariance).getSolver().getInverse();
  }

  /** Scores above what was believed before. */
  private RealVector moved(double[] scores) {
    RealVector moved = new ArrayRealVector(quantities.length);
    for (int i = 0; i < quantities.length; i++) {
      moved.setEntry(i, scores[quantities[i].ordinal()] - before.score(quantities[i]));
    }
    return moved;
  }

  /** Scores and what belongs to them. */
  private record Fit(double[] scores, RealMatrix information, double[] rmsKelvins, int rounds) {
    int worst() {
      int worst = 0;
      for (int i = 1; i < rmsKelvins.length; i++) {
        if (rmsKelvins[i] > rmsKelvins[worst]) {
          worst = i;
        }
      }
      return worst;
    }
  }

  private Fit fit() {
    double[] scores = new double[KilnQuantity.values().length];
    for (KilnQuantity quantity : KilnQuantity.values()) {
      scores[quantity.ordinal()] = before.score(quantity);
    }
    double[] residual = residuals(scores);
    double cost = cost(scores, residual);
    double damping = 0.01;
    RealMatrix information = null;
    int round = 0;
    while (round < MOST_ROUNDS) {
      round++;
      RealMatrix jacobian = jacobian(scores, residual);
      double[] weight = weights(residual);
      int n = quantities.length;
      RealMatrix normal = new Array2DRowRealMatrix(n, n);
      RealVector right = precision.operate(moved(scores)).mapMultiply(-1);
      for (int i = 0; i < n; i++) {
        for (int j = 0; j <= i; j++) {
          double sum = precision.getEntry(i, j);
          for (int r = 0; r < residuals; r++) {
            sum += weight[r] * jacobian.getEntry(r, i) * jacobian.getEntry(r, j);
          }
          normal.setEntry(i, j, sum);
          normal.setEntry(j, i, sum);
        }
        double sum = right.getEntry(i);
        for (int r = 0; r < residuals; r++) {
          sum -= weight[r] * jacobian.getEntry(r, i) * residual[r];
        }
        right.setEntry(i, sum);
      }
      information = normal;
      boolean better = false;
      double moved = 0;
      while (damping < 1e6 && !better) {
        RealMatrix damped = normal.copy();
        for (int i = 0; i < n; i++) {
          damped.addToEntry(i, i, damping * normal.getEntry(i, i));
        }
        RealVector change = new CholeskyDecomposition(damped).getSolver().solve(right);
        double[] tried = scores.clone();
        moved = 0;
        for (int i = 0; i < n; i++) {
          // A step of more than two spreads at once leaves where the sensitivities hold.
          double part = Math.max(-2, Math.min(2, change.getEntry(i)));
          tried[quantities[i].ordinal()] += part;
          moved = Math.max(moved, Math.abs(part));
        }
        double[] triedResidual = residuals(tried);
        double triedCost = cost(tried, triedResidual);
        if (triedCost < cost) {
          better = true;
          moved = cost - triedCost < SETTLED * cost ? Math.min(moved, SETTLED) : moved;
          scores = tried;
          residual = triedResidual;
          cost = triedCost;
          damping = Math.max(1e-4, damping / 5);
        } else {
          damping *= 5;
        }
      }
      if (!better || moved <= 10 * SETTLED) {
        break;
      }
    }
    if (information == null) {
      throw new IllegalStateException("The fit took no step.");
    }
    return new Fit(scores, information, rms(residual), round);
  }

  private RealMatrix jacobian(double[] scores, double[] residual) {
    RealMatrix jacobian = new Array2DRowRealMatrix(residuals, quantities.length);
    double[][] columns =
        IntStream.range(0, quantities.length)
            .parallel()
            .mapToObj(
                q -> {
                  double[] moved = scores.clone();
                  moved[quantities[q].ordinal()] += DIFFERENCE;
                  return residuals(moved);
                })
            .toArray(double[][]::new);
    for (int q = 0; q < quantities.length; q++) {
      for (int r = 0; r < residuals; r++) {
        jacobian.setEntry(r, q, (columns[q][r] - residual[r]) / DIFFERENCE);
      }
    }
    return jacobian;
  }

  /** Simulated minus seen, in units of {@link #RESIDUAL_KELVINS}. */
  private double[] residuals(double[] scores) {
    double[] all = new double[residuals];
    KilnParameters parameters = KilnBeliefs.at(kiln, scores);
    int at = 0;
    for (int f = 0; f < firings.size(); f++) {
      LoggedFiring firing = firings.get(f);
      Readings seen = averaged.get(f);
      FiringSimulation simulation =
          new FiringSimulation(
              kiln,
              parameters,
              firing.conditions(),
              loads.get(f),
              firing.schedule(),
              ACCURACY,
              curves);
      simulation.runProgram();
      simulation.coastUntil(seen.lastSecond() + SPAN_SECONDS);
      FiringRun run = simulation.run();
      for (int i = 0; i < seen.size(); i++) {
        all[at++] = (mean(run, seen.second(i)) - seen.celsius(i)) / RESIDUAL_KELVINS;
      }
    }
    return all;
  }

  private static double mean(FiringRun run, double second) {
    int points = 6;
    double sum = 0;
    for (int i = 0; i < points; i++) {
      sum += run.readingCelsiusAt(second + SPAN_SECONDS * ((i + 0.5) / points - 0.5));
    }
    return sum / points;
  }

  private static double[] weights(double[] residual) {
    double[] weight = new double[residual.length];
    for (int r = 0; r < residual.length; r++) {
      double size = Math.abs(residual[r]);
      weight[r] = size <= HUBER ? 1 : HUBER / size;
    }
    return weight;
  }

  private double cost(double[] scores, double[] residual) {
    RealVector moved = moved(scores);
    double sum = moved.dotProduct(precision.operate(moved));
    for (double r : residual) {
      double size = Math.abs(r);
      sum += size <= HUBER ? size * size : HUBER * (2 * size - HUBER);
    }
    return sum;
  }

  /** Root mean square of the misfit of each firing, K. */
  private double[] rms(double[] residual) {
    double[] rms = new double[firings.size()];
    int at = 0;
    for (int f = 0; f < rms.length; f++) {
      double sum = 0;
      int n = averaged.get(f).size();
      for (int i = 0; i < n; i++) {
        sum += residual[at] * residual[at];
        at++;
      }
      rms[f] = RESIDUAL_KELVINS * Math.sqrt(sum / n);
    }
    return rms;
  }

  private Lesson lesson(Fit fit, List<Lesson.LeftOut> leftOut) {
    RealMatrix posterior = new CholeskyDecomposition(fit.information()).getSolver().getInverse();
    int all = KilnQuantity.values().length;
    double[][] covariance = new double[all][all];
    for (int i = 0; i < all; i++) {
      covariance[i][i] = 1;
    }
    for (int i = 0; i < quantities.length; i++) {
      for (int j = 0; j < quantities.length; j++) {
        covariance[quantities[i].ordinal()][quantities[j].ordinal()] = posterior.getEntry(i, j);
      }
    }
    // What the day adds stays as uncertain as it was; a part of what was learned stays so too.
    for (KilnQuantity quantity : quantities) {
      double left = covariance[quantity.ordinal()][quantity.ordinal()];
      covariance[quantity.ordinal()][quantity.ordinal()] +=
          REMAINING * REMAINING * Math.max(0, before.covarianceFactor(quantity, quantity) - left);
    }
    return new Lesson(
        KilnBeliefs.of(fit.scores(), covariance),
        firings.stream().map(LoggedFiring::name).toList(),
        fit.rmsKelvins(),
        leftOut);
  }

  /**
   * Spread of a score that no log takes away, because mains, doors and the model's own errors
   * differ from day to day. Our estimate, tried on kilns simulated apart.
   */
  private static final double REMAINING = 0.2;
}
