package org.heatwright.work.sinter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SizesTest {

  /** Computed apart (implementers' sheet, CHK-D4); densities in g/cm³. */
  @ParameterizedTest
  @CsvSource({"5.5, 0, 9.4, 0.163605", "5.5, 0.05, 9.4, 0.177784", "6.0, 0.03, 9.9, 0.162286"})
  void shrinkageOfDensities(double green, double lost, double fired, double share) {
    assertThat(Shrinkage.ofDensities(1000 * green, lost, 1000 * fired))
        .isCloseTo(share, within(1e-6));
  }

  /** The same sheet: 0.55 to 0.90 of full density. */
  @Test
  void shrinkageOfShares() {
    assertThat(Shrinkage.ofShares(0.55, 0.90)).isCloseTo(0.151393, within(1e-6));
    assertThat(Shrinkage.greenShare(0.90, 0.151393)).isCloseTo(0.55, within(2e-6));
  }

  @Test
  void sizeBeforeIsTheWantedSizeOverWhatIsLeft() {
    assertThat(Shrinkage.beforeMetres(0.0172, 0.12)).isCloseTo(0.019545, within(1e-6));
  }

  /**
   * From memory: jewellers' tables give US size 7 as 17.3 mm inside and 54.4 mm around, size 10 as
   * 19.8 mm.
   */
  @ParameterizedTest
  @CsvSource({"7, 17.3", "10, 19.8"})
  void ringSizes(double size, double millimetres) {
    assertThat(RingSize.ofUsMetres(size)).isCloseTo(millimetres / 1000, within(0.05e-3));
    assertThat(RingSize.usOfMetres(RingSize.ofUsMetres(size))).isCloseTo(size, within(1e-9));
    assertThat(RingSize.ofCircumferenceMetres(0.0544)).isCloseTo(0.01732, within(1e-5));
  }
}
