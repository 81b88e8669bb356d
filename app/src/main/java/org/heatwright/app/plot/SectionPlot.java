package org.heatwright.app.plot;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.app.plot.Canvas.Anchor;
import org.heatwright.app.plot.Canvas.Type;
import org.heatwright.mould.MouldFiring;
import org.heatwright.mould.Section;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;

/**
 * Temperatures in a mould cut through its axis, as bands of one hue with labelled lines between
 * them, so that it can be read without colour. Immutable.
 */
public final class SectionPlot implements Drawing {

  private static final double EDGE = 12;
  private static final double HEAD = 62;
  private static final double TALLEST = 300;
  private static final double WIDEST = 330;
  private static final double ROW = 2;
  private static final double FOOT = 40;
  private static final double SCALE_WIDTH = 96;
  private static final double SWATCH = 24;

  /** Contours are looked for on a grid of this step, px. */
  private static final double STEP = 3;

  private static final double[] STEPS = {0.5, 1, 2, 5, 10, 20, 25, 50, 100, 200};
  private static final int MOST_BANDS = 8;

  /** Closer than this all through is one temperature, in degrees. */
  private static final double EVEN = 0.4;

  private final Section section;
  private final MouldFiring.Setting setting;
  private final TemperatureUnit unit;
  private final String title;
  private final double low;
  private final double high;
  private final double step;
  private final double first;
  private final int bands;
  private final double pixelsPerMetre;
  private final double left;
  private final double top;
  private final double wide;
  private final double tall;

