package org.heatwright.app.plot;

/** Something laid out in pixels, ready to be drawn by {@link Svg} or {@link Png}. */
public interface Drawing {

  /** In a few words. */
  String title();

  /** What it shows, for people who do not see it. */
  String told();

  int width();

  int height();

  /** Draws it. */
  void drawOn(Canvas canvas);
}
