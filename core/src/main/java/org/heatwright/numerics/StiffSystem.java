package org.heatwright.numerics;

/**
 * An autonomous system {@code y' = f(y)} whose linear algebra the system does itself, because it
 * knows the structure of its Jacobian. The Jacobian may be approximate: {@link RosenbrockStepper}
 * keeps its order with any approximation.
 */
public interface StiffSystem {

  /** Number of states. */
  int size();

  /** Writes {@code f(y)} to {@code rates}. */
  void rates(double[] y, double[] rates);

  /** Prepares {@link #solve} for the matrix {@code shift I - J(y)}. */
  void factor(double[] y, double shift);

  /** Solves {@code (shift I - J) x = rhs}; {@code x} and {@code rhs} are different arrays. */
  void solve(double[] rhs, double[] x);

  /**
   * Told where a step evaluates the system, for what goes along with the state ({@link
   * TangentStepper}). Does nothing unless it is overridden.
   *
   * @param stage 0 at the step's start, after {@link #factor}; then one after the other
   * @param y the state there, which was evaluated last; not to be kept
   * @param rates {@code f(y)}; not to be kept
   */
  default void atStage(int stage, double[] y, double[] rates) {}

  /**
   * Size of an error estimate, scaled so that 1 is just acceptable.
   *
   * @param y state at the start of the step
   * @param error estimated local error of each state
   */
  double errorNorm(double[] y, double[] error);
}
