package org.heatwright.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CircuitTest {

  /** CHK-I1: current, 125 % of it, and the next breaker; electrical pages on the US rule. */
  @ParameterizedTest
  @CsvSource({"3000, 240, 12.5, 15.625, 20", "1800, 120, 15, 18.75, 20", "2880, 240, 12, 15, 15"})
  void aContinuousLoadWantsMoreThanItsCurrent(
      double watts, double volts, double amperes, double least, double breaker) {
    double load = new HeatingElement(watts, volts, volts).suppliedAmperes();

    assertThat(load).isCloseTo(amperes, within(1e-12));
    assertThat(Circuit.forContinuousLoadAmperes(load)).isCloseTo(least, within(1e-12));
    assertThat(Circuit.breakerForContinuousLoadAmperes(load)).hasValue(breaker);
  }

  /** CHK-I1, the same rule from the other side: 80 % of a breaker. */
  @ParameterizedTest
  @CsvSource({"15, 12", "20, 16"})
  void aBreakerCarriesFourFifthsForLong(double breaker, double amperes) {
    assertThat(new Circuit("workshop", breaker).continuousAmperes())
        .isCloseTo(amperes, within(1e-12));
  }

  @Test
  void beyondTheListNothingIsSaid() {
    assertThat(Circuit.breakerForContinuousLoadAmperes(161)).isEmpty();
  }
}
