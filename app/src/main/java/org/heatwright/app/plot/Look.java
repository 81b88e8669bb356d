package org.heatwright.app.plot;

/** How something in a figure looks: its colour, its weight, its dashes. */
enum Look {
  /** Predicted, nine times in ten. */
  BAND(Paint.BAND, 0),
  /** Predicted, the middle. */
  FORECAST(Paint.ACCENT, 1.4),
  /** What a thermocouple said. */
  MEASURED(Paint.INK, 2.2),
  /** What the controller aims at. */
  SETPOINT(Paint.INK, 1, 5, 3),
  /** A stretch in which something happened. */
  EVENT(Paint.TINT, 0),
  /** A moment with a name. */
  MARK(Paint.INK, 1, 1, 3),
  /** Believed before. */
  BEFORE(Paint.BAND, 0),
  /** Known now. */
  AFTER(Paint.INK, 2.2),
  /** Not told: drawn hollow. */
  HOLLOW(Paint.SOFT, 1.2, 3, 2),
  /** Joins points that belong together. */
  THREAD(Paint.SOFT, 1),
  /** Where nothing has changed. */
  LEVEL(Paint.INK, 1),
  RULE(Paint.LINE, 1),
  FRAME(Paint.EDGE, 1),
  WORDS(Paint.INK, 0),
  AXIS_WORDS(Paint.SOFT, 0),
  GROUND(Paint.SHEET, 0);

  private final Paint paint;
  private final double width;
  private final double[] dashes;

  Look(Paint paint, double width, double... dashes) {
    this.paint = paint;
    this.width = width;
    this.dashes = dashes;
  }

  Paint paint() {
    return paint;
  }

  /** Width of a line, in pixels of the figure. */
  double width() {
    return width;
  }

  /** Lengths drawn and left out in turn; empty for a full line. */
  double[] dashes() {
    return dashes.clone();
  }
}
