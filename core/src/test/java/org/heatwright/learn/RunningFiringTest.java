package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringRun;
import org.heatwright.kiln.FiringSimulation;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.TestKilns;
import org.heatwright.learn.RunningFiring.Update;
import org.heatwright.learn.RunningFiring.Verdict;
import org.heatwright.material.HeatCurves;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.schedule.TestSchedules;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

class RunningFiringTest {

  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);

  private static final Schedule QUICK =
      Schedule.of(
          "quick",
          TemperatureUnit.CELSIUS,
          List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(900), Duration.ofMinutes(30))));

  private static final ForecastRequest REQUEST = ForecastRequest.of(QUICK, MUFFLE, Charge.empty());

  private static FiringRun kiln(double leakScore, double fittingsScore) {
    double[] scores = new double[KilnQuantity.values().length];
    scores[KilnQuantity.LEAK.ordinal()] = leakScore;
    scores[KilnQuantity.FITTINGS.ordinal()] = fittingsScore;
    FiringSimulation simulation =
        new FiringSimulation(
            MUFFLE,
            KilnBeliefs.at(MUFFLE, scores),
            FiringConditions.usual(),
            List.of(),
            QUICK,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    simulation.runProgram();
    return simulation.run();
  }

  private static Readings seen(FiringRun run, double... seconds) {
    double[] celsius = new double[seconds.length];
    for (int i = 0; i < seconds.length; i++) {
      celsius[i] = Math.rint(run.readingCelsiusAt(seconds[i]));
    }
    return Readings.of(seconds, celsius);
  }

  @Test
  void twoReadingsOfAnOrdinaryKilnNarrowTheRestOfItsFiring() {
    FiringRun truth = kiln(0.3, 0.4);
    Update update = RunningFiring.update(REQUEST, seen(truth, 600, 1200));
    assertThat(update.verdict()).isEqualTo(Verdict.NORMAL);
    Band before = update.before().endSeconds();
    Band after = update.forecast().endSeconds();
    assertThat(after.high() - after.low()).isLessThan(0.8 * (before.high() - before.low()));
    assertThat(after.contains(truth.endSeconds())).isTrue();
  }

  @Test
  void aSlowKilnIsBehindAndItsEndMovesToTheTruth() {
    FiringRun slow = kiln(1.5, 2.6);
    Update update = RunningFiring.update(REQUEST, seen(slow, 900, 1800));
    assertThat(update.verdict()).isEqualTo(Verdict.BEHIND);
    assertThat(RunningFiring.movedSeconds(update).orElseThrow()).isPositive();
    double before = Math.abs(update.before().endSeconds().median() - slow.endSeconds());
    double after = Math.abs(update.forecast().endSeconds().median() - slow.endSeconds());
    assertThat(after).isLessThan(0.5 * before);
    // Nothing moves by when a simulation gave up.
    for (double share : new double[] {0, 0.49, 0.5}) {
      Update weak =
          new Update(
              reachedIn(share, update.forecast()),
              update.before(),
              update.readings(),
              update.verdict());
      assertThat(RunningFiring.movedSeconds(weak).isPresent()).isEqualTo(share == 0.5);
    }
  }

  private static Forecast reachedIn(double share, Forecast forecast) {
    SegmentForecast last = forecast.segments().get(forecast.segments().size() - 1);
    List<SegmentForecast> segments = new ArrayList<>(forecast.segments());
    segments.set(
        segments.size() - 1,
        new SegmentForecast(
            last.index(), last.reachedSeconds(), Optional.empty(), last.endSeconds(), 0, 0, share));
    return new Forecast(
        forecast.schedule(),
        forecast.kiln(),
        segments,
        forecast.endSeconds(),
        forecast.energyKilowattHours(),
        forecast.meanWatts(),
        forecast.work(),
        forecast.trace(),
        forecast.inside(),
        forecast.pieces());
  }

  @Test
  void twentyAfterTwentyMinutesIsNotHeating() {
    Update update =
        RunningFiring.update(REQUEST, Readings.of(new double[] {1200}, new double[] {20}));
    assertThat(update.verdict()).isEqualTo(Verdict.NOT_HEATING);
    assertThat(update.believed()).isFalse();
    assertThat(update.forecast().endSeconds()).isEqualTo(update.before().endSeconds());
  }

  /** Nobody stated that the kiln was warm; its display tells, for it does not rise. */
  @Test
  void aWarmKilnThatOnlyCoolsIsNotHeating() {
    Update update =
        RunningFiring.update(
            REQUEST, Readings.of(new double[] {60, 600, 1200}, new double[] {181, 176, 172}));
    assertThat(update.verdict()).isEqualTo(Verdict.NOT_HEATING);
  }

  @Test
  void aDisplayThatNoLikelyKilnShowsIsOddAndNotBelieved() {
    double[] seconds = {600, 1200, 1800};
    Update update =
        RunningFiring.update(REQUEST, Readings.of(seconds, new double[] {500, 120, 600}));
    assertThat(update.verdict()).isEqualTo(Verdict.ODD);
    assertThat(update.forecast().endSeconds()).isEqualTo(Forecaster.forecast(REQUEST).endSeconds());
  }

  private static final ForecastRequest DRYING =
      ForecastRequest.of(
          TestSchedules.of(
              TestSchedules.segment(150, 150, 180), TestSchedules.segment(150, 480, 60)),
          MUFFLE,
          Charge.empty());

  private static Update drying(double[] seconds, double... celsius) {
    return RunningFiring.update(DRYING, Readings.of(seconds, celsius));
  }

  /** A relay that sticks is no quick kiln, however well a hot start would explain its display. */
  @Test
  void aDisplayFarAboveItsBandIsNeverAhead() {
    for (double[] seen : new double[][] {{240, 600}, {3000, 250}, {10_000, 302}, {10_000, 700}}) {
      Update update = drying(new double[] {seen[0]}, seen[1]);
      assertThat(update.verdict()).isEqualTo(Verdict.ODD);
      assertThat(update.last().farAbove()).isTrue();
      assertThat(update.believed()).isFalse();
    }
    assertThat(drying(new double[] {10_000}, 165).verdict()).isEqualTo(Verdict.AHEAD);
    Update cold = drying(new double[] {23_000}, 100);
    assertThat(cold.verdict()).isEqualTo(Verdict.ODD);
    assertThat(cold.last().farAbove()).isFalse();
  }

  /** One slip of the pen does not spoil the readings after it. */
  @Test
  void aSlipIsLeftOut() {
    Update slipped = drying(new double[] {3000, 6000, 9000}, 145, 510, 151);
    assertThat(slipped.verdict()).isEqualTo(Verdict.NORMAL);
    Update without = drying(new double[] {3000, 9000}, 145, 151);
    assertThat(slipped.forecast().endSeconds()).isEqualTo(without.forecast().endSeconds());
  }

  /** Nobody stated it, but its first readings tell. */
  @Test
  void aKilnThatWasHotAtItsStartIsFollowed() {
    Schedule climb = TestSchedules.of(TestSchedules.segment(150, 480, 60));
    FiringSimulation hot =
        new FiringSimulation(
            MUFFLE,
            KilnBeliefs.at(MUFFLE, new double[KilnQuantity.values().length]),
            FiringConditions.usual().starting(Temperature.ofCelsius(250)),
            List.of(),
            climb,
            FiringSimulation.Accuracy.USUAL,
            new HeatCurves());
    hot.runProgram();
    Update update =
        RunningFiring.update(
            ForecastRequest.of(climb, MUFFLE, Charge.empty()), seen(hot.run(), 120, 900, 1500));
    assertThat(update.verdict()).isEqualTo(Verdict.NORMAL);
    assertThat(update.forecast().endSeconds().contains(hot.elapsedSeconds())).isTrue();
    assertThat(update.before().endSeconds().low()).isGreaterThan(hot.elapsedSeconds() + 1800);
  }

  @Test
  void readingsBeforeAnythingHappensChangeLittle() {
    Update update = RunningFiring.update(REQUEST, Readings.of(new double[] {5}, new double[] {20}));
    assertThat(update.verdict()).isEqualTo(Verdict.NORMAL);
  }
}