  private SectionPlot(
      Section section, MouldFiring.Setting setting, TemperatureUnit unit, String title) {
    this.section = section;
    this.setting = setting;
    this.unit = unit;
    this.title = title;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < section.radii(); i++) {
      for (int j = 0; j < section.heights(); j++) {
        double celsius = section.celsius(i, j);
        if (!Double.isNaN(celsius)) {
          double degrees = degrees(celsius);
          least = Math.min(least, degrees);
          most = Math.max(most, degrees);
        }
      }
    }
    this.low = least;
    this.high = most;
    this.step = high - low < EVEN ? 0 : step(low, high);
    this.first = step == 0 ? low : step * Math.floor(low / step);
    this.bands = step == 0 ? 1 : (int) Math.ceil((high - first) / step);
    double diameter = setting.mould().diameterMetres();
    double height = setting.mould().heightMetres();
    this.pixelsPerMetre = Math.min(WIDEST / diameter, TALLEST / height);
    this.wide = 2 * ROW * Math.rint(diameter * pixelsPerMetre / (2 * ROW));
    this.tall = ROW * Math.rint(height * pixelsPerMetre / ROW);
    this.left = Math.rint(EDGE + 40 + (WIDEST - wide) / 2);
    this.top = HEAD;
  }

  /**
   * @param section what to draw
   * @param setting the mould
   * @param unit degrees of the labels
   * @param title says which mould and when
   */
  public static SectionPlot of(
      Section section, MouldFiring.Setting setting, TemperatureUnit unit, String title) {
    return new SectionPlot(section, setting, unit, title);
  }

  private static double step(double low, double high) {
    for (double step : STEPS) {
      if (Math.ceil(high / step) - Math.floor(low / step) <= MOST_BANDS) {
        return step;
      }
    }
    return Math.ceil((high - low) / (MOST_BANDS - 1) / 100) * 100;
  }

  @Override
  public String title() {
    return title;
  }

  @Override
  public String told() {
    String ring = setting.mould().wallMetres() > 0 ? ", in its steel ring" : "";
    return step == 0
        ? "Cut through the axis%s: %.0f %s all through.".formatted(ring, low, unit.symbol())
        : "Cut through the axis%s: %.0f to %.0f %s, a line each %s %s."
            .formatted(ring, low, high, unit.symbol(), number(step), unit.differenceSymbol());
  }

  @Override
  public int width() {
    return (int) Math.ceil(EDGE + 40 + WIDEST + 30 + SCALE_WIDTH + EDGE);
  }

  @Override
  public int height() {
    return (int) Math.ceil(top + Math.max(tall, MOST_BANDS * SWATCH + 20) + FOOT);
  }

  @Override
  public void drawOn(Canvas canvas) {
    canvas.box(0, 0, width(), height(), Look.GROUND);
    canvas.text(EDGE, EDGE + 15, title, Anchor.START, Type.TITLE, Look.WORDS);
    canvas.text(EDGE, EDGE + 36, told(), Anchor.START, Type.PLAIN, Look.AXIS_WORDS);
    field(canvas);
    if (step > 0) {
      isotherms(canvas);
    }
    outlines(canvas);
    scale(canvas);
  }

  // ---- the field

  private void field(Canvas canvas) {
    List<List<double[]>> boxes = new ArrayList<>();
    for (int band = 0; band < MOST_BANDS; band++) {
      boxes.add(new ArrayList<>());
    }
    double middle = left + wide / 2;
    for (double y = 0; y < tall; y += ROW) {
      double from = 0;
      int before = band(0, y + ROW / 2);
      for (double x = 0; x < wide / 2; x += ROW) {
        int now = x + ROW >= wide / 2 ? -2 : band(x + ROW + ROW / 2, y + ROW / 2);
        if (now != before) {
          double to = x + ROW;
          if (before >= 0) {
            boxes.get(before).add(new double[] {middle + from, top + y, to - from, ROW});
            boxes.get(before).add(new double[] {middle - to, top + y, to - from, ROW});
          }
          from = to;
          before = now;
        }
      }
    }
    for (int band = 0; band < MOST_BANDS; band++) {
      if (!boxes.get(band).isEmpty()) {
        double[] flat =
            boxes.get(band).stream().flatMapToDouble(java.util.Arrays::stream).toArray();
        canvas.boxes(flat, Look.heat(shade(band)));
      }
    }
  }

  /** Few bands are spread over the ramp. */
  private int shade(int band) {
    return bands <= 1 ? 2 : (int) Math.rint((MOST_BANDS - 1.0) * band / (bands - 1));
  }

  /** The band at a place right of the axis, px from the axis and from the top; -1 in a cavity. */
  private int band(double x, double y) {
    double degrees = degreesAt(x, y);
    if (Double.isNaN(degrees)) {
      return -1;
    }
    return step == 0
        ? 0
        : Math.max(0, Math.min(bands - 1, (int) Math.floor((degrees - first) / step)));
  }

  private double degreesAt(double x, double y) {
    double radius = x / (wide / 2) * setting.mould().diameterMetres() / 2;
    double up = (1 - y / tall) * setting.mould().heightMetres();
    int i = 0;
    while (i < section.radii() - 2 && section.radiusMetres(i + 1) < radius) {
      i++;
    }
    int j = 0;
    while (j < section.heights() - 2 && section.heightMetres(j + 1) < up) {
      j++;
    }
    double u = share(radius, section.radiusMetres(i), section.radiusMetres(i + 1));
    double v = share(up, section.heightMetres(j), section.heightMetres(j + 1));
    return degrees(
        (1 - u) * ((1 - v) * section.celsius(i, j) + v * section.celsius(i, j + 1))
            + u * ((1 - v) * section.celsius(i + 1, j) + v * section.celsius(i + 1, j + 1)));
  }

  private static double share(double at, double from, double to) {
    return Math.max(0, Math.min(1, (at - from) / (to - from)));
  }

  private double degrees(double celsius) {
    return unit.value(Temperature.ofCelsius(celsius));
  }

  // ---- lines of one temperature

  private void isotherms(Canvas canvas) {
    int columns = (int) Math.floor(wide / 2 / STEP);
    int rows = (int) Math.floor(tall / STEP);
    double dx = wide / 2 / columns;
    double dy = tall / rows;
    double[][] field = new double[columns + 1][rows + 1];
    for (int i = 0; i <= columns; i++) {
      for (int j = 0; j <= rows; j++) {
        field[i][j] = degreesAt(i * dx, j * dy);
      }
    }
    List<Label> labels = new ArrayList<>();
    for (int band = 1; band < bands; band++) {
      double level = first + band * step;
      List<List<double[]>> chains = Contours.of(field, level);
      for (List<double[]> chain : chains) {
        for (int side = -1; side <= 1; side += 2) {
          double[] xs = new double[chain.size()];
          double[] ys = new double[chain.size()];
          for (int k = 0; k < xs.length; k++) {
            xs[k] = left + wide / 2 + side * dx * chain.get(k)[0];
            ys[k] = top + dy * chain.get(k)[1];
          }
          canvas.polyline(xs, ys, Look.ISOTHERM);
        }
      }
      label(level, chains, dx, dy, labels);
    }
    for (Label label : labels) {
      double half = Letters.width(label.words(), Type.PLAIN) / 2 + 3;
      canvas.box(label.x() - half, label.y() - 8, 2 * half, 15, Look.GROUND);
      canvas.text(label.x(), label.y() + 4, label.words(), Anchor.MIDDLE, Type.PLAIN, Look.WORDS);
    }
  }

  private record Label(double x, double y, String words) {}

  /** On the line, where it is free, the more towards the middle of the right half the better. */
  private void label(
      double level, List<List<double[]>> chains, double dx, double dy, List<Label> labels) {
    String words = number(level);
    double half = Letters.width(words, Type.PLAIN) / 2 + 3;
    double best = Double.POSITIVE_INFINITY;
    Label place = null;
    for (List<double[]> chain : chains) {
      if (chain.size() < 4) {
        continue;
      }
      for (double[] point : chain) {
        double x = left + wide / 2 + dx * point[0];
        double y = top + dy * point[1];
        if (x - half < left + wide / 2
            || x + half > left + wide - 2
            || y < top + 10
            || y > top + tall - 10) {
          continue;
        }
        boolean free =
            labels.stream()
                .noneMatch(l -> Math.abs(l.x() - x) < 2 * half + 4 && Math.abs(l.y() - y) < 18);
        double off = Math.abs(y - (top + tall / 2));
        if (free && off < best) {
          best = off;
          place = new Label(x, y, words);
        }
      }
    }
    if (place != null) {
      labels.add(place);
    }
  }

  // ---- the body and the scale

  private void outlines(Canvas canvas) {
    double middle = left + wide / 2;
    double wall = setting.mould().wallMetres() * pixelsPerMetre;
    if (wall > 0) {
      for (int side = -1; side <= 1; side += 2) {
        double x = middle + side * (wide / 2 - wall);
        canvas.line(x, top, x, top + tall, Look.EDGE);
      }
    }
    canvas.box(left, top, wide, tall, Look.EDGE);
    canvas.line(middle, top, middle, top + tall, Look.MARK);
    canvas.text(
        middle,
        top + tall + 20,
        "%.0f mm across, %.0f mm high"
            .formatted(
                setting.mould().diameterMetres() * 1000, setting.mould().heightMetres() * 1000),
        Anchor.MIDDLE,
        Type.PLAIN,
        Look.AXIS_WORDS);
  }

  private void scale(Canvas canvas) {
    double x = left + (wide + WIDEST) / 2 + 24;
    canvas.text(x, top + 4, unit.symbol(), Anchor.START, Type.NAME, Look.WORDS);
    double y = top + 14;
    for (int band = bands - 1; band >= 0; band--) {
      canvas.boxes(new double[] {x, y, SWATCH, SWATCH}, Look.heat(shade(band)));
      canvas.box(x, y, SWATCH, SWATCH, Look.FRAME);
      double from = first + band * step;
      String words =
          step == 0
              ? "%.0f".formatted(low)
              : "%s to %s".formatted(number(from), number(from + step));
      canvas.text(x + SWATCH + 6, y + 16, words, Anchor.START, Type.PLAIN, Look.WORDS);
      y += SWATCH;
    }
  }

  private static String number(double value) {
    return value == Math.rint(value) ? "%.0f".formatted(value) : "%.1f".formatted(value);
  }
}
