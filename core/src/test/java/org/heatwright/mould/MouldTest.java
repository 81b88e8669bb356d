package org.heatwright.mould;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.material.Material;
import org.heatwright.numerics.LinearTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MouldTest {

  /**
   * CHK-B1, the water arithmetic of the default mix: computed apart from this code from CRC grain
   * densities and molar masses. Last digits as printed there.
   */
  @ParameterizedTest
  @CsvSource({
    "0.36, 0.7583, 0.30415, 1.2942, 401.1",
    "0.38, 0.7783, 0.32415, 1.2609, 416.5",
    "0.40, 0.7983, 0.34415, 1.2293, 431.1",
    "0.42, 0.8183, 0.36415, 1.1993, 445.0"
  })
  void doesTheWaterArithmetic(
      double waterPowder, double litres, double freeWater, double fired, double freePerVolume) {
    assertThat(GypsumInvestment.cubicMetresPerPowder(waterPowder) * 1000)
        .isCloseTo(litres, within(5e-5));
    assertThat(GypsumInvestment.freeWaterPerPowder(waterPowder)).isCloseTo(freeWater, within(5e-6));
    assertThat(GypsumInvestment.firedDensity(waterPowder) / 1000).isCloseTo(fired, within(5e-5));
    assertThat(GypsumInvestment.freeWaterDensity(waterPowder))
        .isCloseTo(freePerVolume, within(0.05));
  }

  /**
   * CHK-B2 and CHK-B3, heats of a mould of 75 mm by 100 mm at 0.40: evaporation 429.9 kJ, dihydrate
   * to hemihydrate 95.1 kJ, on to anhydrite 24.8 kJ. Computed apart with scipy, implementers'
   * sheet.
   */
  @Test
  void takesUpTheHeatOfTheSheet() {
    Material wet = GypsumInvestment.material(0.40, 1);
    double kilograms = wet.densityKilogramsPerCubicMetre() * Math.PI / 4 * 0.075 * 0.075 * 0.100;

    assertThat(wet.latentHeats().get(0).joulesPerKilogram() * kilograms / 1000)
        .isCloseTo(429.9, within(0.1));
    assertThat(wet.latentHeats().get(1).joulesPerKilogram() * kilograms / 1000)
        .isCloseTo(95.1, within(0.1));
    assertThat(wet.latentHeats().get(2).joulesPerKilogram() * kilograms / 1000)
        .isCloseTo(24.8, within(0.1));
  }

  /**
   * CHK-B4, sensible heat of the fired mix from 25 to 730 °C: 728.57 kJ/kg, computed apart with
   * scipy, implementers' sheet; the table has a tenth of its points, so within 0.5 %. With the
   * inversion of cristobalite as a heat of its own the sum may differ by what the fit smeared.
   */
  @Test
  void holdsTheHeatOfTheSheet() {
    LinearTable fitted = GypsumInvestment.material(0.40, 0).heatCapacityJoulesPerKilogramKelvin();
    assertThat((fitted.integral(730) - fitted.integral(25)) / 1000)
        .isCloseTo(728.57, within(0.005 * 728.57));

    Material inverting = BodyMaterials.named("gypsum-investment-40-fired").orElseThrow().material();
    LinearTable own = inverting.heatCapacityJoulesPerKilogramKelvin();
    double latent = inverting.latentHeats().stream().mapToDouble(l -> l.joulesPerKilogram()).sum();
    assertThat((own.integral(730) - own.integral(25) + latent) / 1000)
        .isCloseTo(728.57, within(0.02 * 728.57));
  }

  @Test
  void refusesMouldsThatCannotBe() {
    assertThatThrownBy(() -> new Mould(0, 0.09, 0.15, 0.003)).hasMessageContaining("1 to 200");
    assertThatThrownBy(() -> new Mould(1, 0.9, 0.15, 0.003)).hasMessageContaining("500 mm");
    assertThatThrownBy(() -> new Mould(1, 0.09, 0.15, 0.04)).hasMessageContaining("quarter");
    assertThatThrownBy(() -> Investment.gypsum(40)).hasMessageContaining("0.40 means");
  }
}
