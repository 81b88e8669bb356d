package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class KeypadTest {

  private static Keypad copy(
      Keypad k,
      Set<Key> keys,
      List<KeyedValue.Kind> order,
      Keypad.EndRule end,
      Keypad.Review review) {
    return new Keypad(
        k.name(),
        k.units(),
        keys,
        k.entry(),
        k.accept(),
        k.starts(),
        k.slots(),
        k.segments(),
        k.displayDigits(),
        order,
        k.rate(),
        k.target(),
        k.hold(),
        k.delay(),
        end,
        k.programming(),
        k.gestures(),
        review,
        k.afterPowerCut());
  }

  @Test
  void rangesOfTheOtherUnitStayInsideWhatWasTold() {
    Keypad keypad = TestKeypads.steps();
    // 20 to 1100 °C is 68 to 2012 °F; 5 to 995 K/h is 9 to 1791 °F/h, on the keypad's steps of 5.
    assertThat(keypad.targetRange(TemperatureUnit.FAHRENHEIT))
        .isEqualTo(Keypad.Range.of(68, 2012, 1));
    assertThat(keypad.rateRange(TemperatureUnit.FAHRENHEIT))
        .isEqualTo(Keypad.Range.of(10, 1790, 5));
    assertThat(keypad.targetRange(TemperatureUnit.CELSIUS)).isEqualTo(keypad.target().range());
    // Three digits show at most 999.
    assertThat(Keypad.Range.of(20, 1100, 1).converted(TemperatureUnit.FAHRENHEIT, true, 3).max())
        .isEqualByComparingTo("999");
  }

  @Test
  void whatTheReviewHidesIsKnown() {
    assertThat(TestKeypads.steps().hiddenInReview()).isEmpty();
    assertThat(TestKeypads.digits().hiddenInReview()).isEmpty();
    assertThat(TestKeypads.knob().hiddenInReview()).containsExactly(KeyedValue.Kind.DELAY);
  }

  @Test
  void aContradictionIsRefused() {
    Keypad k = TestKeypads.steps();
    assertThatThrownBy(() -> copy(k, Set.of(Key.UP, Key.NEXT), k.order(), k.end(), k.review()))
        .hasMessage("The key 'down' is used but is not among the keypad's keys.");
    assertThatThrownBy(
            () ->
                copy(
                    k,
                    k.keys(),
                    List.of(KeyedValue.Kind.RATE, KeyedValue.Kind.RATE, KeyedValue.Kind.HOLD),
                    k.end(),
                    k.review()))
        .hasMessageContaining("names rate, target and hold once each");
    assertThatThrownBy(
            () ->
                copy(
                    k,
                    k.keys(),
                    k.order(),
                    new Keypad.EndRule(
                        Keypad.EndRule.By.MARK, Optional.of(Special.below("100")), AtEnd.OFF),
                    k.review()))
        .hasMessageContaining("also an ordinary rate");
    assertThatThrownBy(
            () ->
                copy(
                    k,
                    k.keys(),
                    k.order(),
                    new Keypad.EndRule(
                        Keypad.EndRule.By.MARK, Optional.of(Special.above("Full")), AtEnd.OFF),
                    k.review()))
        .hasMessageContaining("both fastest and the end of the program");
    assertThatThrownBy(
            () ->
                copy(
                    k,
                    k.keys(),
                    k.order(),
                    new Keypad.EndRule(Keypad.EndRule.By.COUNT, Optional.empty(), AtEnd.OFF),
                    k.review()))
        .hasMessageContaining("cannot show an unused segment");
    Keypad digits = TestKeypads.digits();
    assertThatThrownBy(
            () ->
                TestKeypads.withRate(
                    digits, Optional.of(Special.above("FULL")), Keypad.Cooling.IMPLIED))
        .hasMessageContaining("cannot be typed on digit keys");
    assertThatThrownBy(
            () ->
                TestKeypads.withRate(
                    digits,
                    Optional.of(
                        new Special("FULL", Special.Place.ABOVE_GREATEST, Optional.of("500"))),
                    Keypad.Cooling.IMPLIED))
        .hasMessageContaining("typed as 500", "ordinary");
  }

  @Test
  void rangesRefuseNonsense() {
    assertThatThrownBy(() -> Keypad.Range.of(10, 5, 1)).hasMessageContaining("goes up");
    assertThatThrownBy(() -> Keypad.Range.of(1, 5, 0)).hasMessageContaining("above zero");
    assertThatThrownBy(() -> Keypad.Range.of(0, 1_000_000, 1)).hasMessageContaining("100000");
    assertThat(new Keypad.Range(new BigDecimal("0.10"), BigDecimal.TEN, new BigDecimal("0.10")))
        .isEqualTo(
            new Keypad.Range(new BigDecimal("0.1"), new BigDecimal("10"), new BigDecimal("0.1")));
    assertThatThrownBy(() -> new Entry.RepeatStage(Double.NaN, 1, 5))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Gesture.Press(Key.NEXT, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void labelsCarryTheSegmentsNumber() {
    assertThat(TestKeypads.steps().label(3, KeyedValue.Kind.TARGET)).isEqualTo("t3");
    assertThat(TestKeypads.digits().label(3, KeyedValue.Kind.TARGET)).isEqualTo("segment 3 target");
  }
}
