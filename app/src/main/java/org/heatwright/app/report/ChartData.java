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
  public static final double LIMIT_HEADROOM = 1.15;

  private static final int MOST_POINTS = 1200;
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
    List<TemperatureTick> temperatures = Ticks.temperatures(unit, wanted);
    double bottom = temperatures.get(0).celsius();
    return new ChartData(
        unit,
        length,
        bottom,
        Math.max(wanted, bottom + 1),
        points,
        work,
        Ticks.times(start, length),
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

  /** The nights of a stretch that begins at {@code start}. */
  public static List<Night> nights(ZonedDateTime start, double lengthSeconds) {
    List<Night> nights = new ArrayList<>();
    for (LocalDate day = start.toLocalDate().minusDays(1); ; day = day.plusDays(1)) {
      double from = Ticks.secondsFrom(start, day.atTime(NIGHT_FROM).atZone(start.getZone()));
      double to =
          Ticks.secondsFrom(start, day.plusDays(1).atTime(NIGHT_TO).atZone(start.getZone()));
      if (from >= lengthSeconds) {
        return nights;
      }
      if (to > 0) {
        nights.add(new Night(Math.max(0, from), Math.min(lengthSeconds, to)));
      }
    }
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
