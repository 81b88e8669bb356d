package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.Severity;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.SinterWork.Aim;
import org.heatwright.work.SinterWork.Embedded;
import org.heatwright.work.SinterWork.Phase;
import org.heatwright.work.sinter.CarbonBox;
import org.heatwright.work.sinter.Clay;
import org.heatwright.work.sinter.TestFiring;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SinterComposerTest {

  private static final SinterWork.Piece THIN = piece(6, 2, 30, Embedded.NONE);

  /** Strongest by a teacher's page (read): 899 °C for 2 h; thin dry pieces stand any rate. */
  @Test
  void thinSilverGoesStraightToItsStrongestFiring() {
    Composition composed = compose(work(Clay.FINE_SILVER, Phase.BOTH_IN_ONE, THIN));
    assertThat(composed.schedule().segments()).containsExactly(segment(Ramp.fastest(), 900, 120));
    assertThat(composed.charge().followed()).hasSize(1);
    assertThat(composed.demands().firmCeiling().orElseThrow().limit().celsius()).isEqualTo(925);
    assertThat(codes(composed)).contains("bone-dry", "binder-fume", "quench", "strength");
  }

  @Test
  void theQuickestIsTheShortestHoldOfTheMinimumTable() {
    SinterWork quick = with(work(Clay.FINE_SILVER, Phase.BOTH_IN_ONE, THIN), Aim.QUICKEST);
    assertThat(compose(quick).schedule().segments())
        .containsExactly(segment(Ramp.fastest(), 780, 5));
  }

  /** The thickest piece rules: slow until its binder has gone. */
  @Test
  void aThickPieceRulesTheWholeFiring() {
    Composition composed =
        compose(work(Clay.FINE_SILVER, Phase.BOTH_IN_ONE, THIN, piece(1, 6, 25, Embedded.NONE)));
    List<Segment> segments = composed.schedule().segments();
    assertThat(segments.get(0).ramp()).isEqualTo(Ramp.at(HeatingRate.ofKelvinsPerHour(410)));
    assertThat(segments.get(0).target().celsius()).isEqualTo(500);
    assertThat(segments.get(1).target().celsius()).isEqualTo(900);
    assertThat(segments.get(1).hold()).isGreaterThanOrEqualTo(Duration.ofHours(2));
    assertThat(composed.charge().followed().get(0).slab().thicknessMetres()).isEqualTo(0.006);
    assertThat(composed.moments().get(0).why()).contains("6.0 mm", "2 h 30 min before");
  }

  /** Glass caps all twelve: a long low hold, its cost told, and the kiln cools shut. */
  @Test
  void glassCapsTheWholeClass() {
    Composition composed =
        compose(
            work(
                Clay.FINE_SILVER,
                Phase.BOTH_IN_ONE,
                piece(11, 2, 30, Embedded.NONE),
                piece(1, 6, 25, Embedded.GLASS)));
    // What the display may go beyond its setting stays below where the card says to switch off.
    assertThat(composed.schedule().peak().celsius()).isEqualTo(640);
    assertThat(composed.demands().firmCeiling().orElseThrow().limit().celsius()).isEqualTo(650);
    assertThat(codes(composed)).contains("fire-apart", "strength");
    assertThat(caution(composed, "fire-apart")).startsWith("1 of 12 pieces");
    assertThat(caution(composed, "quench")).startsWith("Do not quench");
    assertThat(lastHold(composed)).isGreaterThanOrEqualTo(Duration.ofHours(2));
    Moment handBack = composed.moments().get(composed.moments().size() - 1);
    assertThat(handBack.kind()).isEqualTo(Moment.Kind.READY);
    assertThat(handBack.after()).isBetween(Duration.ofHours(2), Duration.ofHours(20));
  }

  /** A hold whose clock runs from the start gets the way up on top, and the reason says so. */
  @Test
  void aHoldThatDoesNotWaitHasTheWayUpInIt() {
    SinterWork work = work(Clay.FINE_SILVER, Phase.BOTH_IN_ONE, THIN);
    Composition composed =
        Composer.compose(
            work,
            Scenarios.kiln(
                "Clockwork", Scenarios.box(0.18, 0.2, 0.11), 1500, 1050, Optional.empty(), 0),
            Optional.empty());
    assertThat(lastHold(composed)).isEqualTo(Duration.ofMinutes(180));
    assertThat(composed.reasons())
        .anyMatch(reason -> reason.rule().contains("the hold's clock does not wait"));
  }

  @ParameterizedTest
  @CsvSource({
    "FINE_SILVER_OLDER, GLASS",
    "COPPER, GLASS",
    "BRONZE, STONE",
    "STERLING, GLASS",
    "FINE_SILVER, STONE"
  })
  void whatNoFiringFitsIsRefusedInOneSentence(Clay clay, Embedded embedded) {
    assertThatThrownBy(
            () ->
                compose(
                    work(
                        clay,
                        clay.isFineSilver() ? Phase.BOTH_IN_ONE : Phase.SINTER,
                        piece(1, 2, 20, embedded))))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("No firing of")
        .hasMessageEndingWith(".");
  }

  /** Read: an article on firing copper clay, 278 K/h to 293 °C for 15 min; in round numbers. */
  @Test
  void copperTakesTwoPhases() {
    Composition first = compose(work(Clay.COPPER, Phase.BINDER, THIN));
    assertThat(first.schedule().segments()).hasSize(1);
    Segment binder = first.schedule().segments().get(0);
    assertThat(binder.ramp()).isEqualTo(Ramp.at(HeatingRate.ofKelvinsPerHour(270)));
    assertThat(binder.target().celsius()).isEqualTo(290);
    assertThat(binder.hold()).isBetween(Duration.ofMinutes(15), Duration.ofMinutes(30));
    assertThat(codes(first)).contains("phase-one-of-two", "fragile");

    Composition second = compose(work(Clay.COPPER, Phase.SINTER, THIN));
    assertThat(second.schedule().peak().celsius()).isEqualTo(950);
    assertThat(codes(second)).contains("phase-two-of-two", "carbon-monoxide", "carbon-box");
    assertThat(second.charge().followed().get(0).name()).isEqualTo("carbon box");
  }

  /** The hold is as long as the solver says the middle of the box needs, and not much longer. */
  @ParameterizedTest
  @CsvSource({"COPPER, 3, 60", "COPPER, 8, 90", "BRONZE, 2, 60", "STERLING, 2, 40"})
  void thePieceInTheBoxHasItsTime(Clay clay, double thickMm, double heightMm) {
    SinterWork work =
        new SinterWork(
            clay,
            Phase.SINTER,
            List.of(piece(2, thickMm, 30, Embedded.NONE)),
            Optional.of(new CarbonBox(CarbonBox.Wall.STEEL, 0.001, 0.1, 0.1, heightMm / 1000)),
            Aim.STRONGEST,
            Optional.empty(),
            List.of(),
            DataSheet.none(),
            Optional.empty());
    Composition composed = compose(work);
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(composed.schedule(), Scenarios.capstan(), composed.charge())
                .withDraws(12));
    assertThat(
            composed
                .judge()
                .outcomes(
                    composed.schedule().withUnit(TemperatureUnit.FAHRENHEIT), forecast.pieces()))
        .noneMatch(told -> (told.value() + told.meaning()).contains("°C"))
        .anyMatch(told -> told.value().contains("°F"));
    Outcome time = outcome(composed, forecast, "time-at-heat");
    assertThat(time.severity()).isNotEqualTo(Optional.of(Severity.WARN));
    SinterJudge judge = (SinterJudge) composed.judge();
    double depth = forecast.pieces().get(0).piece().judged().depthMetres();
    double minutes =
        forecast
                .pieces()
                .get(0)
                .draws()
                .get(0)
                .secondsWithin(depth, judge.top().celsius() - 15, 2000)
            / 60;
    assertThat(minutes)
        .isBetween(0.9 * judge.hold().toMinutes(), 1.6 * judge.hold().toMinutes() + 30);
    assertThat(outcome(composed, forecast, "hottest").severity())
        .isNotEqualTo(Optional.of(Severity.STOP));
    assertThat(outcome(composed, forecast, "density").value())
        .matches(clay.isBronze() ? "not told" : "\\d+ to \\d+ %");
  }

  @Test
  void aDisplayThatReadsLowLowersTheCap() {
    SinterWork bronze = work(Clay.BRONZE, Phase.SINTER, THIN);
    Composition checked = Composer.compose(bronze, Kilns.offset(8), Optional.empty());
    Composition low = Composer.compose(bronze, Kilns.offset(-25), Optional.empty());
    assertThat(checked.demands().firmCeiling().orElseThrow().limit().celsius()).isEqualTo(845);
    assertThat(low.demands().firmCeiling().orElseThrow().limit().celsius()).isEqualTo(820);
    assertThat(low.schedule().peak().celsius()).isEqualTo(820);
    assertThat(low.demands().firmCeiling().orElseThrow().consequence())
        .contains("the display reads 25 K low");
  }

  /** Bronze of 6 mm: target over thickness, 830/6 = 138 K/h (read: a firing guide's table). */
  @Test
  void thickBronzeRisesSlowly() {
    Composition composed = compose(work(Clay.BRONZE, Phase.SINTER, piece(1, 6, 30, Embedded.NONE)));
    assertThat(composed.schedule().segments().get(0).ramp())
        .isEqualTo(Ramp.at(HeatingRate.ofKelvinsPerHour(130)));
  }

  @Test
  void sterlingStaysUnderItsSolidusUnlessTheDataSheetSaysOtherwise() {
    SinterWork sterling = work(Clay.STERLING, Phase.SINTER, THIN);
    assertThat(compose(sterling).schedule().peak().celsius()).isEqualTo(770);
    SinterWork bySheet =
        sheet(
            sterling, DataSheet.none().withTop(Temperature.ofCelsius(815), Duration.ofMinutes(30)));
    assertThat(compose(bySheet).schedule().peak().celsius()).isEqualTo(815);
    SinterWork tooHot =
        sheet(
            sterling, DataSheet.none().withTop(Temperature.ofCelsius(900), Duration.ofMinutes(30)));
    assertThat(compose(tooHot).schedule().peak().celsius()).isEqualTo(850);
  }

  @Test
  void aClassThatMustEndGetsTheStrongestFiringThatFits() {
    SinterWork class1 =
        work(
            Clay.FINE_SILVER,
            Phase.BOTH_IN_ONE,
            piece(11, 2, 30, Embedded.NONE),
            piece(1, 4, 25, Embedded.NONE));
    Composition day = compose(window(class1, 8));
    assertThat(day.schedule().peak().celsius()).isEqualTo(900);
    assertThat(lastHold(day)).isGreaterThanOrEqualTo(Duration.ofHours(2));
    Composition afternoon = compose(window(class1, 4));
    assertThat(lastHold(afternoon)).isLessThan(lastHold(day));
    assertThat(caution(afternoon, "day-too-short")).contains("900 °C for 2 h does not fit");
    assertThatThrownBy(() -> compose(window(class1, 1)))
        .isInstanceOf(WorkRefusedException.class)
        .hasMessageContaining("No firing of these pieces fits into the 1 h from dry to ready");
  }

  /** Own strips move what is told, and only where there are some. */
  @Test
  void ownStripsNarrowWhatIsTold() {
    SinterWork none = work(Clay.FINE_SILVER, Phase.BOTH_IN_ONE, THIN);
    SinterWork some =
        new SinterWork(
            none.clay(),
            none.phase(),
            none.pieces(),
            none.box(),
            none.aim(),
            none.dryAt(),
            List.of(strip(44.2, 900, 120), strip(44.0, 900, 120), strip(44.3, 900, 120)),
            none.dataSheet(),
            none.readyBy());
    Composition composed = compose(none);
    Forecast forecast =
        Forecaster.forecast(
            ForecastRequest.of(composed.schedule(), Scenarios.capstan(), composed.charge())
                .withDraws(8));
    double before = width(outcome(composed, forecast, "shrinkage").value());
    Outcome after = outcome(compose(some), forecast, "shrinkage");
    assertThat(width(after.value())).isLessThan(0.7 * before);
    assertThat(after.meaning()).contains("3 strips from 1 clearly different firing", "needs three");
  }

  @Test
  void itsOwnInspectionFindsNothingGrave() {
    for (Clay clay : Clay.values()) {
      for (Phase phase : Phase.values()) {
        Composition composed = compose(work(clay, phase, THIN));
        List<Finding> findings =
            Inspector.inspect(
                Inspection.of(composed.schedule())
                    .in(Scenarios.capstan())
                    .forWork(composed.demands()));
        assertThat(findings)
            .as("%s %s", clay, phase)
            .noneMatch(finding -> finding.severity() != Severity.NOTE);
      }
    }
  }

  /** 293 °C is 560 °F: the source's own number typed into a °C keypad is caught. */
  @Test
  void aFahrenheitNumberOfTheBinderPhaseIsCaught() {
    Composition composed = compose(work(Clay.COPPER, Phase.BINDER, THIN));
    var wrong =
        org.heatwright.schedule.Schedule.of(
            "wrong",
            org.heatwright.units.TemperatureUnit.CELSIUS,
            List.of(segment(Ramp.at(HeatingRate.ofKelvinsPerHour(270)), 560, 15)));
    assertThat(
            Inspector.inspect(
                Inspection.of(wrong).in(Scenarios.capstan()).forWork(composed.demands())))
        .anyMatch(finding -> finding.code().equals("unit-mistaken"));
  }

  // ---- helpers

  private static TestFiring strip(double afterMm, double celsius, long minutes) {
    return new TestFiring(
        0.05,
        afterMm / 1000,
        Temperature.ofCelsius(celsius),
        Duration.ofMinutes(minutes),
        TestFiring.USUAL_RATE);
  }

  private static double width(String range) {
    String[] parts = range.replace(" %", "").split(" to ");
    return Double.parseDouble(parts[1]) - Double.parseDouble(parts[0]);
  }

  private static Outcome outcome(Composition composed, Forecast forecast, String code) {
    return composed.outcomes(composed.schedule(), forecast).stream()
        .filter(outcome -> outcome.code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private static Duration lastHold(Composition composed) {
    List<Segment> segments = composed.schedule().segments();
    return segments.get(segments.size() - 1).hold();
  }

  private static List<String> codes(Composition composed) {
    return composed.cautions().stream().map(Caution::code).toList();
  }

  private static String caution(Composition composed, String code) {
    return composed.cautions().stream()
        .filter(caution -> caution.code().equals(code))
        .findFirst()
        .orElseThrow()
        .message();
  }

  private static Segment segment(Ramp ramp, double celsius, long minutes) {
    return new Segment(ramp, Temperature.ofCelsius(celsius), Duration.ofMinutes(minutes));
  }

  static SinterWork.Piece piece(int count, double thickMm, double longMm, Embedded embedded) {
    return new SinterWork.Piece(count, thickMm / 1000, longMm / 1000, embedded);
  }

  static SinterWork work(Clay clay, Phase phase, SinterWork.Piece... pieces) {
    return new SinterWork(
        clay,
        phase,
        List.of(pieces),
        Optional.empty(),
        Aim.STRONGEST,
        Optional.empty(),
        List.of(),
        DataSheet.none(),
        Optional.empty());
  }

  private static SinterWork with(SinterWork work, Aim aim) {
    return new SinterWork(
        work.clay(),
        work.phase(),
        work.pieces(),
        work.box(),
        aim,
        work.dryAt(),
        work.tests(),
        work.dataSheet(),
        work.readyBy());
  }

  private static SinterWork sheet(SinterWork work, DataSheet sheet) {
    return new SinterWork(
        work.clay(),
        work.phase(),
        work.pieces(),
        work.box(),
        work.aim(),
        work.dryAt(),
        work.tests(),
        sheet,
        work.readyBy());
  }

  private static SinterWork window(SinterWork work, long hours) {
    LocalDateTime end = LocalDateTime.of(2026, 12, 2, 16, 30);
    return new SinterWork(
        work.clay(),
        work.phase(),
        work.pieces(),
        work.box(),
        work.aim(),
        Optional.of(end.minusHours(hours)),
        work.tests(),
        work.dataSheet(),
        Optional.of(end));
  }

  private static Composition compose(SinterWork work) {
    return Composer.compose(work, Scenarios.capstan(), Optional.empty());
  }

  /** A kiln whose display is off by so much. */
  private static final class Kilns {
    static org.heatwright.kiln.Kiln offset(double kelvins) {
      org.heatwright.kiln.Kiln kiln = Scenarios.capstan();
      return new org.heatwright.kiln.Kiln(
          kiln.name(),
          kiln.chamber(),
          kiln.element(),
          kiln.walls(),
          kiln.door(),
          kiln.limit(),
          new org.heatwright.kiln.Thermocouple(
              'K',
              kiln.thermocouple().sheathMetres(),
              org.heatwright.units.TemperatureChange.ofKelvins(kelvins)),
          kiln.control(),
          kiln.room(),
          kiln.timeZone(),
          kiln.tariff(),
          kiln.circuit(),
          kiln.history());
    }
  }
}
