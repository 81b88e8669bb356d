package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.schedule.TestSchedules.segment;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

/** Means over whole swings of displays that are written down here as formulas. */
class SwingMeansTest {

  private static final double SWING_KELVINS = 15;

  /** A ramp of 120 K/h with a sine of a period about it, from half an hour on. */
  private static DoubleUnaryOperator ramp(double period) {
    return second ->
        20
            + second / 30
            + (second < 1800 ? 0 : SWING_KELVINS * Math.sin(2 * Math.PI * second / period));
  }

  private static LoggedFiring logged(DoubleUnaryOperator display, FiringConditions day) {
    double[] seconds = IntStream.range(0, 1800).mapToDouble(i -> 10.0 * i).toArray();
    return new LoggedFiring(
        "swings",
        Schedule.of("ramp", TemperatureUnit.CELSIUS, List.of(segment(120, 600, 20))),
        day,
        Charge.empty(),
        Readings.of(
            seconds,
            IntStream.range(0, 1800)
                .mapToDouble(i -> display.applyAsDouble(seconds[i]))
                .toArray()));
  }

  private static SwingMeans of(double period) {
    return SwingMeans.of(logged(ramp(period), FiringConditions.usual()));
  }

  @Test
  void theSwingItselfIsNotInAMean() {
    for (double period : new double[] {130, 300, 560}) {
      SwingMeans swings = of(period);
      assertThat(swings.means()).hasSizeGreaterThan(4);
      for (SwingMeans.Mean mean : swings.means()) {
        assertThat(mean.celsius()).isCloseTo(20 + centre(mean) / 30, within(0.03 * SWING_KELVINS));
      }
    }
  }

  /** A simulated swing is never quite as long: its phase must not show either. */
  @Test
  void noneOfAnotherSwingIsInTheSameMean() {
    for (double longer : new double[] {0.9, 0.97, 1.04, 1.12}) {
      DoubleUnaryOperator other = ramp(400 * longer);
      for (SwingMeans.Mean mean : of(400).means()) {
        double sum = 0;
        for (int i = 0; i < mean.seconds().length; i++) {
          sum += mean.weight()[i] * other.applyAsDouble(mean.seconds()[i]);
        }
        assertThat(sum).isCloseTo(20 + centre(mean) / 30, within(0.05 * SWING_KELVINS));
      }
    }
  }

  private static double centre(SwingMeans.Mean mean) {
    return IntStream.range(0, mean.seconds().length)
        .mapToDouble(i -> mean.weight()[i] * mean.seconds()[i])
        .sum();
  }

  @Test
  void whatDoesNotSwingHasNone() {
    DoubleUnaryOperator steady = second -> 20 + second / 30 + Math.sin(second / 40);
    assertThat(SwingMeans.of(logged(steady, FiringConditions.usual())).means()).isEmpty();
  }

  @Test
  void whatHappenedToTheKilnIsNoSwing() {
    Disturbance open = new Disturbance(Disturbance.Kind.DOOR_OPEN, 9000, 20);
    SwingMeans swings =
        SwingMeans.of(
            logged(
                ramp(300),
                new FiringConditions(
                    Optional.empty(), Optional.empty(), false, Optional.empty(), List.of(open))));
    assertThat(swings.covers(8000)).isTrue();
    assertThat(swings.covers(9010)).isFalse();
    assertThat(swings.covers(10_000)).isTrue();
  }
}
