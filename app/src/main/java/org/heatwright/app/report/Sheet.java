package org.heatwright.app.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.heatwright.app.qr.QrSymbol;

/**
 * A sheet of paper to draw on: millimetres from the top left corner, black and greys, two weights
 * of one font that lies in the jar. A dry sheet measures and draws nothing. Belongs to one thread.
 */
final class Sheet {

  /** Light or heavy strokes. */
  enum Weight {
    REGULAR("DejaVuSansCondensed.ttf"),
    BOLD("DejaVuSansCondensed-Bold.ttf");

    private final String file;

    Weight(String file) {
      this.file = file;
    }
  }

  static final double POINTS_PER_MILLIMETRE = 72 / 25.4;

  /** Height of capitals and digits over the font size, of the font in the jar. */
  static final double CAPITAL_HEIGHT = 0.729;

  private static final String ELLIPSIS = "…";
  private static final char UNPRINTABLE = '\uFFFD';

  private final Map<Weight, Font> fonts;
  private final PDPageContentStream content;
  private final double heightMillimetres;
  private final boolean dry;

  /**
   * A font in the document.
   *
   * @param advances widths of its characters, thousandths of the font's size: no pair of them moves
   *     together, and a layout measures the same few a hundred thousand times
   */
  private record Font(PDType0Font font, CmapLookup glyphs, Map<Integer, Double> advances) {

    double widthOf(String text) {
      return text.codePoints()
          .mapToDouble(character -> advances.computeIfAbsent(character, this::measured))
          .sum();
    }

    private double measured(int character) {
      try {
        return font.getStringWidth(Character.toString(character));
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    }
  }

  private interface Ink {
    void flow() throws IOException;
  }

  private Sheet(
      Map<Weight, Font> fonts, PDPageContentStream content, double heightMillimetres, boolean dry) {
    this.fonts = fonts;
    this.content = content;
    this.heightMillimetres = heightMillimetres;
    this.dry = dry;
  }

  /** Adds a page to a document; {@link #close} it before the document is saved. */
  static Sheet addTo(PDDocument document, PageSize size) throws IOException {
    Map<Weight, Font> fonts = new EnumMap<>(Weight.class);
    for (Weight weight : Weight.values()) {
      fonts.put(weight, load(document, weight));
    }
    PDPage page =
        new PDPage(
            new PDRectangle(
                (float) (size.widthMillimetres() * POINTS_PER_MILLIMETRE),
                (float) (size.heightMillimetres() * POINTS_PER_MILLIMETRE)));
    document.addPage(page);
    return new Sheet(
        fonts, new PDPageContentStream(document, page), size.heightMillimetres(), false);
  }

  private static Font load(PDDocument document, Weight weight) throws IOException {
    try (InputStream in = Sheet.class.getResourceAsStream("/report/" + weight.file)) {
      Objects.requireNonNull(in, () -> "the font " + weight.file + " is not in the jar");
      TrueTypeFont parsed = new TTFParser().parse(new RandomAccessReadBuffer(in));
      parsed.setEnableGsub(false); // no ligatures: what is printed can be searched and copied
      return new Font(
          PDType0Font.load(document, parsed, true), parsed.getUnicodeCmapLookup(), new HashMap<>());
    }
  }

  /** The same sheet, to measure on. */
  Sheet dry() {
    return new Sheet(fonts, content, heightMillimetres, true);
  }

  void close() {
    ink(content::close);
  }

  /** Width of one line, mm. */
  double widthOf(String text, Weight weight, double points) {
    return fontOf(weight).widthOf(printable(text, weight)) / 1000 * points / POINTS_PER_MILLIMETRE;
  }

  /** Height of capitals, mm. */
  static double capitals(double points) {
    return points * CAPITAL_HEIGHT / POINTS_PER_MILLIMETRE;
  }

  void text(double x, double baseline, String text, Weight weight, double points) {
    text(x, baseline, text, weight, points, 0);
  }

  /** One line, its baseline at the given height. Grey 0 is black, 1 is white. */
  void text(double x, double baseline, String text, Weight weight, double points, double grey) {
    String clean = printable(text, weight);
    ink(
        () -> {
          content.setNonStrokingColor((float) grey);
          content.beginText();
          content.setFont(fontOf(weight).font, (float) points);
          content.newLineAtOffset(x(x), y(baseline));
          content.showText(clean);
          content.endText();
        });
  }

  void textCentred(double x, double baseline, String text, Weight weight, double points) {
    text(x - widthOf(text, weight, points) / 2, baseline, text, weight, points);
  }

  void textRight(double x, double baseline, String text, Weight weight, double points) {
    text(x - widthOf(text, weight, points), baseline, text, weight, points);
  }

