package org.heatwright.app.plot;

import java.util.Arrays;
import java.util.stream.Collectors;

/** A figure as SVG: words stay words, and a title and a description say what is shown. */
public final class Svg {

  private static final String FONTS =
      "\"DejaVu Sans Condensed\",\"Noto Sans\",\"Helvetica Neue\",Arial,sans-serif";

  private Svg() {}

  /** A file of its own, light or dark as its reader's screen is. */
  public static String file(Figure figure) {
    return file(figure.drawing());
  }

  /** The same of anything that is laid out. */
  public static String file(Drawing drawing) {
    return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
        + opening(drawing, "plot", "xmlns=\"http://www.w3.org/2000/svg\"")
        + "<style>text{font-family:"
        + FONTS
        + "}"
        + rules(false)
        + "@media (prefers-color-scheme:dark){"
        + rules(true)
        + "}</style>\n"
        + drawn(drawing)
        + "</svg>\n";
  }

  /**
   * A part of a page whose style sheet gives the classes their colours.
   *
   * @param id begins the ids inside; unique on the page
   */
  public static String inPage(Figure figure, String id, Figure.Size size) {
    return inPage(
        new FigureDrawing(figure, size, false), id, size == Figure.Size.NARROW ? "narrow" : "wide");
  }

  /**
   * The same of anything that is laid out.
   *
   * @param style a class of its own beside {@code plot}
   */
  public static String inPage(Drawing drawing, String id, String style) {
    String shape = "class=\"plot %s\"".formatted(style);
    return opening(drawing, id, shape) + drawn(drawing) + "</svg>\n";
  }

  private static String opening(Drawing drawing, String id, String more) {
    return ("<svg %s viewBox=\"0 0 %d %d\" role=\"img\" aria-labelledby=\"%s-title %s-told\">\n"
            + "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-told\">%s</desc>\n")
        .formatted(
            more,
            drawing.width(),
            drawing.height(),
            id,
            id,
            id,
            SvgCanvas.escaped(drawing.title()),
            id,
            SvgCanvas.escaped(drawing.told()));
  }

  private static String drawn(Drawing drawing) {
    SvgCanvas canvas = new SvgCanvas();
    drawing.drawOn(canvas);
    return canvas.toString();
  }

  private static String rules(boolean onDark) {
    return Arrays.stream(Paint.values())
        .map(paint -> paint.rules(onDark))
        .collect(Collectors.joining());
  }
}
