package org.heatwright.app.report;

import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * A curve ready to draw, whatever draws it: data in seconds and °C, ticks already chosen.
 *
 * @param unit of the labels
 * @param lengthSeconds right end of the time axis, s from the program's start
 * @param bottomCelsius lower end of the temperature axis, °C
 * @param topCelsius upper end of the temperature axis, °C
 * @param points the forecast, thinned
 * @param work curves inside the work, named
 * @param timeTicks labels of the time axis
 * @param temperatureTicks labels of the temperature axis
 * @param nights from 22:00 to 06:00, s from the program's start; empty without a start
 * @param limits never above
 */
public record ChartData(
    TemperatureUnit unit,
    double lengthSeconds,
    double bottomCelsius,
    double topCelsius,
    List<Point> points,
    List<WorkCurve> work,
    List<TimeTick> timeTicks,
    List<TemperatureTick> temperatureTicks,
    List<Night> nights,
    List<Limit> limits) {

  public ChartData {
    points = List.copyOf(points);
    work = List.copyOf(work);
    timeTicks = List.copyOf(timeTicks);
    temperatureTicks = List.copyOf(temperatureTicks);
    nights = List.copyOf(nights);
    limits = List.copyOf(limits);
    if (!(lengthSeconds > 0) || !(topCelsius > bottomCelsius)) {
      throw new IllegalArgumentException(
          "The chart (%s s long, %s to %s °C) needs a length and a height."
              .formatted(lengthSeconds, bottomCelsius, topCelsius));
    }
  }

  /** Room above a limit, for its hatching and its words. */
  private static final double LIMIT_HEADROOM = 1.15;

  private static final int MOST_POINTS = 1200;
  private static final int MOST_TIME_TICKS = 8;
  private static final int MOST_TEMPERATURE_TICKS = 7;
  private static final double HOUR = 3600;
  private static final double[] TIME_STEPS_SECONDS = {
    5 * 60, 10 * 60, 15 * 60, 30 * 60, HOUR, 2 * HOUR, 3 * HOUR, 6 * HOUR, 12 * HOUR, 24 * HOUR
  };
  private static final double[] TEMPERATURE_STEPS = {10, 20, 50, 100, 200, 500};
  private static final LocalTime NIGHT_FROM = LocalTime.of(22, 0);
  private static final LocalTime NIGHT_TO = LocalTime.of(6, 0);

  /**
   * Chooses axes and ticks for a forecast.
   *
   * @param limits the lowest is shown, if it is near enough to the curve to matter
   */
  public static ChartData of(
      Forecast forecast, TemperatureUnit unit, Optional<ZonedDateTime> start, List<Limit> limits) {
    ForecastTrace trace = forecast.trace();
    List<Integer> kept = thinned(trace.size());
    double[] seconds = trace.seconds();
    double[] setpoint = trace.setpointCelsius();
    double[] low = trace.lowCelsius();
    double[] median = trace.medianCelsius();
    double[] high = trace.highCelsius();
    List<Point> points = new ArrayList<>();
    double peak = 0;
    double length = seconds[seconds.length - 1];
    for (int i : kept) {
      points.add(new Point(seconds[i], setpoint[i], low[i], median[i], high[i]));
      peak = Math.max(peak, Math.max(high[i], setpoint[i]));
    }
    List<WorkCurve> work = new ArrayList<>();
    for (String name : trace.workNames()) {
      double[] column = trace.workCelsius(name);
      work.add(new WorkCurve(name, kept.stream().map(i -> column[i]).toList()));
    }
    double reach = peak * 1.3;
    List<Limit> near =
        limits.stream()
            .filter(l -> l.celsius() <= reach)
            .min(Comparator.comparingDouble(Limit::celsius))
            .stream()
            .toList();
    double highest = near.stream().mapToDouble(Limit::celsius).max().orElse(0);
    double wanted = Math.max(peak * 1.06, highest * LIMIT_HEADROOM);
    List<TemperatureTick> temperatures = temperatureTicks(unit, wanted);
    double bottom = temperatures.get(0).celsius();
    return new ChartData(
        unit,
        length,
        bottom,
        Math.max(wanted, bottom + 1),
        points,
        work,
        start.isPresent() ? clockTicks(start.get(), length) : elapsedTicks(length),
        temperatures,
        start.isPresent() ? nights(start.get(), length) : List.of(),
        near);
  }

  private static List<Integer> thinned(int size) {
    int stride = (size + MOST_POINTS - 1) / MOST_POINTS;
    List<Integer> kept = new ArrayList<>();
    for (int i = 0; i < size; i += stride) {
      kept.add(i);
    }
    if (kept.get(kept.size() - 1) != size - 1) {
      kept.add(size - 1);
    }
    return kept;
  }

  private static List<TemperatureTick> temperatureTicks(TemperatureUnit unit, double topCelsius) {
    double top = unit.value(new Temperature(topCelsius));
    double step = TEMPERATURE_STEPS[TEMPERATURE_STEPS.length - 1];
    for (double s : TEMPERATURE_STEPS) {
      if (top / s <= MOST_TEMPERATURE_TICKS) {
        step = s;
        break;
      }
    }
    List<TemperatureTick> ticks = new ArrayList<>();
    for (int i = 0; i * step <= top; i++) {
      double value = i * step;
      ticks.add(
          new TemperatureTick(unit.temperature(value).celsius(), Long.toString(Math.round(value))));
    }
    return ticks;
  }

  private static double timeStepSeconds(double lengthSeconds) {
    for (double step : TIME_STEPS_SECONDS) {
      if (lengthSeconds / step <= MOST_TIME_TICKS) {
        return step;
      }
    }
    return Math.ceil(lengthSeconds / MOST_TIME_TICKS / (24 * HOUR)) * 24 * HOUR;
  }

  private static List<TimeTick> elapsedTicks(double lengthSeconds) {
    double step = timeStepSeconds(lengthSeconds);
    List<TimeTick> ticks = new ArrayList<>();
    for (int i = 0; i * step <= lengthSeconds; i++) {
      ticks.add(new TimeTick(i * step, WhenWords.elapsed(i * step), ""));
    }
    return ticks;
  }

  private static List<TimeTick> clockTicks(ZonedDateTime start, double lengthSeconds) {
    WhenWords words = new WhenWords(Optional.of(start));
    int stepSeconds = (int) timeStepSeconds(lengthSeconds);
    List<TimeTick> ticks = new ArrayList<>();
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
        ticks.add(new TimeTick(at, words.clock(at), date.equals(previousDay) ? "" : date));
        previous = at;
        previousDay = date;
      }
    }
  }

  private static List<Night> nights(ZonedDateTime start, double lengthSeconds) {
    List<Night> nights = new ArrayList<>();
    for (LocalDate day = start.toLocalDate().minusDays(1); ; day = day.plusDays(1)) {
      double from = secondsFrom(start, day.atTime(NIGHT_FROM).atZone(start.getZone()));
      double to = secondsFrom(start, day.plusDays(1).atTime(NIGHT_TO).atZone(start.getZone()));
      if (from >= lengthSeconds) {
        return nights;
      }
      if (to > 0) {
        nights.add(new Night(Math.max(0, from), Math.min(lengthSeconds, to)));
      }
    }
  }

  private static double secondsFrom(ZonedDateTime start, ZonedDateTime at) {
    return java.time.Duration.between(start, at).toMillis() / 1000.0;
  }

  /** The forecast at one time: setpoint, and the display's band. */
  public record Point(
      double seconds,
      double setpointCelsius,
      double lowCelsius,
      double medianCelsius,
      double highCelsius) {}

  /** A place inside the work and its curve, on the times of the points. */
  public record WorkCurve(String name, List<Double> celsius) {
    public WorkCurve {
      celsius = List.copyOf(celsius);
    }
  }

  /**
   * @param seconds where, s from the program's start
   * @param label e.g. "22:00" or "+6 h"
   * @param date e.g. "Thu 3 Dec" where a date begins, else empty
   */
  public record TimeTick(double seconds, String label, String date) {}

  /** A labelled temperature. */
  public record TemperatureTick(double celsius, String label) {}

  /** A stretch of night. */
  public record Night(double fromSeconds, double toSeconds) {}

  /** A temperature that must not be exceeded, and whose limit it is, e.g. "the kiln". */
  public record Limit(double celsius, String why) {}
}
