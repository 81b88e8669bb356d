package org.heatwright.work.glass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;
import org.heatwright.material.Viscosity;
import org.heatwright.units.HeatingRate;
import org.heatwright.work.glass.Glass.Elastic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The followed plate against closed forms. */
class PlateStressTest {

  private static final Elastic ART = Elastic.ART;
  private static final Viscosity FLOAT = Viscosity.standardFloatGlass();

  /** From 600 °C, steadily, with the parabola of a plate that is insulated at its back. */
  private static double steady(
      double depth, double second, double thickness, double kelvinsPerHour) {
    double rate = kelvinsPerHour / 3600;
    double face = Math.max(100, 600 - rate * second);
    double bend = rate / (2 * ART.diffusivitySquareMetresPerSecond());
    return face + bend * (thickness * thickness - (thickness - depth) * (thickness - depth));
  }

  private static PlateStress.HeldOrFree follow(
      double thickness, DoubleBinaryOperator celsiusAt, double endSeconds) {
    return PlateStress.follow(
        ART,
        FLOAT,
        thickness,
        (second, depths) ->
            Arrays.stream(depths).map(x -> celsiusAt.applyAsDouble(x, second)).toArray(),
        endSeconds);
  }

  private static PlateStress held(
      double thickness, DoubleBinaryOperator celsiusAt, double endSeconds) {
    return follow(thickness, celsiusAt, endSeconds).held();
  }

  /**
   * The linear-cooling limit: steady all the way, what is left is {@code E alpha R L²/(6 kappa
   * (1-nu))} at the back and twice that pressure at the face.
   */
  @ParameterizedTest
  @CsvSource({"6, 93.6", "6, 312", "19, 9.3", "25, 60"})
  void steadyCoolingLeavesTheClosedForm(double millimetres, double kelvinsPerHour) {
    double thickness = millimetres / 1000;
    double closed =
        Annealing.tensionPascals(ART, thickness, HeatingRate.ofKelvinsPerHour(kelvinsPerHour));
    PlateStress left =
        held(
            thickness,
            (x, s) -> steady(x, s, thickness, kelvinsPerHour),
            500 / kelvinsPerHour * 3600);
    assertThat(left.endTensionPascals()).isCloseTo(closed, within(0.01 * closed));
    assertThat(left.endPressurePascals()).isCloseTo(2 * closed, within(0.02 * closed));
    assertThat(left.bowPerMetre()).isZero();
  }

  /** Free to bow it has the stress of a plate of half the depth, a quarter, and is bent. */
  @Test
  void aPlateThatMayBowKeepsAQuarter() {
    double closed = Annealing.tensionPascals(ART, 0.012, HeatingRate.ofKelvinsPerHour(60));
    PlateStress left = follow(0.012, (x, s) -> steady(x, s, 0.012, 60), 500 / 60.0 * 3600).free();
    assertThat(left.endTensionPascals()).isCloseTo(closed / 4, within(0.01 * closed / 4));
    assertThat(Math.abs(left.bowPerMetre())).isGreaterThan(0);
  }

  /** Fast to 400 °C only below the strain point: what comes then goes again. */
  @Test
  void cooledFasterBelowTheStrainPointLeavesTheSame() {
    double thickness = 0.012;
    double slowSeconds = 160 / 25.0 * 3600;
    PlateStress left =
        held(
            thickness,
            (x, s) ->
                s < slowSeconds
                    ? steady(x, s, thickness, 25)
                    : steady(x, slowSeconds, thickness, 25)
                        - 125 * (s - slowSeconds) / 3600
                        + 3 * x / thickness * Math.min(1, (s - slowSeconds) / 1200),
            slowSeconds + 3 * 3600);
    double closed = Annealing.tensionPascals(ART, thickness, HeatingRate.ofKelvinsPerHour(25));
    assertThat(left.endTensionPascals()).isCloseTo(closed, within(0.02 * closed));
    assertThat(left.coolingTensionPascals()).isGreaterThan(closed);
  }

  /** Cold glass is elastic: heated and cooled below 300 °C nothing is left of the tension. */
  @Test
  void coldGlassKeepsNothing() {
    double thickness = 0.01;
    PlateStress left =
        held(
            thickness,
            (x, s) -> {
              double up = Math.min(s, 7200 - s) / 3600 * 200;
              return 20 + up - Math.signum(3600 - s) * 20 * x / thickness * (up > 0 ? 1 : 0);
            },
            7200);
    assertThat(left.endTensionPascals()).isLessThan(1e3);
    double expected = ART.pascalsPerKelvin() * 10; // back 10 K cooler than the mean
    assertThat(left.heatingTensionPascals()).isCloseTo(expected, within(0.02 * expected));
  }

  /** Chilled glass: from even 620 °C at once, the pressure at the face is what toughening uses. */
  @Test
  void fasterAndThickerLeavesMore() {
    double last = 0;
    for (double rate : new double[] {10, 20, 50, 100, 300}) {
      PlateStress left = held(0.01, (x, s) -> steady(x, s, 0.01, rate), 500 / rate * 3600);
      assertThat(left.endTensionPascals()).isGreaterThan(last);
      last = left.endTensionPascals();
    }
  }
}
