package org.heatwright.work.heattreat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WarmingTest {

  /**
   * A plate between grey faces, radiation alone: the closed form with logarithms and arcs (read: a
   * heat transfer handbook, eq. 3.283, the same integral), computed apart with scipy and confirmed
   * there by an ODE (implementers' sheet CHK-C6).
   */
  @ParameterizedTest
  @CsvSource({
    "3010.56, 1.40, 20, 800, 850, 28.5251",
    "3010.56, 1.40, 20, 840, 850, 39.6605",
    "3010.56, 1.55, 20, 700, 800, 23.5434",
    "2677.5, 0.90, 20, 700, 780, 40.5264",
    "2677.5, 0.10, 20, 700, 780, 364.737",
    "2826, 1.70, 20, 780, 820, 24.9244",
    "3010.56, 1.40, 800, 500, 20, 17.34506",
  })
  void radiationAloneIsTheClosedForm(
      double joules, double emissivity, double from, double to, double around, double seconds) {
    assertThat(new Warming(joules, emissivity, 0, 0).secondsBetween(from, to, around))
        .isCloseTo(seconds, within(2e-6 * seconds));
    assertThat(closedForm(joules, emissivity, from, to, around))
        .isCloseTo(seconds, within(2e-6 * seconds));
  }

  /** The closed form itself, for any plate. */
  private static double closedForm(
      double joules, double emissivity, double from, double to, double around) {
    double w = around + 273.15;
    double t = to + 273.15;
    double i = from + 273.15;
    return joules
        / (4 * emissivity * 5.670374419e-8 * w * w * w)
        * (Math.log(Math.abs((w + t) / (w - t)))
            - Math.log(Math.abs((w + i) / (w - i)))
            + 2 * (Math.atan(t / w) - Math.atan(i / w)));
  }

  @Test
  void randomPlatesAgreeWithTheClosedForm() {
    SplittableRandom random = new SplittableRandom(7);
    for (int i = 0; i < 2000; i++) {
      double around = random.nextDouble(0, 1200);
      double from = random.nextDouble(0, 1200);
      double to = from + random.nextDouble(0.001, 0.999) * (around - from);
      double joules = random.nextDouble(100, 1e5);
      double emissivity = random.nextDouble(0.02, 2);
      double exact = closedForm(joules, emissivity, from, to, around);
      assertThat(new Warming(joules, emissivity, 0, 0).secondsBetween(from, to, around))
          .isCloseTo(exact, within(1e-6 * exact + 1e-9));
    }
  }

  /** The exponential law, computed apart (implementers' sheet CHK-A8). */
  @Test
  void aFilmAloneIsTheExponentialLaw() {
    Warming quick = new Warming(600, 0, 10, 0);
    assertThat(quick.secondsAFold(500, 20)).isCloseTo(60, within(1e-12));
    assertThat(quick.secondsBetween(900, 343.733908, 20)).isCloseTo(60, within(1e-6));
    Warming slow = new Warming(18_000, 0, 10, 0);
    assertThat(slow.secondsBetween(20, 780.904951, 900)).isCloseTo(3600, within(1e-4));
  }

  /** First order behind a ramp: r tau (1 - exp(-t/tau)) (implementers' sheet CHK-A11, lag). */
  @Test
  void behindARampAtAFilmItIsFirstOrder() {
    Warming tip = new Warming(200, 0, 10, 0);
    double rate = 500.0 / 3600;
    assertThat(tip.kelvinsBehind(0, rate * 60, rate)).isCloseTo(2.639480, within(1e-6));
    assertThat(tip.kelvinsBehind(0, rate * 600, rate)).isCloseTo(2.777778, within(1e-6));
  }

  /** Arrival after a ramp against a fine forward integration of the same heat balance. */
  @Test
  void arrivalAfterARampAgreesWithAFineIntegration() {
    for (double joules : new double[] {3000, 30_000, 94_000}) {
      for (double target : new double[] {180, 300, 740}) {
        Warming block = new Warming(joules, 0.8, 8, 0);
        double rate = 150.0 / 3600;
        double arrives = (target - 20) / rate;
        double piece = 20;
        double dt = 0.05;
        double second = 0;
        while (second < arrives || target - piece > 5) {
          double around = Math.min(target, 20 + rate * second);
          double k = piece + 273.15;
          double a = around + 273.15;
          double flux =
              0.8 * 5.670374419e-8 * (a * a * a * a - k * k * k * k) + 8 * (around - piece);
          piece += dt * flux / joules;
          second += dt;
        }
        double expected = second - arrives;
        assertThat(block.secondsToArrive(20, target, rate, 5))
            .isCloseTo(expected, within(0.01 * expected + 2));
      }
    }
  }

  @Test
  void thickerCleanerAndBetterBuriedIsSlower() {
    SplittableRandom random = new SplittableRandom(11);
    for (int i = 0; i < 2000; i++) {
      double joules = random.nextDouble(300, 1e5);
      double emissivity = random.nextDouble(0.05, 1.5);
      double film = random.nextDouble(1, 30);
      double target = random.nextDouble(60, 950);
      double rate = random.nextDouble(20, 900) / 3600;
      double base = new Warming(joules, emissivity, film, 0).secondsToArrive(20, target, rate, 5);
      assertThat(
              new Warming(joules * random.nextDouble(1, 3), emissivity, film, 0)
                  .secondsToArrive(20, target, rate, 5))
          .isGreaterThanOrEqualTo(base);
      assertThat(
              new Warming(joules, emissivity * random.nextDouble(0.3, 1), film, 0)
                  .secondsToArrive(20, target, rate, 5))
          .isGreaterThanOrEqualTo(base);
      assertThat(
              new Warming(joules, emissivity, film, random.nextDouble(0, 0.1))
                  .secondsToArrive(20, target, rate, 5))
          .isGreaterThanOrEqualTo(base);
    }
  }

  /**
   * A slab heated on both faces: its first eigenvalue solves z tan z = Bi (memory: Carslaw and
   * Jaeger 1959); the sum of resistances used for a box is never below 1/z², nor far above it.
   */
  @Test
  void theResistanceOfABoxBoundsTheFirstEigenvalue() {
    for (double biot = 0.01; biot < 1000; biot *= 1.7) {
      double low = 0;
      double high = Math.PI / 2 - 1e-12;
      for (int i = 0; i < 100; i++) {
        double middle = (low + high) / 2;
        if (middle * Math.tan(middle) < biot) {
          low = middle;
        } else {
          high = middle;
        }
      }
      double exact = 1 / (low * low);
      double ours = 4 / (Math.PI * Math.PI) + 1 / biot;
      assertThat(ours).isBetween(exact, 1.1 * exact);
    }
  }

  @Test
  void whatNeverGetsThereIsRefused() {
    Warming plate = new Warming(3000, 1, 10, 0);
    assertThatThrownBy(() -> plate.secondsBetween(20, 900, 850))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("nothing gets to 900");
    assertThatThrownBy(() -> plate.secondsBetween(20, 10, 850))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(plate.secondsBetween(20, 20, 850)).isZero();
  }
}
