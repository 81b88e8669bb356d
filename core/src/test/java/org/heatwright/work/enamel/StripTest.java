package org.heatwright.work.enamel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Curvature and stress of bonded layers. */
class StripTest {

  private static final Layer COPPER = new Layer(0.0008, 117e9, 0.34, 17.5e-6);
  private static final Layer ENAMEL = new Layer(0.0003, 70e9, 0.22, 11e-6);
  private static final double COOLED = -430;

  /**
   * CHK-C4: {@code h/(ρ Δα ΔT)} for equal thickness, by hand: 1.5 with equal moduli, 24/16.5 with
   * two to one. Timoshenko 1925 remarks that the ratio of moduli hardly matters.
   */
  @ParameterizedTest
  @CsvSource({"1, 1.5", "2, 1.4545455", "0.5, 1.4545455"})
  void equalThickness(double ratio, double coefficient) {
    Layer first = new Layer(0.001, ratio * 100e9, 0, 10e-6);
    Layer second = new Layer(0.001, 100e9, 0, 15e-6);

    double curvature = Laminate.of(List.of(first, second), 40).curvaturePerMetre();

    assertThat(curvature * 0.002 / (5e-6 * 40)).isCloseTo(coefficient, within(5e-8));
  }

  /**
   * Read, a verification page of a finite-element program, temperature load by bimetal: 3 m long,
   * 0.3 m deep, 5e-6/K apart, 50 K; tip 5.625 mm (the page prints m for mm).
   */
  @Test
  void publishedCantilever() {
    // A narrow strip is a plate without Poisson's ratio: the page's own is 0.3.
    Layer first = new Layer(0.15, 200e9, 0, 10e-6);
    Layer second = new Layer(0.15, 200e9, 0, 15e-6);

    double curvature = Laminate.of(List.of(first, second), 50).curvaturePerMetre();

    assertThat(curvature * 3 * 3 / 2).isCloseTo(5.625e-3, within(1e-12));
  }

  /** CHK-C5: copper 0.8 mm with enamel 0.3 mm, computed apart. */
  @Test
  void enamelOnCopper() {
    Laminate plate = Laminate.of(List.of(COPPER, ENAMEL), COOLED);

    assertThat(plate.curvaturePerMetre()).isCloseTo(2.380778, within(5e-7));
    assertThat(1 / plate.curvaturePerMetre()).isCloseTo(0.420031, within(5e-7));
    assertThat(plate.meanPascals(0) * COPPER.thicknessMetres()).isCloseTo(33614.68, within(0.005));
    assertThat(plate.lowerPascals(0) / 1e6).isCloseTo(210.837, within(0.0005));
    assertThat(plate.upperPascals(0) / 1e6).isCloseTo(-126.800, within(0.0005));
    assertThat(plate.upperPascals(1) / 1e6).isCloseTo(-144.098, within(0.0005));
    assertThat(plate.lowerPascals(1) / 1e6).isCloseTo(-80.000, within(0.0005));
    assertThat(plate.bowMetres(0.040) * 1000).isCloseTo(0.476, within(0.0005));
  }

  /** CHK-C5: the same, the enamel on top; its outer face is convex. */
  @Test
  void enamelOnTop() {
    Laminate laminate = Laminate.of(List.of(ENAMEL, COPPER), COOLED);

    assertThat(laminate.curvaturePerMetre()).isCloseTo(-2.380778, within(5e-7));
    assertThat(laminate.upperPascals(0) / 1e6).isCloseTo(-80.000, within(0.0005));
    assertThat(laminate.lowerPascals(0) / 1e6).isCloseTo(-144.098, within(0.0005));
    assertThat(laminate.upperPascals(1) / 1e6).isCloseTo(210.837, within(0.0005));
    assertThat(laminate.lowerPascals(1) / 1e6).isCloseTo(-126.800, within(0.0005));
  }

  /** CHK-C5: the same enamel on both sides, and the limit of a thin film; computed apart. */
  @Test
  void counterEnamelAndThinFilm() {
    Laminate both = Laminate.of(List.of(ENAMEL, COPPER, ENAMEL), COOLED);
    assertThat(both.curvaturePerMetre()).isCloseTo(0, within(1e-9));
    assertThat(both.meanPascals(0) / 1e6).isCloseTo(-181.805, within(0.0005));
    assertThat(both.meanPascals(1) / 1e6).isCloseTo(136.354, within(0.0005));

    Laminate film = Laminate.of(List.of(ENAMEL.withThickness(1e-9), COPPER), COOLED);
    assertThat(film.meanPascals(0) / 1e6).isCloseTo(-250.83, within(0.005));
  }

