package org.heatwright.app.plot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.heatwright.app.plot.Canvas.Anchor;
import org.heatwright.app.plot.Canvas.Type;

/** Lays a figure out in pixels and draws it. Belongs to one thread. */
final class FigureDrawing implements Drawing {

  private static final double EDGE = 12;
  private static final double LINE = 17;
  private static final double KEY_WIDTH = 30;
  private static final double KEY_LINE = 20;
  private static final double LABEL_LINE = 15;
  private static final double ROW_HEIGHT = 46;
  private static final double ROW_BASELINE = 18;
  private static final double TIME_LABELS = 20;
  private static final double DATE_LABELS = 15;
  private static final double UNIT_LINE = 22;
  private static final double PANEL_GAP = 10;
  private static final double NAME_RISE = 9;

  /** Panels that share the height of one are not lower than this, px. */
  private static final double LOWEST_PANEL = 110;

  private static final double DOT = 3.2;
  private static final double CAP = 4;
  private static final double CROSS = 3.5;
  private static final double BAR_HEIGHT = 12;
  private static final String ELLIPSIS = "…";

  /** Keys in another language may be longer by this share. */
  private static final double LONGER = 1.15;

  /** A page's own font may be wider than ours by this share. */
  private static final double WIDER = 1.13;

  private final Figure figure;
  private final double edge;
  private final double left;
  private final double right;
  private final int width;
  private final int height;
  private final boolean rowsInTwoLines;
  private final List<Text> texts = new ArrayList<>();
  private final List<KeyPlace> keys = new ArrayList<>();
  private final List<Frame> frames = new ArrayList<>();

  /** Words of the head, laid out. */
  private record Text(double x, double baseline, String words, Type type, Look look) {}

  private record KeyPlace(double x, double middle, Figure.Key key) {}

  /** A panel's place. */
  private record Frame(Figure.Panel panel, double top, double height, List<LabelPlace> labels) {
    double foot() {
      return top + height;
    }
  }

  private record LabelPlace(double at, double middle, int row, String words) {}

  /**
   * @param headed whether the title and what is told stand above it; a page has them elsewhere
   */
  FigureDrawing(Figure figure, Figure.Size size, boolean headed) {
    this.figure = figure;
    this.width = size.width();
    double widest = 0;
    for (Figure.Panel panel : figure.panels()) {
      widest = Math.max(widest, Letters.width(panel.y().unit(), Type.NAME));
      for (Axis.Tick tick : panel.y().ticks()) {
        widest = Math.max(widest, Letters.width(tick.label(), Type.PLAIN));
      }
    }
    this.edge = headed ? EDGE : 2;
    this.left = edge + (widest == 0 ? 0 : widest + 7);
    this.right = width - edge - (headed ? 2 : 0);
    this.rowsInTwoLines = tooWideForOneLine();
    double y = headed ? EDGE : 0;
    if (headed) {
      y = words(figure.title(), Type.TITLE, Look.WORDS, y);
      y = words(figure.told(), Type.PLAIN, Look.AXIS_WORDS, y) + 4;
    }
    y = keys(y);
    long curves = figure.panels().stream().filter(p -> p.rows() == 0).count();
    double share = curves == 0 ? 0 : Math.max(LOWEST_PANEL, (double) size.height() / curves);
    for (Figure.Panel panel : figure.panels()) {
      List<LabelPlace> labels = labels(panel);
      int rows = labels.stream().mapToInt(l -> l.row() + 1).max().orElse(0);
      boolean named = !panel.name().isEmpty() || !panel.y().unit().isEmpty();
      double top = y + Math.max(rows * LABEL_LINE + 6, named ? UNIT_LINE : 6);
      double tall = panel.rows() > 0 ? panel.rows() * rowHeight() : share;
      frames.add(new Frame(panel, top, tall, labels));
      y = top + tall + PANEL_GAP;
    }
    boolean dated =
        !figure.x().unit().isEmpty()
            || figure.x().ticks().stream().anyMatch(tick -> !tick.date().isEmpty());
    double foot = dated ? TIME_LABELS + DATE_LABELS : TIME_LABELS;
    this.height = (int) Math.ceil(y - PANEL_GAP + foot + (headed ? EDGE : 4));
  }

