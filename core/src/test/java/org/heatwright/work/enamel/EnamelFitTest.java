package org.heatwright.work.enamel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.heatwright.work.enamel.EnamelFit.Verdict;
import org.junit.jupiter.api.Test;

class EnamelFitTest {

  private static EnamelFit fit(
      EnamelMetal metal, double sheetMm, double perKelvin, double coatMm, double counterMm) {
    EnamelGlass glass = EnamelGlass.ofSheet(perKelvin, FusingClass.MEDIUM);
    return EnamelFit.of(
        new EnamelFit.Piece(
            metal,
            sheetMm / 1000,
            glass,
            coatMm / 1000,
            counterMm > 0 ? Optional.of(glass) : Optional.empty(),
            counterMm / 1000,
            0.04));
  }

  /**
   * Common practice: what is sold for a metal holds on it, counter-enamelled, at usual thickness.
   */
  @Test
  void whatIsSoldForAMetalSitsSoundly() {
    for (EnamelMetal metal : EnamelMetals.all()) {
      EnamelGlass glass = EnamelGlass.soldFor(metal, FusingClass.MEDIUM);
      EnamelFit fit =
          EnamelFit.of(
              new EnamelFit.Piece(metal, 0.0008, glass, 0.0003, Optional.of(glass), 0.0003, 0.04));
      assertThat(fit.verdict()).as(metal.name()).isEqualTo(Verdict.SOUND);
      assertThat(fit.meanPascals().high()).as(metal.name()).isNegative();
      assertThat(fit.bowMetres().high()).isCloseTo(0, within(3e-4));
    }
  }

  /** Common practice: enamel that expands more than its metal crazes. */
  @Test
  void anEnamelThatExpandsMoreThanTheMetalCracks() {
    assertThat(fit(EnamelMetals.STEEL, 0.8, 16e-6, 0.3, 0.3).verdict())
        .isEqualTo(Verdict.HAIRLINE_CRACKS_LIKELY);
    assertThat(fit(EnamelMetals.STEEL, 0.8, 16e-6, 0.3, 0.3).crackMarginPascals().median())
        .isNegative();
  }

  /**
   * Common practice: thick enamel on one side of thin metal cracks, the counter-enamel saves it.
   */
  @Test
  void counterEnamelSavesThickEnamel() {
    assertThat(fit(EnamelMetals.COPPER, 0.5, 10.8e-6, 1.0, 0).verdict())
        .isEqualTo(Verdict.HAIRLINE_CRACKS_LIKELY);
    assertThat(fit(EnamelMetals.COPPER, 0.5, 10.8e-6, 1.0, 1.0).verdict())
        .isNotEqualTo(Verdict.HAIRLINE_CRACKS_LIKELY);
  }

  /** An enamel that expands hardly at all on silver is pressed off. */
  @Test
  void tooLittleExpansionChips() {
    assertThat(fit(EnamelMetals.FINE_SILVER, 0.8, 5e-6, 0.5, 0.5).verdict())
        .isEqualTo(Verdict.CHIPS_LIKELY);
  }

  /** The median draw is the closed form of CHK-C5, by medians; the range holds it. */
  @Test
  void theRangeHoldsTheClosedForm() {
    EnamelGlass glass = EnamelGlass.ofSheet(11e-6, FusingClass.MEDIUM);
    double change = 20 - glass.setsCelsius().median();
    Laminate usual =
        Laminate.of(List.of(glass.layer(0.0003), EnamelMetals.COPPER.layer(0.0008)), change);
    EnamelFit fit = fit(EnamelMetals.COPPER, 0.8, 11e-6, 0.3, 0);

    assertThat(usual.bowMetres(0.04)).isBetween(fit.bowMetres().low(), fit.bowMetres().high());
    assertThat(fit.bowMetres().median())
        .isCloseTo(usual.bowMetres(0.04), within(0.08 * Math.abs(usual.bowMetres(0.04))));
    assertThat(usual.meanPascals(0)).isBetween(fit.meanPascals().low(), fit.meanPascals().high());
    assertThat(fit.metalYields()).isTrue();
    assertThat(fit.balancingMetres().orElseThrow().median()).isCloseTo(0.0003, within(3e-5));
  }

  /**
   * On random pieces: more expansion brings it nearer to cracks and further from chips; a thicker
   * counter-enamel turns the bow; the shares are shares.
   */
  @Test
  void everythingMovesTheRightWay() {
    SplittableRandom random = new SplittableRandom(11);
    List<EnamelMetal> metals = EnamelMetals.all();
    for (int n = 0; n < 150; n++) {
      EnamelMetal metal = metals.get(random.nextInt(metals.size()));
      double sheet = random.nextDouble(0.3, 2);
      double coat = random.nextDouble(0.1, 0.8);
      double expansion = random.nextDouble(6e-6, 14e-6);
      EnamelFit both = fit(metal, sheet, expansion, coat, coat);
      EnamelFit more = fit(metal, sheet, expansion + 1.5e-6, coat, coat);
      assertThat(more.meanPascals().median()).isGreaterThan(both.meanPascals().median());
      assertThat(more.crackShare()).isGreaterThanOrEqualTo(both.crackShare());
      assertThat(more.chipShare()).isLessThanOrEqualTo(both.chipShare());
      double thin = fit(metal, sheet, expansion, coat, coat * 0.6).bowMetres().median();
      double thick = fit(metal, sheet, expansion, coat, coat * 1.4).bowMetres().median();
      assertThat(thin).as("%s %s %s", metal.name(), sheet, coat).isLessThan(thick);
      assertThat(both.crackShare() + both.chipShare()).isBetween(0.0, 1.0);
    }
  }
}
