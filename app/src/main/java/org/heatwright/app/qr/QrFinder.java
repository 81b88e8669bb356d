package org.heatwright.app.qr;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.ReaderException;
import com.google.zxing.Result;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.encryption.InvalidPasswordException;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.heatwright.app.files.InputException;

/**
 * Finds QR codes in a photograph (PNG or JPEG) or on the first pages of a PDF. A picture is looked
 * at in several sizes, softened, and with two ways of telling dark from light: a camera's noise
 * hides modules at full size, and a small code far away is gone in a small copy.
 */
public final class QrFinder {

  /** More than any phone's photograph. */
  public static final int MOST_BYTES = 40 << 20;

  /** A larger picture is read with rows and columns left out. */
  private static final long MOST_PIXELS = 16_000_000;

  /** Wider or higher is no photograph. */
  private static final int LONGEST_SIDE = 40_000;

  /** Sizes to look at, pixels of the longer side: ours, found by trying. */
  private static final int[] SIDES = {1600, 1000, 650};

  private static final int LARGEST = 2600;

  /** What is smaller is looked at enlarged as well. */
  private static final int SMALL = 900;

  private static final int SOFTEST = 2;
  private static final int PAGES = 5;
  private static final float DOTS_PER_INCH = 220;
  private static final float POINTS_PER_INCH = 72;

  private static final Map<DecodeHintType, Object> HINTS = Map.of(DecodeHintType.TRY_HARDER, true);

  private QrFinder() {}

  /**
   * The text of a QR code in a file.
   *
   * @param wanted which texts are looked for, should there be several codes
   * @return the first text that is wanted; if there is none, any text that was found
   * @throws InputException in one sentence: no picture or PDF, or no code to be found
   */
  public static String text(byte[] file, String fileName, Predicate<String> wanted) {
    if (file.length > MOST_BYTES) {
      throw InputException.in(
          fileName,
          "the file has %d bytes; expected a picture of at most %d."
              .formatted(file.length, MOST_BYTES));
    }
    Set<String> seen = new LinkedHashSet<>();
    if (startsWith(file, "%PDF-")) {
      lookAtPages(file, fileName, wanted, seen);
    } else if (startsWith(file, "\u0089PNG") || startsWith(file, "\u00ff\u00d8\u00ff")) {
      look(picture(file, fileName), wanted, seen);
    } else {
      throw InputException.in(
          fileName, "this is neither a PNG or JPEG picture nor a PDF; expected one of these.");
    }
    return seen.stream()
        .filter(wanted)
        .findFirst()
        .or(() -> seen.stream().findFirst())
        .orElseThrow(
            () ->
                InputException.in(
                    fileName,
                    "no QR code can be read in it; photograph the code from straight above, sharp,"
                        + " evenly lit, with all of its white margin, so that it fills about half"
                        + " the picture."));
  }

  private static boolean startsWith(byte[] file, String start) {
    int length = Math.min(file.length, start.length());
    return new String(file, 0, length, StandardCharsets.ISO_8859_1).equals(start);
  }

  private static void lookAtPages(
      byte[] file, String fileName, Predicate<String> wanted, Set<String> seen) {
    try (PDDocument document = Loader.loadPDF(file)) {
      PDFRenderer renderer = new PDFRenderer(document);
      for (int page = 0; page < Math.min(PAGES, document.getNumberOfPages()); page++) {
        PDRectangle box = document.getPage(page).getCropBox();
        double inches = box.getWidth() * box.getHeight() / Math.pow(POINTS_PER_INCH, 2);
        float dots = (float) Math.min(DOTS_PER_INCH, Math.sqrt(MOST_PIXELS / Math.max(inches, 1)));
        look(renderer.renderImageWithDPI(page, dots, ImageType.GRAY), wanted, seen);
        if (seen.stream().anyMatch(wanted)) {
          return;
        }
      }
    } catch (InvalidPasswordException e) {
      throw InputException.in(
          fileName, "the PDF is locked by a password; give one that opens without.");
    } catch (IOException | RuntimeException e) {
      throw broken(fileName, "PDF", e);
    }
  }

