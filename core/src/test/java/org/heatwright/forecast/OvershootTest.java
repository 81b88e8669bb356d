package org.heatwright.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;
import org.heatwright.material.Origin;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Scenarios;
import org.junit.jupiter.api.Test;

/** How far a kiln goes beyond a held target, and what inspection makes of it. */
class OvershootTest {

  private static final Kiln STEADY =
      Scenarios.kiln("Steady", Scenarios.box(0.16, 0.18, 0.14), 1500, 1000, Optional.empty(), 3);

  private static Kiln switched(double hysteresisKelvins) {
    return STEADY.withControl(
        new Control(
            Control.Kind.ON_OFF,
            0,
            TemperatureChange.ofKelvins(hysteresisKelvins),
            Optional.empty(),
            Control.AfterPowerCut.STOP));
  }

  private static Schedule hold(double celsius) {
    return Schedule.of(
        "hold",
        TemperatureUnit.CELSIUS,
        List.of(
            new Segment(
                Ramp.at(HeatingRate.ofKelvinsPerHour(200)),
                Temperature.ofCelsius(celsius),
                Duration.ofMinutes(60))));
  }

  private static Forecast forecast(Kiln kiln, double celsius) {
    return Forecaster.forecast(
        ForecastRequest.of(hold(celsius), kiln, Charge.empty()).withDraws(16));
  }

  private static Overshoot overshoot(Kiln kiln, double celsius) {
    return forecast(kiln, celsius).segments().get(0).overshoot().orElseThrow();
  }

  @Test
  void anOnOffKilnOvershootsMoreAndMoreSoWithMoreHysteresis() {
    Overshoot steady = overshoot(STEADY, 300);
    Overshoot narrow = overshoot(switched(4), 300);
    Overshoot wide = overshoot(switched(20), 300);
    assertThat(steady.above().high()).isBetween(0.0, 8.0);
    assertThat(narrow.above().median()).isGreaterThan(steady.above().high());
    assertThat(wide.above().median()).isGreaterThan(narrow.above().median() + 3);
    assertThat(wide.below().median()).isGreaterThan(narrow.below().median());
    assertThat(wide.above().high() + wide.below().high()).isGreaterThan(20);
  }

  /** What was learned narrows the band: here everything to a fifth of the first ignorance. */
  @Test
  void aKilnThatIsKnownHasANarrowerBand() {
    int n = KilnQuantity.values().length;
    double[][] covariance = new double[n][n];
    for (int i = 0; i < n; i++) {
      covariance[i][i] = 0.04;
    }
    Kiln known =
        switched(6)
            .withLearned(
                new Learned(
                    LocalDate.of(2026, 11, 1),
                    3,
                    Learned.ENGINE,
                    KilnBeliefs.of(new double[n], covariance)));
    Overshoot before = overshoot(switched(6), 300);
    Overshoot after = overshoot(known, 300);
    double spread = after.above().high() - after.above().low();
    assertThat(spread).isLessThan(0.6 * (before.above().high() - before.above().low()));
    assertThat(after.above().high()).isLessThan(before.above().high());
  }

  @Test
  void whatIsNotHeldHasNoOvershoot() {
    Schedule up =
        Schedule.of(
            "up",
            TemperatureUnit.CELSIUS,
            List.of(
                new Segment(
                    Ramp.at(HeatingRate.ofKelvinsPerHour(300)),
                    Temperature.ofCelsius(200),
                    Duration.ZERO)));
    Forecast forecast =
        Forecaster.forecast(ForecastRequest.of(up, STEADY, Charge.empty()).withDraws(2));
    assertThat(forecast.segments().get(0).overshoot()).isEmpty();
  }

  /** The window of practice for keum-boo, 260 to 370 °C, and narrower ones. */
  @Test
  void anOvershootLargerThanTheWindowIsTold() {
    Kiln kiln = switched(10);
    Forecast forecast = forecast(kiln, 315);
    assertThat(codes(kiln, forecast, 315, 150, 1000)).isEmpty();
    assertThat(codes(kiln, forecast, 315, 312, 318)).containsExactly("overshoot-over-window");
    assertThat(codes(kiln, forecast, 315, 150, 317)).containsExactly("overshoot-out-of-window");
    assertThat(codes(kiln, forecast, 315, 314, 900)).containsExactly("swings-below-window");
    Forecast steady = forecast(STEADY, 315);
    assertThat(codes(STEADY, steady, 315, 260, 370)).isEmpty();
    Forecast low = forecast(kiln, 60);
    assertThat(codes(kiln, low, 60, 20, 1000)).contains("target-too-low-for-kiln");
    assertThat(codes(STEADY, forecast(STEADY, 60), 60, 20, 90)).isEmpty();
  }

  private static List<String> codes(
      Kiln kiln, Forecast forecast, double target, double low, double high) {
    TemperatureRange any = TemperatureRange.ofCelsius(0, 1000);
    Demands demands =
        new Demands(
            "a patina",
            List.of(),
            List.of(),
            List.of(),
            any,
            any,
            TemperatureChange.ofKelvins(10),
            List.of(
                new Demands.Window(
                    TemperatureRange.ofCelsius(low, high),
                    "a patina",
                    "it changes colour",
                    "it stays soft",
                    Origin.practice())),
            List.of());
    return Inspector.inspect(Inspection.of(hold(target)).in(kiln).forWork(demands).with(forecast))
        .stream()
        .map(Finding::code)
        .filter(c -> c.contains("window") || c.contains("too-low"))
        .toList();
  }
}
