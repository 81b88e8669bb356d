package org.heatwright.work.glass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.units.HeatingRate;
import org.heatwright.work.glass.Glass.Elastic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Implementers' sheet CHK-E1 and CHK-E2, computed apart in Python. */
class AnnealingTest {

  private static final Elastic ART = Elastic.ART;

  /** CHK-E1: E and nu of a float's bulletin give its G of 29 to 30 GPa. */
  @Test
  void theShearModulusIsThatOfTheBulletin() {
    assertThat(Elastic.FLOAT.shearPascals()).isBetween(29e9, 30e9);
  }

  /** CHK-E2, every row. */
  @ParameterizedTest
  @CsvSource({
    "3, 4992.0, 1248.0, 1497.6, 374.4",
    "6, 1248.0, 312.0, 374.4, 93.6",
    "9, 554.7, 138.7, 166.4, 41.6",
    "12, 312.0, 78.0, 93.6, 23.4",
    "15, 199.7, 49.9, 59.9, 15.0",
    "19, 124.5, 31.1, 37.3, 9.3",
    "25, 71.9, 18.0, 21.6, 5.4"
  })
  void theTableOfCoolingRates(
      double millimetres, double both1, double one1, double both03, double one03) {
    double whole = millimetres / 1000;
    assertThat(rate(whole / 2, 1e6)).isCloseTo(both1, within(0.0501));
    assertThat(rate(whole, 1e6)).isCloseTo(one1, within(0.0501));
    assertThat(rate(whole / 2, 0.3e6)).isCloseTo(both03, within(0.0501));
    assertThat(rate(whole, 0.3e6)).isCloseTo(one03, within(0.0501));
    HeatingRate atOne = HeatingRate.ofKelvinsPerHour(rate(whole, 1e6));
    assertThat(Annealing.differenceKelvins(ART, whole, atOne)).isCloseTo(3.714286, within(1e-6));
    assertThat(Annealing.tensionPascals(ART, whole, atOne)).isCloseTo(1e6, within(1e-3));
  }

  private static double rate(double depth, double pascals) {
    return Annealing.coolingRate(ART, depth, pascals).kelvinsPerHour();
  }

  /**
   * A published practitioner's schedule (read: 9, 12 and 15 mm at 55, 25 and 15 K/h for the first
   * 55 K, then 1.8 times as fast, at most 5 K of spread). One face at 0.3 MPa comes to 41.6, 23.4
   * and 15.0: within a quarter, on the careful side. Its own goal of 5 K is kept too.
   */
  @ParameterizedTest
  @CsvSource({"9, 55", "12, 25", "15, 15"})
  void thePublishedPractitionersSchedule(double millimetres, double published) {
    double ours = rate(millimetres / 1000, Annealing.USUAL_TENSION_PASCALS);
    assertThat(ours / published).isBetween(0.75, 1.0001);
    assertThat(
            Annealing.differenceKelvins(
                ART, millimetres / 1000, HeatingRate.ofKelvinsPerHour(published)))
        .isLessThan(5);
  }

  /**
   * Soaks that were read: about 30 min at 6 mm, 2 h 40 at 25 mm, some 7 h at 75 mm. Ours is within
   * 7 % of the first two; at 75 mm it is half as long again, because the evening out of 75 mm from
   * one face alone takes five hours.
   */
  @ParameterizedTest
  @CsvSource({"6, 30, 0.95, 1.07", "25, 160, 0.95, 1.07", "75, 420, 1.2, 1.7"})
  void soaksOfPractice(double millimetres, double minutes, double least, double most) {
    double ours = Annealing.soak(ART, millimetres / 1000, millimetres / 1000).toSeconds() / 60.0;
    assertThat(ours / minutes).isBetween(least, most);
  }

  /** {@code ln(20·4/pi)·4/pi²}: the time of the first term from 20 to 1 K is 1.31 L²/kappa. */
  @Test
  void eveningOutIsTheFirstTermOfFouriersSeries() {
    double depth = 0.019;
    double first =
        Math.log(20 * 4 / Math.PI)
            * 4
            / (Math.PI * Math.PI)
            * depth
            * depth
            / ART.diffusivitySquareMetresPerSecond();
    assertThat(Annealing.equaliseSeconds(ART, depth)).isCloseTo(first, within(0.02 * first));
  }
}
