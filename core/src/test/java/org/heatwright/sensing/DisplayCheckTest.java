package org.heatwright.sensing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.heatwright.sensing.DisplayCheck.Standing;
import org.heatwright.sensing.WrongType.Comparison;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DisplayCheckTest {

  private static Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  private static Comparison seen(double shown, double truth) {
    return new Comparison(celsius(truth), celsius(shown));
  }

  private static DisplayCheck of(Optional<MeltCheck> melt, Comparison... seen) {
    return new DisplayCheck(melt, List.of(seen), Optional.empty(), Optional.empty());
  }

  private static Optional<MeltCheck> melt(double shown) {
    return Optional.of(
        MeltCheck.seenAt(celsius(shown), MeltCheck.Surroundings.SHIELDED_BY_CHARCOAL));
  }

  @Test
  void whatWasSeenIsSortedAndKept() {
    DisplayCheck check = of(melt(966.78), seen(503, 500), seen(102, 100));
    assertThat(check.points())
        .extracting(p -> p.shown().celsius())
        .containsExactly(102.0, 503.0, 966.78);
    OffsetCorrection correction = check.correction();
    assertThat(correction.truth(celsius(503)).celsius()).isCloseTo(500, within(1e-9));
    assertThat(correction.shown(MeltCheck.SILVER_MELTS).celsius()).isCloseTo(966.78, within(1e-9));
    assertThat(check.usualWork()).isEqualTo(MeltCheck.SILVER_MELTS);
    assertThat(of(Optional.empty(), seen(503, 500), seen(102, 100)).usualWork())
        .isEqualTo(celsius(100));
  }

  @Test
  void standingsAreToldApart() {
    DisplayCheck check = of(melt(966.78), seen(503, 500));
    assertThat(check.standing(celsius(500))).isEqualTo(Standing.SEEN);
    assertThat(check.standing(MeltCheck.SILVER_MELTS)).isEqualTo(Standing.SEEN);
    assertThat(check.standing(celsius(700))).isEqualTo(Standing.BETWEEN);
    assertThat(check.standing(celsius(499))).isEqualTo(Standing.FIRST_GUESS);
    assertThat(check.standing(celsius(962))).isEqualTo(Standing.FIRST_GUESS);
    assertThat(of(melt(966.78)).standing(celsius(500))).isEqualTo(Standing.FIRST_GUESS);
  }

  @Test
  void aSinglePointIsCarriedInProportionUnlessItIsCold() {
    assertThat(of(Optional.empty(), seen(510, 500)).correction().shown(celsius(250)).celsius())
        .isCloseTo(255, within(1e-9));
    for (double shown : new double[] {2, -2}) {
      assertThat(of(Optional.empty(), seen(shown, 0)).correction().shown(celsius(800)).celsius())
          .isCloseTo(800 + shown, within(1e-9));
    }
  }

  /** Any terminals of a workshop: the couple is named though nobody said how warm they are. */
  @ParameterizedTest
  @ValueSource(doubles = {12, 20, 30, 40, 48})
  void theTerminalsNeedNotBeKnown(double terminals) {
    Random random = new Random(3);
    for (double[] truths : new double[][] {{650, 900}, {500, 961.78}}) {
      Comparison[] seen = new Comparison[2];
      for (int i = 0; i < 2; i++) {
        double shown =
            WrongType.shown(
                        ThermocoupleType.S,
                        ThermocoupleType.K,
                        celsius(truths[i]),
                        celsius(terminals))
                    .orElseThrow()
                    .celsius()
                + 2 * random.nextDouble()
                - 1;
        seen[i] = seen(shown, truths[i]);
      }
      DisplayCheck check =
          new DisplayCheck(
              Optional.empty(), List.of(seen), Optional.of(ThermocoupleType.K), Optional.empty());
      assertThat(check.suspects().get(0).sensor()).isEqualTo(ThermocoupleType.S);
      assertThat(check.suspects()).doesNotHaveDuplicates();
      assertThat(check.isOffset()).isFalse();
    }
  }

  /** An ordinary offset of every type is none of another couple. */
  @Test
  void anOffsetStaysAnOffset() {
    for (ThermocoupleType type : ThermocoupleType.values()) {
      DisplayCheck check =
          new DisplayCheck(
              Optional.empty(),
              List.of(seen(306, 300), seen(393, 385)),
              Optional.of(type),
              Optional.empty());
      assertThat(check.suspects()).as("%s", type).isEmpty();
      assertThat(check.isOffset()).isTrue();
    }
  }

  @Test
  void whatIsTooFarOffIsNoOffset() {
    assertThat(of(Optional.empty(), seen(601, 500)).tooFarOff()).isPresent();
    assertThat(of(Optional.empty(), seen(600, 500)).tooFarOff()).isEmpty();
    assertThat(of(Optional.empty(), seen(399, 500)).isOffset()).isFalse();
  }

  @Test
  void nothingSeenIsRefused() {
    assertThatThrownBy(() -> of(Optional.empty())).hasMessageContaining("at least one reading");
  }
}
