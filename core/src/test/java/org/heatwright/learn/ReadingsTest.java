package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ReadingsTest {

  /** A ramp of 20 K/min with a knee, every ten seconds. */
  private static double ramp(double second) {
    return 20 + Math.min(400, second / 3);
  }

  private static Readings log(int rows, int... slips) {
    double[] seconds = IntStream.range(0, rows).mapToDouble(i -> 10.0 * i).toArray();
    double[] celsius = IntStream.range(0, rows).mapToDouble(i -> ramp(10.0 * i)).toArray();
    for (int slip : slips) {
      celsius[slip] = celsius[slips[0]] + (slip == slips[0] ? 200 : 0);
    }
    return Readings.of(seconds, celsius);
  }

  @Test
  void aRunOfThreeIdenticalSlipsGoesAndNothingElse() {
    Readings clean = log(200, 60, 61, 62).withoutSlips();
    assertThat(clean.size()).isEqualTo(197);
    for (int i = 0; i < clean.size(); i++) {
      assertThat(clean.celsius(i)).isEqualTo(ramp(clean.second(i)));
    }
  }

  @Test
  void aSlipInTheFirstRowGoes() {
    assertThat(log(200, 0).withoutSlips().second(0)).isEqualTo(10);
  }

  @Test
  void aCleanLogStaysAsItIs() {
    Readings log = log(200);
    assertThat(log.withoutSlips()).isSameAs(log);
  }

  /** A door of a minute is no slip: the display falls and comes back over many rows. */
  @Test
  void aDoorIsNoSlip() {
    double[] seconds = IntStream.range(0, 120).mapToDouble(i -> 10.0 * i).toArray();
    double[] celsius =
        IntStream.range(0, 120)
            .mapToDouble(
                i -> {
                  double after = 10.0 * i - 600;
                  return after < 0 ? 800 : 800 - 120 * after / 60 * Math.exp(1 - after / 60);
                })
            .toArray();
    assertThat(Readings.of(seconds, celsius).withoutSlips().size()).isEqualTo(120);
  }

  @Test
  void readingsFarApartAreAllBelieved() {
    Readings byHand =
        Readings.of(
            IntStream.range(0, 12).mapToDouble(i -> 900.0 * i).toArray(),
            IntStream.range(0, 12).mapToDouble(i -> i == 5 ? 20 : 80.0 * i).toArray());
    assertThat(byHand.withoutSlips()).isSameAs(byHand);
  }

  @Test
  void unevenMinutesAreAPersonsAndEvenOnesALoggers() {
    assertThat(Readings.of(new double[] {0, 600, 1860}, new double[3]).toTheMinute()).isTrue();
    assertThat(Readings.of(new double[] {0, 60, 120}, new double[3]).toTheMinute()).isFalse();
    assertThat(Readings.of(new double[] {0, 610, 1860}, new double[3]).toTheMinute()).isFalse();
  }
}
