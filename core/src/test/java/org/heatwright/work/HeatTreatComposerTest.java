package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.kiln.Kiln;
import org.heatwright.units.Temperature;
import org.heatwright.work.HeatTreatWork.Own;
import org.heatwright.work.HeatTreatWork.Setting;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatTreatComposerTest {

  private static final Kiln KILN =
      Scenarios.kiln("Any", Scenarios.box(0.22, 0.26, 0.21), 2600, 1100, Optional.empty(), 3);

  private static Composition compose(HeatTreatWork work) {
    return Composer.compose(work, KILN, Optional.empty());
  }

  /** By metal: the sources are beside each number in {@code Practices}. */
  @ParameterizedTest
  @CsvSource({
    "FINE_SILVER, 400, 300, 500",
    "STERLING_925, 620, 593, 650",
    "COPPER, 500, 400, 650",
    "BRASS, 550, 450, 600",
    "BRONZE, 550, 500, 600",
    "YELLOW_GOLD_14K, 660, 640, 700",
    "RED_GOLD_18K, 670, 640, 700",
    "WHITE_GOLD_NICKEL_18K, 610, 600, 750",
    "PLATINUM_950, 950, 927, 1000",
  })
  void annealingFollowsPractice(TreatedMetal metal, double target, double low, double high) {
    Composition composed = compose(HeatTreatWorks.of(Treatment.ANNEAL, metal));
    assertThat(composed.schedule().peak().celsius()).isEqualTo(target);
    assertThat(composed.demands().windows().get(0).range())
        .isEqualTo(TemperatureRange.ofCelsius(low, high));
    assertThat(composed.schedule().segments()).hasSize(1);
  }

  /**
   * Sterling in solution: capped at 745 °C (our estimate), well under the lowest published solidus,
   * 788 °C (read, a metals data page), and hot enough for all of its copper (solvus 732 °C, read).
   */
  @Test
  void sterlingsSolutionHeatIsCappedAndNamesTheOtherHeat() {
    Composition composed = compose(HeatTreatWorks.solution(TreatedMetal.STERLING_925, Own.none()));
    assertThat(composed.schedule().peak().celsius()).isBetween(732.0, 745.0);
    assertThat(composed.schedule().segments().get(0).hold())
        .isGreaterThanOrEqualTo(Duration.ofMinutes(30));
    assertThat(composed.demands().firmCeiling().orElseThrow().limit().celsius()).isLessThan(788);
    assertThat(caution(composed, "second-heat"))
        .contains("First of two firings", "300 °C for 1 h", "soldering undoes it");
    assertThat(caution(composed, "hardness-range")).contains("100 to 140 HV");
    assertThat(composed.moments())
        .anyMatch(m -> m.what().startsWith("out of the kiln and into water within "));
    Composition second = compose(HeatTreatWorks.age(TreatedMetal.STERLING_925, Own.none()));
    assertThat(second.schedule().peak().celsius()).isEqualTo(300);
    assertThat(caution(second, "first-heat")).contains("745 °C for 30 min", "in water within ");
  }

  /** Question of the trade: harden these soldered catches. */
  @Test
  void solderCapsTheSolutionHeatOrForbidsIt() {
    Composition unknown =
        compose(
            HeatTreatWorks.solution(
                TreatedMetal.STERLING_925, Own.none().withSolder(Optional.empty())));
    assertThat(unknown.schedule().peak().celsius()).isEqualTo(700);
    assertThat(caution(unknown, "hardness-range")).contains("74 to 140 HV", "Our sources disagree");
    assertThat(caution(unknown, "soldered-joints")).contains("give the solder's flow");
    Composition known = compose(solution(745));
    assertThat(known.schedule().peak().celsius()).isBetween(690.0, 710.0);
    assertThatThrownBy(() -> compose(solution(680)))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("Sterling gains little from a solution heat of 650 °C or less")
        .hasMessageContaining("the solder flows at 680 °C");
  }

  private static HeatTreatWork solution(double flow) {
    return HeatTreatWorks.solution(
        TreatedMetal.STERLING_925, Own.none().withSolder(Optional.of(Temperature.ofCelsius(flow))));
  }

  @Test
  void aHardnessOutOfReachIsRefusedInOneSentence() {
    assertThatThrownBy(
            () ->
                compose(
                    HeatTreatWorks.solution(
                        TreatedMetal.STERLING_925, Own.none().withWantedHardness(180))))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessage(
            "180 HV is out of reach: solution heat of sterling silver at 740 °C ends between 100 and 140 HV by our sources.");
    compose(HeatTreatWorks.solution(TreatedMetal.STERLING_925, Own.none().withWantedHardness(120)));
  }

  @Test
  void aTargetThatMayMeltIsRefused() {
    assertThatThrownBy(
            () ->
                compose(
                    HeatTreatWorks.solution(
                        TreatedMetal.STERLING_925,
                        Own.none().withTarget(Temperature.ofCelsius(780), Duration.ofMinutes(30)))))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("begins to melt at 788 °C, the display may be 6 K off")
        .hasMessageContaining("overshoot by 10 K");
    assertThatThrownBy(
            () ->
                compose(
                    HeatTreatWorks.of(
                        Treatment.ANNEAL,
                        TreatedMetal.STERLING_925,
                        Own.none().withTarget(Temperature.ofCelsius(1150), Duration.ofMinutes(5)))))
        .hasMessageContaining("1150 °F is 621 °C");
    assertThatThrownBy(
            () ->
                compose(
                    HeatTreatWorks.of(
                        Treatment.ANNEAL,
                        TreatedMetal.BRONZE,
                        Own.none().withSolidus(Temperature.ofCelsius(480)))))
        .hasMessageContaining("Annealing of bronze needs 500 °C at least");
  }

  @Test
  void whatNoSourceTellsNeedsOnesOwnNumbers() {
    HeatTreatWork unknown =
        HeatTreatWorks.of(Treatment.ANNEAL, TreatedMetal.WHITE_GOLD_PALLADIUM_18K);
    assertThatThrownBy(() -> compose(unknown))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessage(
            "No source of ours tells how annealing of 18 k palladium white gold is done: give target-celsius and soak, or the supplier's data sheet.");
    Composition own =
        compose(
            HeatTreatWorks.of(
                Treatment.ANNEAL,
                TreatedMetal.WHITE_GOLD_PALLADIUM_18K,
                Own.none().withTarget(Temperature.ofCelsius(820), Duration.ofMinutes(20))));
    assertThat(own.schedule().peak().celsius()).isEqualTo(820);
    Composition sheet =
        compose(
            HeatTreatWorks.with(
                unknown,
                DataSheet.none().withTop(Temperature.ofCelsius(815), Duration.ofMinutes(20))));
    assertThat(sheet.schedule().peak().celsius()).isEqualTo(815);
    assertThatThrownBy(() -> compose(HeatTreatWorks.of(Treatment.KEUM_BOO, TreatedMetal.COPPER)))
        .hasMessageContaining("No source of ours tells how keum-boo of copper is done");
  }

  /** Read: 260 to 370 °C for keum-boo; under 200 °C for patinas; granulation by estimate. */
  @ParameterizedTest
  @CsvSource({
    "KEUM_BOO, FINE_SILVER, 320, 260, 370",
    "GRANULATION_PREHEAT, FINE_SILVER, 780, 700, 850",
    "GRANULATION_PREHEAT, YELLOW_GOLD_22K, 870, 850, 900",
    "PATINA_BAKE, COPPER, 120, 80, 200",
    "DRY, BRASS, 80, 40, 95",
  })
  void lowHeatStaysInItsWindow(
      Treatment treatment, TreatedMetal metal, double target, double low, double high) {
    Composition composed = compose(HeatTreatWorks.of(treatment, metal));
    assertThat(composed.schedule().peak().celsius()).isEqualTo(target);
    assertThat(composed.demands().windows().get(0).range())
        .isEqualTo(TemperatureRange.ofCelsius(low, high));
  }

  @Test
  void aHotCarbonBoxAndQuickWaterDoNotGoTogether() {
    HeatTreatWork boxed =
        HeatTreatWorks.with(
            HeatTreatWorks.solution(TreatedMetal.STERLING_925, Own.none()),
            Setting.CARBON_BOX,
            0.06);
    assertThatThrownBy(() -> compose(boxed))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("out of a box of hot carbon it never is");
    Composition annealed =
        compose(
            HeatTreatWorks.with(
                HeatTreatWorks.of(Treatment.ANNEAL, TreatedMetal.STERLING_925),
                Setting.CARBON_BOX,
                0.06));
    assertThat(annealed.cautions())
        .extracting(Caution::code)
        .contains("carbon-monoxide")
        .doesNotContain("fire-stain", "quench");
    // Half an hour and more until the middle of the box has followed (estimate: 30 to 90 min).
    assertThat(annealed.schedule().segments().get(0).hold().toMinutes()).isBetween(40L, 150L);
  }

  /** Sheet that cools faster than a hand is told; red gold has its two gates. */
  @Test
  void theWayToTheWaterFollowsThickness() {
    double[] thick = seconds(0.003);
    double[] thin = seconds(0.0003);
    assertThat(thin[0]).isLessThan(thick[0]);
    assertThat(thin[1]).isLessThan(thick[1]);
    Composition sheet =
        compose(
            HeatTreatWorks.with(
                HeatTreatWorks.solution(TreatedMetal.STERLING_925, Own.none()),
                new HeatTreatWork.Piece(0.0004, 0.0004, 0.002)));
    assertThat(caution(sheet, "transfer-too-short")).contains("quicker than a hand");
    Composition red = compose(HeatTreatWorks.of(Treatment.ANNEAL, TreatedMetal.RED_GOLD_18K));
    assertThat(red.moments())
        .anyMatch(
            m ->
                m.what().startsWith("out of the kiln, let the red go, into water within ")
                    && m.why().contains("427 °C"));
    Composition white =
        compose(HeatTreatWorks.of(Treatment.ANNEAL, TreatedMetal.WHITE_GOLD_NICKEL_14K));
    assertThat(white.moments()).anyMatch(m -> m.what().equals("out of the kiln, cool in air"));
  }

  /** No stopwatch in a hand shows tenths, and nobody is told more time than there is. */
  @Test
  void timeToTheWaterIsToldInWholeSecondsRoundedDown() {
    assertThat(HeatTreatCautions.seconds(3.97)).isEqualTo("3 s");
    assertThat(HeatTreatCautions.seconds(0.6)).isEqualTo("less than 1 s");
    assertThat(HeatTreatCautions.seconds(119.9)).isEqualTo("119 s");
    assertThat(HeatTreatCautions.seconds(239)).isEqualTo("3 min");
  }

  private static double[] seconds(double metres) {
    return HeatTreatRules.secondsInAir(
        HeatTreatWorks.with(
            HeatTreatWorks.solution(TreatedMetal.STERLING_925, Own.none()),
            new HeatTreatWork.Piece(metres, metres, 0.01)),
        Temperature.ofCelsius(740),
        Temperature.ofCelsius(650),
        Temperature.ofCelsius(20));
  }

  @Test
  void everyMetalHasItsCautions() {
    assertThat(codes(TreatedMetal.BRASS)).contains("zinc-fume", "scale");
    assertThat(codes(TreatedMetal.STERLING_925)).contains("fire-stain", "quench", "hot-work");
    assertThat(codes(TreatedMetal.FINE_SILVER)).doesNotContain("scale", "fire-stain");
    Composition patina = compose(HeatTreatWorks.of(Treatment.PATINA_BAKE, TreatedMetal.COPPER));
    assertThat(patina.cautions()).extracting(Caution::code).contains("bake-fumes", "low-kiln");
    for (Composition any : new Composition[] {patina}) {
      assertThat(any.cautions()).extracting(Caution::code).contains("unattended", "maker-first");
    }
  }

  private static String[] codes(TreatedMetal metal) {
    return compose(HeatTreatWorks.of(Treatment.ANNEAL, metal)).cautions().stream()
        .map(Caution::code)
        .toArray(String[]::new);
  }

  @Test
  void everyReasonCarriesAnOrigin() {
    for (TreatedMetal metal : TreatedMetal.values()) {
      for (Treatment treatment : Treatment.values()) {
        if (treatment == Treatment.SOLUTION_AND_AGE) {
          continue;
        }
        try {
          Composition composed = compose(HeatTreatWorks.of(treatment, metal));
          assertThat(composed.reasons()).hasSize(3);
          assertThat(composed.demands().ceilings()).anyMatch(c -> c.beyond() == Severity.STOP);
          assertThat(Arrays.asList(composed.judge())).doesNotContainNull();
        } catch (WorkRefusedException e) {
          assertThat(e.getMessage()).endsWith(".").doesNotContain("\n");
        }
      }
    }
  }

  private static String caution(Composition composed, String code) {
    return composed.cautions().stream()
        .filter(c -> c.code().equals(code))
        .map(Caution::message)
        .findFirst()
        .orElseThrow(() -> new AssertionError(code + " is missing"));
  }
}
