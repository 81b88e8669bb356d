package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.heatwright.app.json.Json;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.ChartData;
import org.heatwright.app.report.WhenWords;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/** Turns a chart into paths and places on the page: thousandths of the frame, percentages. */
final class CurveDrawing {

  private static final int LOOKS = 240;

  private final ChartData chart;
  private final WhenWords when;

  CurveDrawing(ChartData chart, WhenWords when) {
    this.chart = chart;
    this.when = when;
  }

  /**
   * @param ready when the work is ready
   * @param sketch true if one draw stands behind the chart, so that there is no band
   */
  Page.Curve curve(Optional<Card.Ready> ready, boolean sketch, String summary) {
    return new Page.Curve(
        sketch ? "" : band(),
        line(ChartData.Point::medianCelsius),
        line(ChartData.Point::setpointCelsius),
        chart.work().stream().map(w -> new Page.WorkLine(w.name(), path(w.celsius()))).toList(),
        timeTicks(),
        temperatureTicks(),
        chart.nights().stream().map(n -> span(n.fromSeconds(), n.toSeconds())).toList(),
        chart.limits().stream().map(this::limit).toList(),
        ready.map(r -> span(r.fromSeconds().low(), r.untilSeconds().orElse(chart.lengthSeconds()))),
        summary,
        Json.text(new Looks(looks(sketch))).replace("<", "\\u003c"), // stands in a page
        sketch);
  }

  /** What the slider tells at one place. */
  record Look(String at, String says) {}

  /** Places along the curve, in order of time. */
  record Looks(List<Look> looks) {}

  private List<Look> looks(boolean sketch) {
    List<ChartData.Point> points = chart.points();
    int stride = Math.max(1, points.size() / LOOKS);
    List<Look> looks = new ArrayList<>();
    for (int i = 0; i < points.size(); i += stride) {
      ChartData.Point point = points.get(i);
      String display =
          sketch
              ? "about " + temperature(point.medianCelsius())
              : between(point.lowCelsius(), point.highCelsius());
      String work = "";
      if (!chart.work().isEmpty()) {
        double coldest = Double.POSITIVE_INFINITY;
        double hottest = Double.NEGATIVE_INFINITY;
        for (ChartData.WorkCurve place : chart.work()) {
          coldest = Math.min(coldest, place.celsius().get(i));
          hottest = Math.max(hottest, place.celsius().get(i));
        }
        work = "; inside the work about " + between(coldest, hottest);
      }
      looks.add(
          new Look(
              percent(point.seconds() / chart.lengthSeconds()),
              "%s: the display should say %s%s."
                  .formatted(when.full(point.seconds()), display, work)));
    }
    return looks;
  }

  /** The uppermost one names the unit. */
  private List<Page.Tick> temperatureTicks() {
    int last = chart.temperatureTicks().size() - 1;
    List<Page.Tick> ticks = new ArrayList<>();
    for (int i = 0; i <= last; i++) {
      ChartData.TemperatureTick tick = chart.temperatureTicks().get(i);
      String unit = i == last ? " " + unit().symbol() : "";
      ticks.add(new Page.Tick(percent(down(tick.celsius())), tick.label() + unit, "", false));
    }
    return ticks;
  }

  private List<Page.Tick> timeTicks() {
    List<Page.Tick> ticks = new ArrayList<>();
    boolean spare = false;
    for (ChartData.TimeTick tick : chart.timeTicks()) {
      boolean newDay = !tick.date().isEmpty() && !ticks.isEmpty();
      if (newDay && !spare && ticks.get(ticks.size() - 1).day().isEmpty()) {
        ticks.set(ticks.size() - 1, ticks.get(ticks.size() - 1).spared()); // too close to the day
      }
      spare = !newDay && !ticks.isEmpty() && !spare;
      ticks.add(
          new Page.Tick(
              percent(tick.seconds() / chart.lengthSeconds()), tick.label(), tick.date(), spare));
    }
    return ticks;
  }

  private Page.Limit limit(ChartData.Limit limit) {
    return new Page.Limit(
        percent(down(limit.celsius())), temperature(limit.celsius()), ": " + limit.why());
  }

  private String band() {
    StringBuilder path = new StringBuilder(line(ChartData.Point::highCelsius));
    List<ChartData.Point> points = chart.points();
    for (int i = points.size() - 1; i >= 0; i--) {
      path.append('L').append(place(points.get(i).seconds(), points.get(i).lowCelsius()));
    }
    return path.append('Z').toString();
  }

  private String line(ToDoubleFunction<ChartData.Point> celsius) {
    return path(chart.points().stream().map(celsius::applyAsDouble).toList());
  }

  private String path(List<Double> celsius) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < celsius.size(); i++) {
      path.append(i == 0 ? 'M' : 'L');
      path.append(place(chart.points().get(i).seconds(), celsius.get(i)));
    }
    return path.toString();
  }

  private String place(double seconds, double celsius) {
    return String.format(
        Locale.ROOT, "%.1f %.1f", 1000 * seconds / chart.lengthSeconds(), 1000 * down(celsius));
  }

  /** How far down the frame a temperature lies: 0 at the top, 1 at the bottom. */
  private double down(double celsius) {
    return (chart.topCelsius() - celsius) / (chart.topCelsius() - chart.bottomCelsius());
  }

  private Page.Span span(double fromSeconds, double toSeconds) {
    double from = Math.max(0, fromSeconds) / chart.lengthSeconds();
    double to = Math.min(chart.lengthSeconds(), toSeconds) / chart.lengthSeconds();
    return new Page.Span(percent(from), percent(Math.max(0, to - from)));
  }

  private String between(double lowCelsius, double highCelsius) {
    String low = degrees(lowCelsius);
    return low.equals(degrees(highCelsius))
        ? temperature(highCelsius)
        : low + " to " + temperature(highCelsius);
  }

  private String temperature(double celsius) {
    return degrees(celsius) + " " + unit().symbol();
  }

  private String degrees(double celsius) {
    return Long.toString(Math.round(unit().value(Temperature.ofCelsius(celsius))));
  }

  private TemperatureUnit unit() {
    return chart.unit();
  }

  private static String percent(double share) {
    return String.format(Locale.ROOT, "%.2f%%", 100 * share);
  }
}
