package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.schedule.TestSchedules.segment;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Percentage;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.TestKilns;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.schedule.TestSchedules;
import org.junit.jupiter.api.Test;

class ForecasterTest {

  private static final Kiln MUFFLE = TestKilns.brickMuffle(2200);

  private static final Schedule BURNOUT = TestSchedules.burnout();

  private static final Charge THREE_MOULDS =
      Charge.moulds(List.of(new Mould(3, 0.09, 0.15, 0.003)), Investment.gypsum(0.40));

  @Test
  void givesTheSameForecastForTheSameRequest() {
    ForecastRequest request = ForecastRequest.of(BURNOUT, MUFFLE, THREE_MOULDS).withDraws(16);
    Forecast first = Forecaster.forecast(request);
    Forecast second = Forecaster.forecast(request);
    assertThat(second.segments()).isEqualTo(first.segments());
    assertThat(second.work()).isEqualTo(first.work());
    assertThat(second.energyKilowattHours()).isEqualTo(first.energyKilowattHours());
    assertThat(second.trace().medianCelsius()).isEqualTo(first.trace().medianCelsius());
  }

  @Test
  void keepsItsCurvesInOrderAndItsTimesRising() {
    Forecast forecast = Forecaster.forecast(ForecastRequest.of(BURNOUT, MUFFLE, THREE_MOULDS));
    ForecastTrace trace = forecast.trace();
    double[] seconds = trace.seconds();
    for (int i = 0; i < trace.size(); i++) {
      assertThat(trace.lowCelsius()[i]).isLessThanOrEqualTo(trace.medianCelsius()[i]);
      assertThat(trace.medianCelsius()[i]).isLessThanOrEqualTo(trace.highCelsius()[i]);
      assertThat(i == 0 || seconds[i] > seconds[i - 1]).isTrue();
    }
    double before = 0;
    for (SegmentForecast segment : forecast.segments()) {
      assertThat(segment.reachedSeconds().low()).isGreaterThanOrEqualTo(before);
      assertThat(segment.endSeconds().low()).isGreaterThanOrEqualTo(segment.reachedSeconds().low());
      before = segment.reachedSeconds().low();
      assertThat(segment.reachedShare()).isEqualTo(1);
    }
    assertThat(forecast.reachesEveryTarget()).isTrue();
  }

  /** The muffle, whose holds begin with the setpoint. */
  private static Kiln withoutWaiting() {
    Control waits = MUFFLE.control();
    return MUFFLE.withControl(
        new Control(
            waits.kind(),
            waits.cycleSeconds(),
            waits.hysteresis(),
            Optional.empty(),
            waits.afterPowerCut()));
  }

  /** A ramp begins where the room is: at 120 °C/h each kelvin of it is half a minute. */
  @Test
  void knowsARoomThatWasStatedTwiceAsWellAsTheUsualOne() {
    Schedule slow = BURNOUT.withSegments(List.of(segment(120, 400, 30)));
    // Its holds begin with the setpoint, so that only where that began counts.
    Kiln kiln = withoutWaiting();
    ForecastRequest usual = ForecastRequest.of(slow, kiln, Charge.empty()).withDraws(512);
    FiringConditions day = FiringConditions.usual();
    ForecastRequest stated =
        usual.withConditions(
            new FiringConditions(
                Optional.of(kiln.room()),
                day.start(),
                day.ventOpen(),
                day.supplyVolts(),
                day.disturbances()));
    Band ends = Forecaster.forecast(usual).endSeconds();
    Band endsStated = Forecaster.forecast(stated).endSeconds();
    assertThat(endsStated.median()).isCloseTo(ends.median(), within(30.0));
    assertThat(endsStated.high() - endsStated.low())
        .isBetween(0.4 * (ends.high() - ends.low()), 0.7 * (ends.high() - ends.low()));
    // Nine in ten of a normal spread of 2 K, to what the quantiles of 512 draws tell.
    assertThat(ends.high() - ends.low())
        .isCloseTo(2 * 1.645 * 2 * 30, Percentage.withPercentage(10));
  }

  /** A 2 h hold at 150 °C does not dry a 90 mm mould: its core still boils in the next ramp. */
  @Test
  void knowsThatTwoHoursAtOneHundredAndFiftyDoNotDryABigMould() {
    Forecast forecast = Forecaster.forecast(ForecastRequest.of(BURNOUT, MUFFLE, THREE_MOULDS));
    double firstHoldEnds = forecast.segments().get(0).endSeconds().median();
    Band dry = forecast.work().get(0).drySeconds().orElseThrow();
    assertThat(dry.low()).isGreaterThan(firstHoldEnds);
  }

