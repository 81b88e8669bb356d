package org.heatwright.app.plot;

import java.util.List;

/**
 * A figure that is ready to draw, whatever draws it.
 *
 * @param title in a few words
 * @param told what it shows, in one or two sentences: for people who do not see it, and under the
 *     title
 * @param x shared by all panels
 * @param panels from top to bottom
 * @param keys what the looks mean
 */
public record Figure(String title, String told, Axis x, List<Panel> panels, List<Key> keys) {

  public Figure {
    panels = List.copyOf(panels);
    keys = List.copyOf(keys);
    if (panels.isEmpty()) {
      throw new IllegalArgumentException("A figure needs a panel.");
    }
  }

  /** Laid out for paper, files and wide screens, with its title and what it tells. */
  public Drawing drawing() {
    return new FigureDrawing(this, Size.WIDE, true);
  }

  /**
   * One frame.
   *
   * @param name stands at its top left; may be empty
   * @param y its upright axis
   * @param rows how many rows of words it holds, which set its height; 0 for curves
   * @param layers what is in it, the lowest first
   */
  record Panel(String name, Axis y, int rows, List<Layer> layers) {
    Panel {
      layers = List.copyOf(layers);
    }
  }

  /** An entry of the legend. */
  record Key(Kind kind, String words) {}

  /** What a legend shows before its words. */
  enum Kind {
    BAND,
    MEASURED,
    CROSS,
    SETPOINT,
    EVENT,
    BEFORE,
    AFTER,
    HOLLOW,
    BAR
  }

  /** Sizes a figure is drawn in, in pixels; its words stay the same size. */
  public enum Size {
    /** For paper, files and wide screens. */
    WIDE(820, 330),
    /** For a phone. */
    NARROW(350, 250);

    private final int width;
    private final int height;

    Size(int width, int height) {
      this.width = width;
      this.height = height;
    }

    int width() {
      return width;
    }

    /** Height for the curves; panels share it. */
    int height() {
      return height;
    }
  }
}
