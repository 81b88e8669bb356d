package org.heatwright.work.causes;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnParameters;
import org.heatwright.learn.Readings;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Scenarios;
import org.heatwright.work.causes.Ranking.Ranked;
import org.heatwright.work.causes.Ranking.Standing;
import org.junit.jupiter.api.Test;

/**
 * Firings that go wrong in a simulated kiln, told by nothing but their display: the cause that was
 * put into the simulation must come out first. The kiln that is simulated is not the one that is
 * forecast: its power and walls are off by a few percent.
 */
class CauseScenariosTest {

  private static final Kiln KILN = Scenarios.buoy();

  private static Schedule fused() {
    return Schedule.of(
        "full fuse",
        TemperatureUnit.CELSIUS,
        List.of(
            segment(200, 620, 30),
            segment(300, 800, 15),
            segment(400, 500, 60),
            segment(50, 380, 0)));
  }

  private static Schedule burnout() {
    return Schedule.of(
        "burnout",
        TemperatureUnit.CELSIUS,
        List.of(
            segment(150, 150, 60),
            segment(150, 370, 60),
            segment(200, 732, 180),
            segment(200, 500, 60)));
  }

  private static Segment segment(double rate, double target, int holdMinutes) {
    return new Segment(
        Ramp.at(HeatingRate.ofKelvinsPerHour(rate)),
        Temperature.ofCelsius(target),
        Duration.ofMinutes(holdMinutes));
  }

  /** The kiln as it is: a little unlike what is known of it. */
  private static KilnParameters truth(double offsetKelvinsAt1000) {
    KilnParameters m = KILN.beliefs().median(KILN);
    return new KilnParameters(
        m.powerFactor() * 1.03,
        m.conductivityFactor() * 0.96,
        m.conductivitySteepnessFactor(),
        m.capacityFactor() * 1.04,
        m.leakWattsPerKelvin(),
        m.fittingsJoulesPerKelvin(),
        m.sensorFactor(),
        m.convectionFactor(),
        m.sensorViewShare(),
        offsetKelvinsAt1000,
        m.gainPerKelvin(),
        m.integralSeconds(),
        m.derivativeSeconds(),
        m.crestKelvins(),
        m.switchSeconds(),
        m.doorFactor(),
        m.elementFactor(),
        m.roomShiftKelvins(),
        m.loadConductivityFactor(),
        m.loadHeatFactor());
  }

