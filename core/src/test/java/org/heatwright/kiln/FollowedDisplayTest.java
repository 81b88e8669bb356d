package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Expected times follow from the straight lines that the displays are made of. */
class FollowedDisplayTest {

  private static final double AHEAD = 20;

  /** A row every 10 s for an hour. */
  private static FollowedDisplay of(DoubleUnaryOperator celsius) {
    double[] seconds = IntStream.range(0, 361).mapToDouble(i -> 10 * i).toArray();
    double[] said = Arrays.stream(seconds).map(celsius).toArray();
    return new FollowedDisplay(new SeenDisplay(seconds, said), AHEAD);
  }

  @Test
  void aQuickDisplaySwitchesWhereItPasses() {
    FollowedDisplay rising = of(s -> 700 + 0.5 * s);
    assertThat(rising.untilSwitches(0, 723, 0, 1, 900)).isCloseTo(46, within(1e-9));
    assertThat(rising.untilSwitches(40, 723, 0, 1, 900)).isCloseTo(6, within(1e-9));
    assertThat(rising.untilSwitches(46, 723, 0, 1, 900)).isZero();
    assertThat(of(s -> 700 + 0.5 * s).untilSwitches(0, 723, 0, 1, 30)).isEqualTo(30);
  }

  @Test
  void oneThatGrazesTheEdgeOfARampSwitchesNothing() {
    // The edge rises by 0.2 K/s; the display is beyond it for 400 s, by 2 K at most.
    DoubleUnaryOperator along = s -> 500 + 0.2 * s - Math.abs(s - 600) / 100 + 2;
    assertThat(of(along).untilSwitches(0, 500, 0.2, 1, 900)).isEqualTo(900);
    // By 20 K at most: it was switched where it passed.
    DoubleUnaryOperator beyond = s -> 500 + 0.2 * s - Math.abs(s - 600) / 20 + 20;
    assertThat(of(beyond).untilSwitches(0, 500, 0.2, 1, 900)).isCloseTo(200, within(1e-6));
  }

  @Test
  void oneThatComesSlowlySwitchesWhereItsTurnSaysSo() {
    // Falls by 0.02 K/s through the edge at 600 s; the power comes at 700 s.
    DoubleUnaryOperator slow = s -> s < 700 ? 162 - 0.02 * s : 148 + 0.5 * (s - 700);
    double back = 700 + 3 / 0.5;
    assertThat(of(slow).untilSwitches(0, 150, 0, -1, 900)).isCloseTo(back - AHEAD, within(5.0));
    // And still does when it has turned already.
    assertThat(of(slow).untilSwitches(680, 150, 0, -1, 900))
        .isCloseTo(back - AHEAD - 680, within(5.0));
  }

  @Test
  void oneThatTurnsNearTheEdgeWasSwitchedAndOneFarFromItWasNot() {
    DoubleUnaryOperator turns = s -> s < 700 ? 420 + 0.5 * s : 770 - 0.5 * (s - 700);
    assertThat(of(turns).untilSwitches(0, 772, 0, 1, 900)).isCloseTo(706 - AHEAD, within(1e-9));
    assertThat(of(turns).untilSwitches(0, 790, 0, 1, 900)).isEqualTo(900);
  }

  @Test
  void noiseWhereItHardlyMovesIsNoSwitch() {
    // One reading in sixty is low by 3 K; the edge is 2 K below.
    DoubleUnaryOperator noisy = s -> s % 600 == 300 ? 497 : 500;
    assertThat(of(noisy).untilSwitches(0, 498, 0, -1, 900)).isEqualTo(900);
  }

  /** No row for 400 s, from 600 s on. */
  @Test
  void whereThereAreNoReadingsItIsBlind() {
    double[] seconds =
        IntStream.range(0, 361)
            .mapToDouble(i -> 10 * i)
            .filter(s -> s <= 600 || s >= 1000)
            .toArray();
    double[] said = Arrays.stream(seconds).map(s -> 700 - 0.1 * Math.abs(s - 1500)).toArray();
    FollowedDisplay gap = new FollowedDisplay(new SeenDisplay(seconds, said), AHEAD);
    assertThat(gap.blind(595)).isFalse();
    assertThat(gap.untilGapChanges(500, 900)).isEqualTo(100);
    assertThat(gap.untilGapChanges(500, 60)).isEqualTo(60);
    assertThat(gap.blind(600)).isTrue();
    assertThat(gap.untilGapChanges(700, 900)).isEqualTo(300);
    assertThat(gap.blind(1000)).isFalse();
    assertThat(gap.untilGapChanges(1000, 900)).isEqualTo(900);
    // It rises until its turn at 1500 s, and does not turn again.
    assertThat(gap.headed(1000)).isEqualTo(1);
    assertThat(gap.headed(1600)).isZero();
  }

  @Test
  void aControllerThatSmoothsMeetsWhatHasJustPassed() {
    FollowedDisplay rising = of(s -> 700 + s);
    assertThat(rising.met(50, 8, 745, 2)).isTrue();
    assertThat(rising.met(60, 8, 745, 2)).isFalse();
    assertThat(rising.untilPasses(60, 780, 1, 900)).isCloseTo(20, within(1e-9));
  }
}
