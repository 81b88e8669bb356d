package org.heatwright.app.plot;

import java.awt.geom.AffineTransform;
import java.awt.geom.GeneralPath;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.GlyphData;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The card's own font, measured and outlined without the machine's fonts: a picture looks the same
 * wherever it is made. Safe for use from several threads.
 */
final class Letters {

  private static final Letters PLAIN = new Letters("DejaVuSansCondensed.ttf");
  private static final Letters BOLD = new Letters("DejaVuSansCondensed-Bold.ttf");

  private final TrueTypeFont font;
  private final CmapLookup glyphs;
  private final double unitsPerEm;

  private Letters(String file) {
    try (InputStream in = Letters.class.getResourceAsStream("/report/" + file)) {
      Objects.requireNonNull(in, () -> "the font " + file + " is not in the jar");
      font = new TTFParser().parse(new RandomAccessReadBuffer(in));
      glyphs = font.getUnicodeCmapLookup();
      unitsPerEm = font.getUnitsPerEm();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Letters of(Canvas.Type type) {
    return type.bold() ? BOLD : PLAIN;
  }

  /** Width of one line, px. */
  static double width(String words, Canvas.Type type) {
    return of(type).advance(words) * type.pixels();
  }

  /** Width of one line at a size of one. */
  private synchronized double advance(String words) {
    try {
      double sum = 0;
      for (int glyph : words.codePoints().map(glyphs::getGlyphId).toArray()) {
        sum += font.getAdvanceWidth(glyph);
      }
      return sum / unitsPerEm;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The outline of one line that begins at a place on its baseline. */
  synchronized GeneralPath outline(String words, double x, double baseline, double pixels) {
    try {
      GeneralPath all = new GeneralPath();
      double scale = pixels / unitsPerEm;
      double at = x;
      for (int glyph : words.codePoints().map(glyphs::getGlyphId).toArray()) {
        GlyphData data = font.getGlyph().getGlyph(glyph);
        if (data != null) {
          all.append(
              new AffineTransform(scale, 0, 0, -scale, at, baseline)
                  .createTransformedShape(data.getPath()),
              false);
        }
        at += font.getAdvanceWidth(glyph) * scale;
      }
      return all;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
