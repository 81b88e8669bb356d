package org.heatwright.app.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.learn.Readings;

/** The display's band over the firing, with what it did say where there is a log. */
public final class FiringPlot {

  private FiringPlot() {}

  public static Figure of(WatchedFiring firing) {
    ForecastTrace trace = firing.forecast().trace();
    double[] seconds = trace.seconds();
    double[] low = trace.lowCelsius();
    double[] median = trace.medianCelsius();
    double[] high = trace.highCelsius();
    double[] setpoint = trace.setpointCelsius();
    List<Layer.Point> seen = firing.seen().map(FiringPlot::points).orElse(List.of());
    double bottom = Double.POSITIVE_INFINITY;
    double top = Double.NEGATIVE_INFINITY;
    List<Layer.Reach> band = new ArrayList<>();
    for (int i = 0; i < seconds.length; i++) {
      band.add(new Layer.Reach(seconds[i], low[i], high[i]));
      bottom = Math.min(bottom, low[i]);
      top = Math.max(top, Math.max(setpoint[i], high[i]));
    }
    for (Layer.Point point : seen) {
      bottom = Math.min(bottom, point.y());
      top = Math.max(top, point.y());
    }
    List<Layer> layers = new ArrayList<>(firing.happeningLayers(firing.endSeconds()));
    layers.add(new Layer.Area(band, Look.BAND));
    layers.add(new Layer.Line(points(seconds, setpoint), Look.SETPOINT));
    layers.add(new Layer.Line(points(seconds, median), Look.FORECAST));
    List<Figure.Key> keys = new ArrayList<>();
    keys.add(new Figure.Key(Figure.Kind.BAND, "forecast, nine times in ten inside"));
    if (!seen.isEmpty()) {
      layers.addAll(WatchedFiring.seenLayers(seen));
      keys.add(WatchedFiring.seenKey(seen));
    }
    keys.add(new Figure.Key(Figure.Kind.SETPOINT, "setpoint"));
    if (firing.shades()) {
      keys.add(new Figure.Key(Figure.Kind.EVENT, "known to have happened"));
    }
    return new Figure(
        (seen.isEmpty() ? "Forecast: " : "Log against forecast: ") + firing.name(),
        told(firing),
        Axis.time(firing.start(), firing.endSeconds()),
        List.of(
            new Figure.Panel(
                "", Axis.temperature(firing.unit(), bottom, Math.max(1, top * 1.06)), 0, layers)),
        keys);
  }

  /** How what was seen compares with the forecast, in words. */
  public static String told(WatchedFiring firing) {
    Optional<LogAgainstForecast> compared = firing.compared();
    String words =
        compared
            .map(c -> c.words(firing.unit(), firing.when()))
            .orElse("Nine firings in ten should keep the display inside the band.");
    return firing.basis().isEmpty() ? words : words + " " + firing.basis();
  }

  static List<Layer.Point> points(Readings readings) {
    return IntStream.range(0, readings.size())
        .mapToObj(i -> new Layer.Point(readings.second(i), readings.celsius(i)))
        .filter(point -> point.x() >= 0) // before the program began there is no forecast
        .toList();
  }

  private static List<Layer.Point> points(double[] xs, double[] ys) {
    return IntStream.range(0, xs.length).mapToObj(i -> new Layer.Point(xs[i], ys[i])).toList();
  }
}
