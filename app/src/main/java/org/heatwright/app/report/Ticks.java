package org.heatwright.app.report;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** Labelled places on the axes of a curve: round numbers, few enough to be read. */
public final class Ticks {

  private static final int MOST_TIME_TICKS = 8;
  private static final int MOST_TEMPERATURE_TICKS = 7;
  private static final double HOUR = 3600;
  private static final double[] TIME_STEPS_SECONDS = {
    5 * 60, 10 * 60, 15 * 60, 30 * 60, HOUR, 2 * HOUR, 3 * HOUR, 6 * HOUR, 12 * HOUR, 24 * HOUR
  };
  private static final double[] TEMPERATURE_STEPS = {10, 20, 50, 100, 200, 500};

  private Ticks() {}

  /** From zero of the unit to {@code topCelsius}. */
  public static List<ChartData.TemperatureTick> temperatures(
      TemperatureUnit unit, double topCelsius) {
    double top = unit.value(new Temperature(topCelsius));
    double step = TEMPERATURE_STEPS[TEMPERATURE_STEPS.length - 1];
    for (double s : TEMPERATURE_STEPS) {
      if (top / s <= MOST_TEMPERATURE_TICKS) {
        step = s;
        break;
      }
    }
    List<ChartData.TemperatureTick> ticks = new ArrayList<>();
    for (int i = 0; i * step <= top; i++) {
      double value = i * step;
      ticks.add(
          new ChartData.TemperatureTick(
              unit.temperature(value).celsius(), Long.toString(Math.round(value))));
    }
    return ticks;
  }

  /** By the clock where the start is known, else as time after it. */
  public static List<ChartData.TimeTick> times(
      Optional<ZonedDateTime> start, double lengthSeconds) {
    return start.isPresent() ? clock(start.get(), lengthSeconds) : elapsed(lengthSeconds);
  }

  private static double timeStepSeconds(double lengthSeconds) {
    for (double step : TIME_STEPS_SECONDS) {
      if (lengthSeconds / step <= MOST_TIME_TICKS) {
        return step;
      }
    }
    return Math.ceil(lengthSeconds / MOST_TIME_TICKS / (24 * HOUR)) * 24 * HOUR;
  }

  private static List<ChartData.TimeTick> elapsed(double lengthSeconds) {
    double step = timeStepSeconds(lengthSeconds);
    List<ChartData.TimeTick> ticks = new ArrayList<>();
    for (int i = 0; i * step <= lengthSeconds; i++) {
      ticks.add(new ChartData.TimeTick(i * step, WhenWords.elapsed(i * step), ""));
    }
    return ticks;
  }

  private static List<ChartData.TimeTick> clock(ZonedDateTime start, double lengthSeconds) {
    WhenWords words = new WhenWords(Optional.of(start));
    int stepSeconds = (int) timeStepSeconds(lengthSeconds);
    List<ChartData.TimeTick> ticks = new ArrayList<>();
    double previous = -1;
    String previousDay = "";
    for (LocalDate day = start.toLocalDate(); ; day = day.plusDays(1)) {
      for (int second = 0; second < 24 * HOUR; second += stepSeconds) {
        double at =
            secondsFrom(start, day.atTime(LocalTime.ofSecondOfDay(second)).atZone(start.getZone()));
        if (at > lengthSeconds) {
          return ticks;
        }
        if (at < 0 || (previous >= 0 && at < previous + 0.6 * stepSeconds)) {
          continue; // before the start, too early for the step, or in the hour that is skipped
        }
        String date = words.day(at);
        ticks.add(
            new ChartData.TimeTick(at, words.clock(at), date.equals(previousDay) ? "" : date));
        previous = at;
        previousDay = date;
      }
    }
  }

  /** How long after {@code start}, s. */
  public static double secondsFrom(ZonedDateTime start, ZonedDateTime at) {
    return Duration.between(start, at).toMillis() / 1000.0;
  }
}
