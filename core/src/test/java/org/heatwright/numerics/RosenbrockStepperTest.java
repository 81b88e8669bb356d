package org.heatwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.sensing.Reference;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

class RosenbrockStepperTest {

  /**
   * Two stiff, nonlinear states: {@code u' = -a (u - cos v)}, {@code v' = 1 - 0.1 u v}. The
   * Jacobian may be given exactly or with its off-diagonal part left out.
   */
  private record Pair(double a, boolean exact, double[] work) implements StiffSystem {
    @Override
    public int size() {
      return 2;
    }

    @Override
    public void rates(double[] y, double[] rates) {
      rates[0] = -a * (y[0] - Math.cos(y[1]));
      rates[1] = 1 - 0.1 * y[0] * y[1];
    }

    @Override
    public void factor(double[] y, double shift) {
      work[0] = shift + a;
      work[1] = exact ? a * Math.sin(y[1]) : 0;
      work[2] = exact ? 0.1 * y[1] : 0;
      work[3] = shift + 0.1 * y[0];
    }

    @Override
    public void solve(double[] rhs, double[] x) {
      double determinant = work[0] * work[3] - work[1] * work[2];
      x[0] = (rhs[0] * work[3] - work[1] * rhs[1]) / determinant;
      x[1] = (work[0] * rhs[1] - work[2] * rhs[0]) / determinant;
    }

    @Override
    public double errorNorm(double[] y, double[] error) {
      return Math.max(Math.abs(error[0]), Math.abs(error[1]));
    }
  }

  private static double[] integrate(Pair system, double end, int steps) {
    RosenbrockStepper stepper = new RosenbrockStepper(system);
    double[] y = {1, 0};
    double[] next = new double[2];
    double[] rates = new double[2];
    for (int i = 0; i < steps; i++) {
      system.rates(y, rates);
      stepper.step(y, rates, end / steps, next);
      double[] swap = y;
      y = next;
      next = swap;
    }
    return y;
  }

  private static double[] reference(Pair system, double end) {
    var integrator = new DormandPrince853Integrator(1e-9, 1, 1e-13, 1e-13);
    var equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return 2;
          }

          @Override
          public double[] computeDerivatives(double t, double[] y) {
            double[] rates = new double[2];
            system.rates(y, rates);
            return rates;
          }
        };
    return integrator
        .integrate(equation, new ODEState(0, new double[] {1, 0}), end)
        .getPrimaryState();
  }

  private static double orderSeen(Pair system, double end, int steps) {
    double[] exact = reference(system, end);
    double coarse = Math.abs(integrate(system, end, steps)[1] - exact[1]);
    double fine = Math.abs(integrate(system, end, 2 * steps)[1] - exact[1]);
    return Math.log(coarse / fine) / Math.log(2);
  }

  /** Against a general-purpose integrator (Hipparchus, Dormand-Prince 8(5,3), tolerance 1e-13). */
  @Test
  void isOfThirdOrderWithTheExactJacobian() {
    assertThat(orderSeen(new Pair(3, true, new double[4]), 2, 256)).isBetween(2.8, 3.3);
  }

  /** What makes it a W-method: the order does not need the right Jacobian. */
  @Test
  void keepsItsOrderWithAnApproximateJacobian() {
    assertThat(orderSeen(new Pair(3, false, new double[4]), 2, 256)).isBetween(2.7, 3.4);
  }

  /** A thousand times stiffer than the step resolves: it must still land on the slow solution. */
  @Test
  void staysOnTheSlowSolutionOfAStiffProblem() {
    Pair stiff = new Pair(1e5, true, new double[4]);
    double[] y = integrate(stiff, 2, 40);
    double[] exact = reference(stiff, 2);
    assertThat(y[1]).isCloseTo(exact[1], within(1e-4));
    assertThat(y[0]).isCloseTo(exact[0], within(1e-3));
  }

  /** Lumped cooling, closed form {@code 20 + 880 exp(-t/60)}: 343.733908 °C after 60 s (CHK-A8). */
  @Test
  void coolsALumpLikeTheClosedForm() {
    StiffSystem lump =
        new StiffSystem() {
          private double shift;

          @Override
          public int size() {
            return 1;
          }

          @Override
          public void rates(double[] y, double[] rates) {
            rates[0] = -(y[0] - 20) / 60;
          }

          @Override
          public void factor(double[] y, double newShift) {
            shift = newShift;
          }

          @Override
          public void solve(double[] rhs, double[] x) {
            x[0] = rhs[0] / (shift + 1.0 / 60);
          }

          @Override
          public double errorNorm(double[] y, double[] error) {
            return Math.abs(error[0]);
          }
        };
    RosenbrockStepper stepper = new RosenbrockStepper(lump);
    double[] y = {900};
    double[] next = new double[1];
    double[] rates = new double[1];
    for (int i = 0; i < 200; i++) {
      lump.rates(y, rates);
      stepper.step(y, rates, 0.3, next);
      y[0] = next[0];
    }
    assertThat(y[0]).isCloseTo(343.733908, within(1e-5));
  }

  /**
   * Two bodies, 800 W into the first, the second losing to the room: C1 2000 J/K, C2 15,000 J/K,
   * G12 3 W/K, G2a 1.5 W/K, 20 °C. Closed form, computed apart.
   */
  @Test
  void twoBodiesFollowTheClosedForm() {
    StiffSystem pair =
        new StiffSystem() {
          private double shift;

          @Override
          public int size() {
            return 2;
          }

          @Override
          public void rates(double[] y, double[] rates) {
            rates[0] = (800 - 3 * (y[0] - y[1])) / 2000;
            rates[1] = (3 * (y[0] - y[1]) - 1.5 * (y[1] - 20)) / 15_000;
          }

          @Override
          public void factor(double[] y, double newShift) {
            shift = newShift;
          }

          @Override
          public void solve(double[] rhs, double[] x) {
            double a = shift + 3.0 / 2000;
            double b = -3.0 / 2000;
            double c = -3.0 / 15_000;
            double d = shift + 4.5 / 15_000;
            double determinant = a * d - b * c;
            x[0] = (rhs[0] * d - b * rhs[1]) / determinant;
            x[1] = (a * rhs[1] - c * rhs[0]) / determinant;
          }

          @Override
          public double errorNorm(double[] y, double[] error) {
            return 0;
          }
        };
    RosenbrockStepper stepper = new RosenbrockStepper(pair);
    for (String[] row : Reference.rows("two_node_step.csv")) {
      double seconds = Double.parseDouble(row[0]);
      int steps = Math.max(1, (int) (seconds / 4));
      double[] y = {20, 20};
      double[] next = new double[2];
      double[] rates = new double[2];
      for (int i = 0; i < steps && seconds > 0; i++) {
        pair.rates(y, rates);
        stepper.step(y, rates, seconds / steps, next);
        double[] swap = y;
        y = next;
        next = swap;
      }
      assertThat(y[0])
          .as("first at %s s", row[0])
          .isCloseTo(Double.parseDouble(row[1]), within(1e-5));
      assertThat(y[1])
          .as("second at %s s", row[0])
          .isCloseTo(Double.parseDouble(row[2]), within(1e-5));
    }
  }
}
