package org.heatwright.app.plot;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.EnamelPieceCurve;
import org.heatwright.work.enamel.PullWindow;

/**
 * An enamelled piece on its own clock, from the door's shutting, with the window to take it out.
 */
public final class PiecePlot {

  private PiecePlot() {}

  /**
   * Draws it.
   *
   * @param title in a few words
   * @param outlook the piece in the kiln
   * @param unit on the upright axis
   */
  public static Figure of(String title, EnamelOutlook outlook, TemperatureUnit unit) {
    List<EnamelPieceCurve.Row> rows = outlook.curve().rows();
    double end = rows.get(rows.size() - 1).seconds();
    PullWindow window = outlook.window();
    List<Layer> layers = new ArrayList<>();
    if (window.earliestSeconds() < end) {
      layers.add(
          new Layer.Stretch(
              window.earliestSeconds(), Math.min(end, window.latestSeconds()), "take it out"));
    }
    layers.add(
        new Layer.Area(
            rows.stream()
                .map(r -> new Layer.Reach(r.seconds(), r.lowCelsius(), r.highCelsius()))
                .toList(),
            Look.BAND));
    layers.add(
        new Layer.Line(
            rows.stream().map(r -> new Layer.Point(r.seconds(), r.chamberCelsius())).toList(),
            Look.SETPOINT));
    layers.add(
        new Layer.Line(
            rows.stream().map(r -> new Layer.Point(r.seconds(), r.medianCelsius())).toList(),
            Look.AFTER));
    if (window.fusedSeconds() < end) {
      layers.add(new Layer.Mark(window.fusedSeconds(), "orange peel"));
    }
    double top =
        Math.max(
            outlook.working().celsius(),
            rows.stream().mapToDouble(EnamelPieceCurve.Row::highCelsius).max().orElse(0));
    return new Figure(
        title,
        told(outlook, unit),
        Axis.numbers(0, end, 1, "s"),
        List.of(new Figure.Panel("", Axis.temperature(unit, 0, top + 40), 0, layers)),
        List.of(
            new Figure.Key(Figure.Kind.MEASURED, "the piece"),
            new Figure.Key(Figure.Kind.BAND, "nine times in ten"),
            new Figure.Key(Figure.Kind.SETPOINT, "the chamber"),
            new Figure.Key(Figure.Kind.EVENT, "glossy, from one in ten to nine in ten")));
  }

  /** What it shows, in a sentence. */
  public static String told(EnamelOutlook outlook, TemperatureUnit unit) {
    PullWindow window = outlook.window();
    String at = "%.0f %s".formatted(unit.value(outlook.working()), unit.symbol());
    if (!window.glosses()) {
      return "Seconds from the door's shutting, set to %s: it does not gloss while it is followed."
          .formatted(at);
    }
    double hot = unit.value(Temperature.ofCelsius(window.hottestCelsius().median()));
    return "Seconds from the door's shutting, set to %s: half of such pieces are glossy after %.0f s, at %.0f %s."
        .formatted(at, window.likelySeconds(), hot, unit.symbol());
  }
}
