package org.heatwright.app.tonight;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import org.heatwright.app.files.KilnFile;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Learned;
import org.heatwright.learn.KilnLearner;
import org.heatwright.learn.LoggedFiring;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;

/**
 * Learning from one firing of a kiln simulated apart from the product, and forecasting another (see
 * {@link IndependentKiln}).
 */
class LearningTest {

  private static final int KILNS = 12;

  private static final Schedule SEEN =
      Schedule.of(
          "seen",
          TemperatureUnit.CELSIUS,
          List.of(new Segment(Ramp.fastest(), Temperature.ofCelsius(880), Duration.ofMinutes(40))));

  private static final Schedule NEXT =
      Schedule.of(
          "next",
          TemperatureUnit.CELSIUS,
          List.of(
              new Segment(
                  Ramp.at(HeatingRate.ofKelvinsPerHour(200)),
                  Temperature.ofCelsius(450),
                  Duration.ofMinutes(30)),
              new Segment(Ramp.fastest(), Temperature.ofCelsius(950), Duration.ofMinutes(20))));

  @Test
  void oneFiringNarrowsTheNextForecastAndKeepsItTrue() throws IOException {
    Kiln kiln = KilnFile.read(text("/demo/kilns/anchor.yaml"), "anchor.yaml");
    Band before =
        Forecaster.forecast(ForecastRequest.of(NEXT, kiln, Charge.empty()))
            .segments()
            .get(1)
            .reachedSeconds();
    int inside = 0;
    List<Double> missShare = new ArrayList<>();
    List<Double> widthShare = new ArrayList<>();
    for (int i = 0; i < KILNS; i++) {
      // Twice the same kiln: the same seed draws the same hidden values.
      double[] seen = display(kiln, 500 + i, SEEN, 12_000);
      LoggedFiring log =
          new LoggedFiring("seen", SEEN, FiringConditions.usual(), Charge.empty(), readings(seen));
      Kiln known =
          kiln.withLearned(
              new Learned(
                  LocalDate.of(2026, 11, 1),
                  1,
                  Learned.ENGINE,
                  KilnLearner.learn(kiln, List.of(log)).beliefs()));
      Band after =
          Forecaster.forecast(ForecastRequest.of(NEXT, known, Charge.empty()))
              .segments()
              .get(1)
              .arrivedSeconds()
              .orElseThrow();
      double truth = arrival(display(kiln, 500 + i, NEXT, 30_000), 947);
      // The log is every ten seconds, in whole degrees.
      if (truth >= after.low() - 20 && truth <= after.high() + 20) {
        inside++;
      }
      missShare.add(Math.abs(after.median() - truth) / truth);
      widthShare.add((after.high() - after.low()) / (before.high() - before.low()));
    }
    missShare.sort(null);
    widthShare.sort(null);
    System.out.printf(
        "learned from one firing: %d of %d arrivals inside their bands, half within %.1f %%, all"
            + " within %.1f %%; half of the bands are %.0f %% of the nameplate's or less%n",
        inside,
        KILNS,
        100 * missShare.get(KILNS / 2),
        100 * missShare.get(KILNS - 1),
        100 * widthShare.get(KILNS / 2));
    assertThat(inside).isGreaterThanOrEqualTo(9);
    assertThat(missShare.get(KILNS / 2)).isLessThan(0.02);
    assertThat(widthShare.get(KILNS / 2)).isLessThan(0.6);
  }

  private static double[] display(Kiln kiln, long seed, Schedule schedule, double until) {
    return new IndependentKiln(kiln, Charge.empty(), kiln.room().celsius(), new Random(seed))
        .displayEveryTenSeconds(schedule, until);
  }

  private static double arrival(double[] display, double celsius) {
    for (int i = 0; i < display.length; i++) {
      if (display[i] >= celsius) {
        return 10.0 * i;
      }
    }
    throw new AssertionError("The kiln never gets there.");
  }

  private static Readings readings(double[] display) {
    int n = display.length - 1;
    double[] seconds = new double[n];
    double[] celsius = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = 10.0 * i;
      celsius[i] = display[i];
    }
    return Readings.of(seconds, celsius);
  }

  private static String text(String resource) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(LearningTest.class.getResourceAsStream(resource), resource)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
