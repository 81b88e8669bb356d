package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.heatwright.schedule.TestSchedules.segment;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.ColdPieces;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.kiln.TestKilns;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.TestSchedules;
import org.junit.jupiter.api.Test;

class SessionPiecesTest {

  private static FiringConditions opened(int times) {
    return FiringConditions.usual()
        .with(
            IntStream.range(0, times)
                .mapToObj(i -> new Disturbance(Disturbance.Kind.DOOR_OPEN, 3000 + 300 * i, 15))
                .toList(),
            Optional.empty());
  }

  private static Band energy(FiringConditions day) {
    return Forecaster.forecast(
            ForecastRequest.of(
                    TestSchedules.of(segment(0, 800, 90)), TestKilns.fibreMuffle(), Charge.empty())
                .withConditions(day))
        .energyKilowattHours();
  }

  @Test
  void threeOpeningsAreASessionUnlessSomethingIsSaidOrMouldsAreFired() {
    Charge moulds = Charge.moulds(List.of(new Mould(1, 0.06, 0.08, 0.002)), Investment.gypsum(0.4));
    assertThat(SessionPieces.likely(opened(2), Charge.empty())).isFalse();
    assertThat(SessionPieces.likely(opened(3), Charge.empty())).isTrue();
    assertThat(SessionPieces.likely(opened(3), moulds)).isFalse();
    FiringConditions denied = opened(3).with(List.of(), Optional.of(ColdPieces.NONE));
    assertThat(SessionPieces.likely(denied, Charge.empty())).isFalse();
  }

  /** Nine pieces of 45 J/K by 780 K are 0.09 kWh; how heavy they are is not known. */
  @Test
  void aSessionTakesMoreAndIsLessCertain() {
    Band denied = energy(opened(10).with(List.of(), Optional.of(ColdPieces.NONE)));
    Band likely = energy(opened(10));
    assertThat(likely.median() - denied.median()).isBetween(0.04, 0.12);
    assertThat(likely.high() - likely.low()).isGreaterThan(denied.high() - denied.low());
  }

  /** A look into the kiln is compared with none, and neither is a session. */
  @Test
  void whatOneMoreOpeningCostsHasNoPieceInIt() {
    FiringConditions two = SessionPieces.stated(opened(2), Charge.empty());
    assertThat(two.pieces()).contains(ColdPieces.NONE);
    assertThat(SessionPieces.likely(two.with(opened(1).disturbances().get(0)), Charge.empty()))
        .isFalse();
    ColdPieces session = SessionPieces.stated(opened(4), Charge.empty()).pieces().orElseThrow();
    assertThat(session.changes()).hasSize(4);
    assertThat(session.joulesPerKelvin()).isEqualTo(SessionPieces.joulesPerKelvin(0));
  }
}
