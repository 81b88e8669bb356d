package org.heatwright.app.report;

import java.util.List;
import org.heatwright.app.report.Sheet.Weight;
import org.heatwright.units.TemperatureUnit;

/**
 * The graph paper of a curve over time: frame, grid, temperatures beside it, and how a band and a
 * key look. Places in mm.
 */
final class PaperPlot {

  static final double SMALL = 7.5;
  static final double AXIS_WIDTH = 9.5;
  static final double BAND_GREY = 0.78;
  static final double[] DOTTED = {0.25, 0.6};
  static final double[] DASHED = {1.6, 0.8};
  private static final double KEY_HEIGHT = 4.6;
  private static final double KEY_BASELINE = 3.1;

  /** Room at the right for half a label. */
  private static final double RIGHT = 1.5;

  final double left;
  final double top;
  final double width;
  final double height;
  final double foot;
  private final Sheet sheet;
  private final double lengthSeconds;
  private final double bottomCelsius;
  private final double topCelsius;

  /**
   * @param axisHeight room for the times at the foot
   * @param lengthSeconds right end of the time axis
   */
  PaperPlot(
      Sheet sheet,
      Place place,
      double axisHeight,
      double lengthSeconds,
      double bottomCelsius,
      double topCelsius) {
    this.sheet = sheet;
    left = place.x() + AXIS_WIDTH;
    top = place.y() + KEY_HEIGHT;
    width = place.width() - AXIS_WIDTH - RIGHT;
    height = place.height() - axisHeight - KEY_HEIGHT;
    foot = top + height;
    this.lengthSeconds = lengthSeconds;
    this.bottomCelsius = bottomCelsius;
    this.topCelsius = topCelsius;
  }

  /** Where on the sheet, key and axes included. */
  record Place(double x, double y, double width, double height) {}

  double x(double seconds) {
    return left + width * seconds / lengthSeconds;
  }

  double y(double celsius) {
    return top + height * (1 - (celsius - bottomCelsius) / (topCelsius - bottomCelsius));
  }

  /** Baseline of the key, above the frame. */
  double keyBaseline() {
    return top - KEY_HEIGHT + KEY_BASELINE;
  }

  void grid(List<ChartData.TemperatureTick> temperatures, double[] seconds) {
    for (ChartData.TemperatureTick tick : temperatures) {
      double y = y(tick.celsius());
      sheet.polyline(new double[] {left, left + width}, new double[] {y, y}, 0.3, DOTTED);
    }
    for (double second : seconds) {
      double x = x(second);
      sheet.polyline(new double[] {x, x}, new double[] {top, foot}, 0.3, DOTTED);
    }
  }

  /** A grey band with a dotted edge; places on the sheet. */
  void band(double[] xs, double[] low, double[] high) {
    int n = xs.length;
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
  }

  void frame() {
    sheet.box(left, top, width, height, 0.8);
  }

  void temperatures(TemperatureUnit unit, List<ChartData.TemperatureTick> ticks) {
    for (ChartData.TemperatureTick tick : ticks) {
      double baseline = Math.min(foot, y(tick.celsius()) + Sheet.capitals(SMALL) / 2);
      sheet.textRight(left - 1, baseline, tick.label(), Weight.REGULAR, SMALL);
    }
    sheet.textRight(left - 1, top - 1.4, unit.symbol(), Weight.BOLD, SMALL);
  }

  /** A stroke at the foot, where a time stands. */
  void stroke(double at) {
    sheet.line(at, foot, at, foot + 0.9, 0.5);
  }

  /** The middle of a label under a stroke, moved in where it would stand over the edge. */
  double middle(double at, double labelWidth) {
    return Math.min(at, edge() - labelWidth / 2);
  }

  /** The right edge of what may be written. */
  double edge() {
    return left + width + RIGHT;
  }

  void time(double middle, String label) {
    sheet.textCentred(middle, foot + 3.6, label, Weight.REGULAR, SMALL);
  }

  /** Words of the key; where the next of it may begin. */
  double key(double x, String words) {
    sheet.text(x, keyBaseline(), words, Weight.REGULAR, SMALL);
    return x + sheet.widthOf(words, Weight.REGULAR, SMALL) + 2;
  }
}