  @Test
  void saysWhenTheSlowestCoreIsReadyToPour() {
    Charge mixed =
        Charge.moulds(
            List.of(new Mould(1, 0.05, 0.065, 0.002), new Mould(1, 0.10, 0.15, 0.003)),
            Investment.gypsum(0.40));
    Forecast forecast = Forecaster.forecast(ForecastRequest.of(BURNOUT, MUFFLE, mixed));
    Band small = forecast.work().get(0).readySeconds().orElseThrow();
    Band large = forecast.work().get(1).readySeconds().orElseThrow();
    assertThat(large.median()).isGreaterThan(small.median() + 300);
    Band all = forecast.workReadySeconds().orElseThrow();
    assertThat(all).isEqualTo(large);
    assertThat(all.high()).isLessThan(forecast.endSeconds().high());
    // The stem of the thermocouple keeps the display some kelvins below the chamber at 500 °C.
    assertThat(forecast.work().get(1).atEndCelsius().median()).isBetween(500.0, 518.0);
  }

  @Test
  void doesNotPromiseAReadyTimeThatDoesNotCome() {
    Schedule hasty = BURNOUT.withSegments(List.of(segment(0, 730, 10), segment(0, 500, 1)));
    Forecast forecast = Forecaster.forecast(ForecastRequest.of(hasty, MUFFLE, THREE_MOULDS));
    assertThat(forecast.workReadySeconds()).isEmpty();
  }

  @Test
  void tellsWhenTheDisplayArrivesWhereTheHoldDoesNotWaitForIt() {
    Kiln hasty = withoutWaiting();
    Schedule session = BURNOUT.withSegments(List.of(segment(0, 800, 180)));
    SegmentForecast there =
        Forecaster.forecast(ForecastRequest.of(session, hasty, Charge.empty())).segments().get(0);
    assertThat(there.reachedSeconds().high()).isZero();
    Band arrived = there.arrivedSeconds().orElseThrow();
    assertThat(arrived.low()).isGreaterThan(600);
    SegmentForecast waiting =
        Forecaster.forecast(ForecastRequest.of(session, MUFFLE, Charge.empty())).segments().get(0);
    assertThat(waiting.reachedSeconds().median()).isCloseTo(arrived.median(), within(5.0));
  }

  /** The kiln cools into a target that it keeps: it gets there after the program's last second. */
  @Test
  void looksBeyondTheEndWhereTheLastTargetIsKept() {
    Kiln hasty = withoutWaiting();
    List<Segment> down = List.of(segment(200, 700, 60), segment(0, 500, 0));
    Schedule off = BURNOUT.withSegments(down);
    Schedule keep =
        new Schedule("keep", off.unit(), down, Duration.ZERO, org.heatwright.schedule.AtEnd.KEEP);
    SegmentForecast kept =
        Forecaster.forecast(ForecastRequest.of(keep, hasty, Charge.empty())).segments().get(1);
    assertThat(kept.arrivedSeconds().orElseThrow().low()).isGreaterThan(kept.endSeconds().high());
    assertThat(
            Forecaster.forecast(ForecastRequest.of(off, hasty, Charge.empty()))
                .segments()
                .get(1)
                .arrivedSeconds())
        .isEmpty();
  }

  @Test
  void tellsWhichShareOfItsKilnsReachesATarget() {
    Schedule hot = BURNOUT.withSegments(List.of(segment(0, 1090, 10)));
    Forecast weak =
        Forecaster.forecast(
            ForecastRequest.of(hot, TestKilns.brickMuffle(600), Charge.empty()).withDraws(16));
    assertThat(weak.segments().get(0).reachedShare()).isLessThan(1);
    assertThat(weak.reachesEveryTarget()).isFalse();
  }

  @Test
  void widensWhatIsLessKnown() {
    Schedule quick = BURNOUT.withSegments(List.of(segment(0, 900, 20)));
    Schedule slow = BURNOUT.withSegments(List.of(segment(100, 900, 20)));
    Band fastest =
        Forecaster.forecast(ForecastRequest.of(quick, MUFFLE, Charge.empty())).endSeconds();
    Band ramped =
        Forecaster.forecast(ForecastRequest.of(slow, MUFFLE, Charge.empty())).endSeconds();
    assertThat((fastest.high() - fastest.low()) / fastest.median())
        .isGreaterThan(10 * (ramped.high() - ramped.low()) / ramped.median());
  }

  @Test
  void aSingleDrawHasNoBand() {
    Forecast forecast =
        Forecaster.forecast(ForecastRequest.of(BURNOUT, MUFFLE, Charge.empty()).withDraws(1));
    assertThat(forecast.endSeconds().low()).isEqualTo(forecast.endSeconds().high());
    assertThat(forecast.trace().lowCelsius()).isEqualTo(forecast.trace().highCelsius());
  }
}
