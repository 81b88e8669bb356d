package org.heatwright.app.report;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.EnamelPieceCurve;

/**
 * The curve of one piece that goes into the hot kiln, on its own clock, ready to draw.
 *
 * @param unit of the labels
 * @param lengthSeconds right end of the time axis, s from the door's shutting
 * @param topCelsius upper end of the temperature axis, °C; its lower end is the unit's zero
 * @param rows the curve
 * @param fromSeconds when one in ten is glossy; infinite if it is not while it is followed
 * @param untilSeconds when nine in ten are
 * @param secondTicks labels of the time axis, s
 * @param temperatureTicks labels of the temperature axis
 */
public record PieceChart(
    TemperatureUnit unit,
    double lengthSeconds,
    double topCelsius,
    List<EnamelPieceCurve.Row> rows,
    double fromSeconds,
    double untilSeconds,
    List<Integer> secondTicks,
    List<ChartData.TemperatureTick> temperatureTicks) {

  private static final int[] STEPS_SECONDS = {15, 30, 60, 120, 300};
  private static final int MOST_TICKS = 8;
  private static final double HEADROOM = 1.08;

  public PieceChart {
    rows = List.copyOf(rows);
    secondTicks = List.copyOf(secondTicks);
    temperatureTicks = List.copyOf(temperatureTicks);
  }

  /** Chooses axes and ticks. */
  static PieceChart of(EnamelOutlook outlook, TemperatureUnit unit) {
    List<EnamelPieceCurve.Row> rows = outlook.curve().rows();
    double length = rows.get(rows.size() - 1).seconds();
    double highest =
        rows.stream()
            .mapToDouble(row -> Math.max(row.highCelsius(), row.chamberCelsius()))
            .max()
            .orElseThrow();
    int step = STEPS_SECONDS[STEPS_SECONDS.length - 1];
    for (int s : STEPS_SECONDS) {
      if (length / s <= MOST_TICKS) {
        step = s;
        break;
      }
    }
    List<Integer> seconds = new ArrayList<>();
    for (int at = 0; at <= length; at += step) {
      seconds.add(at);
    }
    double top = highest * HEADROOM;
    return new PieceChart(
        unit,
        length,
        top,
        rows,
        outlook.window().earliestSeconds(),
        outlook.window().latestSeconds(),
        seconds,
        Ticks.temperatures(unit, top));
  }
}