  /** The text in lines of a width; what does not fit the last one ends in an ellipsis. */
  List<String> wrap(String text, Weight weight, double points, double width, int mostLines) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : text.strip().split("\\s+")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (widthOf(longer, weight, points) <= width) {
        line = longer;
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line);
      }
      line = word;
      while (widthOf(line, weight, points) > width && lines.size() < mostLines) {
        int cut = fitting(line, weight, points, width);
        lines.add(line.substring(0, cut));
        line = line.substring(cut);
      }
    }
    lines.add(line);
    if (lines.size() > mostLines) {
      String last = lines.get(mostLines - 1);
      lines = new ArrayList<>(lines.subList(0, mostLines));
      lines.set(mostLines - 1, shortened(last, weight, points, width));
    }
    return lines;
  }

  /** The text if it fits, else its beginning and an ellipsis. */
  String fit(String text, Weight weight, double points, double width) {
    return widthOf(text, weight, points) <= width ? text : shortened(text, weight, points, width);
  }

  /** The largest size between two at which a line fits a width, in points. */
  double sizeFor(String text, Weight weight, double width, double least, double most) {
    double at = most * width / Math.max(widthOf(text, weight, most), 1e-9);
    return Math.max(least, Math.min(most, at));
  }

  private String shortened(String text, Weight weight, double points, double width) {
    String shorter = text;
    while (!shorter.isEmpty() && widthOf(shorter + ELLIPSIS, weight, points) > width) {
      shorter = shorter.substring(0, shorter.offsetByCodePoints(shorter.length(), -1));
    }
    return shorter.stripTrailing() + ELLIPSIS;
  }

  private int fitting(String word, Weight weight, double points, double width) {
    int cut = word.offsetByCodePoints(0, 1);
    while (cut < word.length()) {
      int next = word.offsetByCodePoints(cut, 1);
      if (widthOf(word.substring(0, next), weight, points) > width) {
        break;
      }
      cut = next;
    }
    return cut;
  }

  void line(double x1, double y1, double x2, double y2, double points) {
    polyline(new double[] {x1, x2}, new double[] {y1, y2}, points);
  }

  /** A line through points, of a thickness in points; dashes in mm, none for a firm line. */
  void polyline(double[] xs, double[] ys, double points, double... dashes) {
    ink(
        () -> {
          content.setStrokingColor(0f);
          content.setLineWidth((float) points);
          content.setLineDashPattern(inPoints(dashes), 0);
          content.moveTo(x(xs[0]), y(ys[0]));
          for (int i = 1; i < xs.length; i++) {
            content.lineTo(x(xs[i]), y(ys[i]));
          }
          content.stroke();
        });
  }

  void polygon(double[] xs, double[] ys, double grey) {
    ink(
        () -> {
          content.setNonStrokingColor((float) grey);
          content.moveTo(x(xs[0]), y(ys[0]));
          for (int i = 1; i < xs.length; i++) {
            content.lineTo(x(xs[i]), y(ys[i]));
          }
          content.closePath();
          content.fill();
        });
  }

  void fill(double x, double y, double width, double height, double grey) {
    polygon(
        new double[] {x, x + width, x + width, x},
        new double[] {y, y, y + height, y + height},
        grey);
  }

  void box(double x, double y, double width, double height, double points) {
    polyline(
        new double[] {x, x + width, x + width, x, x},
        new double[] {y, y, y + height, y + height, y},
        points);
  }

  /**
   * Draws the dark modules of a code as one shape: apart, a viewer shows fine white lines between
   * them.
   *
   * @param module side of a module, mm
   */
  void modules(double x, double y, double module, QrSymbol symbol) {
    ink(
        () -> {
          content.setNonStrokingColor(0f);
          for (int row = 0; row < symbol.side(); row++) {
            for (int from = 0; from < symbol.side(); from++) {
              int to = from;
              while (to < symbol.side() && symbol.dark(to, row)) {
                to++;
              }
              if (to > from) {
                content.addRect(
                    x(x + from * module),
                    y(y + (row + 1) * module),
                    x((to - from) * module),
                    x(module));
                from = to;
              }
            }
          }
          content.fill();
        });
  }

  void circle(double x, double y, double radius, double points, double grey) {
    int corners = 24;
    double[] xs = new double[corners + 1];
    double[] ys = new double[corners + 1];
    for (int i = 0; i <= corners; i++) {
      xs[i] = x + radius * Math.cos(2 * Math.PI * i / corners);
      ys[i] = y + radius * Math.sin(2 * Math.PI * i / corners);
    }
    polygon(xs, ys, grey);
    polyline(xs, ys, points);
  }

  /** Draws with everything outside a rectangle hidden. */
  void inside(double x, double y, double width, double height, Runnable drawing) {
    ink(
        () -> {
          content.saveGraphicsState();
          content.addRect(
              x(x),
              y(y + height),
              (float) (width * POINTS_PER_MILLIMETRE),
              (float) (height * POINTS_PER_MILLIMETRE));
          content.clip();
        });
    drawing.run();
    ink(content::restoreGraphicsState);
  }

  /** Slanting lines over a rectangle. */
  void hatch(double x, double y, double width, double height, double spacing) {
    inside(
        x,
        y,
        width,
        height,
        () -> {
          for (double at = x - height; at < x + width; at += spacing) {
            line(at, y + height, at + height, y, 0.4);
          }
        });
  }

  private static float[] inPoints(double[] millimetres) {
    float[] points = new float[millimetres.length];
    for (int i = 0; i < points.length; i++) {
      points[i] = (float) (millimetres[i] * POINTS_PER_MILLIMETRE);
    }
    return points;
  }

  private String printable(String text, Weight weight) {
    CmapLookup glyphs = fontOf(weight).glyphs;
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              if (Character.isISOControl(c) || Character.isWhitespace(c)) {
                clean.append(' ');
              } else if (Character.getType(c) != Character.FORMAT) { // direction marks and joiners
                clean.appendCodePoint(glyphs.getGlyphId(c) == 0 ? UNPRINTABLE : c);
              }
            });
    return clean.toString();
  }

  private Font fontOf(Weight weight) {
    return Objects.requireNonNull(fonts.get(weight));
  }

  private float x(double millimetres) {
    return (float) (millimetres * POINTS_PER_MILLIMETRE);
  }

  private float y(double millimetres) {
    return (float) ((heightMillimetres - millimetres) * POINTS_PER_MILLIMETRE);
  }

  private void ink(Ink ink) {
    if (dry) {
      return;
    }
    try {
      ink.flow();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
