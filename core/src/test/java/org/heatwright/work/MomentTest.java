package org.heatwright.work;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.forecast.WorkForecast;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MomentTest {

  private static final double[] NOTHING = {0, 0};

  private static Forecast forecast(List<WorkForecast> work) {
    return forecast(work, 1);
  }

  private static Forecast forecast(List<WorkForecast> work, double lastShare) {
    return new Forecast(
        "s",
        "k",
        List.of(
            new SegmentForecast(
                1,
                new Band(10, 20, 30),
                Optional.of(new Band(10, 20, 30)),
                new Band(40, 50, 60),
                0,
                0,
                1),
            new SegmentForecast(
                2,
                new Band(70, 80, 90),
                Optional.of(new Band(70, 80, 90)),
                new Band(170, 180, 190),
                0,
                0,
                lastShare)),
        new Band(170, 180, 190),
        Band.exactly(1),
        1000,
        work,
        new ForecastTrace(
            new double[] {0, 200}, NOTHING, NOTHING, NOTHING, NOTHING, NOTHING, Map.of()),
        List.of(),
        List.of());
  }

  private static Moment moment(Moment.Anchor anchor, int segment, int afterMinutes) {
    return new Moment(
        Moment.Kind.ACT, anchor, segment, Duration.ofMinutes(afterMinutes), "look", "because");
  }

  @ParameterizedTest
  @CsvSource({
    "PROGRAM_START, 0, 1, 60, 60, 60",
    "SEGMENT_REACHED, 1, 0, 10, 20, 30",
    "SEGMENT_END, 1, 2, 160, 170, 180",
    "WORK_READY, 0, 0, 70, 80, 90",
    "PROGRAM_END, 0, 0, 170, 180, 190"
  })
  void aMomentComesAfterItsAnchor(
      Moment.Anchor anchor, int segment, int after, double low, double median, double high) {
    assertThat(moment(anchor, segment, after).seconds(forecast(List.of())))
        .contains(new Band(low, median, high));
  }

  @Test
  void theLastTimeForAChangeIsADeadlineAndAnythingElseWhereItIsSaid() {
    Moment act = moment(Moment.Anchor.PROGRAM_END, 0, 0);
    Moment change =
        new Moment(
            Moment.Kind.LAST_CHANGE, Moment.Anchor.PROGRAM_END, 0, Duration.ZERO, "turn", "why");

    assertThat(act.deadline()).isFalse();
    assertThat(act.asDeadline().deadline()).isTrue();
    assertThat(change.deadline()).isTrue();
  }

  @Test
  void aSegmentThatIsNotThereHasNoMoment() {
    assertThat(moment(Moment.Anchor.SEGMENT_END, 3, 0).seconds(forecast(List.of()))).isEmpty();
  }

  /** When a simulation gave up is no moment; the early end of a deadline is one for longer. */
  @Test
  void whereTheKilnNeverGetsToThereIsNoMoment() {
    for (Moment.Anchor anchor : List.of(Moment.Anchor.SEGMENT_END, Moment.Anchor.PROGRAM_END)) {
      Moment act = moment(anchor, anchor == Moment.Anchor.PROGRAM_END ? 0 : 2, 0);
      assertThat(act.seconds(forecast(List.of(), 0.5))).isPresent();
      assertThat(act.seconds(forecast(List.of(), 0.49))).isEmpty();
      assertThat(act.asDeadline().seconds(forecast(List.of(), 0.49))).isPresent();
      assertThat(act.asDeadline().seconds(forecast(List.of(), 0.05))).isEmpty();
    }
    assertThat(moment(Moment.Anchor.SEGMENT_END, 1, 0).seconds(forecast(List.of(), 0))).isPresent();
  }

  @Test
  void workThatIsNotReadyInEveryCaseHasNoMoment() {
    WorkForecast late =
        new WorkForecast(1, "centre", Optional.empty(), Optional.empty(), Band.exactly(500));

    assertThat(moment(Moment.Anchor.WORK_READY, 0, 0).seconds(forecast(List.of(late)))).isEmpty();
  }
}
