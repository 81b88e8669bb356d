package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.heatwright.units.HeatingRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BurnoutRulesTest {

  /**
   * Three cycles of one investment maker, as quoted by a caster on a bench forum (read): holds at
   * 149, 315 or 371, 482, 732 °C and the pour temperature, in hours.
   */
  @ParameterizedTest(name = "{0} mm")
  @CsvSource({"63, 63, 2, 1, 2, 1", "89, 102, 2, 2, 3, 1", "102, 203, 2, 2, 4, 2"})
  void thePublishedCyclesComeOut(
      double diameter, double height, int dry, int waxOut, int top, int pour) {
    assertThat(BurnoutRules.dryHold(diameter, 1)).isEqualTo(Duration.ofHours(dry));
    assertThat(BurnoutRules.waxHold(diameter)).isEqualTo(Duration.ofHours(waxOut));
    Duration tall =
        BurnoutRules.isTall(height / 1000) ? BurnoutRules.EXTRA_FOR_TALL : Duration.ZERO;
    assertThat(BurnoutRules.topHold(diameter).plus(tall)).isEqualTo(Duration.ofHours(top));
    assertThat(BurnoutRules.pourSoak(diameter)).isEqualTo(Duration.ofHours(pour));
  }

  /**
   * Manual of a small casting machine (read): small moulds 150 °C/h, large ones 65 to 80 °C/h early
   * on. "Small" is taken as 65 mm, "large" as 90 to 100 mm: our estimate.
   */
  @Test
  void earlyRisesLieBetweenThoseOfTheManual() {
    assertThat(BurnoutRules.plannedEarlyRise(65)).isEqualTo(HeatingRate.ofKelvinsPerHour(150));
    assertThat(BurnoutRules.plannedEarlyRise(90).kelvinsPerHour()).isBetween(65.0, 80.0);
    assertThat(BurnoutRules.plannedEarlyRise(100).kelvinsPerHour()).isBetween(60.0, 80.0);
  }

  @Test
  void whatWePlanIsSlowerThanWhatWeWarnAbout() {
    for (double d = 20; d <= 500; d += 0.5) {
      double planned = BurnoutRules.plannedEarlyRise(d).kelvinsPerHour();
      assertThat(planned).isLessThanOrEqualTo(BurnoutRules.fastestWetRise(d).kelvinsPerHour());
      assertThat(planned)
          .isLessThanOrEqualTo(BurnoutRules.fastestCristobaliteRise(d).kelvinsPerHour());
      assertThat(BurnoutRules.plannedLateRise(d))
          .isLessThanOrEqualTo(BurnoutRules.FASTEST_QUARTZ_RISE);
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
      assertThat((double) BurnoutRules.topHold(d).toMinutes())
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
    assertThat(BurnoutRules.pourOf("sterling-925").orElseThrow().usual().celsius()).isEqualTo(500);
    assertThat(BurnoutRules.pourOf("white-gold-18k").orElseThrow().usual().celsius())
        .isEqualTo(650);
    assertThat(BurnoutRules.pourOf("yellow-gold-14k").orElseThrow().usual().celsius())
        .isEqualTo(540);
    assertThat(BurnoutRules.pourOf("bronze")).isPresent();
    assertThat(BurnoutRules.pourOf("pewter")).isEmpty();
    assertThat(BurnoutRules.needsPhosphate("platinum-950")).isTrue();
    assertThat(BurnoutRules.needsPhosphate("palladium-white-gold-14k")).isFalse();
  }
}