  private static FiringRun run(Schedule ran, FiringConditions day, double offset) {
    FiringSimulation simulation =
        new FiringSimulation(
            KILN,
            truth(offset),
            day,
            Charge.empty().loads(),
            ran,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    simulation.coastUntil(simulation.elapsedSeconds() + 3600);
    return simulation.run();
  }

  /** A logger's rows, each minute, in whole degrees. */
  private static Readings log(FiringRun run) {
    List<double[]> rows = new ArrayList<>();
    for (double second = 0; second <= run.lastSecond(); second += 60) {
      rows.add(new double[] {second, Math.rint(run.readingCelsiusAt(second))});
    }
    return Readings.of(
        rows.stream().mapToDouble(r -> r[0]).toArray(),
        rows.stream().mapToDouble(r -> r[1]).toArray());
  }

  private static Facts shown(Schedule planned, Readings readings, boolean doors) {
    Forecast forecast =
        Forecaster.forecastDisplay(ForecastRequest.of(planned, KILN, Charge.empty()).withDraws(16));
    return new DisplayFacts(
            planned, readings, Optional.of(forecast), Optional.empty(), false, doors)
        .find();
  }

  private static Ranked first(Ranking ranking) {
    return ranking.causes().get(0);
  }

  /** Nothing went wrong: the log contradicts what would have shown in it. */
  @Test
  void aFiringThatRanAsPlannedSpeaksAgainstKeypadAndKiln() {
    Schedule plan = burnout();
    Facts facts =
        shown(plan, log(run(plan, FiringConditions.usual(), 0)), false)
            .or(KeyedFacts.of(plan, plan));
    for (Clue clue :
        List.of(
            Clue.PEAK_ABOVE,
            Clue.PEAK_BELOW,
            Clue.HOLD_SHORT,
            Clue.HEAT_AWAY,
            Clue.DOOR_OPENED,
            Clue.UNIT_HOT,
            Clue.UNIT_COLD,
            Clue.BEHIND)) {
      assertThat(facts.of(clue).orElseThrow().isSo()).as(clue.code()).isFalse();
    }
    Ranking ranking = CauseBook.rank("burnout", "carbon", facts);
    assertThat(ranking.dismissed())
        .extracting(d -> d.cause().code())
        .contains("unit-cold", "keyed-cooler", "keyed-shorter", "mains-cut");
    assertThat(first(ranking).cause().side()).isNotEqualTo(Cause.Side.KEYPAD);
  }

  /** °C keyed as °F: the glass comes out as it went in. */
  @Test
  void degreesCelsiusInAKeypadOfFahrenheitComeFirst() {
    Schedule plan = fused();
    Schedule keyed =
        plan.withSegments(
            plan.segments().stream()
                .map(
                    s -> s.withTarget(TemperatureUnit.FAHRENHEIT.temperature(s.target().celsius())))
                .toList());
    Facts byLog = shown(plan, log(run(keyed, FiringConditions.usual(), 0)), false);
    Ranking ranking = CauseBook.rank("glass", "under-fired", byLog);
    assertThat(first(ranking).cause().code()).isEqualTo("unit-cold");
    assertThat(first(ranking).standing()).isEqualTo(Standing.LIKELY);
    assertThat(first(ranking).why())
        .anyMatch(w -> w.contains("800 °C") && w.contains("read as °F"));

    Facts withSlot = byLog.or(KeyedFacts.of(plan, keyed));
    Ranking sure = CauseBook.rank("glass", "under-fired", withSlot);
    assertThat(first(sure).cause().code()).isEqualTo("unit-cold");
    assertThat(sure.proposed().orElseThrow().cause().change().words())
        .contains("change nothing else");
  }

  /** A program in °F keyed into a keypad in °C, seen by one look at the display. */
  @Test
  void degreesFahrenheitInAKeypadOfCelsiusComeFirst() {
    // An ageing at 300 °C, 572 °F, that ran to 572 °C.
    Schedule plan = Schedule.of("age", TemperatureUnit.FAHRENHEIT, List.of(segment(300, 300, 60)));
    Schedule keyed = plan.withSegments(List.of(segment(540, 572, 60)));
    double most = 0;
    FiringRun run = run(keyed, FiringConditions.usual(), 0);
    for (double second = 0; second <= run.lastSecond(); second += 60) {
      most = Math.max(most, run.readingCelsiusAt(second));
    }
    Facts facts = DisplayFacts.highest(plan, most, false);
    Ranking ranking = CauseBook.rank("heat-treat", "coarse-grain", facts);
    assertThat(first(ranking).cause().code()).isEqualTo("unit-hot");
    assertThat(first(ranking).standing()).isEqualTo(Standing.LIKELY);
  }

  /** The mains fail for 70 minutes in the top hold; the program goes on afterwards. */
  @Test
  void aMainsCutInTheBurnoutsHoldComesFirst() {
    aMainsCutComesFirst(7.5 * 3600);
  }

  /** On the way up the rest of the firing is late for the cut, not for want of power. */
  @Test
  void aMainsCutOnTheWayUpComesFirst() {
    aMainsCutComesFirst(5.2 * 3600);
  }

  private static void aMainsCutComesFirst(double atSeconds) {
    Schedule plan = burnout();
    FiringConditions day =
        FiringConditions.usual().with(new Disturbance(Disturbance.Kind.MAINS_OFF, atSeconds, 4200));
    Facts facts = shown(plan, log(run(plan, day, 0)), false).or(KeyedFacts.of(plan, plan));
    assertThat(facts.of(Clue.HEAT_AWAY).orElseThrow().isSo()).isTrue();
    for (String found : List.of("carbon", "incomplete")) {
      Ranking ranking = CauseBook.rank("burnout", found, facts);
      assertThat(first(ranking).cause().code()).as(found).isEqualTo("mains-cut");
      assertThat(first(ranking).standing()).isEqualTo(Standing.LIKELY);
      assertThat(ranking.dismissed()).extracting(d -> d.cause().code()).contains("keyed-shorter");
    }
  }

  /** Pieces one after the other, each while the display still climbs back: sugary. */
  @Test
  void anEnamelPulledBeforeTheKilnCameBackComesFirst() {
    Schedule plan =
        Schedule.of("session", TemperatureUnit.CELSIUS, List.of(segment(900, 820, 240)));
    FiringConditions day = FiringConditions.usual();
    for (int i = 0; i < 6; i++) {
      day = day.with(new Disturbance(Disturbance.Kind.DOOR_OPEN, 9000 + 70 * i, 25));
    }
    Readings log = everyFiveSeconds(run(plan, day, 0));
    Facts facts = shown(plan, log, true);
    assertThat(facts.of(Clue.NOT_RECOVERED).orElseThrow().isSo())
        .as(facts.of(Clue.NOT_RECOVERED).orElseThrow().words())
        .isTrue();
    Ranking ranking = CauseBook.rank("enamel", "under-fired", facts);
    assertThat(first(ranking).cause().code()).isEqualTo("pulled-before-recovery");
    assertThat(first(ranking).standing()).isEqualTo(Standing.LIKELY);

    FiringConditions patient = FiringConditions.usual();
    for (int i = 0; i < 4; i++) {
      patient = patient.with(new Disturbance(Disturbance.Kind.DOOR_OPEN, 9000 + 1200 * i, 8));
    }
    Facts waited = shown(plan, everyFiveSeconds(run(plan, patient, 0)), true);
    assertThat(waited.of(Clue.NOT_RECOVERED).orElseThrow().isSo()).isFalse();
    assertThat(first(CauseBook.rank("enamel", "under-fired", waited)).cause().code())
        .isNotEqualTo("pulled-before-recovery");
  }

  private static Readings everyFiveSeconds(FiringRun run) {
    List<double[]> rows = new ArrayList<>();
    for (double second = 0; second <= run.lastSecond(); second += 5) {
      rows.add(new double[] {second, Math.rint(run.readingCelsiusAt(second))});
    }
    return Readings.of(
        rows.stream().mapToDouble(r -> r[0]).toArray(),
        rows.stream().mapToDouble(r -> r[1]).toArray());
  }

  /**
   * The display reads 45 K low at 1000 °C and does just what was planned, as it was keyed: nothing
   * that a display can show explains a piece that is far over-fired.
   */
  @Test
  void aThermocoupleThatReadsLowComesFirstWhereTheDisplayWasRight() {
    Schedule plan = fused();
    FiringRun run = run(plan, FiringConditions.usual(), -45);
    double hottest = 0;
    for (double second = 0; second <= run.lastSecond(); second += 60) {
      hottest = Math.max(hottest, run.radiantCelsiusAt(second));
    }
    assertThat(hottest).isGreaterThan(825); // the display never says more than about 802
    Facts facts = shown(plan, log(run), false).or(KeyedFacts.of(plan, plan));
    assertThat(facts.of(Clue.PEAK_ABOVE).orElseThrow().isSo()).isFalse();
    Ranking ranking = CauseBook.rank("glass", "over-fired", facts);
    assertThat(first(ranking).cause().code()).isEqualTo("reads-low");
    assertThat(ranking.dismissed())
        .extracting(d -> d.cause().code())
        .contains("unit-hot", "keyed-hotter", "overshoot", "relay-stuck");

    Ranking checked = CauseBook.rank("glass", "over-fired", facts.told(Clue.READS_LOW, false));
    assertThat(checked.dismissed()).extracting(d -> d.cause().code()).contains("reads-low");
    assertThat(
            first(CauseBook.rank("glass", "over-fired", facts.told(Clue.READS_LOW, true)))
                .standing())
        .isEqualTo(Standing.LIKELY);
  }

  /** An element has failed: the kiln crawls, and never gets there. */
  @Test
  void aKilnThatLostHalfItsPowerIsBehindAndSoIsSaid() {
    Schedule plan = Schedule.of("hot", TemperatureUnit.CELSIUS, List.of(segment(600, 900, 60)));
    FiringConditions day =
        FiringConditions.usual()
            .with(new Disturbance(Disturbance.Kind.ELEMENT_OPEN, 0, Double.POSITIVE_INFINITY, 0.5));
    Facts facts = shown(plan, log(run(plan, day, 0)), false);
    assertThat(facts.of(Clue.BEHIND).orElseThrow().isSo()).isTrue();
    Ranking ranking = CauseBook.rank(CauseBook.KILN, "never-there", facts);
    assertThat(first(ranking).cause().code()).isEqualTo("power-down");
    assertThat(first(ranking).cause().caution()).isPresent();
  }

  /** A display that stands still: what to look at first, and what would tell. */
  @Test
  void aKilnThatStaysColdIsAskedWhetherItWaits() {
    Schedule plan = fused();
    Facts facts = shown(plan, Readings.of(new double[] {60, 2400}, new double[] {20, 20}), false);
    assertThat(facts.of(Clue.STAYED_COLD).orElseThrow().isSo()).isTrue();
    Ranking ranking = CauseBook.rank(CauseBook.KILN, "stays-cold", facts);
    assertThat(ranking.questions()).contains(Clue.PROGRAM_WAITS, Clue.CLICKS);
    assertThat(
            first(CauseBook.rank(CauseBook.KILN, "stays-cold", facts.told(Clue.CLICKS, true)))
                .cause()
                .code())
        .isEqualTo("no-power");
    assertThat(
            first(
                    CauseBook.rank(
                        CauseBook.KILN, "stays-cold", facts.told(Clue.PROGRAM_WAITS, true)))
                .cause()
                .code())
        .isEqualTo("waiting");
  }

  /** Two readings on the way say nothing about the top, and nothing is said. */
  @Test
  void aFewReadingsLeaveUnknownWhatTheyDoNotTouch() {
    Facts facts =
        shown(burnout(), Readings.of(new double[] {3600, 7200}, new double[] {120, 150}), false);
    assertThat(facts.of(Clue.PEAK_BELOW)).isEmpty();
    assertThat(facts.of(Clue.PEAK_ABOVE)).isEmpty();
    assertThat(facts.of(Clue.HOLD_SHORT)).isEmpty();
    assertThat(facts.of(Clue.HEAT_AWAY)).isEmpty();
  }
}
