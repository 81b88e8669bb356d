package org.heatwright.app.report;

import java.util.List;
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
   * @param newDay true where a date begins
   * @param date e.g. "Thu 3 Dec" where a date begins, else empty
   */
  public record TimeTick(double seconds, String label, boolean newDay, String date) {}

  /** A labelled temperature. */
  public record TemperatureTick(double celsius, String label) {}

  /** A stretch of night. */
  public record Night(double fromSeconds, double toSeconds) {}

  /** A temperature that must not be exceeded, and why. */
  public record Limit(double celsius, String why) {}
}
