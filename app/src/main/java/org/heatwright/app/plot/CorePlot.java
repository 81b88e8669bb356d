package org.heatwright.app.plot;

import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.heatwright.forecast.Band;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.mould.BurnoutMeasures;
import org.heatwright.units.TemperatureUnit;

/** Core, outer face and the largest difference inside over the chamber's curve. */
public final class CorePlot {

  private static final int POINTS = 240;

  private CorePlot() {}

  /**
   * What is drawn.
   *
   * @param name of the mould, firing and kiln
   * @param inside the draws
   * @param endSeconds how far it goes, s, above zero
   * @param chamberCelsius the display at a time, °C
   * @param measured whether the display was measured, not forecast
   * @param unit degrees of the labels
   * @param start when the program began, where known
   */
  public record Curves(
      String name,
      InsideForecast inside,
      double endSeconds,
      DoubleUnaryOperator chamberCelsius,
      boolean measured,
      TemperatureUnit unit,
      Optional<ZonedDateTime> start) {}

  public static Figure of(Curves curves) {
    InsideForecast inside = curves.inside();
    List<Layer.Reach> band = new ArrayList<>();
    List<Layer.Point> core = new ArrayList<>();
    List<Layer.Point> surface = new ArrayList<>();
    List<Layer.Point> chamber = new ArrayList<>();
    List<Layer.Point> apart = new ArrayList<>();
    List<Layer.Reach> apartBand = new ArrayList<>();
    double top = 0;
    double bottom = Double.POSITIVE_INFINITY;
    double most = 1;
    for (int i = 0; i <= POINTS; i++) {
      double second = curves.endSeconds() * i / POINTS;
      Band centre = inside.centreCelsiusAt(second);
      band.add(new Layer.Reach(second, centre.low(), centre.high()));
      core.add(new Layer.Point(second, centre.median()));
      surface.add(new Layer.Point(second, inside.surfaceCelsiusAt(second).median()));
      double shown = curves.chamberCelsius().applyAsDouble(second);
      chamber.add(new Layer.Point(second, shown));
      Band difference = inside.band(d -> d.hottestCelsiusAt(second) - d.coldestCelsiusAt(second));
      apart.add(new Layer.Point(second, difference.median()));
      apartBand.add(new Layer.Reach(second, difference.low(), difference.high()));
      top = Math.max(top, Math.max(shown, centre.high()));
      bottom = Math.min(bottom, Math.min(shown, centre.low()));
      most = Math.max(most, difference.high());
    }
    List<Layer> upper = new ArrayList<>();
    List<BurnoutMeasures> measures = inside.measures();
    mark(measures, BurnoutMeasures::boilBeginsSeconds, "core boils", curves, upper);
    mark(measures, BurnoutMeasures::drySeconds, "dry", curves, upper);
    upper.add(new Layer.Area(band, Look.BAND));
    upper.add(new Layer.Line(chamber, Look.MEASURED));
    upper.add(new Layer.Line(surface, Look.SETPOINT));
    upper.add(new Layer.Line(core, Look.FORECAST));
    TemperatureUnit unit = curves.unit();
    boolean celsius = unit == TemperatureUnit.CELSIUS;
    return new Figure(
        "Inside the mould: " + curves.name(),
        curves.measured()
            ? "Estimated from what the display said; nine times in ten the core is inside the band."
            : "Forecast; nine times in ten the core is inside the band.",
        Axis.time(curves.start(), curves.endSeconds()),
        List.of(
            new Figure.Panel("", Axis.temperature(unit, bottom, Math.max(1, top * 1.06)), 0, upper),
            new Figure.Panel(
                "Largest difference inside",
                Axis.numbers(0, most, celsius ? 1 : 1.8, unit.differenceSymbol()),
                0,
                List.of(
                    new Layer.Area(apartBand, Look.BAND), new Layer.Line(apart, Look.FORECAST)))),
        List.of(
            new Figure.Key(Figure.Kind.BAND, "core"),
            new Figure.Key(Figure.Kind.SETPOINT, "outer face"),
            new Figure.Key(
                Figure.Kind.MEASURED,
                curves.measured() ? "what the display said" : "the display, forecast")));
  }

  private static void mark(
      List<BurnoutMeasures> measures,
      java.util.function.ToDoubleFunction<BurnoutMeasures> value,
      String words,
      Curves curves,
      List<Layer> layers) {
    InsideForecast.band(measures, value)
        .map(Band::median)
        .filter(second -> second > 0 && second < curves.endSeconds())
        .ifPresent(second -> layers.add(new Layer.Mark(second, words)));
  }
}
