package org.heatwright.app.plot;

import java.util.Locale;

/** Writes SVG; colours by class, everything else as attributes. Belongs to one thread. */
final class SvgCanvas implements Canvas {

  private final StringBuilder out = new StringBuilder();

  @Override
  public void polygon(double[] xs, double[] ys, Look look) {
    out.append("<path class=\"").append(fill(look)).append("\" d=\"");
    path(xs, ys);
    out.append("Z\"/>\n");
  }

  @Override
  public void polyline(double[] xs, double[] ys, Look look) {
    out.append("<path class=\"").append(stroke(look)).append("\" fill=\"none\"");
    pen(look);
    out.append(" d=\"");
    path(xs, ys);
    out.append("\"/>\n");
  }

  @Override
  public void box(double x, double y, double width, double height, Look look) {
    boolean outlined = look.width() > 0;
    out.append("<rect class=\"").append(outlined ? stroke(look) : fill(look)).append('"');
    if (outlined) {
      out.append(" fill=\"none\"");
      pen(look);
    }
    attribute("x", x);
    attribute("y", y);
    attribute("width", width);
    attribute("height", height);
    out.append("/>\n");
  }

  @Override
  public void boxes(double[] corners, Look look) {
    out.append("<path class=\"").append(fill(look)).append("\" d=\"");
    for (int i = 0; i < corners.length; i += 4) {
      out.append('M').append(number(corners[i])).append(' ').append(number(corners[i + 1]));
      out.append('h').append(number(corners[i + 2])).append('v').append(number(corners[i + 3]));
      out.append('h').append(number(-corners[i + 2])).append('z');
    }
    out.append("\"/>\n");
  }

  @Override
  public void dot(double x, double y, double radius, Look look) {
    boolean hollow = look == Look.HOLLOW;
    out.append("<circle class=\"");
    out.append(hollow ? fill(Look.GROUND) + " " + stroke(look) : fill(look)).append('"');
    if (hollow) {
      attribute("stroke-width", look.width());
    }
    attribute("cx", x);
    attribute("cy", y);
    attribute("r", radius);
    out.append("/>\n");
  }

  @Override
  public void text(double x, double baseline, String words, Anchor anchor, Type type, Look look) {
    out.append("<text class=\"").append(fill(look)).append('"');
    attribute("x", x);
    attribute("y", baseline);
    attribute("font-size", type.pixels());
    if (type.bold()) {
      out.append(" font-weight=\"600\"");
    }
    if (anchor != Anchor.START) {
      out.append(" text-anchor=\"").append(anchor.name().toLowerCase(Locale.ROOT)).append('"');
    }
    out.append('>').append(escaped(words)).append("</text>\n");
  }

  @Override
  public String toString() {
    return out.toString();
  }

  private void path(double[] xs, double[] ys) {
    for (int i = 0; i < xs.length; i++) {
      out.append(i == 0 ? 'M' : 'L').append(number(xs[i])).append(' ').append(number(ys[i]));
    }
  }

  private void pen(Look look) {
    attribute("stroke-width", look.width());
    out.append(" stroke-linejoin=\"round\"");
    double[] dashes = look.dashes();
    if (dashes.length > 0) {
      out.append(" stroke-dasharray=\"");
      for (int i = 0; i < dashes.length; i++) {
        out.append(i == 0 ? "" : " ").append(number(dashes[i]));
      }
      out.append('"');
    }
  }

  private void attribute(String name, double value) {
    out.append(' ').append(name).append("=\"").append(number(value)).append('"');
  }

  private static String fill(Look look) {
    return "f-" + look.paint().word();
  }

  private static String stroke(Look look) {
    return "l-" + look.paint().word();
  }

  /** A tenth of a pixel is fine enough. */
  private static String number(double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("A figure holds a number that is not finite.");
    }
    double tenths = Math.rint(value * 10) / 10;
    return tenths == Math.rint(tenths) ? Long.toString((long) tenths) : Double.toString(tenths);
  }

  static String escaped(String words) {
    return words
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replaceAll("\\p{Cntrl}", " ");
  }
}
