package org.heatwright.app.report;

import java.util.List;
import org.heatwright.app.report.Sheet.Weight;
import org.heatwright.units.Temperature;

/**
 * Draws a {@link ChartData} on paper. Predicted is soft: a grey band with a dotted edge and a fine
 * line. Limits are hatched, night is a tint with a bar at the foot. What is measured is drawn by
 * hand, as firm crosses: the plot is graph paper for that.
 */
final class ChartDrawing {

  private static final double SMALL = 7.5;
  private static final double AXIS_WIDTH = 9.5;
  private static final double AXIS_HEIGHT = 7.6;
  private static final double KEY_HEIGHT = 4.6;
  private static final double NIGHT_GREY = 0.93;
  private static final double BAND_GREY = 0.78;
  private static final double[] DOTTED = {0.25, 0.6};
  private static final double[] DASHED = {1.6, 0.8};
  private static final double[] DASH_DOT = {2.4, 0.7, 0.4, 0.7};

  private final Sheet sheet;
  private final ChartData chart;
  private final double left;
  private final double top;
  private final double width;
  private final double height;

  private ChartDrawing(
      Sheet sheet, ChartData chart, double left, double top, double width, double height) {
    this.sheet = sheet;
    this.chart = chart;
    this.left = left + AXIS_WIDTH;
    this.top = top + KEY_HEIGHT;
    this.width = width - AXIS_WIDTH - 1.5;
    this.height = height - AXIS_HEIGHT - KEY_HEIGHT;
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
    ChartDrawing drawing = new ChartDrawing(sheet, chart, x, y, width, height);
    drawing.nights();
    drawing.grid();
    sheet.inside(drawing.left, drawing.top, drawing.width, drawing.height, drawing::curves);
    drawing.limits();
    sheet.box(drawing.left, drawing.top, drawing.width, drawing.height, 0.8);
    drawing.axes();
    drawing.marks(rows);
    drawing.key(x, y + 3.1);
  }

  private void nights() {
    for (ChartData.Night night : chart.nights()) {
      double from = x(night.fromSeconds());
      double to = x(night.toSeconds());
      sheet.fill(from, top, to - from, height, NIGHT_GREY);
    }
  }

  private void grid() {
    for (ChartData.TemperatureTick tick : chart.temperatureTicks()) {
      double y = y(tick.celsius());
      sheet.polyline(new double[] {left, left + width}, new double[] {y, y}, 0.3, DOTTED);
    }
    for (ChartData.TimeTick tick : chart.timeTicks()) {
      double x = x(tick.seconds());
      sheet.polyline(new double[] {x, x}, new double[] {top, top + height}, 0.3, DOTTED);
    }
  }

  private void curves() {
    List<ChartData.Point> points = chart.points();
    int n = points.size();
    double[] xs = new double[n];
    double[] setpoint = new double[n];
    double[] low = new double[n];
    double[] median = new double[n];
    double[] high = new double[n];
    double[] aroundX = new double[2 * n];
    double[] aroundY = new double[2 * n];
    for (int i = 0; i < n; i++) {
      ChartData.Point p = points.get(i);
      xs[i] = x(p.seconds());
      setpoint[i] = y(p.setpointCelsius());
      low[i] = y(p.lowCelsius());
      median[i] = y(p.medianCelsius());
      high[i] = y(p.highCelsius());
      aroundX[i] = xs[i];
      aroundY[i] = high[i];
      aroundX[2 * n - 1 - i] = xs[i];
      aroundY[2 * n - 1 - i] = low[i];
    }
    sheet.polygon(aroundX, aroundY, BAND_GREY);
    sheet.polyline(xs, low, 0.3, DOTTED);
    sheet.polyline(xs, high, 0.3, DOTTED);
    sheet.polyline(xs, setpoint, 0.5, DASHED);
    sheet.polyline(xs, median, 0.7);
    for (ChartData.WorkCurve curve : chart.work()) {
      double[] ys = curve.celsius().stream().mapToDouble(this::y).toArray();
      sheet.polyline(xs, ys, 1.0, DASH_DOT);
    }
  }

  private void limits() {
    for (ChartData.Limit limit : chart.limits()) {
      double y = y(limit.celsius());
      sheet.hatch(left, top, width, y - top, 1.3);
      sheet.line(left, y, left + width, y, 0.8);
      String words =
          "never above %d %s: %s"
              .formatted(
                  Math.round(chart.unit().value(new Temperature(limit.celsius()))),
                  chart.unit().symbol(),
                  limit.why());
      double wide = sheet.widthOf(words, Weight.REGULAR, SMALL);
      double baseline =
          y - top > 3.8 ? y - 1.1 : y + 2.9; // in the hatching, or below if it is thin
      sheet.fill(left + 1, baseline - 2.4, wide + 1.4, 3, 1);
      sheet.text(left + 1.7, baseline, words, Weight.REGULAR, SMALL);
    }
  }