  @Override
  public String title() {
    return figure.title();
  }

  @Override
  public String told() {
    return figure.told();
  }

  @Override
  public int width() {
    return width;
  }

  @Override
  public int height() {
    return height;
  }

  @Override
  public void drawOn(Canvas canvas) {
    canvas.box(0, 0, width, height, Look.GROUND);
    for (Text text : texts) {
      canvas.text(text.x(), text.baseline(), text.words(), Anchor.START, text.type(), text.look());
    }
    keys.forEach(key -> draw(canvas, key));
    for (Frame frame : frames) {
      new InFrame(canvas, frame).draw();
    }
    timeLabels(canvas, frames.get(frames.size() - 1).foot());
  }

  // ---- layout

  private double words(String words, Type type, Look look, double top) {
    double y = top;
    StringBuilder line = new StringBuilder();
    for (String word : words.split(" ", -1)) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && Letters.width(longer, type) > width - 2 * EDGE) {
        texts.add(new Text(EDGE, y + type.pixels(), line.toString(), type, look));
        y += LINE;
        line = new StringBuilder(word);
      } else {
        line = new StringBuilder(longer);
      }
    }
    texts.add(new Text(EDGE, y + type.pixels(), line.toString(), type, look));
    return y + LINE + (type == Type.TITLE ? 4 : 0);
  }

  private boolean tooWideForOneLine() {
    return figure.panels().stream()
        .flatMap(panel -> panel.layers().stream())
        .filter(Layer.Row.class::isInstance)
        .map(Layer.Row.class::cast)
        .anyMatch(
            row ->
                WIDER
                        * (Letters.width(row.left(), Type.NAME)
                            + Letters.width(row.right(), Type.PLAIN))
                    > right - left - 24);
  }

  private double rowHeight() {
    return rowsInTwoLines ? ROW_HEIGHT + LABEL_LINE : ROW_HEIGHT;
  }

  private double keys(double top) {
    double x = edge;
    double y = top;
    for (Figure.Key key : figure.keys()) {
      double wide = KEY_WIDTH + 6 + LONGER * WIDER * Letters.width(key.words(), Type.PLAIN);
      if (x > edge && x + wide > width - edge) {
        x = edge;
        y += KEY_LINE;
      }
      keys.add(new KeyPlace(x, y + KEY_LINE / 2, key));
      x += wide + 12;
    }
    return figure.keys().isEmpty() ? y : y + KEY_LINE + 2;
  }

  /**
   * Names of moments and stretches stand above their panel, in rows so that none covers another.
   */
  private List<LabelPlace> labels(Figure.Panel panel) {
    List<LabelPlace> places = new ArrayList<>();
    double named = Letters.width(panel.name(), Type.NAME);
    List<Double> free = new ArrayList<>(List.of(named == 0 ? 0 : left + named + 10));
    List<LabelPlace> wanted = new ArrayList<>();
    for (Layer layer : panel.layers()) {
      if (layer instanceof Layer.Mark mark && !mark.label().isEmpty()) {
        wanted.add(new LabelPlace(x(mark.x()), 0, 0, shortened(mark.label())));
      } else if (layer instanceof Layer.Stretch stretch && !stretch.label().isEmpty()) {
        double middle = (x(stretch.from()) + x(stretch.to())) / 2;
        wanted.add(new LabelPlace(middle, 0, 0, shortened(stretch.label())));
      }
    }
    wanted.sort(java.util.Comparator.comparingDouble(LabelPlace::at));
    for (LabelPlace label : wanted) {
      double half = Letters.width(label.words(), Type.PLAIN) / 2;
      double middle = Math.max(left + half, Math.min(right - half, label.at()));
      int row = 0;
      while (row < free.size() && free.get(row) > middle - half) {
        row++;
      }
      if (row == free.size()) {
        free.add(0.0);
      }
      free.set(row, middle + half + 8);
      places.add(new LabelPlace(label.at(), middle, row, label.words()));
    }
    return places;
  }

  private String shortened(String words) {
    String shorter = words;
    while (Letters.width(shorter, Type.PLAIN) > right - left && shorter.length() > 2) {
      shorter = shorter.substring(0, shorter.length() - 2).stripTrailing() + ELLIPSIS;
    }
    return shorter;
  }

  /** Half pixels from the left. */
  private double column(double value) {
    return Math.floor(2 * x(value));
  }

  private double x(double value) {
    return left + (right - left) * figure.x().share(value);
  }

  // ---- drawing

  private static void draw(Canvas canvas, KeyPlace place) {
    double x = place.x();
    double y = place.middle();
    double end = x + KEY_WIDTH;
    double middle = x + KEY_WIDTH / 2;
    switch (place.key().kind()) {
      case BAND -> {
        canvas.box(x, y - 6, KEY_WIDTH, 12, Look.BAND);
        canvas.line(x, y, end, y, Look.FORECAST);
      }
      case MEASURED -> canvas.line(x, y, end, y, Look.MEASURED);
      case CROSS -> cross(canvas, middle, y, Look.MEASURED);
      case SETPOINT -> canvas.line(x, y, end, y, Look.SETPOINT);
      case EVENT -> canvas.box(x, y - 6, KEY_WIDTH, 12, Look.EVENT);
      case BEFORE -> canvas.box(x, y - BAR_HEIGHT / 2, KEY_WIDTH, BAR_HEIGHT, Look.BEFORE);
      case AFTER -> lying(canvas, x, middle, end, y, Look.AFTER);
      case HOLLOW -> canvas.box(x, y - BAR_HEIGHT / 2, KEY_WIDTH, BAR_HEIGHT, Look.HOLLOW);
      case BAR -> upright(canvas, middle, y - 7, y, y + 7, Look.AFTER);
    }
    canvas.text(end + 6, y + 4, place.key().words(), Anchor.START, Type.PLAIN, Look.AXIS_WORDS);
  }

  private static void cross(Canvas canvas, double x, double y, Look look) {
    canvas.line(x - CROSS, y - CROSS, x + CROSS, y + CROSS, look);
    canvas.line(x - CROSS, y + CROSS, x + CROSS, y - CROSS, look);
  }

  private static void lying(
      Canvas canvas, double from, double middle, double to, double y, Look look) {
    canvas.line(from, y, to, y, look);
    canvas.line(from, y - CAP, from, y + CAP, look);
    canvas.line(to, y - CAP, to, y + CAP, look);
    canvas.dot(middle, y, DOT + 0.8, look);
  }

  private static void upright(
      Canvas canvas, double x, double top, double middle, double foot, Look look) {
    canvas.line(x, top, x, foot, look);
    canvas.line(x - CAP, top, x + CAP, top, look);
    canvas.line(x - CAP, foot, x + CAP, foot, look);
    canvas.dot(x, middle, DOT + 0.8, look);
  }

  private void timeLabels(Canvas canvas, double foot) {
    double free = Double.NEGATIVE_INFINITY;
    double dateFree = Double.NEGATIVE_INFINITY;
    for (Axis.Tick tick : figure.x().ticks()) {
      double half = Letters.width(tick.label(), Type.PLAIN) / 2;
      double middle = Math.max(half, Math.min(x(tick.at()), right - half));
      if (middle - half >= free) {
        canvas.text(middle, foot + 17, tick.label(), Anchor.MIDDLE, Type.PLAIN, Look.AXIS_WORDS);
        free = middle + half + 8;
      }
      double dateWidth = Letters.width(tick.date(), Type.PLAIN);
      double date = Math.min(middle - half, right - dateWidth);
      if (!tick.date().isEmpty() && date >= dateFree) {
        canvas.text(date, foot + 32, tick.date(), Anchor.START, Type.PLAIN, Look.WORDS);
        dateFree = date + dateWidth + 8;
      }
    }
    if (!figure.x().unit().isEmpty()) {
      canvas.text(right, foot + 32, figure.x().unit(), Anchor.END, Type.PLAIN, Look.AXIS_WORDS);
    }
  }

  /** What is drawn inside one frame. */
  private final class InFrame {

    private final Canvas canvas;
    private final Frame frame;

    InFrame(Canvas canvas, Frame frame) {
      this.canvas = canvas;
      this.frame = frame;
    }

    void draw() {
      Figure.Panel panel = frame.panel();
      for (Layer layer : panel.layers()) {
        if (layer instanceof Layer.Stretch stretch) {
          double from = x(stretch.from());
          double wide = Math.max(2, x(stretch.to()) - from);
          canvas.box(from, frame.top(), wide, frame.height(), Look.EVENT);
        }
      }
      for (Axis.Tick tick : panel.y().ticks()) {
        double y = y(tick.at());
        canvas.line(left, y, right, y, Look.RULE);
        canvas.text(left - 6, y + 4, tick.label(), Anchor.END, Type.PLAIN, Look.AXIS_WORDS);
      }
      for (Axis.Tick tick : figure.x().ticks()) {
        if (panel.rows() == 0) {
          canvas.line(x(tick.at()), frame.top(), x(tick.at()), frame.foot(), Look.RULE);
        }
        for (int row = 0; row < panel.rows(); row++) {
          double foot = rowTop(row + 1);
          canvas.line(x(tick.at()), foot - 2 * BAR_HEIGHT + 2, x(tick.at()), foot, Look.RULE);
        }
      }
      canvas.box(left, frame.top(), right - left, frame.height(), Look.FRAME);
      panel.layers().forEach(this::draw);
      for (LabelPlace label : frame.labels()) {
        if (label.row() > 0) {
          double leader = frame.top() - label.row() * LABEL_LINE - 4;
          canvas.line(label.at(), leader, label.at(), frame.top(), Look.MARK);
        }
      }
      frame.labels().forEach(this::draw);
      String unit = panel.y().unit();
      if (!unit.isEmpty()) {
        canvas.text(
            left - 6, frame.top() - NAME_RISE, unit, Anchor.END, Type.PLAIN, Look.AXIS_WORDS);
      }
      if (!panel.name().isEmpty()) {
        canvas.text(
            left, frame.top() - NAME_RISE, panel.name(), Anchor.START, Type.NAME, Look.WORDS);
      }
    }

    private double y(double value) {
      return frame.foot() - frame.height() * frame.panel().y().share(value);
    }

    /** On a ground of its own, so that no leader runs through it. */
    private void draw(LabelPlace label) {
      double baseline = frame.top() - 6 - label.row() * LABEL_LINE;
      double wide = Letters.width(label.words(), Type.PLAIN) + 4;
      canvas.box(label.middle() - wide / 2, baseline - 11, wide, 14, Look.GROUND);
      canvas.text(label.middle(), baseline, label.words(), Anchor.MIDDLE, Type.PLAIN, Look.WORDS);
    }

    private void draw(Layer layer) {
      if (layer instanceof Layer.Area area) {
        area(area);
      } else if (layer instanceof Layer.Line line) {
        line(line);
      } else if (layer instanceof Layer.Crosses crosses) {
        crosses.points().forEach(p -> cross(canvas, x(p.x()), y(p.y()), crosses.look()));
      } else if (layer instanceof Layer.Bars bars) {
        bars.bars()
            .forEach(
                b ->
                    upright(canvas, x(b.x()), y(b.high()), y(b.middle()), y(b.low()), bars.look()));
      } else if (layer instanceof Layer.Lying bar) {
        lying(bar);
      } else if (layer instanceof Layer.Level level) {
        canvas.line(left, y(level.y()), right, y(level.y()), level.look());
      } else if (layer instanceof Layer.Mark mark) {
        canvas.line(x(mark.x()), frame.top(), x(mark.x()), frame.foot(), Look.MARK);
      } else if (layer instanceof Layer.Row row) {
        row(row);
      }
    }

    private double rowTop(int row) {
      return frame.top() + row * rowHeight();
    }

    private void row(Layer.Row row) {
      double baseline = rowTop(row.row()) + ROW_BASELINE;
      canvas.text(left + 8, baseline, row.left(), Anchor.START, Type.NAME, Look.WORDS);
      if (rowsInTwoLines) {
        canvas.text(
            left + 8,
            baseline + LABEL_LINE,
            row.right(),
            Anchor.START,
            Type.PLAIN,
            Look.AXIS_WORDS);
      } else {
        canvas.text(right - 8, baseline, row.right(), Anchor.END, Type.PLAIN, Look.AXIS_WORDS);
      }
      if (row.row() > 0) {
        canvas.line(left, rowTop(row.row()), right, rowTop(row.row()), Look.RULE);
      }
    }

    private void lying(Layer.Lying bar) {
      double y = rowTop(bar.row() + 1) - BAR_HEIGHT - 1;
      if (bar.thick()) {
        double from = x(bar.low());
        canvas.box(from, y - BAR_HEIGHT / 2, x(bar.high()) - from, BAR_HEIGHT, bar.look());
      } else {
        FigureDrawing.lying(canvas, x(bar.low()), x(bar.middle()), x(bar.high()), y, bar.look());
      }
    }

    /** A band is smooth: of many ends on half a pixel the first is enough. */
    private void area(Layer.Area area) {
      List<Layer.Reach> kept = new ArrayList<>();
      List<Layer.Reach> all = area.reaches();
      for (int i = 0; i < all.size(); i++) {
        boolean fresh = i == 0 || column(all.get(i).x()) != column(all.get(i - 1).x());
        if (fresh || i == all.size() - 1) {
          kept.add(all.get(i));
        }
      }
      int n = kept.size();
      if (n < 2) {
        return;
      }
      double[] xs = new double[2 * n];
      double[] ys = new double[2 * n];
      for (int i = 0; i < n; i++) {
        Layer.Reach reach = kept.get(i);
        xs[i] = x(reach.x());
        ys[i] = y(reach.high());
        xs[2 * n - 1 - i] = xs[i];
        ys[2 * n - 1 - i] = y(reach.low());
      }
      canvas.polygon(xs, ys, area.look());
    }

    /**
     * Where many readings fall on half a pixel, the first, lowest, highest and last are drawn: it
     * looks the same.
     */
    private void line(Layer.Line line) {
      List<double[]> kept = new ArrayList<>();
      List<Layer.Point> points = line.points();
      int i = 0;
      while (i < points.size()) {
        double column = column(points.get(i).x());
        int first = i;
        int lowest = i;
        int highest = i;
        while (i < points.size() && column(points.get(i).x()) == column) {
          lowest = points.get(i).y() < points.get(lowest).y() ? i : lowest;
          highest = points.get(i).y() > points.get(highest).y() ? i : highest;
          i++;
        }
        java.util.TreeSet<Integer> picked = new java.util.TreeSet<>(Arrays.asList(first, i - 1));
        picked.add(lowest);
        picked.add(highest);
        for (int p : picked) {
          kept.add(new double[] {x(points.get(p).x()), y(points.get(p).y())});
        }
      }
      if (kept.size() > 1) {
        canvas.polyline(
            kept.stream().mapToDouble(p -> p[0]).toArray(),
            kept.stream().mapToDouble(p -> p[1]).toArray(),
            line.look());
      }
    }
  }
}
