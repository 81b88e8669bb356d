package org.heatwright.app.qr;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import com.google.zxing.qrcode.encoder.QRCode;
import java.util.Map;
import java.util.Optional;

/**
 * A QR code as dark and light modules, error correction M: a seventh of its code words may be
 * unreadable. The margin that belongs around it, {@link #QUIET} light modules on each side, is not
 * in it.
 */
public final class QrSymbol {

  /** Light modules around a symbol, ISO/IEC 18004. */
  public static final int QUIET = 4;

  private final ByteMatrix modules;

  private QrSymbol(ByteMatrix modules) {
    this.modules = modules;
  }

  /**
   * The smallest symbol that holds a text.
   *
   * @param mostModules a side may have, the margin left out
   * @return empty if the text does not fit
   */
  public static Optional<QrSymbol> of(String text, int mostModules) {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    try {
      QRCode code = Encoder.encode(text, ErrorCorrectionLevel.M, Map.<EncodeHintType, Object>of());
      return code.getMatrix().getWidth() > mostModules
          ? Optional.empty()
          : Optional.of(new QrSymbol(code.getMatrix()));
    } catch (WriterException tooLong) {
      return Optional.empty();
    }
  }

  /** Modules along a side, the margin left out. */
  public int side() {
    return modules.getWidth();
  }

  /**
   * @param column from the left, 0 to {@link #side} - 1
   * @param row from the top, likewise
   */
  public boolean dark(int column, int row) {
    return modules.get(column, row) == 1;
  }
}
