package org.heatwright.sensing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.heatwright.sensing.WrongType.Comparison;
import org.heatwright.sensing.WrongType.Suspect;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WrongTypeTest {

  private static final Temperature ICE = Temperature.ofCelsius(0);
  private static final Temperature BENCH = Temperature.ofCelsius(25);
  private static final TemperatureChange FIVE = TemperatureChange.ofKelvins(5);

  private static Comparison seen(double truth, double shown) {
    return new Comparison(Temperature.ofCelsius(truth), Temperature.ofCelsius(shown));
  }

  /** CHK-F2: computed apart from the printed coefficients, cold junction at 0 °C. */
  @ParameterizedTest
  @CsvSource({
    "S, K, 750, 166.63",
    "S, K, 961.78, 225.18",
    "R, K, 900, 226.58",
    "N, K, 900, 778.01",
    "J, K, 500, 658.71",
    "K, N, 750, 870.38",
    "K, J, 750, 567.42"
  })
  void aWrongSettingShowsThis(
      ThermocoupleType sensor, ThermocoupleType setTo, double truth, double shown) {
    assertThat(
            WrongType.shown(sensor, setTo, Temperature.ofCelsius(truth), ICE)
                .orElseThrow()
                .celsius())
        .isCloseTo(shown, within(0.005001));
  }

  /** Computed apart, to the degree. */
  @ParameterizedTest
  @CsvSource({
    "K, N, 800, 923",
    "N, K, 800, 684",
    "S, R, 1000, 930",
    "R, S, 1000, 1079",
    "K, J, 800, 603"
  })
  void usualMistakesToTheDegree(
      ThermocoupleType sensor, ThermocoupleType setTo, double truth, double shown) {
    assertThat(
            WrongType.shown(sensor, setTo, Temperature.ofCelsius(truth), ICE)
                .orElseThrow()
                .celsius())
        .isCloseTo(shown, within(0.5));
  }

  @Test
  void theRightSettingShowsTheTruth() {
    for (ThermocoupleType type : ThermocoupleType.values()) {
      Temperature truth = Temperature.ofCelsius(390);
      assertThat(WrongType.shown(type, type, truth, BENCH).orElseThrow().celsius())
          .isCloseTo(390, within(1e-6));
    }
  }

  @Test
  void atTheColdJunctionEverySettingIsRight() {
    assertThat(
            WrongType.shown(ThermocoupleType.K, ThermocoupleType.N, BENCH, BENCH)
                .orElseThrow()
                .celsius())
        .isCloseTo(25, within(1e-6));
  }

  @Test
  void whatTheInstrumentCannotShowIsEmpty() {
    assertThat(
            WrongType.shown(
                ThermocoupleType.K, ThermocoupleType.T, Temperature.ofCelsius(900), ICE))
        .isEmpty();
    assertThat(
            WrongType.shown(
                ThermocoupleType.K, ThermocoupleType.B, Temperature.ofCelsius(1500), ICE))
        .isEmpty();
    assertThat(
            WrongType.shown(ThermocoupleType.K, ThermocoupleType.B, Temperature.ofCelsius(1), ICE))
        .isEmpty();
  }

  @Test
  void swappedLeadsFallAsTheKilnHeats() {
    Temperature last = BENCH;
    for (double truth : new double[] {50, 75, 100, 150}) {
      Temperature shown =
          WrongType.shownReversed(ThermocoupleType.K, Temperature.ofCelsius(truth), BENCH)
              .orElseThrow();
      assertThat(shown).isLessThan(last);
      last = shown;
    }
    assertThat(WrongType.shownReversed(ThermocoupleType.K, Temperature.ofCelsius(900), BENCH))
        .isEmpty();
  }

  @Test
  void twoComparisonsFindTheCouple() {
    List<Suspect> suspects =
        WrongType.suspects(
            List.of(seen(750, 166), seen(961.78, 226)), ThermocoupleType.K, ICE, FIVE);

    assertThat(suspects).hasSize(1);
    assertThat(suspects.get(0).sensor()).isEqualTo(ThermocoupleType.S);
    assertThat(suspects.get(0).largestMisfit().kelvins()).isCloseTo(0.82, within(0.01));
    assertThat(suspects.get(0).sentence(ThermocoupleType.K))
        .isEqualTo(
            "The controller is set to type K, the couple may be type S (explains the readings to"
                + " 0.8 K).");
  }

  @Test
  void aConstantOffsetIsNoWrongType() {
    assertThat(
            WrongType.suspects(
                List.of(seen(300, 320), seen(800, 820)), ThermocoupleType.K, BENCH, FIVE))
        .isEmpty();
  }

  @Test
  void aRightDisplaySuspectsNothing() {
    assertThat(WrongType.suspects(List.of(seen(25, 25)), ThermocoupleType.K, BENCH, FIVE))
        .isEmpty();
    assertThat(WrongType.suspects(List.of(seen(900, 903)), ThermocoupleType.K, BENCH, FIVE))
        .isEmpty();
  }

  @Test
  void swappedLeadsAreSuspected() {
    double shown =
        WrongType.shownReversed(ThermocoupleType.K, Temperature.ofCelsius(100), BENCH)
            .orElseThrow()
            .celsius();
    Suspect suspect =
        WrongType.suspects(List.of(seen(100, shown)), ThermocoupleType.K, BENCH, FIVE).get(0);
    assertThat(suspect.leadsReversed()).isTrue();
    assertThat(suspect.sentence(ThermocoupleType.K)).contains("leads of the type K couple");
  }

  /** Whatever pair is mixed up, two comparisons name the couple, first or only. */
  @Test
  void everyMixUpIsFound() {
    Random random = new Random(7);
    int found = 0;
    for (ThermocoupleType sensor : ThermocoupleType.values()) {
      for (ThermocoupleType setTo : ThermocoupleType.values()) {
        if (sensor == setTo) {
          continue;
        }
        Temperature one = Temperature.ofCelsius(620 + 40 * random.nextDouble());
        Temperature two = Temperature.ofCelsius(880 + 40 * random.nextDouble());
        Optional<Temperature> first = WrongType.shown(sensor, setTo, one, BENCH);
        Optional<Temperature> second = WrongType.shown(sensor, setTo, two, BENCH);
        if (first.isEmpty() || second.isEmpty()) {
          continue;
        }
        List<Suspect> suspects =
            WrongType.suspects(
                List.of(
                    new Comparison(one, first.get().plus(TemperatureChange.ofKelvins(0.4))),
                    new Comparison(two, second.get().plus(TemperatureChange.ofKelvins(-0.4)))),
                setTo,
                BENCH,
                FIVE);
        assertThat(suspects.get(0).sensor()).as("%s set to %s", sensor, setTo).isEqualTo(sensor);
        found++;
      }
    }
    assertThat(found).isGreaterThan(25);
  }

  /** R and S are alike: both fit loosely, the fitted one best, whichever comes first by letter. */
  @ParameterizedTest
  @CsvSource({"S, R", "R, S"})
  void theBestExplanationComesFirst(ThermocoupleType fitted, ThermocoupleType alike) {
    Temperature truth = Temperature.ofCelsius(961.78);
    Temperature shown = WrongType.shown(fitted, ThermocoupleType.K, truth, BENCH).orElseThrow();
    List<Suspect> suspects =
        WrongType.suspects(
            List.of(new Comparison(truth, shown)),
            ThermocoupleType.K,
            BENCH,
            TemperatureChange.ofKelvins(40));

    assertThat(suspects).extracting(Suspect::sensor).containsExactly(fitted, alike);
    assertThat(suspects).isSortedAccordingTo(Comparator.comparing(Suspect::largestMisfit));
  }

  @Test
  void nothingSeenIsRefused() {
    assertThatThrownBy(() -> WrongType.suspects(List.of(), ThermocoupleType.K, BENCH, FIVE))
        .hasMessageContaining("at least one comparison");
  }
}
