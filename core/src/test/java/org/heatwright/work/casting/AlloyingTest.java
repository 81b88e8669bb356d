package org.heatwright.work.casting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class AlloyingTest {

  private static final Fineness K14 = Fineness.ofThousandths(585);
  private static final Fineness K18 = Fineness.ofThousandths(750);

  private static double addedGrams(Fineness from, Fineness to, Fineness added) {
    return new Lot(0.1, from).addition(to, added).kilograms() * 1000;
  }

  /** Computed apart (implementers' sheet CHK-G4): 100 g between the marks 750 and 585. */
  @Test
  void betweenTheMarks() {
    assertThat(addedGrams(K18, K14, Fineness.NONE)).isCloseTo(28.20513, within(0.5001e-5));
    assertThat(addedGrams(K14, K18, Fineness.PURE)).isCloseTo(66.0, within(1e-9));
  }

  /** The same in plain fractions of 24 (CHK-G4). */
  @Test
  void betweenTheFractions() {
    Fineness eighteen = Fineness.ofKarats(18);
    Fineness fourteen = Fineness.ofKarats(14);
    assertThat(addedGrams(eighteen, fourteen, Fineness.NONE))
        .isCloseTo(28.57143, within(0.5001e-5));
    assertThat(addedGrams(fourteen, eighteen, Fineness.PURE))
        .isCloseTo(66.66667, within(0.5001e-5));
  }

  /** A jewellery education page on fineness (read): 14 karat is 583.3 and is marked 585. */
  @Test
  void theMarkIsNotAlwaysTheFraction() {
    assertThat(Fineness.ofKarats(14).thousandths()).isCloseTo(583.3, within(0.05));
    assertThat(Fineness.ofKarats(14).mark()).contains(K14);
    assertThat(Fineness.ofKarats(18).mark()).isEmpty();
    assertThat(Fineness.ofKarats(9).mark()).isEmpty();
    assertThat(K14.mark()).isEmpty();
  }

  @Test
  void lotsMixByTheirFineMetal() {
    Lot mixed =
        Lot.together(
            List.of(
                new Lot(0.03, K18),
                new Lot(0.01, K14),
                new Lot(0.01, Fineness.ofThousandths(375))));
    assertThat(mixed.kilograms()).isCloseTo(0.05, within(1e-12));
    // (30 * 750 + 10 * 585 + 10 * 375) / 50, by hand
    assertThat(mixed.fineness().thousandths()).isCloseTo(642, within(1e-9));
  }

  @Test
  void upAndDownAgainIsWhereItBegan() {
    Lot start = new Lot(0.1, K14);
    Lot up = start.and(start.addition(K18, Fineness.PURE));
    assertThat(up.fineness().thousandths()).isCloseTo(750, within(1e-9));
    Lot down = up.and(up.addition(K14, Fineness.NONE));
    assertThat(down.fineness().thousandths()).isCloseTo(585, within(1e-9));
  }

  @Test
  void whatCannotGetThereIsTold() {
    assertThatThrownBy(() -> addedGrams(K14, K18, Fineness.ofThousandths(700)))
        .hasMessage("No amount of 700 brings 585 to 750; it takes something finer than that.");
    assertThatThrownBy(() -> addedGrams(K18, K14, Fineness.PURE))
        .hasMessageContaining("something less fine");
    assertThatThrownBy(() -> addedGrams(K14, Fineness.PURE, Fineness.PURE))
        .hasMessage("No addition brings 585 to 1000; only refining does.");
    assertThatThrownBy(() -> Lot.together(List.of())).hasMessageContaining("metal");
    assertThatThrownBy(() -> Fineness.ofThousandths(1001)).hasMessageContaining("0 to 1000");
  }

  @Test
  void halfOfAMeltMayBeUsedMetal() {
    assertThat(UsedMetal.atMostKilograms(0.06).usual()).isCloseTo(0.03, within(1e-12));
    assertThat(UsedMetal.atMostKilograms(0.06).low()).isCloseTo(0.02, within(1e-12));
    assertThat(UsedMetal.atMostKilograms(0.06).high()).isCloseTo(0.04, within(1e-12));
  }

  /** Implementers' sheet, section G: 1.5 % gives 1.0152284, computed apart. */
  @Test
  void thePatternIsLargerByTheFactor() {
    assertThat(Shrinkage.of(0.015).factor().usual()).isCloseTo(1.0152284, within(0.5001e-7));
    assertThat(Shrinkage.USUAL.factor().low()).isCloseTo(1 / 0.99, within(1e-12));
    double pattern = Shrinkage.of(0.015).patternMetres(0.018).usual();
    assertThat(Shrinkage.of(0.015).castMetres(pattern).usual()).isCloseTo(0.018, within(1e-15));
    assertThat(Shrinkage.feedCubicMetres(1).usual()).isCloseTo(0.05 / 0.95, within(1e-12));
    assertThatThrownBy(() -> Shrinkage.of(1.5)).hasMessageContaining("0 to 20 %");
    assertThatThrownBy(() -> Shrinkage.of(0.01).patternMetres(0)).hasMessageContaining("above 0");
  }
}