  private static BufferedImage picture(byte[] file, String fileName) {
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(file))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        throw new IIOException("no reader");
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        int width = reader.getWidth(0);
        int height = reader.getHeight(0);
        if (width > LONGEST_SIDE || height > LONGEST_SIDE) {
          throw InputException.in(
              fileName,
              "the picture is %d by %d pixels; expected at most %d a side."
                  .formatted(width, height, LONGEST_SIDE));
        }
        int every = (int) Math.ceil(Math.sqrt((double) width * height / MOST_PIXELS));
        ImageReadParam param = reader.getDefaultReadParam();
        param.setSourceSubsampling(Math.max(1, every), Math.max(1, every), 0, 0);
        return reader.read(0, param);
      } finally {
        reader.dispose();
      }
    } catch (InputException e) {
      throw e;
    } catch (IOException | RuntimeException e) {
      throw broken(fileName, "picture", e);
    }
  }

  private static InputException broken(String fileName, String what, Exception e) {
    return InputException.in(
        fileName,
        "the %s cannot be read (%s); save it again as PNG or JPEG."
            .formatted(what, e.getClass().getSimpleName()));
  }

  /** Adds every text that is found, until one is wanted. */
  private static void look(BufferedImage picture, Predicate<String> wanted, Set<String> seen) {
    int longest = Math.max(picture.getWidth(), picture.getHeight());
    List<Integer> sides = new ArrayList<>(List.of(Math.min(longest, LARGEST)));
    for (int side : SIDES) {
      if (side < longest) {
        sides.add(side);
      }
    }
    sides.add(longest < SMALL ? longest * 3 / 2 : longest * 2 / 3);
    for (int side : sides) {
      BufferedImage copy = side == longest ? onWhite(picture) : resized(picture, side);
      for (int soft = 0; soft <= SOFTEST; soft++) {
        lookAt(light(copy, soft), wanted, seen);
        if (seen.stream().anyMatch(wanted)) {
          return;
        }
      }
    }
  }

  private static void lookAt(LuminanceSource light, Predicate<String> wanted, Set<String> seen) {
    for (BinaryBitmap bitmap :
        List.of(
            new BinaryBitmap(new HybridBinarizer(light)),
            new BinaryBitmap(new GlobalHistogramBinarizer(light)))) {
      try {
        seen.add(new QRCodeReader().decode(bitmap, HINTS).getText());
      } catch (ReaderException noneSeen) {
        // the next way of looking may
      }
      if (seen.stream().anyMatch(wanted)) {
        return;
      }
      try {
        for (Result found : new QRCodeMultiReader().decodeMultiple(bitmap, HINTS)) {
          seen.add(found.getText());
        }
      } catch (ReaderException noneSeen) {
        // likewise
      }
      if (seen.stream().anyMatch(wanted)) {
        return;
      }
    }
  }

  /** How light each pixel is: the mean of those at most {@code soft} columns or rows away. */
  private static LuminanceSource light(BufferedImage picture, int soft) {
    int width = picture.getWidth();
    int height = picture.getHeight();
    int[] pixels = picture.getRGB(0, 0, width, height, null, 0, width);
    if (soft == 0) {
      return new RGBLuminanceSource(width, height, pixels);
    }
    long[] sums = new long[(width + 1) * (height + 1)];
    for (int y = 0; y < height; y++) {
      long row = 0;
      for (int x = 0; x < width; x++) {
        int rgb = pixels[y * width + x];
        row += ((rgb >> 16 & 0xff) + 2 * (rgb >> 8 & 0xff) + (rgb & 0xff)) / 4;
        sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1] + row;
      }
    }
    for (int y = 0; y < height; y++) {
      int top = Math.max(0, y - soft) * (width + 1);
      int bottom = Math.min(height, y + soft + 1) * (width + 1);
      for (int x = 0; x < width; x++) {
        int left = Math.max(0, x - soft);
        int right = Math.min(width, x + soft + 1);
        long sum =
            sums[bottom + right] - sums[bottom + left] - sums[top + right] + sums[top + left];
        int grey = (int) (sum / ((long) (right - left) * (bottom - top) / (width + 1)));
        pixels[y * width + x] = grey << 16 | grey << 8 | grey;
      }
    }
    return new RGBLuminanceSource(width, height, pixels);
  }

  private static BufferedImage onWhite(BufferedImage picture) {
    return picture.getTransparency() == BufferedImage.OPAQUE
        ? picture
        : drawn(picture, picture.getWidth(), picture.getHeight());
  }

  /** Halved until it is near the size, so that no pixel is passed over. */
  private static BufferedImage resized(BufferedImage picture, int side) {
    BufferedImage at = picture;
    int longest = Math.max(at.getWidth(), at.getHeight());
    while (longest > 2 * side) {
      at = drawn(at, at.getWidth() / 2, at.getHeight() / 2);
      longest = Math.max(at.getWidth(), at.getHeight());
    }
    double scale = (double) side / longest;
    return drawn(
        at,
        Math.max(1, (int) Math.round(at.getWidth() * scale)),
        Math.max(1, (int) Math.round(at.getHeight() * scale)));
  }

  private static BufferedImage drawn(BufferedImage picture, int width, int height) {
    BufferedImage copy =
        new BufferedImage(Math.max(1, width), Math.max(1, height), BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = copy.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    pen.setBackground(java.awt.Color.WHITE);
    pen.clearRect(0, 0, copy.getWidth(), copy.getHeight());
    pen.drawImage(picture, 0, 0, copy.getWidth(), copy.getHeight(), null);
    pen.dispose();
    return copy;
  }
}
