package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class RowOrderTest {

  private static double[] times(double from, double to) {
    return DoubleStream.iterate(from, t -> t <= to, t -> t + 10).toArray();
  }

  private static double[] joined(double[]... parts) {
    return java.util.Arrays.stream(parts).flatMapToDouble(DoubleStream::of).toArray();
  }

  @Test
  void aClockPutBackCountsOn() {
    RowOrder order = RowOrder.of(joined(times(0, 7200), times(3610, 9000)));
    assertThat(order.setbacks()).containsExactly(new RowOrder.Setback(721, 7200, 3610));
    assertThat(order.misplaced()).isEqualTo(-1);
    assertThat(order.seconds()).containsExactly(times(0, 7200 + 10 + 9000 - 3610));
    assertThat(order.rows()).hasSize(721 + 540);
  }

  @Test
  void aLoggerThatBeganAgainAtZeroCountsOn() {
    RowOrder order = RowOrder.of(joined(times(0, 5000), times(0, 6000), times(0, 400)));
    assertThat(order.setbacks()).hasSize(2);
    assertThat(order.seconds()).containsExactly(times(0, 5010 + 6010 + 400));
  }

  @Test
  void rowsInTheWrongPlaceAreSorted() {
    RowOrder order = RowOrder.of(new double[] {0, 10, 20, 50, 30, 40, 60, 70});
    assertThat(order.setbacks()).isEmpty();
    assertThat(order.misplaced()).isEqualTo(4);
    assertThat(order.rows()).containsExactly(0, 1, 2, 4, 5, 3, 6, 7);
  }

  /** Two halves pasted the wrong way round have no time in common. */
  @Test
  void halvesInTheWrongOrderAreSorted() {
    RowOrder order = RowOrder.of(joined(times(5000, 9000), times(0, 4990)));
    assertThat(order.setbacks()).isEmpty();
    assertThat(order.seconds()).containsExactly(times(0, 9000));
  }

  @Test
  void theNewestFirstIsSorted() {
    double[] falling = DoubleStream.iterate(900, t -> t >= 0, t -> t - 10).toArray();
    RowOrder order = RowOrder.of(falling);
    assertThat(order.setbacks()).isEmpty();
    assertThat(order.rows()[0]).isEqualTo(90);
    assertThat(order.seconds()).containsExactly(times(0, 900));
  }

  @Test
  void ofTwoRowsOfOneTimeTheFirstStays() {
    assertThat(RowOrder.of(new double[] {0, 10, 10, 20}).rows()).containsExactly(0, 1, 3);
  }
}
