package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DryingTest {

  /**
   * CHK-B1. Computed from grain densities (CRC Handbook solid densities; a salt data page for the
   * hemihydrate) and molar masses; one digit after the point, as printed.
   */
  @ParameterizedTest
  @CsvSource({"0.36, 401.1", "0.38, 416.5", "0.40, 431.1", "0.42, 445.0"})
  void freeWaterFollowsFromTheMix(double waterPowder, double kilograms) {
    assertThat(Drying.freeWaterKilogramsPerCubicMetre(waterPowder))
        .isCloseTo(kilograms, within(0.05));
  }

  /** CHK-B3: 75 x 100 mm, water to powder 0.40, no ring and no pattern, four digits as printed. */
  @Test
  void aMouldOf75MillimetresHolds190GramsOfFreeWater() {
    Mould mould = new Mould(1, 0.075, 0.100, 0);
    assertThat(Drying.freeWaterKilograms(mould, Investment.gypsum(0.40)))
        .isCloseTo(0.1905, within(0.00005));
  }

  /**
   * CHK-B10, quasi-steady drying of a cylinder: the thin-Stefan-number limit of the one-phase
   * freezing problem (Carslaw and Jaeger, Conduction of Heat in Solids, 1959, from memory); a 37.5
   * mm, k 0.45 W/(m K), L 977 MJ/m³.
   */
  @ParameterizedTest
  @CsvSource({"50, 15265.625", "100, 7632.8125"})
  void aHeldSurfaceDriesTheCylinder(double kelvins, double seconds) {
    assertThat(Drying.throughSeconds(0.0375, 977e6, 0.45, Double.POSITIVE_INFINITY, kelvins))
        .isCloseTo(seconds, within(1e-6));
  }

  /** CHK-B10, the film's part. */
  @Test
  void anOuterFilmOf30AddsItsOwnTime() {
    double held = Drying.throughSeconds(0.0375, 977e6, 0.45, Double.POSITIVE_INFINITY, 100);
    double behindFilm = Drying.throughSeconds(0.0375, 977e6, 0.45, 30, 100);
    assertThat(behindFilm - held).isCloseTo(6106.25, within(1e-6));
  }

  /** CHK-B10, the front's position. */
  @Test
  void theFrontReachesHalfTheRadiusAfterFortyPerCentOfTheTime() {
    assertThat(Drying.shareOfTimeUntil(0.5)).isCloseTo(0.403426, within(5e-7));
    assertThat(Drying.shareOfTimeUntil(1)).isEqualTo(0);
    assertThat(Drying.shareOfTimeUntil(1e-9)).isCloseTo(1, within(1e-12));
  }
}
