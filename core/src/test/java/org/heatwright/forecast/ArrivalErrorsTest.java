package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.schedule.TestSchedules.segment;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.kiln.TestKilns;
import org.heatwright.schedule.Segment;
import org.heatwright.schedule.TestSchedules;
import org.junit.jupiter.api.Test;

/** Displays that are off the model's when they arrive. */
class ArrivalErrorsTest {

  private static final List<Segment> CREEPS = List.of(segment(0, 730, 10), segment(0, 500, 10));

  private static ForecastRequest request() {
    return request(TestKilns.brickMuffle(2200));
  }

  private static ForecastRequest request(Kiln kiln) {
    return ForecastRequest.of(TestSchedules.burnout().withSegments(CREEPS), kiln, Charge.empty());
  }

  private static ArrivalErrors errors(Kiln kiln, int draws) {
    return ArrivalErrors.of(request(kiln), kiln.beliefs().ensemble(kiln, draws, 1));
  }

  @Test
  void theyAreAsLargeAsStatedAndDifferFromTargetToTarget() {
    ArrivalErrors errors = errors(TestKilns.brickMuffle(2200), 64);
    double[] first = IntStream.range(0, 64).mapToDouble(d -> errors.soonerKelvins(d)[0]).toArray();
    double[] second = IntStream.range(0, 64).mapToDouble(d -> errors.soonerKelvins(d)[1]).toArray();
    for (double[] one : List.of(first, second)) {
      assertThat(Arrays.stream(one).average().orElseThrow()).isCloseTo(0, within(1e-9));
      double variance = Arrays.stream(one).map(v -> v * v).average().orElseThrow();
      assertThat(Math.sqrt(variance)).isCloseTo(1.2, within(0.03));
    }
    assertThat(first).isNotEqualTo(second);
  }

  @Test
  void theMedianKilnHasNone() {
    assertThat(errors(TestKilns.brickMuffle(2200), 1).soonerKelvins(0)).containsOnly(0);
    assertThat(errors(TestKilns.brickMuffle(2200), 1).swingShares(0)).isEmpty();
  }

  @Test
  void anyPlaceInASwingIsAsLikelyAtEachTarget() {
    ArrivalErrors errors = errors(TestKilns.brickMuffle(2200), 64);
    for (int segment = 0; segment < 2; segment++) {
      int s = segment;
      double[] sorted =
          IntStream.range(0, 64).mapToDouble(d -> errors.swingShares(d)[s]).sorted().toArray();
      for (int d = 0; d < 64; d++) {
        assertThat(sorted[d]).isCloseTo((d + 0.5) / 64, within(1e-12));
      }
    }
  }

  @Test
  void noDisplayIsAskedToComeNearerThanItsDigit() {
    ArrivalErrors errors = errors(TestKilns.brickMuffle(2200), 64);
    double[] within =
        IntStream.range(0, 64).mapToDouble(d -> errors.withinKelvins(2, d, 0)).toArray();
    assertThat(Arrays.stream(within).min().orElseThrow()).isEqualTo(0.5);
    assertThat(Arrays.stream(within).max().orElseThrow()).isGreaterThan(4.5);
  }

  /** Of a kiln that is known to the last digit nothing else is left open: a creeping arrival is. */
  @Test
  void aKnownKilnBeginsItsHoldSoonerOrLaterToo() {
    Forecast forecast = Forecaster.forecast(request(known()));
    SegmentForecast creeping = forecast.segments().get(1);
    Band reached = creeping.reachedSeconds();
    assertThat(reached.high() - reached.low()).isBetween(60.0, 3600.0);
    assertThat(creeping.endSeconds().median()).isCloseTo(reached.median() + 600, within(1.0));
  }

  private static Kiln known() {
    Kiln kiln = TestKilns.brickMuffle(2200);
    int n = KilnQuantity.values().length;
    double[][] certain = new double[n][n];
    for (int i = 0; i < n; i++) {
      certain[i][i] = 1e-12;
    }
    return kiln.withLearned(
        new Learned(LocalDate.EPOCH, 1, Learned.ENGINE, KilnBeliefs.of(new double[n], certain)));
  }

  /** What arrives and what begins a hold are the same. */
  @Test
  void aHoldBeginsWhereItsDisplayIsNearEnough() {
    Forecast forecast = Forecaster.forecast(request());
    Band reached = forecast.segments().get(1).reachedSeconds();
    Band arrived = forecast.segments().get(1).arrivedSeconds().orElseThrow();
    assertThat(arrived.median()).isCloseTo(reached.median(), within(5.0));
    assertThat(arrived.low()).isCloseTo(reached.low(), within(5.0));
    assertThat(arrived.high()).isCloseTo(reached.high(), within(5.0));
  }
}
