package org.heatwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LinearTableTest {

  private final LinearTable table = LinearTable.points(0, 1, 10, 3, 20, 2);

  @Test
  void isLinearBetweenItsPointsAndConstantOutside() {
    assertThat(table.at(5)).isEqualTo(2);
    assertThat(table.at(10)).isEqualTo(3);
    assertThat(table.at(15)).isEqualTo(2.5);
    assertThat(table.at(-7)).isEqualTo(1);
    assertThat(table.at(99)).isEqualTo(2);
  }

  /** By hand: trapezia of 20 and 25, then constant 2 for 5, then minus constant 1 for 4. */
  @Test
  void integratesExactly() {
    assertThat(table.integral(20)).isCloseTo(45, within(1e-12));
    assertThat(table.integral(25)).isCloseTo(55, within(1e-12));
    assertThat(table.integral(-4)).isCloseTo(-4, within(1e-12));
    assertThat(table.integral(5)).isCloseTo(7.5, within(1e-12));
  }

  @Test
  void refusesPointsThatDoNotRise() {
    assertThatThrownBy(() -> LinearTable.points(0, 1, 0, 2)).hasMessageContaining("Point 2");
    assertThatThrownBy(() -> LinearTable.points(0, Double.NaN)).hasMessageContaining("Point 1");
    assertThatThrownBy(() -> LinearTable.points()).hasMessageContaining("at least one point");
  }
}
