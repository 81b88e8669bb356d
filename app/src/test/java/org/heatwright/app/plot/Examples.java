package org.heatwright.app.plot;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.plot.WatchedFiring.Happening;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.Charge;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.LifeEvent;
import org.heatwright.learn.Lesson;
import org.heatwright.learn.Readings;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** Figures to test with: a real forecast, and readings made by hand. */
final class Examples {

  static final ZonedDateTime START =
      ZonedDateTime.of(2026, 11, 3, 20, 40, 0, 0, ZoneId.of("Europe/Lisbon"));

  private static final Forecast FORECAST = forecast();

  private Examples() {}

  private static Forecast forecast() {
    try {
      Kiln kiln =
          KilnFile.read(
              Files.readString(Path.of("src/main/resources/demo/kilns/anchor.yaml")),
              "anchor.yaml");
      Schedule schedule =
          Schedule.of(
              "overnight",
              TemperatureUnit.CELSIUS,
              List.of(
                  new Segment(
                      Ramp.at(HeatingRate.ofKelvinsPerHour(150)),
                      Temperature.ofCelsius(450),
                      Duration.ofMinutes(60)),
                  new Segment(Ramp.fastest(), Temperature.ofCelsius(880), Duration.ofMinutes(45))));
      return Forecaster.forecast(ForecastRequest.of(schedule, kiln, Charge.empty()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static double endSeconds() {
    double[] grid = FORECAST.trace().seconds();
    return grid[grid.length - 1];
  }

  /** The forecast's median with something added, every so often, with an hour of cooling. */
  static Readings readings(double everySeconds, java.util.function.DoubleUnaryOperator added) {
    int n = (int) ((endSeconds() + 3600) / everySeconds);
    double[] seconds = new double[n];
    double[] celsius = new double[n];
    for (int i = 0; i < n; i++) {
      seconds[i] = i * everySeconds;
      double median = FORECAST.trace().displayCelsiusAt(seconds[i]).median();
      double cooling = Math.max(0, seconds[i] - endSeconds()) / 3600 * 150;
      celsius[i] = Math.rint(median + added.applyAsDouble(seconds[i]) - cooling);
    }
    return Readings.of(seconds, celsius);
  }

  static WatchedFiring before() {
    return new WatchedFiring(
        FORECAST, "", Optional.empty(), TemperatureUnit.CELSIUS, Optional.empty(), List.of());
  }

  static WatchedFiring logged() {
    return new WatchedFiring(
        FORECAST,
        "The forecast knows the nameplate only.",
        Optional.of(readings(60, t -> 12 * Math.sin(t / 4000))),
        TemperatureUnit.CELSIUS,
        Optional.of(START),
        List.of(
            new Happening(5000, 6200, "mains off"),
            new Happening(6600, 6600, "display 40 °C low from here"),
            new Happening(15000, 15000, "door ajar from here")));
  }

  static WatchedFiring byHandInFahrenheit() {
    return new WatchedFiring(
        FORECAST,
        "",
        Optional.of(readings(2400, t -> -9)),
        TemperatureUnit.FAHRENHEIT,
        Optional.empty(),
        List.of());
  }

  static Figure learned() {
    int n = KilnQuantity.values().length;
    double[] scores = new double[n];
    double[][] covariance = new double[n][n];
    for (int i = 0; i < n; i++) {
      scores[i] = i % 3 == 0 ? -0.8 : 0.5 * (i % 4);
      covariance[i][i] = i % 4 == 3 ? 0.9 : 0.06 + 0.02 * i;
    }
    scores[KilnQuantity.FITTINGS.ordinal()] = -2.4;
    KilnBeliefs beliefs = KilnBeliefs.of(scores, covariance);
    return LearnedPlot.of("Anchor", 3, beliefs, Lesson.untold(beliefs));
  }

  static Figure health() {
    LocalDate first = LocalDate.of(2026, 3, 4);
    double[] power = {1, 0.99, 0.975, 0.97, 0.95, 0.93, 1.01, 1};
    List<HealthPlot.Point> points = new java.util.ArrayList<>();
    for (int i = 0; i < power.length; i++) {
      LocalDate date = first.plusDays(i * 33L);
      points.add(point(date, "Full power", power[i], 0.012));
      points.add(point(date, "Heat lost", 1 + 0.02 * (i % 3), 0.09));
      points.add(point(date, "Lag of the thermocouple", 1 + 0.03 * i, 0.15));
    }
    return HealthPlot.of(
        "Anchor",
        points,
        List.of(
            new LifeEvent(first.plusDays(180), LifeEvent.What.ELEMENTS_REPLACED),
            new LifeEvent(first.plusDays(186), LifeEvent.What.DOOR_RESEALED)));
  }

  private static HealthPlot.Point point(
      LocalDate date, String quantity, double median, double each) {
    return new HealthPlot.Point(
        date, "firing of " + date, quantity, new Band(median - each, median, median + each));
  }
}
