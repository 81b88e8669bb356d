package org.heatwright.app.report;

import java.util.function.ToDoubleFunction;
import org.heatwright.app.report.Sheet.Weight;
import org.heatwright.work.EnamelPieceCurve;

/**
 * Draws a {@link PieceChart} on paper, in the manner of {@link ChartDrawing}: the piece as a grey
 * band with a firm line, the chamber dashed, and a bar at the foot for when to take it out.
 */
final class PieceDrawing {

  private static final double BAR_HEIGHT = 1.1;
  private static final double AXIS_HEIGHT = 4.4;

  private final Sheet sheet;
  private final PieceChart chart;
  private final PaperPlot plot;

  private PieceDrawing(Sheet sheet, PieceChart chart, PaperPlot.Place place) {
    this.sheet = sheet;
    this.chart = chart;
    this.plot =
        new PaperPlot(
            sheet,
            place,
            AXIS_HEIGHT,
            chart.lengthSeconds(),
            chart.temperatureTicks().get(0).celsius(),
            chart.topCelsius());
  }

  static void draw(Sheet sheet, PieceChart chart, double x, double y, double width, double height) {
    PieceDrawing drawing = new PieceDrawing(sheet, chart, new PaperPlot.Place(x, y, width, height));
    PaperPlot plot = drawing.plot;
    plot.grid(
        chart.temperatureTicks(),
        chart.secondTicks().stream().mapToDouble(Integer::doubleValue).toArray());
    sheet.inside(plot.left, plot.top, plot.width, plot.height, drawing::curves);
    drawing.takeOut();
    plot.frame();
    plot.temperatures(chart.unit(), chart.temperatureTicks());
    drawing.seconds();
    drawing.key();
  }

  private void curves() {
    double[] xs = column(row -> plot.x(row.seconds()));
    plot.band(
        xs, column(row -> plot.y(row.lowCelsius())), column(row -> plot.y(row.highCelsius())));
    sheet.polyline(xs, column(row -> plot.y(row.chamberCelsius())), 0.5, PaperPlot.DASHED);
    sheet.polyline(xs, column(row -> plot.y(row.medianCelsius())), 0.9);
  }

  private double[] column(ToDoubleFunction<EnamelPieceCurve.Row> value) {
    return chart.rows().stream().mapToDouble(value).toArray();
  }

  /** A bar at the foot while it is glossy, one in ten to nine in ten, and its words above it. */
  private void takeOut() {
    if (!(chart.fromSeconds() < chart.lengthSeconds())) {
      return;
    }
    double from = plot.x(chart.fromSeconds());
    double to = plot.x(Math.min(chart.untilSeconds(), chart.lengthSeconds()));
    double foot = plot.foot;
    sheet.fill(from, foot - BAR_HEIGHT, to - from, BAR_HEIGHT, 0);
    sheet.polyline(new double[] {from, from}, new double[] {plot.top, foot}, 0.5, PaperPlot.DOTTED);
    sheet.polyline(new double[] {to, to}, new double[] {plot.top, foot}, 0.5, PaperPlot.DOTTED);
    String words = "glossy";
    double wide = sheet.widthOf(words, Weight.BOLD, PaperPlot.SMALL);
    double middle = Math.min((from + to) / 2, plot.left + plot.width - wide / 2 - 1);
    sheet.fill(middle - wide / 2 - 0.6, foot - BAR_HEIGHT - 3.6, wide + 1.2, 3.1, 1);
    sheet.textCentred(middle, foot - BAR_HEIGHT - 1.2, words, Weight.BOLD, PaperPlot.SMALL);
  }

  private void seconds() {
    for (int tick : chart.secondTicks()) {
      double at = plot.x(tick);
      plot.stroke(at);
      String label = tick == 0 ? "0 s" : Integer.toString(tick);
      double wide = sheet.widthOf(label, Weight.REGULAR, PaperPlot.SMALL);
      plot.time(plot.middle(at, wide), label);
    }
  }

  private void key() {
    double middle = plot.keyBaseline() - 0.9;
    double x = plot.left;
    sheet.fill(x, middle - 1.1, 5, 2.2, PaperPlot.BAND_GREY);
    sheet.line(x, middle, x + 5, middle, 0.9);
    x = plot.key(x + 6, "the piece, 9 in 10");
    sheet.polyline(new double[] {x, x + 5}, new double[] {middle, middle}, 0.5, PaperPlot.DASHED);
    x = plot.key(x + 6, "the chamber");
    sheet.fill(x, middle - BAR_HEIGHT / 2, 5, BAR_HEIGHT, 0);
    plot.key(x + 6, "take it out");
  }
}
