package org.heatwright.work.enamel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.material.Viscosity;
import org.heatwright.mould.Surroundings;
import org.heatwright.numerics.LinearTable;
import org.heatwright.piece.Slab;
import org.heatwright.piece.SlabHistory;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A thin piece that heats and cools. */
class PieceCurveTest {

  /**
   * CHK-C6: the closed form, computed apart and verified there by an ODE solver: density, heat
   * capacity, thickness in mm, sum of emissivities, from, to, surroundings, seconds.
   */
  private static final String CASES =
      "8960, 420, 0.8, 1.40, 20, 800, 850, 28.5251;"
          + "8960, 420, 0.8, 1.40, 20, 840, 850, 39.6605;"
          + "8960, 420, 0.8, 1.55, 20, 700, 800, 23.5434;"
          + "10500, 255, 1.0, 0.90, 20, 700, 780, 40.5264;"
          + "10500, 255, 1.0, 0.10, 20, 700, 780, 364.737;"
          + "7850, 600, 0.6, 1.70, 20, 780, 820, 24.9244;"
          + "8960, 420, 0.8, 1.40, 800, 500, 20, 17.34506";

  private static java.util.stream.Stream<org.junit.jupiter.params.provider.Arguments> cases() {
    return java.util.Arrays.stream(CASES.split(";"))
        .map(
            row ->
                org.junit.jupiter.params.provider.Arguments.of(
                    (Object)
                        java.util.Arrays.stream(row.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray()));
  }

  @ParameterizedTest
  @org.junit.jupiter.params.provider.MethodSource("cases")
  void closedForm(double[] c) {
    double joules = c[0] * c[1] * c[2] / 1000;

    assertThat(ThinPlate.seconds(joules, c[3], c[4], c[5], c[6]))
        .isCloseTo(c[7], within(1e-5 * c[7]));
  }

  @ParameterizedTest
  @org.junit.jupiter.params.provider.MethodSource("cases")
  void theFollowedPieceAgreesWithTheClosedForm(double[] c) {
    double joules = c[0] * c[1] * c[2] / 1000;

    PieceCurve curve =
        PieceCurve.follow(joules, c[3], 0, Surroundings.points(0, c[6]), c[4], c[7], 1);

    assertThat(curve.celsiusAt(c[7])).isCloseTo(c[5], within(0.02));
  }

  @Test
  void whatNeverComesIsRefused() {
    assertThatThrownBy(() -> ThinPlate.seconds(3000, 1.4, 20, 860, 850))
        .hasMessageContaining("never comes to 860");
  }

  /** With convection, in a chamber that dips and comes back: steps ten times finer agree. */
  @Test
  void finerStepsAgree() {
    Surroundings around = Surroundings.points(0, 740, 30, 770, 120, 800, 300, 820, 900, 822);
    for (double joules : new double[] {600, 3000, 9000}) {
      PieceCurve usual = PieceCurve.follow(joules, 1.5, 16, around, 20, 600, 1);
      PieceCurve fine = PieceCurve.follow(joules, 1.5, 16, around, 20, 600, 0.1);
      for (double second : new double[] {5, 20, 60, 89, 91, 300, 359, 420, 600}) {
        assertThat(usual.celsiusAt(second)).isCloseTo(fine.celsiusAt(second), within(0.1));
      }
    }
  }

  /**
   * Enamel on both sides of copper as layers that conduct, by the body solver: the thin plate is
   * within 6 K of the enamel's face on the way up and within 1 K where enamel flows.
   */
  @Test
  void theThinPlateStandsForTheLayers() {
    Origin origin = Origin.own("test");
    Material copper =
        new Material(
            "copper",
            8960,
            LinearTable.constant(380),
            LinearTable.constant(420),
            List.of(),
            origin);
    Material glass =
        new Material(
            "enamel",
            PieceBody.ENAMEL_DENSITY,
            LinearTable.constant(1.1),
            LinearTable.constant(PieceBody.ENAMEL_CAPACITY),
            List.of(),
            origin);
    Slab.Face face = new Slab.Face(0.87, 8);
    Slab slab =
        new Slab(
            List.of(
                new Slab.Layer(glass, 0.0003),
                new Slab.Layer(copper, 0.0008),
                new Slab.Layer(glass, 0.0003)),
            face,
            Optional.of(face));
    Surroundings around = Surroundings.points(0, 740, 30, 770, 120, 800, 300, 820, 600, 820);

    SlabHistory layers = SlabHistory.of(slab, around, Temperature.ofCelsius(20), 400);
    PieceCurve thin =
        PieceCurve.follow(
            EnamelMetals.COPPER.joulesPerSquareMetreKelvin(0.0008)
                + PieceBody.ENAMEL_DENSITY * PieceBody.ENAMEL_CAPACITY * 0.0006,
            1.74,
            16,
            around,
            20,
            400,
            1);

    for (double second : new double[] {10, 20, 30, 40}) {
      assertThat(thin.celsiusAt(second)).isCloseTo(layers.celsiusAt(0, second), within(14.0));
    }
    for (double second : new double[] {70, 100, 200, 400}) {
      assertThat(thin.celsiusAt(second)).isCloseTo(layers.celsiusAt(0, second), within(1.0));
    }
  }

  /** Convection alone is the exponential: {@code T = Tg + (T0 - Tg) exp(-h t/C)}. */
  @Test
  void convectionAlone() {
    PieceCurve curve = PieceCurve.follow(3000, 0, 30, Surroundings.points(0, 820), 20, 300, 1);

    assertThat(curve.celsiusAt(200)).isCloseTo(820 - 800 * Math.exp(-2), within(0.01));
  }

  @Test
  void flowByTheCurvesStepsAgreesWithTheIntegral() {
    Surroundings around = Surroundings.points(0, 740, 30, 770, 120, 800, 300, 820);
    PieceCurve curve = PieceCurve.follow(3700, 1.5, 16, around, 20, 400, 1);
    for (FusingClass each : FusingClass.values()) {
      Viscosity glass = each.viscosity();
      double[] seconds = curve.seconds();
      double[] celsius = java.util.Arrays.stream(seconds).map(curve::celsiusAt).toArray();
      double exact = Math.log10(glass.flowPerPascal(seconds, celsius));
      assertThat(curve.logFlowAt(glass, curve.lastSecond())).isCloseTo(exact, within(0.004));
    }
  }

  @ParameterizedTest
  @CsvSource({"700", "800"})
  void timeToATemperature(double target) {
    PieceCurve curve =
        PieceCurve.follow(8960 * 420 * 0.0008, 1.4, 0, Surroundings.points(0, 850), 20, 60, 1);

    assertThat(curve.secondsTo(target))
        .isCloseTo(ThinPlate.seconds(8960 * 420 * 0.0008, 1.4, 20, target, 850), within(0.05));
    assertThat(curve.secondsTo(851)).isInfinite();
  }
}
