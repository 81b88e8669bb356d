package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.heatwright.schedule.TestSchedules.segment;

import java.util.List;
import java.util.Optional;
import org.heatwright.kiln.TestKilns;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.TestSchedules;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.junit.jupiter.api.Test;

class ChangeoverTest {

  private static final Temperature TOP = Temperature.ofCelsius(730);
  private static final Temperature LACE = Temperature.ofCelsius(630);
  private static final Temperature SIGNET = Temperature.ofCelsius(480);

  private static final Schedule BURNOUT =
      TestSchedules.of(
          segment(120, 150, 120),
          segment(120, 370, 60),
          segment(200, 730, 150),
          segment(200, 500, 90));

  private static ForecastRequest holding(double diameterMetres) {
    return ForecastRequest.of(
            BURNOUT,
            TestKilns.brickMuffle(2200),
            Charge.moulds(
                List.of(new Mould(1, diameterMetres, 0.1, 0.002)), Investment.gypsum(0.40)))
        .withDraws(6);
  }

  private static Changeover forecast(double diameterMetres, Temperature to, double rate) {
    return Changeover.forecast(
            holding(diameterMetres), LACE, to, Optional.of(HeatingRate.ofKelvinsPerHour(rate)))
        .orElseThrow();
  }

  /** By hand: 250 K at 120 K/h take 125 min. */
  @Test
  void aPlainRateIsPlain() {
    Changeover change = Changeover.atRate(TOP, SIGNET, HeatingRate.ofKelvinsPerHour(120), 45);
    assertThat(change.kilnMinutes()).isCloseTo(125, within(1e-9));
    assertThat(change.settleMinutes()).isEqualTo(45);
  }

  /** 150 K at 50 K/h take 180 min by the program, and no kiln falls sooner than it may. */
  @Test
  void aSlowFallIsTheProgramsOwn() {
    Changeover change = forecast(0.075, SIGNET, 50);
    assertThat(change.kilnMinutes()).isBetween(170.0, 200.0);
  }

  @Test
  void thickerCoresSettleLaterAndAFurtherFallTakesLonger() {
    Changeover thin = forecast(0.05, SIGNET, 150);
    Changeover thick = forecast(0.1, SIGNET, 150);
    assertThat(thick.settleMinutes()).isGreaterThan(thin.settleMinutes() + 5);
    Changeover near = forecast(0.1, Temperature.ofCelsius(580), 150);
    assertThat(near.kilnMinutes()).isLessThan(thick.kilnMinutes());
  }
}
