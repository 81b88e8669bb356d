package org.heatwright.material;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.heatwright.material.HeatWork.Weighting;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class HeatWorkTest {

  private static Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  /** CHK-H1: ten minutes at 780 °C; computed apart from the closed form. */
  @ParameterizedTest
  @CsvSource({
    "150, 800, 436.0145",
    "150, 820, 320.5709",
    "150, 760, 835.9294",
    "300, 800, 316.8478",
    "300, 820, 171.2762",
    "300, 760, 1164.6298"
  })
  void tenMinutesAreWorthThis(double kilojoules, double instead, double seconds) {
    HeatWork work = HeatWork.of(kilojoules * 1000, celsius(780));

    assertThat(work.equivalentSeconds(600, celsius(780), celsius(instead)))
        .isCloseTo(seconds, within(5e-5));
    assertThat(600 / work.worthOfSecondAt(celsius(instead))).isCloseTo(seconds, within(5e-5));
  }

  /** CHK-H1, {@code ln 2 R T²/Q} at 780 °C. */
  @ParameterizedTest
  @CsvSource({"150, 42.61", "300, 21.31"})
  void aStepHalvesTheTime(double kilojoules, double kelvins) {
    HeatWork work = HeatWork.of(kilojoules * 1000, celsius(780));

    assertThat(work.halvingStep().kelvins()).isCloseTo(kelvins, within(0.005));
    assertThat(work.worthOfSecondAt(celsius(780).plus(work.halvingStep())))
        .isCloseTo(2, within(0.06));
  }

  /** CHK-H2: 500 K/h from 20 to 900 °C, Q 185 kJ/mol; computed apart by quadrature. */
  @ParameterizedTest
  @CsvSource({"PLAIN, 6.742778", "MASTER_SINTERING, 7.066998"})
  void aRampIsWorthThis(Weighting weighting, double minutes) {
    HeatWork work = new HeatWork(185_000, celsius(900), weighting);

    assertThat(work.secondsOfRamp(celsius(20), celsius(900), HeatingRate.ofKelvinsPerHour(500)))
        .isCloseTo(60 * minutes, within(60 * 5e-7));
  }

  /** CHK-H2, the rule of thumb {@code R T²/(Q r)}: 7.4225 min, a tenth too much. */
  @Test
  void theTopOfARampIsWhatCounts() {
    HeatWork work = HeatWork.of(185_000, celsius(900));
    double estimate =
        work.halvingStep().kelvins() / Math.log(2) / (500 / 60.0); // min at the reference

    assertThat(estimate).isCloseTo(7.4225, within(5e-5));
    assertThat(
            work.secondsOfRamp(celsius(20), celsius(900), HeatingRate.ofKelvinsPerHour(500)) / 60)
        .isBetween(0.88 * estimate, estimate);
  }

  /** A straight line is the same however it is cut, and up is worth what down is. */
  @ParameterizedTest
  @EnumSource
  void aHistoryIsTheSumOfItsPieces(Weighting weighting) {
    HeatWork work = new HeatWork(185_000, celsius(900), weighting);
    int points = 881;
    double[] seconds = new double[points];
    double[] upward = new double[points];
    double[] downward = new double[points];
    for (int i = 0; i < points; i++) {
      seconds[i] = i * 7.2;
      upward[i] = 20 + i;
      downward[i] = 900 - i;
    }
    double ramp = work.secondsOfRamp(celsius(20), celsius(900), HeatingRate.ofKelvinsPerHour(500));

    assertThat(work.secondsOf(seconds, upward)).isCloseTo(ramp, within(1e-9 * ramp));
    assertThat(work.secondsOf(seconds, downward)).isCloseTo(ramp, within(1e-9 * ramp));
    assertThat(work.secondsOf(new double[] {0, 6336}, new double[] {20, 900}))
        .isCloseTo(ramp, within(1e-9 * ramp));
  }

  @Test
  void aHoldAtTheReferenceIsItsOwnLength() {
    HeatWork work = HeatWork.of(300_000, celsius(850));

    assertThat(work.secondsOf(new double[] {5, 605, 605}, new double[] {850, 850, 20}))
        .isCloseTo(600, within(1e-9));
    assertThat(work.secondsOf(new double[0], new double[0])).isZero();
  }

  /** A far finer sum of the same integrand, for a Q so small that the exponent hardly bends. */
  @ParameterizedTest
  @CsvSource({"500, PLAIN", "500, MASTER_SINTERING", "20000, PLAIN", "600000, MASTER_SINTERING"})
  void anyActivationEnergyIsIntegrated(double joules, Weighting weighting) {
    HeatWork work = new HeatWork(joules, celsius(900), weighting);
    int pieces = 2_000_000;
    double sum = 0;
    for (int i = 0; i < pieces; i++) {
      sum += work.worthOfSecondAt(celsius(20 + 1180 * (i + 0.5) / pieces));
    }
    double expected = sum / pieces * 3600;

    assertThat(work.secondsOf(new double[] {0, 3600}, new double[] {20, 1200}))
        .isCloseTo(expected, within(1e-9 * expected));
  }

  @Test
  void badNumbersAreRefusedInASentence() {
    assertThatThrownBy(() -> HeatWork.of(0, celsius(900)))
        .hasMessage("The activation energy (0.0 J/mol) must be finite and above zero.");
    HeatWork work = HeatWork.of(185_000, celsius(900));
    assertThatThrownBy(() -> work.secondsOf(new double[] {1, 0}, new double[] {20, 20}))
        .hasMessage("The history's times must not fall (1.0 s, then 0.0 s).");
    assertThatThrownBy(() -> work.secondsOf(new double[] {1}, new double[0]))
        .hasMessageContaining("one temperature a time");
  }
}
