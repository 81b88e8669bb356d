package org.heatwright.app.qr;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.heatwright.app.files.InputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QrFinderTest {

  private static final String SHORT =
      "HEATWRIGHT:1:HARBOUR-BURNOUT:C:120/150/120*150/370/120*180/720/150*F/500/180:210:KEEP:AEF7EE7F";

  /** About as much as the largest code on a card holds. */
  private static final String LONG = "HEATWRIGHT:1:" + "120/1500/120*".repeat(27);

  private static String find(byte[] file) {
    return QrFinder.text(file, "photo.jpg", text -> text.startsWith("HEATWRIGHT:"));
  }

  /**
   * A photograph as phones take them: a page with the code on it, turned and seen from a side, out
   * of focus, with noise of the camera, a shadow, and JPEG's losses. Pixels a module, turn in
   * degrees, perspective (how much shorter the far edge is), blur in modules (sigma), noise in grey
   * levels (sigma) and shadow (share of light lost at the dark side) are our estimate of what is
   * usual and a little worse.
   */
  @ParameterizedTest
  @CsvSource({
    "6.0,   0, 0.00, 0.0,  0, 0.0",
    "6.0,  17, 0.00, 0.2,  5, 0.2",
    "4.0, 188, 0.05, 0.2,  6, 0.3",
    "8.0,  95, 0.08, 0.3, 10, 0.5",
    "12.0, -8, 0.10, 0.3, 12, 0.4",
    "3.0,   3, 0.03, 0.2,  8, 0.3",
    "9.0, 271, 0.10, 0.3,  8, 0.6",
    "16.0, 20, 0.06, 0.3, 14, 0.5",
  })
  void aPhotographIsRead(
      double module, double turn, double perspective, double blur, double noise, double shadow)
      throws IOException {
    for (String text : new String[] {SHORT, LONG}) {
      QrSymbol symbol = QrSymbol.of(text, 67).orElseThrow();
      BufferedImage photo =
          photo(symbol, module, Math.toRadians(turn), perspective, blur, noise, shadow);
      assertThat(find(jpeg(photo))).isEqualTo(text);
    }
  }

  /** One seen through a pinhole: every pixel of the photo asks the page what lies there. */
  private static BufferedImage photo(
      QrSymbol symbol,
      double module,
      double turn,
      double perspective,
      double blur,
      double noise,
      double shadow) {
    int modules = symbol.side() + 2 * QrSymbol.QUIET;
    int side = (int) (modules * module * 1.8);
    double[] light = new double[side * side];
    double reach = modules * module / 2;
    int samples = 3;
    for (int y = 0; y < side; y++) {
      for (int x = 0; x < side; x++) {
        double sum = 0;
        for (int i = 0; i < samples * samples; i++) {
          double px = x + (i % samples + 0.5) / samples - side / 2.0;
          double py = y + (i / samples + 0.5) / samples - side / 2.0;
          double depth = 1 + perspective * py / reach;
          double u = (px * Math.cos(turn) + py * Math.sin(turn)) / depth / module + modules / 2.0;
          double v = (-px * Math.sin(turn) + py * Math.cos(turn)) / depth / module + modules / 2.0;
          int column = (int) Math.floor(u) - QrSymbol.QUIET;
          int row = (int) Math.floor(v) - QrSymbol.QUIET;
          boolean in = column >= 0 && row >= 0 && column < symbol.side() && row < symbol.side();
          boolean text = u < -4 && Math.floorMod((int) v, 5) < 2 && (int) (u * 2) % 3 != 0;
          sum += in && symbol.dark(column, row) || !in && text ? 35 : 225;
        }
        light[y * side + x] = sum / (samples * samples) * (1 - shadow * x / side);
      }
    }
    light = blurred(light, side, blur * module);
    Random random = new Random(side);
    BufferedImage photo = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < light.length; i++) {
      int grey = (int) Math.max(0, Math.min(255, light[i] + noise * random.nextGaussian()));
      photo.setRGB(i % side, i / side, grey << 16 | grey << 8 | Math.max(0, grey - 15));
    }
    return photo;
  }

  private static double[] blurred(double[] light, int side, double sigma) {
    if (sigma == 0) {
      return light;
    }
    int reach = (int) Math.ceil(3 * sigma);
    double[] weight = new double[2 * reach + 1];
    Arrays.setAll(weight, i -> Math.exp(-(i - reach) * (i - reach) / (2 * sigma * sigma)));
    double[] at = light;
    for (int axis = 0; axis < 2; axis++) {
      double[] next = new double[at.length];
      for (int y = 0; y < side; y++) {
        for (int x = 0; x < side; x++) {
          double sum = 0;
          double weights = 0;
          for (int k = -reach; k <= reach; k++) {
            int xx = axis == 0 ? x + k : x;
            int yy = axis == 0 ? y : y + k;
            if (xx >= 0 && yy >= 0 && xx < side && yy < side) {
              sum += weight[k + reach] * at[yy * side + xx];
              weights += weight[k + reach];
            }
          }
          next[y * side + x] = sum / weights;
        }
      }
      at = next;
    }
    return at;
  }

  private static byte[] jpeg(BufferedImage picture) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageWriteParam param = writer.getDefaultWriteParam();
    param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    param.setCompressionQuality(0.7f);
    writer.setOutput(ImageIO.createImageOutputStream(bytes));
    writer.write(null, new IIOImage(picture, null, null), param);
    ((javax.imageio.stream.ImageOutputStream) writer.getOutput()).flush();
    writer.dispose();
    return bytes.toByteArray();
  }

  private static byte[] png(BufferedImage picture) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(picture, "png", bytes);
    return bytes.toByteArray();
  }

  private static BufferedImage paper(int width, int height, int type) {
    BufferedImage paper = new BufferedImage(width, height, type);
    Graphics2D pen = paper.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, width, height);
    pen.dispose();
    return paper;
  }

  private static void print(BufferedImage paper, String text, int x, int y, int module) {
    QrSymbol symbol = QrSymbol.of(text, 177).orElseThrow();
    Graphics2D pen = paper.createGraphics();
    pen.setColor(Color.BLACK);
    for (int row = 0; row < symbol.side(); row++) {
      for (int column = 0; column < symbol.side(); column++) {
        if (symbol.dark(column, row)) {
          pen.fillRect(x + column * module, y + row * module, module, module);
        }
      }
    }
    pen.dispose();
  }

  @Test
  void ofTwoCodesOursIsTaken() throws IOException {
    BufferedImage paper = paper(700, 300, BufferedImage.TYPE_INT_RGB);
    print(paper, "SOMETHING ELSE 123", 40, 60, 5);
    print(paper, SHORT, 400, 60, 4);
    assertThat(find(png(paper))).isEqualTo(SHORT);
  }

  @Test
  void aCodeOfOthersAloneIsHandedOnToBeTold() throws IOException {
    BufferedImage paper = paper(300, 300, BufferedImage.TYPE_INT_RGB);
    print(paper, "SOMETHING ELSE 123", 40, 60, 5);
    assertThat(find(png(paper))).isEqualTo("SOMETHING ELSE 123");
  }

  @Test
  void aStainOverASmallPartDoesNotMatter() throws IOException {
    BufferedImage paper = paper(400, 400, BufferedImage.TYPE_INT_RGB);
    print(paper, SHORT, 60, 60, 6);
    Graphics2D pen = paper.createGraphics();
    pen.setStroke(new BasicStroke(8));
    pen.setColor(new Color(120, 80, 40));
    pen.drawOval(150, 130, 60, 50);
    pen.dispose();
    assertThat(find(png(paper))).isEqualTo(SHORT);
  }

  @Test
  void aClearBackgroundCountsAsPaperAndAHugePictureIsRead() throws IOException {
    BufferedImage clear = new BufferedImage(400, 400, BufferedImage.TYPE_INT_ARGB);
    print(clear, SHORT, 60, 60, 6);
    assertThat(find(png(clear))).isEqualTo(SHORT);
    BufferedImage huge = paper(7000, 5000, BufferedImage.TYPE_BYTE_GRAY);
    print(huge, SHORT, 3000, 2000, 24);
    assertThat(find(png(huge))).isEqualTo(SHORT);
  }

  private static void refused(byte[] file, String message) {
    assertThatThrownBy(() -> find(file))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(message)
        .hasMessageMatching("photo\\.jpg: [^\\n]*\\.");
  }

  @Test
  void whatHoldsNoCodeIsToldInOneSentence() throws IOException {
    refused(new byte[0], "neither a PNG or JPEG picture nor a PDF");
    refused("name: x\n".getBytes(StandardCharsets.UTF_8), "neither a PNG or JPEG picture");
    refused("%PDF-1.7 and nothing".getBytes(StandardCharsets.UTF_8), "the PDF cannot be read");
    byte[] photo = png(paper(300, 300, BufferedImage.TYPE_INT_RGB));
    refused(photo, "no QR code can be read");
    refused(java.util.Arrays.copyOf(photo, 40), "the picture cannot be read");
    refused(jpegHeader(), "the picture cannot be read");
    refused(new byte[QrFinder.MOST_BYTES + 1], "expected a picture of at most");
  }

  private static byte[] jpegHeader() {
    return new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff, (byte) 0xe0, 0, 16, 'J', 'F'};
  }

  @Test
  void aLockedPdfIsTold() throws IOException {
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage());
      document.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission()));
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      refused(bytes.toByteArray(), "locked by a password");
    }
  }

  @Test
  void aTextThatDoesNotFitHasNoSymbol() {
    assertThat(QrSymbol.of("A".repeat(420), 67)).isEmpty();
    assertThat(QrSymbol.of("A".repeat(5000), 177)).isEmpty();
    assertThat(QrSymbol.of("", 177)).isEmpty();
    assertThat(QrSymbol.of(SHORT, 67).orElseThrow().side()).isLessThanOrEqualTo(37);
  }
}
