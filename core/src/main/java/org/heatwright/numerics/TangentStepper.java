package org.heatwright.numerics;

/**
 * Carries first derivatives of a state along the steps of a {@link RosenbrockStepper}: how it
 * changes with each of several parameters, {@code s' = J(y) s + df/dp}.
 *
 * <p>The same method is applied to state and derivatives together, with the same approximate
 * Jacobian for each of them: a W-method keeps its order with that. So every derivative shares the
 * stages and the factorisation of its step, and none is a difference of two runs. All of them go
 * through each operation side by side.
 *
 * <p>Arrays hold {@link #width} derivatives a state, one after the other. Holds work arrays: one
 * thread at a time.
 *
 * @see "the equations: Hairer, Nørsett and Wanner, Solving Ordinary Differential Equations I,
 *     section I.14 (from memory)"
 */
public final class TangentStepper {

  /** A system linearised about the stages of a step. */
  public interface Linearised {

    /** Writes {@code J s + df/dp} at a stage of the step. */
    void product(int stage, double[] s, double[] into);

    /** Solves {@code (shift I - J) x = rhs} as the step did; different arrays. */
    void solve(double[] rhs, double[] x);
  }

  private final Linearised system;
  private final int width;
  private final double[][] u;
  private final double[] stage;
  private final double[] rhs;

  /**
   * @param system the system
   * @param states how many states it has
   * @param width how many derivatives of each
   */
  public TangentStepper(Linearised system, int states, int width) {
    this.system = system;
    this.width = width;
    int n = states * width;
    this.u = new double[RosenbrockStepper.STAGES][n];
    this.stage = new double[n];
    this.rhs = new double[n];
  }

  /** How many derivatives a state has. */
  public int width() {
    return width;
  }

  /**
   * Takes the step that the state took last.
   *
   * @param s derivatives at its start; receives those at its end
   * @param step its length, above zero
   */
  public void step(double[] s, double step) {
    system.product(0, s, rhs);
    system.solve(rhs, u[0]);
    double perStep = 1 / step;
    double[][] a = RosenbrockStepper.A;
    double[][] c = RosenbrockStepper.C;
    for (int i = 1; i < RosenbrockStepper.STAGES; i++) {
      System.arraycopy(s, 0, stage, 0, s.length);
      for (int j = 0; j < i; j++) {
        addScaled(stage, u[j], a[i][j]);
      }
      system.product(i, stage, rhs);
      for (int j = 0; j < i; j++) {
        addScaled(rhs, u[j], c[i][j] * perStep);
      }
      system.solve(rhs, u[i]);
    }
    for (int i = 0; i < RosenbrockStepper.STAGES; i++) {
      addScaled(s, u[i], RosenbrockStepper.M[i]);
    }
  }

  private static void addScaled(double[] to, double[] what, double factor) {
    if (factor == 0) {
      return;
    }
    for (int i = 0; i < to.length; i++) {
      to[i] += factor * what[i];
    }
  }
}
