package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedNumberTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "302F",
        "302f",
        "302d",
        "0x1p7",
        "NaN",
        "Infinity",
        "1e999",
        "",
        " ",
        "1.2.3",
        "1 2",
        "--1",
        "٣",
        "+",
        "."
      })
  void whatJavaWouldTakeForANumberIsNone(String text) {
    assertThat(TypedNumber.bare(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"302, 302", "-1.5, -1.5", "'1,5', 1.5", ".5, 0.5", "3., 3", "1e3, 1000", "' 7 ', 7"})
  void aNumberIsOne(String text, double value) {
    assertThat(TypedNumber.bare(text)).hasValue(value);
  }

  @ParameterizedTest
  @CsvSource({"68F, 20", "68 °F, 20", "68f, 20", "20C, 20", "20 °C, 20", "20, 20", "20°, 20"})
  void aLetterGoesBeforeTheUnitOtherwise(String text, double celsius) {
    assertThat(TypedNumber.celsius(text, TemperatureUnit.CELSIUS).orElseThrow())
        .isCloseTo(celsius, within(1e-9));
  }

  @Test
  void withoutALetterTheUnitHolds() {
    assertThat(TypedNumber.celsius("68", TemperatureUnit.FAHRENHEIT)).hasValue(20);
    assertThat(TypedNumber.celsius("20C", TemperatureUnit.FAHRENHEIT)).hasValue(20);
    assertThat(TypedNumber.of("20").orElseThrow().unit()).isEqualTo(Optional.empty());
    assertThat(TypedNumber.celsius("-300", TemperatureUnit.CELSIUS)).isEmpty();
    assertThat(TypedNumber.celsius("293 K", TemperatureUnit.CELSIUS)).isEmpty();
  }
}
