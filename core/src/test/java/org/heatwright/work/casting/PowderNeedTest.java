package org.heatwright.work.casting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.heatwright.mould.Mould;
import org.junit.jupiter.api.Test;

class PowderNeedTest {

  private static final Mould MOULD = new Mould(1, 0.075, 0.100, 0);

  private static PowderNeed need(double waxGrams) {
    return PowderNeed.gypsum(
        List.of(new MouldFill(MOULD, waxGrams / 1000 / 950)), 0.40, PowderNeed.USUAL_WASTE_SHARE);
  }

  /** Computed apart (implementers' sheet CHK-G3): 75 x 100 mm, 5 % waste, w 0.40. */
  @Test
  void aMouldWithoutAPattern() {
    assertThat(need(0).slurryCubicMetres() * 1e6).isCloseTo(463.876, within(0.5001e-3));
    assertThat(need(0).powderKilograms().usual() * 1000).isCloseTo(581.07, within(0.5001e-2));
    assertThat(need(0).waterKilograms().usual() * 1000).isCloseTo(232.43, within(0.5001e-2));
  }

  /** Computed apart (implementers' sheet CHK-G3): the same with 20 g of wax in it. */
  @Test
  void thePatternTakesItsRoom() {
    assertThat(need(20).powderKilograms().usual() * 1000).isCloseTo(554.70, within(0.5001e-2));
    assertThat(need(20).waterKilograms().usual() * 1000).isCloseTo(221.88, within(0.5001e-2));
  }

  @Test
  void severalMouldsSumUp() {
    MouldFill one = new MouldFill(MOULD, 20e-3 / 950);
    MouldFill three = new MouldFill(new Mould(3, 0.075, 0.100, 0), 20e-3 / 950);
    double single = PowderNeed.gypsum(List.of(one), 0.4, 0.05).powderKilograms().usual();
    assertThat(PowderNeed.gypsum(List.of(one, three), 0.4, 0.05).powderKilograms().usual())
        .isCloseTo(4 * single, within(1e-12));
  }

  @Test
  void aKitchenScaleIsNeverShortOfPowderAndKeepsTheRatio() {
    PowderNeed.Weighed five = need(0).weighed(0.005);
    assertThat(five.powderKilograms()).isCloseTo(0.585, within(1e-12));
    assertThat(five.waterKilograms()).isCloseTo(0.235, within(1e-12)); // 234 g, to fives
    assertThat(five.waterPowder()).isCloseTo(0.4017, within(0.5001e-4));
    PowderNeed.Weighed one = need(0).weighed(0.001);
    assertThat(one.powderKilograms()).isCloseTo(0.582, within(1e-12));
    assertThat(one.waterKilograms()).isCloseTo(0.233, within(1e-12));
  }

  @Test
  void theYieldOfADataSheetWins() {
    PowderNeed own = PowderNeed.ofYield(List.of(new MouldFill(MOULD, 0)), 0.40, 0.05, 0.8e-3);
    assertThat(own.powderKilograms().usual()).isCloseTo(0.463876 / 0.8, within(1e-5));
    assertThat(own.powderKilograms().low()).isEqualTo(own.powderKilograms().high());
  }

  @Test
  void whatCannotBeIsTold() {
    assertThatThrownBy(() -> new MouldFill(MOULD, 1))
        .hasMessageContaining("smaller than its mould");
    assertThatThrownBy(() -> PowderNeed.gypsum(List.of(), 0.4, 0))
        .hasMessageContaining("one mould");
    assertThatThrownBy(() -> PowderNeed.gypsum(List.of(new MouldFill(MOULD, 0)), 40, 0))
        .hasMessageContaining("0.40 means 40 g to 100 g");
    assertThatThrownBy(
            () -> PowderNeed.ofYield(List.of(new MouldFill(MOULD, 0)), 0.4, 0.05, 0.3e-3))
        .hasMessageContaining("more than its water");
    assertThatThrownBy(() -> need(0).weighed(0)).hasMessageContaining("above 0");
  }
}
