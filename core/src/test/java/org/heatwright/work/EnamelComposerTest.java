package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.Optional;
import org.heatwright.inspect.Severity;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.work.EnamelWork.Hardness;
import org.heatwright.work.EnamelWork.Metal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EnamelComposerTest {

  @Test
  void aSessionIsOneWayUpAndOneHold() {
    Composition composed = compose(Scenarios.enamel(Metal.COPPER, Hardness.HARD));
    assertThat(composed.schedule().segments())
        .containsExactly(
            new Segment(Ramp.fastest(), Temperature.ofCelsius(860), Duration.ofHours(3)));
    assertThat(composed.charge().isEmpty()).isTrue();
    assertThat(composed.demands().pourSoak()).isEmpty();
  }

  /** By hardness (a guild of enamellers' tests, read), then kept below the metal's cap. */
  @ParameterizedTest
  @CsvSource({
    "COPPER, SOFT, 780",
    "COPPER, MEDIUM, 820",
    "COPPER, HARD, 860",
    "FINE_SILVER, SOFT, 780",
    "FINE_SILVER, HARD, 790",
    "STERLING_925, SOFT, 760",
    "STERLING_925, HARD, 760",
    "GOLD_18K, SOFT, 780",
    "GOLD_18K, HARD, 800",
    "STEEL, MEDIUM, 820",
    "STEEL, HARD, 860"
  })
  void theWorkingTemperatureFollowsEnamelAndMetal(Metal metal, Hardness hardness, double celsius) {
    assertThat(compose(Scenarios.enamel(metal, hardness)).schedule().peak().celsius())
        .isEqualTo(celsius);
  }

  /**
   * Published values (read: a metallurgy data page, eutectic 779.1 °C; a metals data page, sterling
   * solidus 788 °C): no schedule of ours on sterling or near it reaches them.
   */
  @Test
  void sterlingStaysBelowTheEutecticAndItsSolidusIsAFirmLimit() {
    Composition composed = compose(Scenarios.enamel(Metal.STERLING_925, Hardness.HARD));
    assertThat(composed.schedule().peak().celsius()).isLessThan(779);
    assertThat(composed.demands().firmCeiling().orElseThrow().limit().celsius()).isEqualTo(788);
    assertThat(composed.cautions())
        .extracting(Caution::code)
        .contains("copper-silver-contact", "firings-budget", "no-quench", "enamel-dust");
  }

  @Test
  void theStudiosOwnTemperatureIsKeptAndToldWhenUnusual() {
    Composition composed = compose(withWorking(Metal.STERLING_925, 780));
    assertThat(composed.schedule().peak().celsius()).isEqualTo(780);
    assertThat(composed.cautions()).extracting(Caution::code).contains("above-usual");
    assertThat(composed.demands().ceilings())
        .noneMatch(c -> c.beyond() == Severity.WARN && c.limit().celsius() < 780);
  }

  @Test
  void aTemperatureThatMeltsTheMetalIsRefused() {
    assertThatThrownBy(() -> compose(withWorking(Metal.STERLING_925, 820)))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("788 °C for sterling silver");
    assertThatThrownBy(() -> compose(withWorking(Metal.COPPER, 1450)))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("1450 °F is 788 °C");
  }

  @Test
  void theDataSheetRulesWithinTheLimits() {
    DataSheet sheet = DataSheet.none().withTop(Temperature.ofCelsius(835), Duration.ZERO);
    assertThat(compose(withSheet(Metal.COPPER, sheet)).schedule().peak().celsius()).isEqualTo(835);
    assertThat(compose(withSheet(Metal.STERLING_925, sheet)).schedule().peak().celsius())
        .isEqualTo(788);
    DataSheet capped = DataSheet.ofMax(Temperature.ofCelsius(745));
    assertThat(compose(withSheet(Metal.COPPER, capped)).schedule().peak().celsius()).isEqualTo(740);
  }

  /**
   * Read, a blog on enamelled steel samples: 5 to 7 min on 4 mm steel; thin jewellery 1.5 to 3 min
   * (two beginners' and supplier pages). Scaled by mass for each area, the one gives the other to
   * within its spread.
   */
  @Test
  void theTimeOfAPieceGoesWithItsMass() {
    assertThat(EnamelRules.timeFactor(Metal.COPPER, 0.001)).isCloseTo(1, within(1e-12));
    double least =
        EnamelRules.REFERENCE_LEAST_SECONDS * EnamelRules.timeFactor(Metal.STEEL, 0.004) / 60;
    double most =
        EnamelRules.REFERENCE_MOST_SECONDS * EnamelRules.timeFactor(Metal.STEEL, 0.004) / 60;
    assertThat(least).isLessThanOrEqualTo(5);
    assertThat(most).isGreaterThanOrEqualTo(7);
    assertThat((least + most) / 2).isCloseTo(6, within(1.5));
  }

  @Test
  void aSessionTooShortForItsPiecesIsTold() {
    EnamelWork work =
        new EnamelWork(
            Metal.COPPER,
            0.001,
            90,
            0.04,
            Hardness.SOFT,
            Optional.empty(),
            Duration.ofHours(1),
            DataSheet.none(),
            Optional.empty(),
            EnamelBuild.unknown());
    assertThat(compose(work).cautions()).extracting(Caution::code).contains("session-short");
    assertThat(compose(Scenarios.enamel(Metal.COPPER, Hardness.SOFT)).cautions())
        .extracting(Caution::code)
        .doesNotContain("session-short");
  }

  private static EnamelWork withWorking(Metal metal, double celsius) {
    return new EnamelWork(
        metal,
        0.001,
        4,
        0.03,
        Hardness.MEDIUM,
        Optional.of(Temperature.ofCelsius(celsius)),
        Duration.ofHours(2),
        DataSheet.none(),
        Optional.empty(),
        EnamelBuild.unknown());
  }

  private static EnamelWork withSheet(Metal metal, DataSheet sheet) {
    return new EnamelWork(
        metal,
        0.001,
        4,
        0.03,
        Hardness.MEDIUM,
        Optional.empty(),
        Duration.ofHours(2),
        sheet,
        Optional.empty(),
        EnamelBuild.unknown());
  }

  private static Composition compose(EnamelWork work) {
    return Composer.compose(work, Scenarios.buoy(), Optional.empty());
  }
}
