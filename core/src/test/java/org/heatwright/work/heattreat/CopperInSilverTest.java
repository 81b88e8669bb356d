package org.heatwright.work.heattreat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;

class CopperInSilverTest {

  /**
   * Read: a metallurgy institute's page on silver and copper (8.27 % at 779.1 °C) and a bench forum
   * on the diagram (sterling's solvus about 732 °C).
   */
  @Test
  void theLineGoesThroughBothPublishedPoints() {
    assertThat(CopperInSilver.solubleShare(Temperature.ofCelsius(779.1)))
        .isCloseTo(0.0827, within(1e-12));
    assertThat(CopperInSilver.solubleShare(Temperature.ofCelsius(732)))
        .isCloseTo(0.075, within(1e-12));
    assertThat(CopperInSilver.dissolvedShareOfSterling(Temperature.ofCelsius(732))).isEqualTo(1);
    assertThat(CopperInSilver.dissolvedShareOfSterling(Temperature.ofCelsius(760))).isEqualTo(1);
  }

  /** Straight in 1/T: computed apart, slope 2194.64 K. */
  @Test
  void halfwayInReciprocalTemperatureIsTheGeometricMean() {
    double middle = 2 / (1 / 1005.15 + 1 / 1052.25) - 273.15;
    assertThat(CopperInSilver.solubleShare(Temperature.ofCelsius(middle)))
        .isCloseTo(Math.sqrt(0.0827 * 0.075), within(1e-12));
  }

  @Test
  void hotterDissolvesMoreAndNothingIsToldAboveTheEutectic() {
    double before = 0;
    for (double celsius = 100; celsius <= 779; celsius += 1) {
      double share = CopperInSilver.solubleShare(Temperature.ofCelsius(celsius));
      assertThat(share).isGreaterThan(before);
      before = share;
    }
    assertThatThrownBy(() -> CopperInSilver.solubleShare(Temperature.ofCelsius(780)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("779.1");
  }
}
