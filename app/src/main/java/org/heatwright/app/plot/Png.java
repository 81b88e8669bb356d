package org.heatwright.app.plot;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** A figure as a PNG picture, on a light ground, two picture points a pixel. */
public final class Png {

  static final int SCALE = 2;

  private Png() {}

  /** The picture's bytes. */
  public static byte[] of(Figure figure) {
    return of(figure.drawing());
  }

  /** The same of anything that is laid out. */
  public static byte[] of(Drawing drawing) {
    BufferedImage image =
        new BufferedImage(
            SCALE * drawing.width(), SCALE * drawing.height(), BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      graphics.scale(SCALE, SCALE);
      drawing.drawOn(new Picture(graphics));
    } finally {
      graphics.dispose();
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      if (!ImageIO.write(image, "png", out)) {
        throw new IllegalStateException("This Java cannot write PNG.");
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return bytes.toByteArray();
  }

  private record Picture(Graphics2D graphics) implements Canvas {

    @Override
    public void polygon(double[] xs, double[] ys, Look look) {
      Path2D path = path(xs, ys);
      path.closePath();
      graphics.setColor(colour(look.paint()));
      graphics.fill(path);
    }

    @Override
    public void polyline(double[] xs, double[] ys, Look look) {
      pen(look);
      graphics.draw(path(xs, ys));
    }

    @Override
    public void box(double x, double y, double width, double height, Look look) {
      Rectangle2D box = new Rectangle2D.Double(x, y, width, height);
      if (look.width() > 0) {
        pen(look);
        graphics.draw(box);
      } else {
        graphics.setColor(colour(look.paint()));
        graphics.fill(box);
      }
    }

    @Override
    public void boxes(double[] corners, Look look) {
      Path2D path = new Path2D.Double();
      for (int i = 0; i < corners.length; i += 4) {
        path.append(
            new Rectangle2D.Double(corners[i], corners[i + 1], corners[i + 2], corners[i + 3]),
            false);
      }
      graphics.setColor(colour(look.paint()));
      graphics.fill(path);
    }

    @Override
    public void dot(double x, double y, double radius, Look look) {
      Ellipse2D dot = new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
      boolean hollow = look == Look.HOLLOW;
      graphics.setColor(colour(hollow ? Paint.SHEET : look.paint()));
      graphics.fill(dot);
      if (hollow) {
        graphics.setColor(colour(look.paint()));
        graphics.setStroke(new BasicStroke((float) look.width()));
        graphics.draw(dot);
      }
    }

    @Override
    public void text(double x, double baseline, String words, Anchor anchor, Type type, Look look) {
      double width = Letters.width(words, type);
      double from =
          switch (anchor) {
            case START -> x;
            case MIDDLE -> x - width / 2;
            case END -> x - width;
          };
      graphics.setColor(colour(look.paint()));
      graphics.fill(Letters.of(type).outline(words, from, baseline, type.pixels()));
    }

    private void pen(Look look) {
      double[] dashes = look.dashes();
      float[] pattern = new float[dashes.length];
      for (int i = 0; i < dashes.length; i++) {
        pattern[i] = (float) dashes[i];
      }
      graphics.setColor(colour(look.paint()));
      graphics.setStroke(
          new BasicStroke(
              (float) look.width(),
              BasicStroke.CAP_BUTT,
              BasicStroke.JOIN_ROUND,
              1,
              pattern.length == 0 ? null : pattern,
              0));
    }

    private static Path2D path(double[] xs, double[] ys) {
      Path2D path = new Path2D.Double();
      path.moveTo(xs[0], ys[0]);
      for (int i = 1; i < xs.length; i++) {
        path.lineTo(xs[i], ys[i]);
      }
      return path;
    }

    private static Color colour(Paint paint) {
      int rgb = paint.light();
      return new Color(
          rgb >> 16 & 0xff,
          rgb >> 8 & 0xff,
          rgb & 0xff,
          (int) Math.round(255 * paint.lightOpacity()));
    }
  }
}
