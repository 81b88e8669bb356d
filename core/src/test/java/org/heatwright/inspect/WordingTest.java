package org.heatwright.inspect;

import static org.assertj.core.api.Assertions.assertThat;

import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordingTest {

  /** By hand: 1.8 a kelvin, and 32 more for a temperature. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          Hold at 600 °C.                              | Hold at 1112 °F.
          350 to 450 °C, once                          | 662 to 842 °F, once
          rests at about 315 and 480 °C instead of 370 °C | rests at about 599 and 896 °F instead of 698 °F
          100 to 250 °C/h                              | 180 to 450 °F/h
          150 °C/h for a mould of 65 mm, never under 50 °C/h. | 270 °F/h for a mould of 65 mm, never under 90 °F/h.
          within 20 K of it (5 K here)                 | within 36 °F of it (9 °F here)
          from -20 °C on                               | from -4 °F on
          482.5 °C at 19 mm                            | 901 °F at 19 mm
          1110 °F stays, and so do 4 h and 300 mm      | 1110 °F stays, and so do 4 h and 300 mm
          a loss of 3 W/(m² K) and 18 k gold           | a loss of 3 W/(m² K) and 18 k gold
          """)
  void aSentenceInCelsiusIsToldInFahrenheit(String celsius, String fahrenheit) {
    assertThat(Wording.in(celsius, TemperatureUnit.FAHRENHEIT)).isEqualTo(fahrenheit);
    assertThat(Wording.in(celsius, TemperatureUnit.CELSIUS)).isEqualTo(celsius);
    assertThat(Wording.in(fahrenheit, TemperatureUnit.FAHRENHEIT)).isEqualTo(fahrenheit);
  }
}
