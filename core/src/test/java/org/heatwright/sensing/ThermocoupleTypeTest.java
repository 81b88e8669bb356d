package org.heatwright.sensing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class ThermocoupleTypeTest {

  private static final Map<ThermocoupleType, List<String[]>> PRINTED =
      Reference.rows("its90_forward.csv").stream()
          .collect(Collectors.groupingBy(row -> ThermocoupleType.valueOf(row[0])));

  private static Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  /** NIST Monograph 175 (NIST SRD 60), every printed 10 °C. */
  @ParameterizedTest
  @EnumSource
  void theEmfIsThePrintedOneToItsLastDigit(ThermocoupleType type) {
    assertThat(PRINTED.get(type)).hasSizeGreaterThan(60);
    for (String[] row : PRINTED.get(type)) {
      BigDecimal emf =
          BigDecimal.valueOf(type.millivolts(celsius(Double.parseDouble(row[1]))))
              .setScale(3, RoundingMode.HALF_EVEN);
      assertThat(emf).as("%s at %s °C", type, row[1]).isEqualByComparingTo(row[2]);
    }
  }

  @Test
  void thePrintedTableIsReadWhole() {
    assertThat(PRINTED.values().stream().mapToInt(List::size).sum()).isEqualTo(1208);
    assertThat(PRINTED).containsOnlyKeys(ThermocoupleType.values());
  }

  /** CHK-F1: fixed points of ITS-90 Table 1, emf computed apart from the printed coefficients. */
  @ParameterizedTest
  @CsvSource({
    "156.5985, 6.4037, 4.5100, 1.0823, 1.0957, 8.3742",
    "231.928, 9.4205, 6.9809, 1.7150, 1.7562, 12.5517",
    "419.527, 17.2231, 13.7012, 3.4469, 3.6113, 22.9254",
    "660.323, 27.4607, 22.9705, 5.8601, 6.2771, 36.6950",
    "961.78, 39.7781, 34.7761, 9.1484, 10.0034, 55.6688",
    "1064.18, 43.7552, 38.7217, 10.3342, 11.3637, 61.7158",
    "1084.62, 44.5351, 39.5016, 10.5748, 11.6404, 62.9019",
    "25, 1.0002, 0.6586, 0.1426, 0.1406, 1.2773",
    "100, 4.0962, 2.7741, 0.6459, 0.6474, 5.2689",
    "500, 20.6443, 16.7479, 4.2333, 4.4713, 27.3926",
    "1000, 41.2756, 36.2555, 9.5871, 10.5060, 57.9534"
  })
  void theFixedPointsGiveTheirEmf(double at, double k, double n, double s, double r, double j) {
    Function<ThermocoupleType, Double> emf = type -> type.millivolts(celsius(at));
    assertThat(emf.apply(ThermocoupleType.K)).isCloseTo(k, within(0.5001e-4));
    assertThat(emf.apply(ThermocoupleType.N)).isCloseTo(n, within(0.5001e-4));
    assertThat(emf.apply(ThermocoupleType.S)).isCloseTo(s, within(0.5001e-4));
    assertThat(emf.apply(ThermocoupleType.R)).isCloseTo(r, within(0.5001e-4));
    assertThat(emf.apply(ThermocoupleType.J)).isCloseTo(j, within(0.5001e-4));
  }

  /** CHK-F1: Seebeck coefficients computed apart from the printed coefficients, µV/K. */
  @ParameterizedTest
  @CsvSource({
    "K, 961.78, 39.38",
    "N, 961.78, 38.80",
    "S, 961.78, 11.42",
    "R, 961.78, 13.06",
    "J, 961.78, 60.34",
    "K, 660.323, 42.19",
    "S, 660.323, 10.40"
  })
  void theSlopeIsTheSeebeckCoefficient(ThermocoupleType type, double at, double microvolts) {
    assertThat(1000 * type.millivoltsPerKelvin(celsius(at)))
        .isCloseTo(microvolts, within(0.005001));
  }

  /** A difference quotient knows nothing of the derivative's formula. */
  @ParameterizedTest
  @EnumSource
  void theSlopeIsTheDerivativeOfTheEmf(ThermocoupleType type) {
    double step = 0.01;
    for (double at = type.lowest().celsius() + 0.5;
        at < type.highest().celsius() - 0.5;
        at += 7.3) {
      double quotient =
          (type.millivolts(celsius(at + step)) - type.millivolts(celsius(at - step))) / (2 * step);
      assertThat(type.millivoltsPerKelvin(celsius(at))).isCloseTo(quotient, within(1e-6));
    }
  }

  @ParameterizedTest
  @EnumSource
  void theInverseFindsTheTemperatureAgainToAMillionthOfAKelvin(ThermocoupleType type) {
    Random random = new Random(90);
    double low = type.lowestReadable().celsius();
    double high = type.highest().celsius();
    for (int i = 0; i <= 4000; i++) {
      double truth = i == 0 ? low : i == 1 ? high : low + (high - low) * random.nextDouble();
      assertThat(type.temperature(type.millivolts(celsius(truth))).celsius())
          .as("type %s at %s °C", type, truth)
          .isCloseTo(truth, within(1e-6));
    }
  }

  /** A table's last digit may lie beyond the function's end by rounding. */
  @ParameterizedTest
  @EnumSource
  void everyPrintedEmfFindsItsRowAgain(ThermocoupleType type) {
    for (String[] row : PRINTED.get(type)) {
      double at = Double.parseDouble(row[1]);
      if (at >= type.lowestReadable().celsius()) {
        double slack = 0.0005 / type.millivoltsPerKelvin(celsius(at)) * 1.3 + 1e-9;
        assertThat(type.temperature(Double.parseDouble(row[2])).celsius())
            .as("type %s, %s mV", type, row[2])
            .isCloseTo(at, within(slack));
      }
    }
  }

  /** NIST SRD 60: the printed inverse polynomials stay within their printed bands of ours. */
  @Test
  void thePrintedInversePolynomialsAgreeWithinTheirPrintedBands() {
    List<String[]> rows = Reference.rows("its90_inverse.csv");
    assertThat(rows).hasSizeGreaterThan(18);
    for (String[] row : rows) {
      ThermocoupleType type = ThermocoupleType.valueOf(row[0]);
      double from = Double.parseDouble(row[1]);
      double to = Double.parseDouble(row[2]);
      double[] d =
          java.util.Arrays.stream(row[7].split(" ")).mapToDouble(Double::parseDouble).toArray();
      for (double at = from; at <= to; at += 1) {
        double emf = type.millivolts(celsius(at));
        double polynomial = 0;
        for (int i = d.length - 1; i >= 0; i--) {
          polynomial = polynomial * emf + d[i];
        }
        // the bands are printed with one or two digits
        assertThat(polynomial - type.temperature(emf).celsius())
            .as("type %s at %s °C", type, at)
            .isBetween(
                Double.parseDouble(row[5]) - printedHalfDigit(row[5]),
                Double.parseDouble(row[6]) + printedHalfDigit(row[6]));
      }
    }
  }

  private static double printedHalfDigit(String printed) {
    return 0.5 * Math.pow(10, -new BigDecimal(printed).scale());
  }

  /** Joins of NIST Monograph 175: the largest gap is 7.5e-8 mV (type J at 760 °C). */
  @ParameterizedTest
  @CsvSource({
    "B, 630.615",
    "E, 0",
    "J, 760",
    "K, 0",
    "N, 0",
    "R, 1064.18",
    "R, 1664.5",
    "S, 1064.18",
    "S, 1664.5",
    "T, 0"
  })
  void theRangesJoinWithoutAGap(ThermocoupleType type, double join) {
    double below = type.millivolts(celsius(join));
    double above = type.millivolts(celsius(Math.nextUp(join)));
    assertThat(above).isCloseTo(below, within(1e-6));
    assertThat(type.temperature(below).celsius()).isCloseTo(join, within(1e-6));
    if (type != ThermocoupleType.N) {
      assertThat(1000 * type.millivoltsPerKelvin(celsius(Math.nextUp(join))))
          .isCloseTo(1000 * type.millivoltsPerKelvin(celsius(join)), within(2e-5));
    }
  }

  /** The step is in the published functions, not a slip. */
  @Test
  void theSlopeOfTypeNStepsAtZero() {
    assertThat(1000 * ThermocoupleType.N.millivoltsPerKelvin(celsius(0)))
        .isCloseTo(26.15911, within(1e-5));
    assertThat(1000 * ThermocoupleType.N.millivoltsPerKelvin(celsius(1e-9)))
        .isCloseTo(25.92939, within(1e-5));
  }

  /** Computed apart from the same printed coefficients. */
  @Test
  void theColdJunctionIsCompensatedInEmf() {
    List<String[]> rows = Reference.rows("its90_cold_junction.csv");
    assertThat(rows).hasSize(36);
    for (String[] row : rows) {
      ThermocoupleType type = ThermocoupleType.valueOf(row[0]);
      Temperature hot = celsius(Double.parseDouble(row[1]));
      Temperature terminals = celsius(Double.parseDouble(row[2]));
      double emf = type.millivolts(hot, terminals);

      assertThat(emf).isCloseTo(Double.parseDouble(row[3]), within(0.5001e-4));
      assertThat(type.temperature(emf).celsius())
          .isCloseTo(Double.parseDouble(row[4]), within(0.005001));
      assertThat(type.temperature(emf, terminals).celsius()).isCloseTo(hot.celsius(), within(1e-6));
      double perKelvin = (type.millivolts(celsius(30)) - type.millivolts(celsius(20))) / 10;
      double inProportion = perKelvin * terminals.celsius();
      assertThat(type.temperature(emf + inProportion).celsius())
          .isCloseTo(Double.parseDouble(row[5]), within(0.005001));
    }
  }

  /** CHK-F2: computed apart; adding 25 degrees instead of emf is 1 K off. */
  @Test
  void thirtyMillivoltsAtTwentyFiveDegrees() {
    Temperature right = ThermocoupleType.K.temperature(30.000, celsius(25));
    assertThat(right.celsius()).isCloseTo(744.8617, within(0.5001e-4));
    assertThat(ThermocoupleType.K.temperature(30.000).celsius() + 25)
        .isCloseTo(745.8311, within(0.5001e-4));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-0.001, 0.0, 0.1, 0.2904, 0.2909})
  void typeBIsNotReadWhereItIsFlat(double millivolts) {
    assertThatThrownBy(() -> ThermocoupleType.B.temperature(millivolts))
        .isInstanceOf(OutsideRangeException.class)
        .hasMessageStartingWith("Type B can be read from 0.291 mV (250 °C) to 13.82 mV (1820 °C)")
        .hasMessageContaining("flat and turning below");
  }

  @Test
  void typeBIsReadFromItsFirstPrintedMillivolt() {
    assertThat(ThermocoupleType.B.temperature(0.291).celsius()).isCloseTo(250, within(0.1));
    assertThat(ThermocoupleType.B.millivolts(celsius(21))).isCloseTo(-0.0026, within(0.00005));
  }

  @Test
  void outsideARangeIsRefusedInASentence() {
    assertThatThrownBy(() -> ThermocoupleType.K.millivolts(celsius(1373)))
        .isInstanceOf(OutsideRangeException.class)
        .hasMessage("Type K is defined from -270 °C to 1372 °C, and its junction is at 1373 °C.");
    assertThatThrownBy(() -> ThermocoupleType.R.millivolts(celsius(100), celsius(-60)))
        .hasMessage(
            "Type R is defined from -50 °C to 1768.1 °C, and its cold junction is at -60 °C.");
    assertThatThrownBy(() -> ThermocoupleType.T.temperature(21))
        .hasMessage(
            "Type T can be read from -6.258 mV (-270 °C) to 20.872 mV (400 °C); 21 mV, the cold"
                + " junction's share included, is outside.");
    assertThatThrownBy(() -> ThermocoupleType.K.temperature(Double.NaN))
        .hasMessage("The emf must be a number of millivolts.");
    assertThatThrownBy(() -> ThermocoupleType.K.temperature(Double.POSITIVE_INFINITY))
        .isInstanceOf(OutsideRangeException.class);
  }

  @Test
  void lettersNameTypes() {
    assertThat(ThermocoupleType.ofLetter("k")).contains(ThermocoupleType.K);
    assertThat(ThermocoupleType.ofLetter("X")).isEmpty();
    assertThat(ThermocoupleType.ofLetter("")).isEmpty();
  }
}