  private void axes() {
    double foot = top + height;
    for (ChartData.TemperatureTick tick : chart.temperatureTicks()) {
      double baseline = Math.min(foot, y(tick.celsius()) + Sheet.capitals(SMALL) / 2);
      sheet.textRight(left - 1, baseline, tick.label(), Weight.REGULAR, SMALL);
    }
    sheet.textRight(left - 1, top - 1.4, chart.unit().symbol(), Weight.BOLD, SMALL);
    for (ChartData.Night night : chart.nights()) {
      double from = x(night.fromSeconds());
      double to = x(night.toSeconds());
      sheet.fill(from, foot - 0.9, to - from, 0.9, 0);
      if (to - from > 10) {
        sheet.fill((from + to) / 2 - 4.2, foot - 4, 8.4, 3.1, NIGHT_GREY);
        sheet.textCentred((from + to) / 2, foot - 1.7, "night", Weight.REGULAR, SMALL);
      }
    }
    double free = Double.NEGATIVE_INFINITY;
    double dateFree = Double.NEGATIVE_INFINITY;
    for (ChartData.TimeTick tick : chart.timeTicks()) {
      double at = x(tick.seconds());
      sheet.line(at, foot, at, foot + 0.9, 0.5);
      double half = sheet.widthOf(tick.label(), Weight.REGULAR, SMALL) / 2;
      double middle = Math.min(at, left + width + 1.5 - half);
      if (middle - half >= free) {
        sheet.textCentred(middle, foot + 3.6, tick.label(), Weight.REGULAR, SMALL);
        free = middle + half + 1;
      }
      double dateWidth = sheet.widthOf(tick.date(), Weight.BOLD, SMALL);
      double date = Math.min(at - half, left + width + 1.5 - dateWidth);
      if (!tick.date().isEmpty() && date >= dateFree) {
        sheet.text(date, foot + 6.9, tick.date(), Weight.BOLD, SMALL);
        dateFree = date + dateWidth + 1;
      }
    }
  }

  private void marks(List<Card.DisplayRow> rows) {
    for (int i = 0; i < rows.size(); i++) {
      Card.DisplayRow row = rows.get(i);
      double x = x(row.seconds());
      double y = y(row.displayCelsius().median());
      sheet.circle(x, y, 1.55, 0.6, 1);
      sheet.textCentred(
          x, y + Sheet.capitals(SMALL) / 2, Integer.toString(i + 1), Weight.BOLD, SMALL);
    }
  }

  private void key(double from, double baseline) {
    double middle = baseline - 0.9;
    double x = from + AXIS_WIDTH;
    sheet.fill(x, middle - 1.1, 5, 2.2, BAND_GREY);
    sheet.polyline(new double[] {x, x + 5}, new double[] {middle - 1.1, middle - 1.1}, 0.3, DOTTED);
    sheet.polyline(new double[] {x, x + 5}, new double[] {middle + 1.1, middle + 1.1}, 0.3, DOTTED);
    sheet.line(x, middle, x + 5, middle, 0.7);
    x = label(x + 6, baseline, "display, 9 in 10");
    sheet.polyline(new double[] {x, x + 5}, new double[] {middle, middle}, 0.5, DASHED);
    x = label(x + 6, baseline, "setpoint");
    if (!chart.work().isEmpty()) {
      sheet.polyline(new double[] {x, x + 6}, new double[] {middle, middle}, 1.0, DASH_DOT);
      x = label(x + 7, baseline, "in the work");
    }
    sheet.line(x, middle - 1, x + 2, middle + 1, 1.2);
    sheet.line(x, middle + 1, x + 2, middle - 1, 1.2);
    label(x + 3, baseline, "what you read");
  }

  private double label(double x, double baseline, String words) {
    sheet.text(x, baseline, words, Weight.REGULAR, SMALL);
    return x + sheet.widthOf(words, Weight.REGULAR, SMALL) + 2;
  }

  private double x(double seconds) {
    return left + width * seconds / chart.lengthSeconds();
  }

  private double y(double celsius) {
    double share = (celsius - chart.bottomCelsius()) / (chart.topCelsius() - chart.bottomCelsius());
    return top + height * (1 - share);
  }
}
