package org.heatwright.work.heatwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.heatwright.material.HeatWork;
import org.heatwright.material.HeatWork.Weighting;
import org.heatwright.material.Viscosity;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HeatWorkComparisonTest {

  private static final Temperature ROOM = Temperature.ofCelsius(20);

  private static Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  private static Segment to(double rate, double celsius, double minutes) {
    return new Segment(
        Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        celsius(celsius),
        Duration.ofMinutes(Math.round(minutes)));
  }

  private static Schedule schedule(Segment... segments) {
    return Schedule.of("s", TemperatureUnit.CELSIUS, List.of(segments));
  }

  private static FiringCurve paper(Schedule schedule) {
    return FiringCurve.onPaper(schedule, ROOM, Optional.empty());
  }

  /** CHK-H2 through a schedule: 500 K/h to 900 °C, Q 185 kJ/mol; computed apart by quadrature. */
  @ParameterizedTest
  @CsvSource({"PLAIN, 6.742778", "MASTER_SINTERING, 7.066998"})
  void aRampOnPaperIsWorthThis(Weighting weighting, double minutes) {
    Equivalence by = Equivalence.arrhenius(new HeatWork(185_000, celsius(900), weighting));
    assertThat(by.secondsOf(paper(schedule(to(500, 900, 0)))))
        .isCloseTo(60 * minutes, within(3e-5));
  }

  /**
   * CHK-H1 through whole schedules: nearly vertical ramps, ten minutes at 780 °C against a hold
   * elsewhere that makes it even; computed apart from the closed form.
   */
  @ParameterizedTest
  @CsvSource({
    "150, 800, 436.0145",
    "150, 820, 320.5709",
    "150, 760, 835.9294",
    "300, 800, 316.8478",
    "300, 820, 171.2762",
    "300, 760, 1164.6298"
  })
  void theHoldThatMakesItEven(double kilojoules, double instead, double seconds) {
    Schedule one = schedule(to(1e9, 780, 10));
    Schedule two = schedule(to(1e9, instead, 1));
    HeatWorkComparison even =
        HeatWorkComparison.of(
            Equivalence.arrhenius(HeatWork.of(kilojoules * 1000, celsius(780))),
            paper(one),
            paper(two),
            two);
    assertThat(even.firstSeconds()).isCloseTo(600, within(0.01));
    assertThat(even.holdSeconds().orElseThrow()).isCloseTo(seconds, within(0.01));
    assertThat(even.holdSegment()).isEqualTo(1);
  }

  /** Where the second does more by its ramps alone no hold helps. */
  @Test
  void noHoldMakesAHotterRampEven() {
    Schedule one = schedule(to(500, 780, 1));
    Schedule two = schedule(to(50, 900, 30), to(100, 300, 0));
    HeatWorkComparison more =
        HeatWorkComparison.of(
            Equivalence.arrhenius(HeatWork.of(200_000, celsius(780))), paper(one), paper(two), two);
    assertThat(more.holdSeconds()).isEmpty();
    assertThat(more.secondToFirstRatio()).isGreaterThan(10);
    assertThat(more.holdSegment()).isEqualTo(1);
  }

  /**
   * A glass by its viscosity: ten minutes at 800 °C of the standard float, 1/eta by hand; its local
   * Q there is 3.1e5 J/mol (implementers' sheet, section H).
   */
  @Test
  void aGlassByItsViscosity() {
    Viscosity glass = Viscosity.standardFloatGlass();
    Equivalence flow = Equivalence.flow(glass, celsius(800));
    assertThat(flow.activationJoulesPerMole()).isCloseTo(3.1e5, within(0.05e5));
    Schedule one = schedule(to(1e9, 800, 10));
    Schedule two = schedule(to(1e9, 780, 1));
    HeatWorkComparison even = HeatWorkComparison.of(flow, paper(one), paper(two), two);
    double byHand = 600 * Math.pow(10, 4330.9 / (780 - 246.1) - 4330.9 / (800 - 246.1));
    assertThat(even.holdSeconds().orElseThrow()).isCloseTo(byHand, within(0.02));
    assertThatThrownBy(() -> Equivalence.flow(glass, celsius(200)))
        .hasMessageContaining("the glass is rigid");
  }

  /** The local Q of the viscosity gives nearly the same for a small step. */
  @Test
  void nearTheReferenceBothLawsAgree() {
    Viscosity glass = Viscosity.standardFloatGlass();
    Equivalence flow = Equivalence.flow(glass, celsius(800));
    Equivalence plain =
        Equivalence.arrhenius(HeatWork.of(flow.activationJoulesPerMole(), celsius(800)));
    assertThat(flow.worthOfSecondAt(celsius(805)))
        .isCloseTo(plain.worthOfSecondAt(celsius(805)), within(0.005));
  }

  @Test
  void fastestNeedsARate() {
    Schedule fast = schedule(new Segment(Ramp.fastest(), celsius(800), Duration.ofMinutes(10)));
    assertThatThrownBy(() -> paper(fast))
        .hasMessage("Segment 1 of s goes as fast as the kiln can, which paper cannot know.");
    FiringCurve curve =
        FiringCurve.onPaper(fast, ROOM, Optional.of(HeatingRate.ofKelvinsPerHour(780)));
    assertThat(curve.seconds()).containsExactly(0, 3600, 4200);
    assertThat(curve.celsius()).containsExactly(20, 800, 800);
  }

  /** Hotter, longer and slower always do more; 10,000 schedules, both laws. */
  @Test
  @Tag("property")
  void hotterLongerAndSlowerDoMore() {
    SplittableRandom random = new SplittableRandom(20261126);
    Viscosity glass = Viscosity.standardFloatGlass();
    for (int i = 0; i < 10_000; i++) {
      Temperature reference = celsius(650 + 200 * random.nextDouble());
      Equivalence by =
          switch (i % 3) {
            case 0 -> Equivalence.flow(glass, reference);
            case 1 ->
                Equivalence.arrhenius(
                    HeatWork.of(80_000 + 400_000 * random.nextDouble(), reference));
            default ->
                Equivalence.arrhenius(
                    new HeatWork(
                        80_000 + 400_000 * random.nextDouble(),
                        reference,
                        Weighting.MASTER_SINTERING));
          };
      double rate = 50 + 500 * random.nextDouble();
      double top = 550 + 350 * random.nextDouble();
      int minutes = random.nextInt(120);
      double here = by.secondsOf(paper(schedule(to(rate, top, minutes))));
      assertThat(by.secondsOf(paper(schedule(to(rate, top + 1 + random.nextInt(50), minutes)))))
          .isGreaterThan(here);
      assertThat(by.secondsOf(paper(schedule(to(rate, top, minutes + 1))))).isGreaterThan(here);
      assertThat(by.secondsOf(paper(schedule(to(rate * 0.8, top, minutes))))).isGreaterThan(here);
      assertThat(by.secondsOf(paper(schedule(to(rate, top, minutes), to(rate, 300, 0)))))
          .isGreaterThan(here);
    }
  }

  /** A match, put back into the schedule, is even; whole minutes are close. */
  @Test
  void theHoldPutBackIsEven() {
    List<Segment> segments =
        new ArrayList<>(List.of(to(150, 600, 20), to(300, 790, 25), to(200, 500, 60)));
    Schedule one = schedule(to(200, 770, 40));
    Schedule two = schedule(segments.toArray(Segment[]::new));
    Equivalence by = Equivalence.arrhenius(HeatWork.of(185_000, celsius(780)));
    HeatWorkComparison even = HeatWorkComparison.of(by, paper(one), paper(two), two);
    long minutes = Math.round(even.holdSeconds().orElseThrow() / 60);
    segments.set(1, to(300, 790, minutes));
    double again = by.secondsOf(paper(schedule(segments.toArray(Segment[]::new))));
    assertThat(again).isCloseTo(even.firstSeconds(), within(45.0));
  }
}
