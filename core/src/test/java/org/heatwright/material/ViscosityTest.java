package org.heatwright.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ViscosityTest {

  private static final Origin TEST = Origin.own("test");
  private static final Origin ENCYCLOPAEDIA =
      Origin.read("an encyclopaedia's table of soda-lime glasses");

  private static Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  private static Viscosity glass(String name) {
    return switch (name) {
      case "float" -> Viscosity.standardFloatGlass();
      case "window" -> Viscosity.of(-2.585, 4215, celsius(263), ENCYCLOPAEDIA);
      default -> Viscosity.of(-2.309, 3922, celsius(291), ENCYCLOPAEDIA);
    };
  }

  /** CHK-C3: the standard points, computed apart from the published constants. */
  @ParameterizedTest
  @CsvSource({
    "float, 515.083, 542.717, 716.799, 1019.337, 0.0005",
    "window, 509.71, 533.45, 676.84, 903.09, 0.005",
    "container, 524.33, 547.19, 686.80, 912.65, 0.005"
  })
  void standardPoints(
      String name,
      double strain,
      double annealing,
      double softening,
      double working,
      double within) {
    Viscosity glass = glass(name);

    assertThat(glass.temperatureAt(Viscosity.STRAIN_LOG_POISE).celsius())
        .isCloseTo(strain, within(within));
    assertThat(glass.temperatureAt(Viscosity.ANNEALING_LOG_POISE).celsius())
        .isCloseTo(annealing, within(within));
    assertThat(glass.temperatureAt(Viscosity.SOFTENING_LOG_POISE).celsius())
        .isCloseTo(softening, within(within));
    assertThat(glass.temperatureAt(Viscosity.WORKING_LOG_POISE).celsius())
        .isCloseTo(working, within(within));
  }

  /** CHK-C3, DGG-1 at two temperatures. */
  @ParameterizedTest
  @CsvSource({"700, 7.940529", "850, 5.570552"})
  void floatGlassAtTwoTemperatures(double at, double logPoise) {
    assertThat(Viscosity.standardFloatGlass().logPoiseAt(celsius(at)))
        .isCloseTo(logPoise, within(5e-7));
    assertThat(Viscosity.standardFloatGlass().pascalSecondsAt(celsius(at)))
        .isCloseTo(Math.pow(10, logPoise - 1), within(1e-5 * Math.pow(10, logPoise - 1)));
  }

  /**
   * A float glass maker's bulletin: softening 715, annealing 548, strain 511 °C, all within 6 K.
   */
  @Test
  void floatGlassAgreesWithAMakersBulletin() {
    Viscosity glass = Viscosity.standardFloatGlass();

    assertThat(glass.temperatureAt(7.6).celsius()).isCloseTo(715, within(6.0));
    assertThat(glass.temperatureAt(13).celsius()).isCloseTo(548, within(6.0));
    assertThat(glass.temperatureAt(14.5).celsius()).isCloseTo(511, within(6.0));
  }

  @ParameterizedTest
  @CsvSource({"float", "window", "container"})
  void threePointsGiveTheConstantsBack(String name) {
    Viscosity glass = glass(name);

    Viscosity again =
        Viscosity.through(
            glass.temperatureAt(13),
            13,
            glass.temperatureAt(7.6),
            7.6,
            glass.temperatureAt(4),
            4,
            TEST);

    assertThat(again.a()).isCloseTo(glass.a(), within(1e-9));
    assertThat(again.b()).isCloseTo(glass.b(), within(1e-6));
    assertThat(again.t0().celsius()).isCloseTo(glass.t0().celsius(), within(1e-8));
  }

  @Test
  void pointsThatNoGlassHasAreRefused() {
    assertThatThrownBy(
            () -> Viscosity.through(celsius(500), 13, celsius(700), 9, celsius(800), 6, TEST))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("fall less a kelvin");
    assertThatThrownBy(
            () -> Viscosity.through(celsius(700), 13, celsius(500), 9, celsius(800), 6, TEST))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void itIsRigidAtT0() {
    Viscosity glass = Viscosity.standardFloatGlass();

    assertThat(glass.logPoiseAt(celsius(246.1))).isInfinite().isPositive();
    assertThat(glass.flowPerPascal(new double[] {0, 1e6}, new double[] {20, 246})).isZero();
  }

  /** The slope as an activation energy: physics by hand, 3.1e5 J/mol at 800 °C. */
  @Test
  void activationEnergyIsTheSlope() {
    Viscosity glass = Viscosity.standardFloatGlass();
    double q = glass.activationJoulesPerMole(celsius(800));

    assertThat(q).isCloseTo(3.1e5, within(0.05e5));
    double rise = glass.pascalSecondsAt(celsius(799.5)) / glass.pascalSecondsAt(celsius(800.5));
    double arrhenius =
        Math.exp(q / HeatWork.GAS_CONSTANT * (1 / (799.5 + 273.15) - 1 / (800.5 + 273.15)));
    assertThat(rise).isCloseTo(arrhenius, within(1e-5));
  }

  /** Against Simpson's rule with 20,000 steps on random histories. */
  @Test
  void flowIsTheIntegralOfOneOverViscosity() {
    Viscosity glass = Viscosity.standardFloatGlass();
    SplittableRandom random = new SplittableRandom(7);
    for (int n = 0; n < 20; n++) {
      double from = random.nextDouble(20, 1000);
      double to = random.nextDouble(20, 1000);
      double length = random.nextDouble(1, 5000);
      int steps = 20_000;
      double sum = 0;
      for (int i = 0; i <= steps; i++) {
        double weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
        double at = from + (to - from) * i / steps;
        sum += weight * length / (3 * steps) / glass.pascalSecondsAt(celsius(at));
      }

      double flow = glass.flowPerPascal(new double[] {0, length}, new double[] {from, to});

      assertThat(flow).isCloseTo(sum, within(1e-6 * sum + 1e-300));
      double hold = length / glass.pascalSecondsAt(celsius(to));
      assertThat(glass.flowPerPascal(new double[] {0, length}, new double[] {to, to}))
          .isCloseTo(hold, within(1e-12 * hold));
    }
  }

  @Test
  void aThickerGlassFlowsLessByThatMuch() {
    Viscosity glass = Viscosity.standardFloatGlass();
    double[] seconds = {0, 60, 200};
    double[] celsius = {400, 800, 820};

    assertThat(glass.thickerBy(0.5, TEST).flowPerPascal(seconds, celsius))
        .isCloseTo(
            glass.flowPerPascal(seconds, celsius) / Math.sqrt(10),
            within(1e-12 * glass.flowPerPascal(seconds, celsius)));
  }
}
