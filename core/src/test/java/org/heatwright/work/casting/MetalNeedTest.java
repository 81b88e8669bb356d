package org.heatwright.work.casting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MetalNeedTest {

  private static final Spread STERLING = Spread.exactly(10_360);
  private static final Spread NONE = Spread.exactly(0);
  private static final Spread TENTH = Spread.exactly(0.10);

  private static double totalGrams(double grams, double patternDensity, Spread button) {
    return MetalNeed.ofPattern(grams / 1000, Spread.exactly(patternDensity), STERLING, NONE, button)
            .totalKilograms()
            .usual()
        * 1000;
  }

  /** Computed apart (implementers' sheet CHK-G2): 5.00 g of wax of 0.95, sterling, 10 % button. */
  @Test
  void waxOfTheUsualDensity() {
    assertThat(totalGrams(5, 950, TENTH)).isCloseTo(59.97895, within(0.5001e-5));
  }

  /** The trade's rule takes wax as 1.0 (forum and trade pages, read); CHK-G2. */
  @Test
  void waxByTheRuleOfTheTrade() {
    assertThat(totalGrams(5, 1000, TENTH)).isCloseTo(56.98, within(0.5001e-2));
  }

  /**
   * Worked example of notes on resin casting (read): 0.56 g at 1.09 is 5.32 g of sterling, 5.85 g
   * with 10 %; more digits computed apart (implementers' sheet CHK-G2).
   */
  @Test
  void thePublishedExampleInResinComesOut() {
    assertThat(totalGrams(0.56, 1090, NONE)).isCloseTo(5.32, within(0.005));
    assertThat(totalGrams(0.56, 1090, NONE)).isCloseTo(5.32257, within(0.5001e-5));
    assertThat(totalGrams(0.56, 1090, TENTH)).isCloseTo(5.85, within(0.005));
    assertThat(totalGrams(0.56, 1090, TENTH)).isCloseTo(5.85483, within(0.5001e-5));
  }

  @Test
  void theParentsOfTheRangeAreTheRangesOfTheSources() {
    MetalNeed need =
        MetalNeed.ofPattern(
            0.005,
            PatternMaterial.WAX.kilogramsPerCubicMetre(),
            STERLING,
            NONE,
            PouringMethod.VACUUM.buttonShare());
    assertThat(need.totalKilograms().low()).isCloseTo(0.005 * 10.36 * 1.10, within(1e-9));
    assertThat(need.totalKilograms().usual() * 1000).isCloseTo(59.97895, within(0.5001e-5));
    assertThat(need.totalKilograms().high()).isCloseTo(0.005 * 10.36 / 0.93 * 1.25, within(1e-9));
    assertThat(need.castKilograms().usual() + need.buttonKilograms().usual())
        .isCloseTo(need.totalKilograms().usual(), within(1e-12));
  }

  /** A volume is a pattern of density one: 1 cm³ of sterling is 10.36 g. */
  @Test
  void aVolumeNeedsNoPattern() {
    assertThat(MetalNeed.ofVolume(1e-6, STERLING, NONE, NONE).totalKilograms().usual())
        .isCloseTo(0.01036, within(1e-12));
    assertThat(
            MetalNeed.ofVolume(1e-6, STERLING, Spread.exactly(0.2), NONE).castKilograms().usual())
        .isCloseTo(0.01036 * 1.2, within(1e-12));
  }

  @Test
  void aSlipOfTheUnitIsTold() {
    assertThatThrownBy(() -> totalGrams(0, 950, TENTH)).hasMessageContaining("above zero");
    assertThatThrownBy(() -> totalGrams(Double.NaN, 950, TENTH)).hasMessageContaining("above zero");
    assertThatThrownBy(() -> totalGrams(50_000, 950, TENTH)).hasMessageContaining("unit mistaken");
  }

  /** By definition: 31.1034768 g, twenty pennyweight of 1.55517384 g. */
  @Test
  void troyWeights() {
    assertThat(Troy.ounces(0.0311034768)).isCloseTo(1, within(1e-12));
    assertThat(Troy.kilogramsOfPennyweights(1) * 1000).isCloseTo(1.55517384, within(1e-12));
    assertThat(Troy.pennyweights(Troy.kilogramsOfOunces(3))).isCloseTo(60, within(1e-12));
  }
}
