package org.heatwright.learn;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.junit.jupiter.api.Test;

/** Openings of a log beside what a day states. */
class DoorSessionTest {

  private static final DoorSession SESSION =
      new DoorSession(
          List.of(
              new DoorSession.Opening(2500, 40, false, true, 80),
              new DoorSession.Opening(2800, 40, false, true, 90),
              new DoorSession.Opening(3100, 40, false, false, 60)));

  private static Disturbance door(double second, double length) {
    return new Disturbance(Disturbance.Kind.DOOR_OPEN, second, length);
  }

  @Test
  void anOpeningThatTheDayStatesIsNotCountedTwice() {
    FiringConditions day =
        FiringConditions.usual()
            .with(door(2510, 25))
            .with(new Disturbance(Disturbance.Kind.MAINS_OFF, 3100, 60))
            .with(door(4800, 30));
    List<DoorSession.Simulated> all = SESSION.on(day, 0.5);
    assertThat(all)
        .extracting(DoorSession.Simulated::shutSeconds)
        .containsExactly(2535.0, 2820.0, 3120.0);
    assertThat(all).extracting(DoorSession.Simulated::stated).containsExactly(true, false, false);
    assertThat(SESSION.more(day, 0.5)).containsExactly(door(2800, 20), door(3100, 20));
  }

  @Test
  void whatWasBeforeTheProgramIsNotSimulated() {
    assertThat(SESSION.shifted(-2600).on(FiringConditions.usual(), 1))
        .extracting(o -> o.as().atSeconds())
        .containsExactly(200.0, 500.0);
  }

  @Test
  void aLeapOfTheClockMovesWhatComesAfterIt() {
    assertThat(SESSION.shiftedFrom(2700, -100).openings())
        .extracting(DoorSession.Opening::atSeconds)
        .containsExactly(2500.0, 2700.0, 3000.0);
  }

  @Test
  void readingsAboutAnOpeningAreNoSlips() {
    assertThat(SESSION.touches(2400)).isFalse();
    assertThat(SESSION.touches(2530)).isTrue();
    assertThat(SESSION.fallKelvins(2700)).isEqualTo(80);
    assertThat(SESSION.fallKelvins(2810)).isEqualTo(90);
    assertThat(SESSION.fallKelvins(5000)).isZero();
  }
}
