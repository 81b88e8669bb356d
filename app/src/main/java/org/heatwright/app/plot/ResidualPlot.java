package org.heatwright.app.plot;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;

/** What is left between a log and its forecast: seen minus forecast, with the band about zero. */
public final class ResidualPlot {

  private static final double LEAST_SPAN_KELVINS = 5;

  private ResidualPlot() {}

  /**
   * @throws IllegalArgumentException if nothing was seen while the forecast goes
   */
  public static Figure of(WatchedFiring firing) {
    LogAgainstForecast compared =
        firing
            .compared()
            .filter(c -> !c.differences().isEmpty())
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "There is no reading to hold against the forecast."));
    TemperatureUnit unit = firing.unit();
    double span = degrees(spanKelvins(compared), unit);
    Axis scale = Axis.numbers(-span, span, 1, unit.differenceSymbol());
    List<Layer.Reach> band = new ArrayList<>();
    List<Layer.Point> seen = new ArrayList<>();
    for (LogAgainstForecast.Difference difference : compared.differences()) {
      double at = difference.seconds();
      band.add(
          new Layer.Reach(
              at,
              Math.max(scale.low(), degrees(difference.lowKelvins(), unit)),
              Math.min(scale.high(), degrees(difference.highKelvins(), unit))));
      seen.add(new Layer.Point(at, degrees(difference.kelvins(), unit)));
    }
    List<Layer> layers = new ArrayList<>(firing.happeningLayers(firing.forecastSeconds()));
    layers.add(new Layer.Area(band, Look.BAND));
    layers.add(new Layer.Level(0, Look.FORECAST));
    layers.addAll(WatchedFiring.seenLayers(seen));
    List<Figure.Key> keys = new ArrayList<>();
    keys.add(new Figure.Key(Figure.Kind.BAND, "forecast, nine times in ten inside"));
    Figure.Key key = WatchedFiring.seenKey(seen);
    keys.add(new Figure.Key(key.kind(), "display minus forecast"));
    if (firing.shades()) {
      keys.add(new Figure.Key(Figure.Kind.EVENT, "known to have happened"));
    }
    return new Figure(
        "What the forecast missed: " + firing.name(),
        "Above zero the display was hotter than the forecast’s middle, below zero colder. "
            + compared.missed(unit),
        Axis.time(firing.start(), firing.forecastSeconds()),
        List.of(new Figure.Panel("", scale, 0, layers)),
        keys);
  }

  /**
   * How far the band is drawn, K: on a fast ramp it is far wider than anything that was seen, and
   * all else would lie flat.
   */
  private static double spanKelvins(LogAgainstForecast compared) {
    double[] sizes =
        compared.differences().stream()
            .mapToDouble(d -> Math.max(-d.lowKelvins(), d.highKelvins()))
            .sorted()
            .toArray();
    double furthest =
        compared.differences().stream().mapToDouble(d -> Math.abs(d.kelvins())).max().orElse(0);
    return Math.max(LEAST_SPAN_KELVINS, Math.max(1.15 * furthest, 1.5 * sizes[sizes.length / 2]));
  }

  private static double degrees(double kelvins, TemperatureUnit unit) {
    return unit.value(TemperatureChange.ofKelvins(kelvins));
  }
}
