package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class BandTest {

  private static double[] minutes(int come, int of) {
    return IntStream.range(0, of)
        .mapToDouble(i -> i < come ? 10 + i : Double.POSITIVE_INFINITY)
        .toArray();
  }

  /** What does not come is later than all that does, and leaves the rest as it is. */
  @Test
  void fewThatDoNotComeAreTheLatest() {
    assertThat(Band.ofComing(minutes(62, 64))).contains(Band.of(minutes(64, 64)));
    assertThat(Band.ofFinite(minutes(62, 64))).isEmpty();
  }

  @Test
  void moreThanOneOfTwentyLeaveNoLatest() {
    assertThat(Band.ofComing(minutes(60, 64))).isEmpty();
    assertThat(Band.ofComing(minutes(0, 64))).isEmpty();
    assertThat(Band.ofComing(minutes(0, 1))).isEmpty();
    assertThat(Band.ofComing(minutes(1, 1))).contains(Band.exactly(10));
  }

  @Test
  void theOrderOfTheCasesDoesNotMatter() {
    double[] turned = minutes(63, 64);
    double first = turned[0];
    turned[0] = turned[63];
    turned[63] = first;
    assertThat(Band.ofComing(turned)).isEqualTo(Band.ofComing(minutes(63, 64)));
  }

  /** Of 20 of one kind any is the last by size once in 20: outside of the other 19, twice. */
  @Test
  void oneMoreOfTheSameKindLiesInsideNineTimesInTen() {
    double[] values = new Random(7).doubles(20).map(u -> -Math.log(u)).toArray();
    int inside = 0;
    for (int out = 0; out < 20; out++) {
      int left = out;
      Band others =
          Band.of(
              IntStream.range(0, 20).filter(i -> i != left).mapToDouble(i -> values[i]).toArray());
      inside += others.contains(values[out]) ? 1 : 0;
    }
    assertThat(inside).isEqualTo(18);
  }
}
