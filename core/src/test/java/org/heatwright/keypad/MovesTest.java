package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class MovesTest {

  private static final Entry.StepKeys STOPPING =
      new Entry.StepKeys(
          List.of(new Entry.RepeatStage(0.6, 1, 6), new Entry.RepeatStage(3, 10, 5)),
          Entry.AtLimit.STOP,
          Entry.AtLimit.STOP);

  private static Moves moves(Entry entry, int positions) {
    return new Moves(entry, Scale.numbers(positions), KeyingTimes.OCCASIONAL);
  }

  /**
   * Outside check: the worked estimate of 48 digits, 15 confirmations and 15 prompts by the
   * keystroke-level operators K and M of Card, Moran and Newell (1980, 1983): 38 s, 52 s, 68 s and
   * 96 s at K 0.28, 0.50, 0.75 and 1.20.
   */
  @Tag("published")
  @Test
  void typingTimesFollowTheKeystrokeLevelFigures() {
    assertThat(new KeyingTimes(0.28, 1.35).seconds(63, 15)).isCloseTo(38, within(0.5));
    assertThat(new KeyingTimes(0.50, 1.35).seconds(63, 15)).isCloseTo(52, within(0.5));
    assertThat(new KeyingTimes(0.75, 1.35).seconds(63, 15)).isCloseTo(68, within(0.5));
    assertThat(new KeyingTimes(1.20, 1.35).seconds(63, 15)).isCloseTo(96, within(0.5));
  }

  @Test
  void fewStepsAreTapped() {
    Moves.Move move = moves(STOPPING, 1000).between(99, 102);
    assertThat(move.words()).isEqualTo("tap up 3 times");
    assertThat(move.seconds()).isCloseTo(3 * 0.28, within(1e-9));
    assertThat(moves(STOPPING, 1000).between(102, 101).words()).isEqualTo("tap down once");
    assertThat(moves(STOPPING, 1000).between(7, 7).words()).isEmpty();
  }

  @Test
  void manyStepsAreHeldAndThenTapped() {
    Moves.Move move = moves(STOPPING, 1000).between(19, 731);
    assertThat(move.words()).startsWith("hold up about 1").contains("until it shows 732");
    // 712 steps: by tapping 199 s. Held, 17 steps come in the first 3 s and 50 a second after it.
    assertThat(move.seconds()).isBetween(3 + (712 - 60) / 50.0 - 1, 25.0);
  }

  @Test
  void anEndThatStopsIsHeldInto() {
    assertThat(moves(STOPPING, 60).between(30, 59).words()).contains("until it stops at 60");
  }

  @Test
  void theWayAroundTheEndIsTakenWhereItIsShorter() {
    Entry.StepKeys wrapping =
        new Entry.StepKeys(STOPPING.repeat(), Entry.AtLimit.WRAP, Entry.AtLimit.WRAP);
    assertThat(moves(wrapping, 1000).between(0, 998).words())
        .isEqualTo("tap down twice, around the end");
    assertThat(moves(wrapping, 1000).between(999, 1).words())
        .isEqualTo("tap up twice, around the end");
    assertThat(moves(STOPPING, 1000).between(0, 998).words()).doesNotContain("around");
  }

  @Test
  void keysThatDoNotRepeatAreTappedAllTheWay() {
    Entry.StepKeys taps = new Entry.StepKeys(List.of(), Entry.AtLimit.STOP, Entry.AtLimit.STOP);
    assertThat(moves(taps, 100).between(0, 80).words()).isEqualTo("tap up 80 times");
  }

  @Test
  void aKnobIsSpunAndThenClicked() {
    Entry.Knob knob = new Entry.Knob(24, 10, Entry.AtLimit.STOP, Entry.AtLimit.STOP);
    assertThat(moves(knob, 1000).between(100, 104).words()).isEqualTo("click right 4 times");
    Moves.Move far = moves(knob, 1000).between(100, 704);
    assertThat(far.words()).startsWith("spin right about 2.5 turns").contains("until it shows 705");
    assertThat(far.seconds()).isLessThan(604 * KeyingTimes.CLICK_SECONDS / 5);
  }

  /**
   * The search's time is never worse than tapping, and the same way back exists where all stops.
   */
  @Tag("property")
  @Test
  void noWayIsSlowerThanTapping() {
    Moves moves = moves(STOPPING, 400);
    for (int from = 0; from < 400; from += 37) {
      for (int to = 0; to < 400; to += 23) {
        Moves.Move move = moves.between(from, to);
        assertThat(move.seconds()).isLessThanOrEqualTo(Math.abs(to - from) * 0.28 + 1e-9);
        assertThat(move.words().isEmpty()).isEqualTo(from == to);
      }
    }
  }

  @Test
  void aStepBeyondAnEndStopsThereFirst() {
    Entry.StepKeys wrapping =
        new Entry.StepKeys(STOPPING.repeat(), Entry.AtLimit.WRAP, Entry.AtLimit.WRAP);
    assertThat(moves(wrapping, 100).step(95, 10)).isEqualTo(99);
    assertThat(moves(wrapping, 100).step(99, 10)).isZero();
    assertThat(moves(wrapping, 100).step(3, -10)).isZero();
    assertThat(moves(wrapping, 100).step(0, -1)).isEqualTo(99);
    assertThat(moves(STOPPING, 100).step(99, 1)).isEqualTo(99);
  }

  @Test
  void aSignedScaleRunsThroughItsLeastValues() {
    Scale scale = Scale.of(TestKeypads.knob(), KeyedValue.Kind.RATE, TemperatureUnit.CELSIUS);
    int zero = scale.positionOf("0.0").orElseThrow();
    assertThat(scale.text(zero - 1)).isEqualTo("-0.1");
    assertThat(scale.text(zero + 1)).isEqualTo("0.1");
    assertThat(scale.text(0)).isEqualTo("-30.0");
    assertThat(scale.text(scale.size() - 1)).isEqualTo("----");
    assertThat(scale.text(scale.leastNumber())).isEqualTo("0.1");
  }
}
