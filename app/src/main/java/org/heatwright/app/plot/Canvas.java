package org.heatwright.app.plot;

/** What figures are drawn on: pixels, from the top left. */
public interface Canvas {

  void polygon(double[] xs, double[] ys, Look look);

  void polyline(double[] xs, double[] ys, Look look);

  /** A box; outlined if its look has a width, else filled. */
  void box(double x, double y, double width, double height, Look look);

  /**
   * Filled boxes of one look, as one shape.
   *
   * @param corners left, top, width, height of each in turn
   */
  void boxes(double[] corners, Look look);

  /** A filled dot, or a hollow one if the look is {@link Look#HOLLOW}. */
  void dot(double x, double y, double radius, Look look);

  void text(double x, double baseline, String words, Anchor anchor, Type type, Look look);

  /** Where a text's place is. */
  enum Anchor {
    START,
    MIDDLE,
    END
  }

  /** Sizes of type. */
  enum Type {
    TITLE(15, true),
    NAME(13, true),
    PLAIN(12, false);

    private final double pixels;
    private final boolean bold;

    Type(double pixels, boolean bold) {
      this.pixels = pixels;
      this.bold = bold;
    }

    double pixels() {
      return pixels;
    }

    boolean bold() {
      return bold;
    }
  }

  default void line(double x1, double y1, double x2, double y2, Look look) {
    polyline(new double[] {x1, x2}, new double[] {y1, y2}, look);
  }
}
