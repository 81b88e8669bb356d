package org.heatwright.work.enamel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Charge;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.learn.DoorSession;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

/** Openings of the door for learning: what counts as one and what does not. */
class LoggedOpeningsTest {

  private static final int ROWS = 540;

  private final double[] celsius = new double[ROWS];
  private final List<Optional<String>> events =
      new ArrayList<>(Collections.nCopies(ROWS, Optional.<String>empty()));

  /** An hour and a half, a row every ten seconds: up to 820 °C in half an hour, and held. */
  private LoggedOpeningsTest() {
    for (int i = 0; i < ROWS; i++) {
      celsius[i] = i < 180 ? 20 + i * 800 / 180.0 : 820;
    }
  }

  /** A fall from a row on within so many rows, and up again in twice as many. */
  private LoggedOpeningsTest dip(int row, int rows, double kelvins) {
    for (int i = 0; i <= rows; i++) {
      celsius[row + i] -= kelvins * i / rows;
    }
    for (int i = 1; i < 2 * rows; i++) {
      celsius[row + rows + i] -= kelvins * (2 * rows - i) / (2.0 * rows);
    }
    return this;
  }

  private List<DoorSession.Opening> openings() {
    double[] seconds = new double[ROWS];
    double[] setpoint = new double[ROWS];
    Arrays.setAll(seconds, i -> 10.0 * i);
    Arrays.fill(setpoint, Double.NaN);
    LoggedFiring firing =
        new LoggedFiring(
            "x",
            Schedule.of(
                "x",
                TemperatureUnit.CELSIUS,
                List.of(
                    new Segment(
                        Ramp.fastest(), Temperature.ofCelsius(820), Duration.ofMinutes(60)))),
            FiringConditions.usual(),
            Charge.empty(),
            Readings.of(seconds, celsius));
    return LoggedOpenings.in(firing, setpoint, events).session().openings();
  }

  @Test
  void quickFallsThatTurnRoundAreOpenings() {
    List<DoorSession.Opening> found = dip(250, 3, 80).dip(280, 3, 90).dip(310, 3, 60).openings();
    assertThat(found)
        .extracting(DoorSession.Opening::atSeconds)
        .containsExactly(2500.0, 2800.0, 3100.0);
    assertThat(found).noneMatch(DoorSession.Opening::told);
    assertThat(found.get(1).fallKelvins()).isCloseTo(90, within(1.0));
    // The last one lets the last piece out.
    assertThat(found).extracting(DoorSession.Opening::goesIn).containsExactly(true, true, false);
  }

  @Test
  void oneOrTwoFallsMayBeSomethingElse() {
    assertThat(dip(250, 3, 80).openings()).isEmpty();
    assertThat(dip(280, 3, 80).openings()).isEmpty();
    assertThat(dip(310, 3, 80).openings()).hasSize(3);
  }

  @Test
  void aSlowFallIsNone() {
    // 60 K in five minutes, 0.2 K/s: a relay that stuck.
    assertThat(dip(200, 30, 60).dip(300, 30, 60).dip(400, 30, 60).openings()).isEmpty();
  }

  @Test
  void theSwingOfASwitchIsNone() {
    for (int row = 190; row < 500; row += 12) {
      dip(row, 4, 45);
    }
    assertThat(openings()).isEmpty();
  }

  @Test
  void openingsStandOutOfTheSwingOfASwitch() {
    for (int row = 190; row < 500; row += 12) {
      dip(row, 4, 45);
    }
    dip(262, 4, 80).dip(298, 4, 80).dip(334, 4, 80);
    assertThat(openings())
        .extracting(DoorSession.Opening::atSeconds)
        .containsExactly(2620.0, 2980.0, 3340.0);
  }

  @Test
  void whatTheLogTellsIsBelievedHoweverLittleItFell() {
    dip(250, 2, 15);
    events.set(250, Optional.of("door-open brooch 1"));
    events.set(252, Optional.of("door-shut"));
    events.set(300, Optional.of("door-open empty"));
    events.set(303, Optional.of("door-shut"));
    List<DoorSession.Opening> found = openings();
    assertThat(found).hasSize(2).allMatch(DoorSession.Opening::told);
    assertThat(found.get(0).seconds()).isEqualTo(20);
    assertThat(found.get(0).goesIn()).isTrue();
    assertThat(found.get(1).seconds()).isEqualTo(30);
    assertThat(found.get(1).goesIn()).isFalse();
  }

  /** A door that was opened once and of which nobody says what went in was looked into. */
  @Test
  void aSingleOpeningWithoutANameBringsNothingIn() {
    events.set(250, Optional.of("door-open"));
    events.set(252, Optional.of("door-shut"));
    assertThat(openings()).hasSize(1).noneMatch(DoorSession.Opening::goesIn);
  }
}
