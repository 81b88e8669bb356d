package org.heatwright.app.plot;

/** How something in a figure looks: its colour, its weight, its dashes. */
public enum Look {
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
  /** Bands of a temperature field, from the coolest to the hottest. */
  HEAT_1(Paint.HEAT_1, 0),
  HEAT_2(Paint.HEAT_2, 0),
  HEAT_3(Paint.HEAT_3, 0),
  HEAT_4(Paint.HEAT_4, 0),
  HEAT_5(Paint.HEAT_5, 0),
  HEAT_6(Paint.HEAT_6, 0),
  HEAT_7(Paint.HEAT_7, 0),
  HEAT_8(Paint.HEAT_8, 0),
  /** A line of one temperature. */
  ISOTHERM(Paint.INK, 0.9),
  /** The edge of a body. */
  EDGE(Paint.INK, 1.6),
  RULE(Paint.LINE, 1),
  FRAME(Paint.EDGE, 1),
  WORDS(Paint.INK, 0),
  AXIS_WORDS(Paint.SOFT, 0),
  GROUND(Paint.SHEET, 0);

  private final Paint paint;
  private final double width;
  private final double[] dashes;

  /** The look of a band of a temperature field, 0 for the coolest of 8. */
  static Look heat(int band) {
    return values()[HEAT_1.ordinal() + band];
  }

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
