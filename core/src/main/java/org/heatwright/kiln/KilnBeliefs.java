package org.heatwright.kiln;

import static org.heatwright.numerics.NormalSteps.NINE_IN_TEN;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * What is believed about a kiln beyond its nameplate: a normal distribution of the scores of every
 * {@link KilnQuantity}. Before any firing was seen it is the standard one; learning moves and
 * narrows it. Immutable.
 */
public final class KilnBeliefs {

  private static final int QUANTITIES = KilnQuantity.values().length;

  private static final KilnBeliefs PRIOR = new KilnBeliefs(new double[QUANTITIES], identity());

  private final double[] mean;
  private final double[][] covariance;
  private final double[][] root;

  private KilnBeliefs(double[] mean, double[][] covariance) {
    this.mean = mean;
    this.covariance = covariance;
    this.root = choleskyRoot(covariance);
  }

  /** What the nameplate alone lets one believe. */
  public static KilnBeliefs prior() {
    return PRIOR;
  }

  /**
   * Beliefs with given scores.
   *
   * @param mean one score a quantity, in their order
   * @param covariance of the scores, symmetric and positive definite
   * @throws IllegalArgumentException if the sizes are wrong or the covariance is not one
   */
  public static KilnBeliefs of(double[] mean, double[][] covariance) {
    if (mean.length != QUANTITIES || covariance.length != QUANTITIES) {
      throw new IllegalArgumentException(
          "Beliefs need %d scores and as many rows of covariance, but %d and %d were given."
              .formatted(QUANTITIES, mean.length, covariance.length));
    }
    double[][] copy = new double[QUANTITIES][];
    for (int i = 0; i < QUANTITIES; i++) {
      copy[i] = covariance[i].clone();
    }
    return new KilnBeliefs(mean.clone(), copy);
  }

  /** Median score of a quantity. */
  public double score(KilnQuantity quantity) {
    return mean[quantity.ordinal()];
  }

  /** Median value of a quantity, in its own unit. */
  public double median(KilnQuantity quantity) {
    return quantity.value(score(quantity));
  }

  /** Value of a quantity at a number of standard deviations from its median. */
  private double valueAt(KilnQuantity quantity, double deviations) {
    return quantity.value(score(quantity) + deviations * ignoranceFactor(quantity));
  }

  /** The 5th percentile of a quantity, in its own unit. */
  public double low(KilnQuantity quantity) {
    return valueAt(quantity, -NINE_IN_TEN);
  }

  /** The 95th percentile of a quantity, in its own unit. */
  public double high(KilnQuantity quantity) {
    return valueAt(quantity, NINE_IN_TEN);
  }

  /** How much of the first ignorance is left, 1 for all of it: standard deviation of the score. */
  public double ignoranceFactor(KilnQuantity quantity) {
    return Math.sqrt(covariance[quantity.ordinal()][quantity.ordinal()]);
  }

  /** Covariance of the scores of two quantities. */
  public double covarianceFactor(KilnQuantity a, KilnQuantity b) {
    return covariance[a.ordinal()][b.ordinal()];
  }

  /** The median kiln. */
  public KilnParameters median(Kiln kiln) {
    return KilnParameters.at(kiln, mean);
  }

  /**
   * The kiln at given scores, whatever is believed.
   *
   * @param scores one a quantity, in their order
   */
  public static KilnParameters at(Kiln kiln, double[] scores) {
    return KilnParameters.at(kiln, scores);
  }

  /**
   * An ensemble: a Latin hypercube, in which every independent direction visits each of {@code
   * draws} equally likely slices once, in an order shuffled by the seed, and every draw of the
   * first half has its mirror image about the median kiln in the second; of an odd number the last
   * one is that kiln. So what grows evenly with the scores has its middle at the median kiln, and
   * not wherever a few draws happen to lie. Where there are enough draws for it, directions are
   * made uncorrelated in the sample, so that what grows evenly with them also has the spread that
   * it should, and slices are visited nearly. The same arguments give the same ensemble.
   *
   * @param kiln the nameplate
   * @param draws how many, 1 or more; 1 gives the median
   * @param seed of the shuffle
   */
  public List<KilnParameters> ensemble(Kiln kiln, int draws, long seed) {
    if (draws == 1) {
      return List.of(median(kiln));
    }
    Random random = new Random(seed);
    NormalDistribution normal = new NormalDistribution();
    double[][] independent = new double[draws][QUANTITIES];
    int pairs = draws / 2;
    for (int q = 0; q < QUANTITIES; q++) {
      List<Integer> slices = new ArrayList<>();
      for (int i = 0; i < pairs; i++) {
        slices.add(random.nextBoolean() ? i : draws - 1 - i);
      }
      Collections.shuffle(slices, random);
      for (int i = 0; i < pairs; i++) {
        independent[i][q] = normal.inverseCumulativeProbability((slices.get(i) + 0.5) / draws);
      }
    }
    if (pairs > QUANTITIES) {
      decorrelate(independent, pairs);
    }
    for (int i = 0; i < pairs; i++) {
      for (int q = 0; q < QUANTITIES; q++) {
        independent[pairs + i][q] = -independent[i][q];
      }
    }
    List<KilnParameters> ensemble = new ArrayList<>();
    for (double[] draw : independent) {
      double[] scores = mean.clone();
      for (int i = 0; i < QUANTITIES; i++) {
        for (int j = 0; j <= i; j++) {
          scores[i] += root[i][j] * draw[j];
        }
      }
      ensemble.add(KilnParameters.at(kiln, scores));
    }
    return ensemble;
  }

  /**
   * Makes the first rows of a matrix uncorrelated and of unit variance as a sample too, so that no
   * chance likeness of two columns makes all bands of a sum too wide or too narrow (after Iman and
   * Conover 1982, from memory).
   */
  private static void decorrelate(double[][] rows, int count) {
    double[][] covariance = new double[QUANTITIES][QUANTITIES];
    for (int a = 0; a < QUANTITIES; a++) {
      for (int b = 0; b < QUANTITIES; b++) {
        for (int i = 0; i < count; i++) {
          covariance[a][b] += rows[i][a] * rows[i][b] / count;
        }
      }
    }
    double[][] root = choleskyRoot(covariance);
    for (int i = 0; i < count; i++) {
      for (int a = 0; a < QUANTITIES; a++) {
        for (int b = 0; b < a; b++) {
          rows[i][a] -= root[a][b] * rows[i][b];
        }
        rows[i][a] /= root[a][a];
      }
    }
  }

  private static double[][] identity() {
    double[][] matrix = new double[QUANTITIES][QUANTITIES];
    for (int i = 0; i < QUANTITIES; i++) {
      matrix[i][i] = 1;
    }
    return matrix;
  }

  private static double[][] choleskyRoot(double[][] matrix) {
    int n = matrix.length;
    double[][] lower = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = matrix[i][j];
        for (int l = 0; l < j; l++) {
          sum -= lower[i][l] * lower[j][l];
        }
        if (i != j) {
          lower[i][j] = sum / lower[j][j];
        } else if (sum > 0) {
          lower[i][i] = Math.sqrt(sum);
        } else {
          throw new IllegalArgumentException(
              "The covariance is not positive definite at %s (pivot %s)."
                  .formatted(KilnQuantity.values()[i].fileName(), sum));
        }
      }
    }
    return lower;
  }
}
