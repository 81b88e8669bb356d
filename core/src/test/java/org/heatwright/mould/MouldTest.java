package org.heatwright.mould;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

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

  @Test
  void refusesMouldsThatCannotBe() {
    assertThatThrownBy(() -> new Mould(0, 0.09, 0.15, 0.003)).hasMessageContaining("1 to 200");
    assertThatThrownBy(() -> new Mould(1, 0.9, 0.15, 0.003)).hasMessageContaining("500 mm");
    assertThatThrownBy(() -> new Mould(1, 0.09, 0.15, 0.04)).hasMessageContaining("quarter");
    assertThatThrownBy(() -> Investment.gypsum(40)).hasMessageContaining("0.40 means");
  }
}
