package org.heatwright.app.plot;

import java.util.List;

/** One thing drawn in a panel, in the panel's own values. Later layers lie over earlier ones. */
sealed interface Layer {

  Look look();

  /** A place. */
  record Point(double x, double y) {}

  /** A stretch of one value. */
  record Reach(double x, double low, double high) {}

  /** The room between two curves. */
  record Area(List<Reach> reaches, Look look) implements Layer {
    public Area {
      reaches = List.copyOf(reaches);
    }
  }

  /** A curve. */
  record Line(List<Point> points, Look look) implements Layer {
    public Line {
      points = List.copyOf(points);
    }
  }

  /** Single readings: small crosses. */
  record Crosses(List<Point> points, Look look) implements Layer {
    public Crosses {
      points = List.copyOf(points);
    }
  }

  /** A value with what is sure about it: a dot and a bar upright. */
  record Bars(List<Bar> bars, Look look) implements Layer {
    public Bars {
      bars = List.copyOf(bars);
    }
  }

  /** From 5 to 95 percent, and the middle. */
  record Bar(double x, double low, double middle, double high) {}

  /**
   * A bar that lies along the x axis, in a row.
   *
   * @param row from the top, 0 for the first
   * @param thick true: a filled or hollow box; false: a line with ends and a dot
   */
  record Lying(int row, double low, double middle, double high, boolean thick, Look look)
      implements Layer {}

  /** A level all along. */
  record Level(double y, Look look) implements Layer {}

  /** A stretch of the x axis, shaded. */
  record Stretch(double from, double to, String label) implements Layer {
    @Override
    public Look look() {
      return Look.EVENT;
    }
  }

  /** A moment on the x axis, named above the panel. */
  record Mark(double x, String label) implements Layer {
    @Override
    public Look look() {
      return Look.MARK;
    }
  }

  /** Words of a row: its name, and what is to be said of it. */
  record Row(int row, String left, String right) implements Layer {
    @Override
    public Look look() {
      return Look.WORDS;
    }
  }
}
