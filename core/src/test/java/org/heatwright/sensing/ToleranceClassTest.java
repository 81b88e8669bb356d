package org.heatwright.sensing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tolerances as sensor makers' pages print them (see PROVENANCE.md). */
class ToleranceClassTest {

  private static OptionalDouble kelvins(
      ThermocoupleType type, ToleranceClass toleranceClass, double celsius) {
    return ToleranceClass.toleranceKelvin(type, toleranceClass, Temperature.ofCelsius(celsius));
  }

  @Test
  void everyPrintedRowIsFollowed() {
    List<String[]> rows = Reference.rows("thermocouple_tolerances.csv");
    assertThat(rows).hasSize(44);
    for (String[] row : rows) {
      ToleranceClass toleranceClass = ToleranceClass.ofWord(row[1]).orElseThrow();
      assertThat(toleranceClass.standard()).isEqualTo(row[0]);
      double from = Double.parseDouble(row[3]);
      double to = Double.parseDouble(row[4]);
      for (String letter : row[2].split(" ")) {
        ThermocoupleType type = ThermocoupleType.valueOf(letter);
        // the printed turning points are rounded to the degree: one degree inside both values agree
        for (double at = from + 1; at <= to - 1; at += 0.5) {
          assertThat(kelvins(type, toleranceClass, at))
              .as("%s %s %s at %s", (Object[]) new String[] {row[0], row[1], letter, "" + at})
              .hasValueCloseTo(printed(row[5], at), within(1e-9));
        }
      }
    }
  }

  /**
   * The expressions of the file: "2.5", "0.0075*|t|", "1+0.003*(t-1100)", "max(2.2;0.0075*|t|)".
   */
  private static double printed(String expression, double celsius) {
    String text = expression.toLowerCase(Locale.ROOT).replaceAll("[max()]{4,}|\\)$", "");
    if (expression.startsWith("1+")) {
      return 1 + 0.003 * (celsius - 1100);
    }
    double largest = Double.NEGATIVE_INFINITY;
    for (String part : text.split(";")) {
      double value =
          part.endsWith("*|t|")
              ? Double.parseDouble(part.replace("*|t|", "")) * Math.abs(celsius)
              : Double.parseDouble(part);
      largest = Math.max(largest, value);
    }
    return largest;
  }

  /** CHK-F3. */
  @ParameterizedTest
  @CsvSource({
    "K, CLASS_1, 2.0, 3.0, 3.6, 4.0",
    "K, CLASS_2, 3.75, 5.625, 6.75, 7.5",
    "K, STANDARD, 3.75, 5.625, 6.75, 7.5",
    "S, CLASS_2, 1.5, 1.875, 2.25, 2.5"
  })
  void theWorkingTemperaturesOfAKiln(
      ThermocoupleType type,
      ToleranceClass toleranceClass,
      double at500,
      double at750,
      double at900,
      double at1000) {
    assertThat(kelvins(type, toleranceClass, 500)).hasValueCloseTo(at500, within(1e-12));
    assertThat(kelvins(type, toleranceClass, 750)).hasValueCloseTo(at750, within(1e-12));
    assertThat(kelvins(type, toleranceClass, 900)).hasValueCloseTo(at900, within(1e-12));
    assertThat(kelvins(type, toleranceClass, 1000)).hasValueCloseTo(at1000, within(1e-12));
  }

  @Test
  void theLargerOfTwoValuesAppliesAtTheTurn() {
    assertThat(kelvins(ThermocoupleType.K, ToleranceClass.CLASS_2, 333)).hasValue(2.5);
    assertThat(kelvins(ThermocoupleType.R, ToleranceClass.CLASS_1, 1100)).hasValue(1.0);
    assertThat(kelvins(ThermocoupleType.K, ToleranceClass.STANDARD, 0)).hasValue(2.2);
    assertThat(kelvins(ThermocoupleType.K, ToleranceClass.CLASS_3, -167))
        .hasValueCloseTo(2.505, within(1e-12));
  }

  @Test
  void outsideItsReachAClassSaysNothing() {
    assertThat(kelvins(ThermocoupleType.K, ToleranceClass.CLASS_1, 1000)).isPresent();
    assertThat(kelvins(ThermocoupleType.K, ToleranceClass.CLASS_1, 1000.1)).isEmpty();
    assertThat(kelvins(ThermocoupleType.K, ToleranceClass.CLASS_2, -40.1)).isEmpty();
    assertThat(kelvins(ThermocoupleType.J, ToleranceClass.CLASS_3, 20)).isEmpty();
    assertThat(kelvins(ThermocoupleType.B, ToleranceClass.CLASS_2, 599)).isEmpty();
    assertThat(ToleranceClass.CLASS_2.reach(ThermocoupleType.K)).contains("-40 °C to 1200 °C");
    assertThat(ToleranceClass.STANDARD.reach(ThermocoupleType.K)).contains("-200 °C to 1260 °C");
    assertThat(ToleranceClass.CLASS_1.reach(ThermocoupleType.B)).isEmpty();
  }

  @Test
  void aTypeKnowsItsClasses() {
    assertThat(ToleranceClass.of(ThermocoupleType.B))
        .containsExactly(
            ToleranceClass.CLASS_2,
            ToleranceClass.CLASS_3,
            ToleranceClass.STANDARD,
            ToleranceClass.SPECIAL);
    assertThat(ToleranceClass.of(ThermocoupleType.K)).containsExactly(ToleranceClass.values());
    for (ThermocoupleType type : ThermocoupleType.values()) {
      assertThat(ToleranceClass.of(type)).contains(ToleranceClass.CLASS_2);
    }
  }

  @Test
  void wordsNameClasses() {
    assertThat(ToleranceClass.ofWord("2")).contains(ToleranceClass.CLASS_2);
    assertThat(ToleranceClass.ofWord("Special")).contains(ToleranceClass.SPECIAL);
    assertThat(ToleranceClass.ofWord("4")).isEmpty();
    assertThat(ToleranceClass.CLASS_2.origin().words())
        .contains("the standard itself was not read");
  }
}
