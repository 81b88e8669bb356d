package org.heatwright.app.report;

import java.util.function.ToDoubleFunction;
import org.heatwright.app.report.Sheet.Weight;
import org.heatwright.work.EnamelPieceCurve;

/**
 * Draws a {@link PieceChart} on paper, in the manner of {@link ChartDrawing}: the piece as a grey
 * band with a firm line, the chamber dashed, and a bar at the foot for when to take it out.
 */
final class PieceDrawing {

  private static final double SMALL = 7.5;
  private static final double AXIS_WIDTH = 9.5;
  private static final double AXIS_HEIGHT = 4.4;
  private static final double KEY_HEIGHT = 4.6;
  private static final double BAND_GREY = 0.78;
  private static final double BAR_HEIGHT = 1.1;
  private static final double[] DOTTED = {0.25, 0.6};
  private static final double[] DASHED = {1.6, 0.8};

  private final Sheet sheet;
  private final PieceChart chart;
  private final double left;
  private final double top;
  private final double width;
  private final double height;

  private PieceDrawing(
      Sheet sheet, PieceChart chart, double x, double y, double width, double height) {
    this.sheet = sheet;
    this.chart = chart;
    this.left = x + AXIS_WIDTH;
    this.top = y + KEY_HEIGHT;
    this.width = width - AXIS_WIDTH - 1.5;
    this.height = height - AXIS_HEIGHT - KEY_HEIGHT;
  }

  static void draw(Sheet sheet, PieceChart chart, double x, double y, double width, double height) {
    PieceDrawing drawing = new PieceDrawing(sheet, chart, x, y, width, height);
    drawing.grid();
    sheet.inside(drawing.left, drawing.top, drawing.width, drawing.height, drawing::curves);
    drawing.takeOut();
    sheet.box(drawing.left, drawing.top, drawing.width, drawing.height, 0.8);
    drawing.axes();
    drawing.key(x, y + 3.1);
  }

  private void grid() {
    for (ChartData.TemperatureTick tick : chart.temperatureTicks()) {
      double y = y(tick.celsius());
      sheet.polyline(new double[] {left, left + width}, new double[] {y, y}, 0.3, DOTTED);
    }
    for (int tick : chart.secondTicks()) {
      sheet.polyline(
          new double[] {x(tick), x(tick)}, new double[] {top, top + height}, 0.3, DOTTED);
    }
  }

  private void curves() {
    int n = chart.rows().size();
    double[] xs = column(row -> x(row.seconds()));
    double[] low = column(row -> y(row.lowCelsius()));
    double[] high = column(row -> y(row.highCelsius()));
    double[] aroundX = new double[2 * n];
    double[] aroundY = new double[2 * n];
    for (int i = 0; i < n; i++) {
      aroundX[i] = xs[i];
      aroundY[i] = high[i];
      aroundX[2 * n - 1 - i] = xs[i];
      aroundY[2 * n - 1 - i] = low[i];
    }
    sheet.polygon(aroundX, aroundY, BAND_GREY);
    sheet.polyline(xs, low, 0.3, DOTTED);
    sheet.polyline(xs, high, 0.3, DOTTED);
    sheet.polyline(xs, column(row -> y(row.chamberCelsius())), 0.5, DASHED);
    sheet.polyline(xs, column(row -> y(row.medianCelsius())), 0.9);
  }

  private double[] column(ToDoubleFunction<EnamelPieceCurve.Row> value) {
    return chart.rows().stream().mapToDouble(value).toArray();
  }

  /** A bar at the foot while it is glossy, one in ten to nine in ten, and its words above it. */
  private void takeOut() {
    if (!(chart.fromSeconds() < chart.lengthSeconds())) {
      return;
    }
    double from = x(chart.fromSeconds());
    double to = x(Math.min(chart.untilSeconds(), chart.lengthSeconds()));
    double foot = top + height;
    sheet.fill(from, foot - BAR_HEIGHT, to - from, BAR_HEIGHT, 0);
    sheet.polyline(new double[] {from, from}, new double[] {top, foot}, 0.5, DOTTED);
    sheet.polyline(new double[] {to, to}, new double[] {top, foot}, 0.5, DOTTED);
    String words = "glossy";
    double wide = sheet.widthOf(words, Weight.BOLD, SMALL);
    double middle = Math.min((from + to) / 2, left + width - wide / 2 - 1);
    sheet.fill(middle - wide / 2 - 0.6, foot - BAR_HEIGHT - 3.6, wide + 1.2, 3.1, 1);
    sheet.textCentred(middle, foot - BAR_HEIGHT - 1.2, words, Weight.BOLD, SMALL);
  }

  private void axes() {
    double foot = top + height;
    for (ChartData.TemperatureTick tick : chart.temperatureTicks()) {
      double baseline = Math.min(foot, y(tick.celsius()) + Sheet.capitals(SMALL) / 2);
      sheet.textRight(left - 1, baseline, tick.label(), Weight.REGULAR, SMALL);
    }
    sheet.textRight(left - 1, top - 1.4, chart.unit().symbol(), Weight.BOLD, SMALL);
    for (int tick : chart.secondTicks()) {
      double at = x(tick);
      sheet.line(at, foot, at, foot + 0.9, 0.5);
      String label = tick == 0 ? "0 s" : Integer.toString(tick);
      double half = sheet.widthOf(label, Weight.REGULAR, SMALL) / 2;
      double middle = Math.min(at, left + width + 1.5 - half);
      sheet.textCentred(middle, foot + 3.6, label, Weight.REGULAR, SMALL);
    }
  }

  private void key(double from, double baseline) {
    double middle = baseline - 0.9;
    double x = from + AXIS_WIDTH;
    sheet.fill(x, middle - 1.1, 5, 2.2, BAND_GREY);
    sheet.line(x, middle, x + 5, middle, 0.9);
    x = label(x + 6, baseline, "the piece, 9 in 10");
    sheet.polyline(new double[] {x, x + 5}, new double[] {middle, middle}, 0.5, DASHED);
    x = label(x + 6, baseline, "the chamber");
    sheet.fill(x, middle - BAR_HEIGHT / 2, 5, BAR_HEIGHT, 0);
    label(x + 6, baseline, "take it out");
  }

  private double label(double x, double baseline, String words) {
    sheet.text(x, baseline, words, Weight.REGULAR, SMALL);
    return x + sheet.widthOf(words, Weight.REGULAR, SMALL) + 2;
  }

  private double x(double seconds) {
    return left + width * seconds / chart.lengthSeconds();
  }

  private double y(double celsius) {
    double bottom = chart.temperatureTicks().get(0).celsius();
    return top + height * (1 - (celsius - bottom) / (chart.topCelsius() - bottom));
  }
}
