package org.heatwright.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TemperatureTest {

  /**
   * The last column is half the last printed digit of the source.
   *
   * <p>Source, read: ITS-90 Table 1 (K and °C) and the summary table of fixed points (°F), as
   * reproduced on its-90 pages.
   */
  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "zinc,       692.677,  419.527,  787.149, 0.0005",
    "aluminium,  933.473,  660.323, 1220.581, 0.0005",
    "silver,    1234.93,   961.78,  1763.20,  0.005",
    "gold,      1337.33,  1064.18,  1947.52,  0.005",
    "copper,    1357.77,  1084.62,  1984.32,  0.005",
  })
  void agreesWithTheFixedPointsOfIts90(
      String metal, double kelvin, double celsius, double fahrenheit, double halfLastDigit) {
    Temperature freezingPoint = Temperature.ofCelsius(celsius);
    assertThat(freezingPoint.kelvin()).isCloseTo(kelvin, within(halfLastDigit));
    assertThat(freezingPoint.fahrenheit()).isCloseTo(fahrenheit, within(halfLastDigit));
  }

  @Test
  void everyFixedPointSurvivesTheWayThroughFahrenheit() throws IOException {
    for (String row : rows("/reference/fixed_points.csv")) {
      double celsius = Double.parseDouble(row.split(",")[2]);
      Temperature point = Temperature.ofCelsius(celsius);
      assertThat(Temperature.ofFahrenheit(point.fahrenheit()).celsius())
          .isCloseTo(celsius, within(1e-9));
    }
  }

  /** Source, run: general-purpose unit converters give 1500 °F = 815.55556 °C. */
  @Test
  void fifteenHundredFahrenheitIsWhatOtherConvertersSay() {
    assertThat(Temperature.ofFahrenheit(1500).celsius()).isCloseTo(815.55556, within(5e-6));
    assertThat(TemperatureUnit.FAHRENHEIT.change(77).kelvins()).isCloseTo(42.77778, within(5e-6));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, -273.16})
  void rejectsWhatIsNotATemperature(double celsius) {
    assertThatThrownBy(() -> Temperature.ofCelsius(celsius))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void everyTenthOfADegreeSurvivesTheRoundTripExactlyInBothUnits() {
    for (TemperatureUnit unit : TemperatureUnit.values()) {
      for (int tenths = -4000; tenths <= 25_000; tenths++) {
        double typed = tenths / 10.0;
        if (unit == TemperatureUnit.CELSIUS && typed < -273.1) {
          continue;
        }
        assertThat(unit.value(unit.temperature(typed))).isEqualTo(typed);
      }
    }
  }

  @Test
  void aRateIsADifferenceAndIsNeverOffset() {
    HeatingRate rate = TemperatureUnit.FAHRENHEIT.rate(180);
    assertThat(rate.kelvinsPerHour()).isEqualTo(100.0);
    assertThat(TemperatureUnit.FAHRENHEIT.value(rate)).isEqualTo(180.0);
    assertThat(TemperatureUnit.CELSIUS.value(rate)).isEqualTo(100.0);
    for (int typed = 1; typed <= 9999; typed++) {
      assertThat(TemperatureUnit.FAHRENHEIT.value(TemperatureUnit.FAHRENHEIT.rate(typed)))
          .isEqualTo(typed);
    }
  }

  @Test
  void minusZeroIsZero() {
    assertThat(Temperature.ofCelsius(-0.0)).isEqualTo(Temperature.ofCelsius(0.0));
  }

  private static List<String> rows(String resource) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(TemperatureTest.class.getResourceAsStream(resource))) {
      List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
      return lines.subList(1, lines.size());
    }
  }
}
