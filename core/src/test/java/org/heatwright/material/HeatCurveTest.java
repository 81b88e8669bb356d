package org.heatwright.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.heatwright.numerics.LinearTable;
import org.junit.jupiter.api.Test;

class HeatCurveTest {

  private static final Material DRYING =
      new Material(
          "drying",
          1200,
          LinearTable.points(20, 0.8, 100, 0.4),
          LinearTable.points(20, 900, 800, 1100),
          List.of(new Material.LatentHeat(95, 115, 400_000, true)),
          Origin.estimate("made for this test"));

  @Test
  void givesBackTheTemperatureItsHeatCameFrom() {
    HeatCurve curve = HeatCurve.of(DRYING);
    for (double t = -40; t < 1490; t += 3.7) {
      double heat = exactHeat(t);
      assertThat(curve.celsius(curve.interval(heat), heat)).isCloseTo(t, within(0.05));
      assertThat(curve.heatAt(t)).isCloseTo(heat, within(1200 * 1100 * 0.1));
    }
  }

  @Test
  void doesSoForEveryMaterialOfTheLibrary() {
    for (Material material : WallMaterials.all()) {
      HeatCurve curve = HeatCurve.of(material);
      LinearTable capacity = material.heatCapacityJoulesPerKilogramKelvin();
      for (double t = -40; t < 1490; t += 3.7) {
        double heat =
            material.densityKilogramsPerCubicMetre()
                * (capacity.integral(t) - capacity.integral(HeatCurve.LOWEST_CELSIUS));
        assertThat(curve.celsius(curve.interval(heat), heat))
            .as(material.name())
            .isCloseTo(t, within(0.05));
      }
    }
  }

  @Test
  void itsConductivityHasTheSlopeThatItSays() {
    for (Material material : WallMaterials.all()) {
      HeatCurve curve = HeatCurve.of(material);
      double[] heat = {curve.heatAt(25.3), curve.heatAt(423.7), curve.heatAt(951.1)};
      double[] slope = new double[heat.length];
      curve.conductivitySlopes(heat, 0, heat.length, slope);
      for (int i = 0; i < heat.length; i++) {
        int interval = curve.interval(heat[i]);
        double more = curve.conductivity(interval, heat[i] + 10);
        double less = curve.conductivity(interval, heat[i] - 10);
        assertThat(slope[i]).as(material.name()).isCloseTo((more - less) / 20, within(1e-13));
      }
    }
  }

  @Test
  void takesUpTheLatentHeatWithinItsRangeAndNowhereElse() {
    HeatCurve curve = HeatCurve.of(DRYING);
    double sensible =
        1200 * DRYING.heatCapacityJoulesPerKilogramKelvin().integral(115)
            - 1200 * DRYING.heatCapacityJoulesPerKilogramKelvin().integral(95);
    assertThat(curve.heatAt(115) - curve.heatAt(95))
        .isCloseTo(sensible + 1200 * 400_000.0, within(1200 * 22_000 * 0.1));
  }

  private static double exactHeat(double t) {
    LinearTable capacity = DRYING.heatCapacityJoulesPerKilogramKelvin();
    double latent = 400_000 * Math.max(0, Math.min(1, (t - 95) / 20));
    return 1200 * (capacity.integral(t) - capacity.integral(HeatCurve.LOWEST_CELSIUS) + latent);
  }
}
