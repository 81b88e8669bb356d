package org.heatwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/**
 * Logistic growth {@code y' = p y (1 - y)}, whose solution and derivatives are known in closed
 * form: {@code y = 1 / (1 + c exp(-p t))}, {@code dy/dp = t y (1 - y)}, {@code dy/dy0 = y (1 - y) /
 * (y0 (1 - y0))}. The solver's Jacobian is half of the true one.
 */
class TangentStepperTest {

  private static final double P = 1.7;
  private static final double START = 0.1;
  private static final double END = 3;

  private static final class Logistic implements StiffSystem, TangentStepper.Linearised {
    private final double[] at = new double[4];
    private double shift;
    private double half;

    @Override
    public int size() {
      return 1;
    }

    @Override
    public void rates(double[] y, double[] rates) {
      rates[0] = P * y[0] * (1 - y[0]);
    }

    @Override
    public void factor(double[] y, double newShift) {
      shift = newShift;
      half = P * (1 - 2 * y[0]) / 2;
    }

    @Override
    public void solve(double[] rhs, double[] x) {
      for (int i = 0; i < rhs.length; i++) {
        x[i] = rhs[i] / (shift - half);
      }
    }

    @Override
    public void atStage(int stage, double[] y, double[] rates) {
      at[stage] = y[0];
    }

    @Override
    public void product(int stage, double[] s, double[] into) {
      double y = at[stage];
      into[0] = P * (1 - 2 * y) * s[0] + y * (1 - y);
      into[1] = P * (1 - 2 * y) * s[1];
    }

    @Override
    public double errorNorm(double[] y, double[] error) {
      return 0;
    }
  }

  /** By the rate P, and by the start. */
  private static double[] derivatives(int steps) {
    Logistic system = new Logistic();
    RosenbrockStepper stepper = new RosenbrockStepper(system);
    TangentStepper tangents = new TangentStepper(system, 1, 2);
    double[] y = {START};
    double[] s = {0, 1};
    double[] rates = new double[1];
    for (int i = 0; i < steps; i++) {
      double[] next = new double[1];
      system.rates(y, rates);
      stepper.step(y, rates, END / steps, next);
      tangents.step(s, END / steps);
      y = next;
    }
    return s;
  }

  private static double[] exact() {
    double y = 1 / (1 + (1 - START) / START * Math.exp(-P * END));
    return new double[] {END * y * (1 - y), y * (1 - y) / (START * (1 - START))};
  }

  @Test
  void comesToTheDerivativesOfTheSolution() {
    double[] exact = exact();
    double[] found = derivatives(400);
    assertThat(found[0]).isCloseTo(exact[0], within(1e-7));
    assertThat(found[1]).isCloseTo(exact[1], within(1e-7));
  }

  @Test
  void isOfThirdOrderWithHalfOfTheJacobian() {
    for (int i = 0; i < 2; i++) {
      double coarse = Math.abs(derivatives(40)[i] - exact()[i]);
      double fine = Math.abs(derivatives(80)[i] - exact()[i]);
      assertThat(Math.log(coarse / fine) / Math.log(2)).as("of %d", i).isBetween(2.7, 3.5);
    }
  }
}
