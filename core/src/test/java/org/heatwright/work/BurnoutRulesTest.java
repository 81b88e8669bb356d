package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.heatwright.units.HeatingRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BurnoutRulesTest {

  private static final BinderRules GYPSUM = new GypsumRules();
  private static final BinderRules PHOSPHATE = new PhosphateRules();

  /**
   * Three cycles of one investment maker, as quoted by a caster on a bench forum (read): holds at
   * 149, 315 or 371, 482, 732 °C and the pour temperature, in hours.
   */
  @ParameterizedTest(name = "{0} mm")
  @CsvSource({"63, 63, 2, 1, 2, 1", "89, 102, 2, 2, 3, 1", "102, 203, 2, 2, 4, 2"})
  void thePublishedCyclesComeOut(
      double diameter, double height, int dry, int waxOut, int top, int pour) {
    assertThat(GYPSUM.dryHold(diameter, 1)).isEqualTo(Duration.ofHours(dry));
    assertThat(BurnoutRules.waxHold(diameter)).isEqualTo(Duration.ofHours(waxOut));
    Duration tall =
        BurnoutRules.isTall(height / 1000) ? BurnoutRules.EXTRA_FOR_TALL : Duration.ZERO;
    assertThat(GYPSUM.topHold(diameter).plus(tall)).isEqualTo(Duration.ofHours(top));
    assertThat(BurnoutRules.pourSoak(diameter)).isEqualTo(Duration.ofHours(pour));
  }

  /**
   * Manual of a small casting machine (read): small moulds 150 °C/h, large ones 65 to 80 °C/h early
   * on. "Small" is taken as 65 mm, "large" as 90 to 100 mm: our estimate.
   */
  @Test
  void earlyRisesLieBetweenThoseOfTheManual() {
    assertThat(GYPSUM.earlyRise(65).value()).isEqualTo(HeatingRate.ofKelvinsPerHour(150));
    assertThat(GYPSUM.earlyRise(90).value().kelvinsPerHour()).isBetween(65.0, 80.0);
    assertThat(GYPSUM.earlyRise(100).value().kelvinsPerHour()).isBetween(60.0, 80.0);
  }

  @Test
  void whatWePlanIsSlowerThanWhatWeWarnAbout() {
    for (double d = 20; d <= 500; d += 0.5) {
      double planned = GYPSUM.earlyRise(d).value().kelvinsPerHour();
      assertThat(planned).isLessThanOrEqualTo(GYPSUM.fastestWetRise(d).kelvinsPerHour());
      assertThat(planned).isLessThanOrEqualTo(GYPSUM.fastestCristobaliteRise(d).kelvinsPerHour());
      assertThat(GYPSUM.lateRise(d).value()).isLessThanOrEqualTo(GYPSUM.fastestQuartzRise());
    }
  }

  /**
   * No hold at the top may end before the core has caught up, and an hour more: 115 min for 125 x
   * 200 mm by our estimate of conduction and 40 % more for its uncertainty, going with the diameter
   * squared.
   */
  @Test
  void theTopHoldOutlastsTheCoreOfAnyMould() {
    for (double d = 20; d <= 500; d += 5) {
      double catchUpMinutes = 1.4 * 115 * (d / 125) * (d / 125);
      assertThat((double) GYPSUM.topHold(d).toMinutes())
          .isGreaterThanOrEqualTo(catchUpMinutes + 60 - 7.5); // rounded to quarters
    }
  }

  @Test
  void aCrowdedKilnHoldsLonger() {
    assertThat(BurnoutRules.kilnFactor(0.3)).isEqualTo(1);
    assertThat(BurnoutRules.kilnFactor(0.5)).isEqualTo(1.25);
    assertThat(BurnoutRules.kilnFactor(0.7)).isEqualTo(1.5);
    assertThat(BurnoutRules.kilnFactor(1.2)).isEqualTo(2);
  }

  @Test
  void alloysAreKnownByTheWordsInTheirNames() {
    assertThat(GYPSUM.pourOf("sterling-925").orElseThrow().usual().celsius()).isEqualTo(500);
    assertThat(GYPSUM.pourOf("white-gold-18k").orElseThrow().usual().celsius()).isEqualTo(650);
    assertThat(GYPSUM.pourOf("yellow-gold-14k").orElseThrow().usual().celsius()).isEqualTo(540);
    assertThat(GYPSUM.pourOf("bronze")).isPresent();
    assertThat(GYPSUM.pourOf("pewter")).isEmpty();
    assertThat(BurnoutRules.needsPhosphate("platinum-950")).isTrue();
    assertThat(BurnoutRules.needsPhosphate("palladium-white-gold-14k")).isFalse();
  }
}