  /** CHK-C7 and the same for a float glass by its maker's bulletin (read), at two strengths. */
  @ParameterizedTest
  @CsvSource({
    "30, 70, 0.22, 9, 37.142857, 5e-7",
    "19, 72, 0.23, 8.3, 24.5, 0.05",
    "41, 72, 0.23, 8.3, 52.8, 0.05"
  })
  void thermalShock(
      double megapascals,
      double gigapascals,
      double poisson,
      double perKelvin,
      double k,
      double off) {
    Layer glass = new Layer(0.001, gigapascals * 1e9, poisson, perKelvin * 1e-6);

    assertThat(ThermalShock.severeKelvins(megapascals * 1e6, glass)).isCloseTo(k, within(off));
  }

  /**
   * Against another way to the same: a pull in each layer, one curvature, and equal strain on both
   * sides of each interface, four equations for three layers (Timoshenko's way, by LU).
   */
  @Test
  void randomStripsAgreeWithADirectSolve() {
    SplittableRandom random = new SplittableRandom(42);
    for (int n = 0; n < 2000; n++) {
      Layer[] layers = new Layer[2 + n % 2];
      for (int i = 0; i < layers.length; i++) {
        layers[i] =
            new Layer(
                random.nextDouble(5e-5, 3e-3),
                random.nextDouble(40e9, 220e9),
                random.nextDouble(0, 0.45),
                random.nextDouble(5e-6, 22e-6));
      }
      double change = random.nextDouble(-600, 300);

      Laminate laminate = Laminate.of(List.of(layers), change);
      RealVector direct = solve(layers, change);

      double curvature = direct.getEntry(layers.length);
      double scale = Math.abs(change) * 20e-6 / layers[0].thicknessMetres();
      assertThat(laminate.curvaturePerMetre()).isCloseTo(curvature, within(1e-9 * scale));
      for (int i = 0; i < layers.length; i++) {
        double mean = direct.getEntry(i) / layers[i].thicknessMetres();
        double bend = layers[i].platePascals() * layers[i].thicknessMetres() / 2 * curvature;
        assertThat(laminate.meanPascals(i)).isCloseTo(mean, within(1.0));
        assertThat(laminate.upperPascals(i)).isCloseTo(mean - bend, within(1.0));
        assertThat(laminate.lowerPascals(i)).isCloseTo(mean + bend, within(1.0));
      }
    }
  }

  private static RealVector solve(Layer[] layers, double change) {
    int n = layers.length;
    double[][] a = new double[n + 1][n + 1];
    double[] b = new double[n + 1];
    double z = 0;
    for (int i = 0; i < n; i++) {
      double thick = layers[i].thicknessMetres();
      double e = layers[i].platePascals();
      a[0][i] = 1;
      a[1][i] = z + thick / 2;
      a[1][n] += e * thick * thick * thick / 12;
      if (i + 1 < n) {
        Layer next = layers[i + 1];
        a[2 + i][i] = 1 / (e * thick);
        a[2 + i][i + 1] = -1 / (next.platePascals() * next.thicknessMetres());
        a[2 + i][n] = (thick + next.thicknessMetres()) / 2;
        b[2 + i] = (next.perKelvin() - layers[i].perKelvin()) * change;
      }
      z += thick;
    }
    // Rows of very different size: scale each, so that the pivots mean something.
    for (int row = 0; row <= n; row++) {
      double most = 0;
      for (double entry : a[row]) {
        most = Math.max(most, Math.abs(entry));
      }
      for (int column = 0; column <= n; column++) {
        a[row][column] /= most;
      }
      b[row] /= most;
    }
    return new LUDecomposition(new Array2DRowRealMatrix(a), 0)
        .getSolver()
        .solve(new ArrayRealVector(b));
  }

  @Test
  void theBalancingCounterEnamelLeavesThePieceFlat() {
    double same = Laminate.balancingMetres(ENAMEL, COPPER, ENAMEL, COOLED, 0.003).orElseThrow();
    assertThat(same).isCloseTo(0.0003, within(1e-9));

    SplittableRandom random = new SplittableRandom(5);
    int balanced = 0;
    for (int n = 0; n < 300; n++) {
      Layer enamel = ENAMEL.withThickness(random.nextDouble(1e-4, 6e-4));
      Layer counter =
          new Layer(1e-3, random.nextDouble(55e9, 75e9), 0.22, random.nextDouble(8e-6, 16e-6));
      var metres = Laminate.balancingMetres(enamel, COPPER, counter, COOLED, 0.003);
      if (metres.isEmpty()) {
        continue;
      }
      balanced++;
      Laminate flat =
          Laminate.of(List.of(enamel, COPPER, counter.withThickness(metres.getAsDouble())), COOLED);
      assertThat(flat.bowMetres(0.1)).isCloseTo(0, within(1e-9));
    }
    assertThat(balanced).isGreaterThan(150);
  }

  /** A counter-enamel that expands as much as the metal pulls nothing back. */
  @Test
  void aCounterEnamelThatExpandsLikeTheMetalBalancesNothing() {
    assertThat(
            Laminate.balancingMetres(ENAMEL, COPPER, ENAMEL.withExpansion(17.5e-6), COOLED, 0.0005))
        .isEmpty();
  }
}
