package org.heatwright.keypad;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitCheckTest {

  @ParameterizedTest
  @CsvSource({
    "68, 20, CELSIUS, true, FAHRENHEIT",
    "68, 68, FAHRENHEIT, true, FAHRENHEIT",
    "20, 20, CELSIUS, true, CELSIUS",
    "20, 68, FAHRENHEIT, true, CELSIUS",
    "24, 18, CELSIUS, true, CELSIUS",
    // A warm kiln in °C reads 68 as well: a reading alone settles nothing.
    "68, 20, CELSIUS, false, UNDECIDED",
    "20, 20, CELSIUS, false, UNDECIDED",
    // Neither unit.
    "45, 20, CELSIUS, true, UNDECIDED",
    "120, 20, CELSIUS, true, UNDECIDED",
    // A thermometer whose unit was mixed up.
    "68, 68, CELSIUS, true, UNDECIDED",
    // 20 °F is -6.7 °C, a frosty shed: 20 is what °F reads there.
    "20, 20, FAHRENHEIT, true, FAHRENHEIT"
  })
  void theUnitIsSettledByTheColdKilnAgainstAThermometer(
      double display,
      double thermometer,
      TemperatureUnit unit,
      boolean cold,
      UnitCheck.Verdict expected) {
    UnitCheck.Result result = UnitCheck.judge(display, thermometer, unit, cold);
    assertThat(result.verdict()).isEqualTo(expected);
    assertThat(result.why()).isNotBlank();
  }

  @Test
  void noRoomTemperatureFitsBothUnits() {
    for (double room = -10; room <= 45; room += 0.5) {
      double fahrenheit = TemperatureUnit.CELSIUS.temperature(room).fahrenheit();
      for (double off = -UnitCheck.TOLERANCE_KELVIN; off <= UnitCheck.TOLERANCE_KELVIN; off++) {
        assertThat(UnitCheck.judge(room + off, room, TemperatureUnit.CELSIUS, true).verdict())
            .isEqualTo(UnitCheck.Verdict.CELSIUS);
        assertThat(UnitCheck.judge(fahrenheit + off, room, TemperatureUnit.CELSIUS, true).verdict())
            .isEqualTo(UnitCheck.Verdict.FAHRENHEIT);
      }
    }
  }

  @Test
  void noNumberIsRefused() {
    assertThatThrownBy(() -> UnitCheck.judge(Double.NaN, 20, TemperatureUnit.CELSIUS, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("display reading");
    assertThatThrownBy(() -> UnitCheck.judge(20, Double.NaN, TemperatureUnit.CELSIUS, true))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("thermometer reading");
  }
}
