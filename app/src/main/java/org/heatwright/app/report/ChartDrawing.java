package org.heatwright.app.report;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.heatwright.app.report.Sheet.Weight;
import org.heatwright.units.Temperature;

/**
 * Draws a {@link ChartData} on paper. Predicted is soft: a grey band with a dotted edge and a fine
 * line. Limits are hatched, night is a tint with a bar at the foot. What is measured is drawn by
 * hand, as firm crosses: the plot is graph paper for that.
 */
final class ChartDrawing {

  private static final double AXIS_HEIGHT = 7.6;
  private static final double NIGHT_GREY = 0.93;
  private static final double[] DASH_DOT = {2.4, 0.7, 0.4, 0.7};

  private final Sheet sheet;
  private final ChartData chart;
  private final PaperPlot plot;

  private ChartDrawing(Sheet sheet, ChartData chart, PaperPlot.Place place) {
    this.sheet = sheet;
    this.chart = chart;
    this.plot =
        new PaperPlot(
            sheet,
            place,
            AXIS_HEIGHT,
            chart.lengthSeconds(),
            chart.bottomCelsius(),
            chart.topCelsius());
  }

  /**
   * @param rows marked on the curve by their number
   */
  static void draw(
      Sheet sheet,
      ChartData chart,
      List<Card.DisplayRow> rows,
      double x,
      double y,
      double width,
      double height) {
    ChartDrawing drawing = new ChartDrawing(sheet, chart, new PaperPlot.Place(x, y, width, height));
    PaperPlot plot = drawing.plot;
    drawing.nights();
    plot.grid(
        chart.temperatureTicks(),
        chart.timeTicks().stream().mapToDouble(ChartData.TimeTick::seconds).toArray());
    sheet.inside(plot.left, plot.top, plot.width, plot.height, drawing::curves);
    drawing.limits();
    plot.frame();
    plot.temperatures(chart.unit(), chart.temperatureTicks());
    drawing.times();
    drawing.marks(rows);
    drawing.key();
  }

  private void nights() {
    for (ChartData.Night night : chart.nights()) {
      double from = plot.x(night.fromSeconds());
      double to = plot.x(night.toSeconds());
      sheet.fill(from, plot.top, to - from, plot.height, NIGHT_GREY);
    }
  }

  private void curves() {
    double[] xs = column(p -> plot.x(p.seconds()));
    plot.band(xs, column(p -> plot.y(p.lowCelsius())), column(p -> plot.y(p.highCelsius())));
    sheet.polyline(xs, column(p -> plot.y(p.setpointCelsius())), 0.5, PaperPlot.DASHED);
    sheet.polyline(xs, column(p -> plot.y(p.medianCelsius())), 0.7);
    for (ChartData.WorkCurve curve : chart.work()) {
      double[] ys = curve.celsius().stream().mapToDouble(plot::y).toArray();
      sheet.polyline(xs, ys, 1.0, DASH_DOT);
    }
  }

  private double[] column(ToDoubleFunction<ChartData.Point> value) {
    return chart.points().stream().mapToDouble(value).toArray();
  }

  private void limits() {
    for (ChartData.Limit limit : chart.limits()) {
      double y = plot.y(limit.celsius());
      sheet.hatch(plot.left, plot.top, plot.width, y - plot.top, 1.3);
      sheet.line(plot.left, y, plot.left + plot.width, y, 0.8);
      String words =
          "never above %d %s: %s"
              .formatted(
                  Math.round(chart.unit().value(new Temperature(limit.celsius()))),
                  chart.unit().symbol(),
                  limit.why());
      double wide = sheet.widthOf(words, Weight.REGULAR, PaperPlot.SMALL);
      double baseline =
          y - plot.top > 3.8 ? y - 1.1 : y + 2.9; // in the hatching, or below if it is thin
      sheet.fill(plot.left + 1, baseline - 2.4, wide + 1.4, 3, 1);
      sheet.text(plot.left + 1.7, baseline, words, Weight.REGULAR, PaperPlot.SMALL);
    }
  }

  private void times() {
    double foot = plot.foot;
    for (ChartData.Night night : chart.nights()) {
      double from = plot.x(night.fromSeconds());
      double to = plot.x(night.toSeconds());
      sheet.fill(from, foot - 0.9, to - from, 0.9, 0);
      if (to - from > 10) {
        sheet.fill((from + to) / 2 - 4.2, foot - 4, 8.4, 3.1, NIGHT_GREY);
        sheet.textCentred((from + to) / 2, foot - 1.7, "night", Weight.REGULAR, PaperPlot.SMALL);
      }
    }
    double free = Double.NEGATIVE_INFINITY;
    double dateFree = Double.NEGATIVE_INFINITY;
    for (ChartData.TimeTick tick : chart.timeTicks()) {
      double at = plot.x(tick.seconds());
      plot.stroke(at);
      double half = sheet.widthOf(tick.label(), Weight.REGULAR, PaperPlot.SMALL) / 2;
      double middle = plot.middle(at, 2 * half);
      if (middle - half >= free) {
        plot.time(middle, tick.label());
        free = middle + half + 1;
      }
      double dateWidth = sheet.widthOf(tick.date(), Weight.BOLD, PaperPlot.SMALL);
      double date = Math.min(at - half, plot.edge() - dateWidth);
      if (!tick.date().isEmpty() && date >= dateFree) {
        sheet.text(date, foot + 6.9, tick.date(), Weight.BOLD, PaperPlot.SMALL);
        dateFree = date + dateWidth + 1;
      }
    }
  }

  private void marks(List<Card.DisplayRow> rows) {
    for (int i = 0; i < rows.size(); i++) {
      Card.DisplayRow row = rows.get(i);
      double x = plot.x(row.seconds());
      double y = plot.y(row.displayCelsius().median());
      sheet.circle(x, y, 1.55, 0.6, 1);
      sheet.textCentred(
          x,
          y + Sheet.capitals(PaperPlot.SMALL) / 2,
          Integer.toString(i + 1),
          Weight.BOLD,
          PaperPlot.SMALL);
    }
  }

  private void key() {
    double middle = plot.keyBaseline() - 0.9;
    double x = plot.left;
    sheet.fill(x, middle - 1.1, 5, 2.2, PaperPlot.BAND_GREY);
    sheet.polyline(
        new double[] {x, x + 5}, new double[] {middle - 1.1, middle - 1.1}, 0.3, PaperPlot.DOTTED);
    sheet.polyline(
        new double[] {x, x + 5}, new double[] {middle + 1.1, middle + 1.1}, 0.3, PaperPlot.DOTTED);
    sheet.line(x, middle, x + 5, middle, 0.7);
    x = plot.key(x + 6, "display, 9 in 10");
    sheet.polyline(new double[] {x, x + 5}, new double[] {middle, middle}, 0.5, PaperPlot.DASHED);
    x = plot.key(x + 6, "setpoint");
    if (!chart.work().isEmpty()) {
      sheet.polyline(new double[] {x, x + 6}, new double[] {middle, middle}, 1.0, DASH_DOT);
      x = plot.key(x + 7, "in the work");
    }
    sheet.line(x, middle - 1, x + 2, middle + 1, 1.2);
    sheet.line(x, middle + 1, x + 2, middle - 1, 1.2);
    plot.key(x + 3, "what you read");
  }
}
