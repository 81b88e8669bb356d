package org.heatwright.numerics;

/**
 * One step of a linearly implicit (Rosenbrock-W) method of four stages: third order, L-stable,
 * stiffly accurate, with an embedded second-order solution for the error estimate.
 *
 * <p>Holds work arrays: one thread at a time.
 *
 * <p>Source of the coefficients: method ROS34PW2 of Rang and Angermann, "New Rosenbrock W-methods
 * of order 3 for partial differential algebraic equations of index 1", BIT 45 (2005), from memory;
 * the order conditions are checked numerically in the tests. The stages are solved in the form of
 * Hairer and Wanner, Solving Ordinary Differential Equations II, section IV.7 (from memory), which
 * needs no product with the Jacobian.
 */
public final class RosenbrockStepper {

  static final int STAGES = 4;

  /** The diagonal coefficient of the method. */
  public static final double GAMMA = 4.3586652150845900e-01;

  private static final double[][] ALPHA = {
    {0, 0, 0, 0},
    {8.7173304301691801e-01, 0, 0, 0},
    {8.4457060015369423e-01, -1.1299064236484185e-01, 0, 0},
    {0, 0, 1, 0},
  };
  private static final double[][] GAMMAS = {
    {GAMMA, 0, 0, 0},
    {-8.7173304301691801e-01, GAMMA, 0, 0},
    {-9.0338057013044082e-01, 5.4180672388095326e-02, GAMMA, 0},
    {2.4212380706095346e-01, -1.2232505839045147e+00, 5.4526025533510214e-01, GAMMA},
  };
  private static final double[] WEIGHTS = {
    2.4212380706095346e-01, -1.2232505839045147e+00, 1.5452602553351020e+00, 4.3586652150845900e-01
  };
  private static final double[] EMBEDDED = {
    3.7810903145819369e-01, -9.6042292212423178e-02, 5.0000000000000000e-01, 2.1793326075422950e-01
  };

  static final double[][] A = new double[STAGES][STAGES];
  static final double[][] C = new double[STAGES][STAGES];
  static final double[] M = new double[STAGES];
  private static final double[] E = new double[STAGES];

  static {
    double[][] inverse = invertLowerTriangular(GAMMAS);
    for (int i = 0; i < STAGES; i++) {
      for (int j = 0; j < STAGES; j++) {
        for (int l = 0; l < STAGES; l++) {
          A[i][j] += ALPHA[i][l] * inverse[l][j];
        }
        C[i][j] = (i == j ? 1 / GAMMA : 0) - inverse[i][j];
        M[j] += WEIGHTS[i] * inverse[i][j];
        E[j] += (WEIGHTS[i] - EMBEDDED[i]) * inverse[i][j];
      }
    }
  }

  private final StiffSystem system;
  private final double[][] u;
  private final double[] stage;
  private final double[] rhs;
  private final double[] error;

  public RosenbrockStepper(StiffSystem system) {
    this.system = system;
    int n = system.size();
    this.u = new double[STAGES][n];
    this.stage = new double[n];
    this.rhs = new double[n];
    this.error = new double[n];
  }

  /**
   * Tries one step.
   *
   * @param y state at its start
   * @param rates {@code f(y)}
   * @param step length, above zero
   * @param yNew receives the state at its end
   * @return the scaled error: accept at 1 or below
   */
  public double step(double[] y, double[] rates, double step, double[] yNew) {
    int n = y.length;
    system.factor(y, 1 / (GAMMA * step));
    system.atStage(0, y, rates);
    System.arraycopy(rates, 0, rhs, 0, n);
    system.solve(rhs, u[0]);
    double perStep = 1 / step;
    for (int i = 1; i < STAGES; i++) {
      System.arraycopy(y, 0, stage, 0, n);
      for (int j = 0; j < i; j++) {
        addScaled(stage, u[j], A[i][j]);
      }
      system.rates(stage, rhs);
      system.atStage(i, stage, rhs);
      for (int j = 0; j < i; j++) {
        addScaled(rhs, u[j], C[i][j] * perStep);
      }
      system.solve(rhs, u[i]);
    }
    System.arraycopy(y, 0, yNew, 0, n);
    java.util.Arrays.fill(error, 0);
    for (int i = 0; i < STAGES; i++) {
      addScaled(yNew, u[i], M[i]);
      addScaled(error, u[i], E[i]);
    }
    return system.errorNorm(y, error);
  }

  /** The step to try next after an error of {@code norm} at {@code step}. */
  public static double nextStep(double step, double norm) {
    double factor = norm > 0 ? 0.9 * Math.pow(norm, -1.0 / 3) : 4;
    return step * Math.max(0.2, Math.min(4, factor));
  }

  private static void addScaled(double[] to, double[] what, double factor) {
    if (factor == 0) {
      return;
    }
    for (int i = 0; i < to.length; i++) {
      to[i] += factor * what[i];
    }
  }

  private static double[][] invertLowerTriangular(double[][] lower) {
    int n = lower.length;
    double[][] inverse = new double[n][n];
    for (int column = 0; column < n; column++) {
      for (int i = column; i < n; i++) {
        double sum = i == column ? 1 : 0;
        for (int j = column; j < i; j++) {
          sum -= lower[i][j] * inverse[j][column];
        }
        inverse[i][column] = sum / lower[i][i];
      }
    }
    return inverse;
  }
}
