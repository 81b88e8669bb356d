package org.heatwright.app.logs;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.TextFile;

/** The text of a file and how its letters were stored. */
record Decoded(String text, Decision decision) {

  private static final int LOOKED_AT_BYTES = 4096;

  static Decoded of(byte[] bytes, String fileName, Optional<String> told) {
    refuseWhatIsNoText(bytes, fileName);
    Decision decision =
        told.map(
                word ->
                    new Decision(Topic.ENCODING, word, Sureness.TOLD, "You said so.", List.of()))
            .orElseGet(() -> recognised(bytes));
    String text = decode(bytes, charset(decision.word()), fileName, decision);
    text = text.startsWith("\uFEFF") ? text.substring(1) : text;
    int line = 1;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      line += c == '\n' ? 1 : 0;
      if (c < ' ' && c != '\n' && c != '\r' && c != '\t' && c != '\f' && c != 0x1a) {
        throw InputException.at(
            fileName,
            line,
            "the file holds a byte %d there, which no text does; expected a table as text (CSV)."
                .formatted((int) c));
      }
    }
    if (text.isBlank()) {
      throw InputException.in(
          fileName, "the file is empty; expected a row for every reading, with its time.");
    }
    return new Decoded(text, decision);
  }

  private static void refuseWhatIsNoText(byte[] bytes, String fileName) {
    if (bytes.length > TextFile.MAX_LOG_BYTES) {
      throw InputException.in(
          fileName,
          "the file has %d bytes; expected at most %d, so this is probably the wrong file."
              .formatted(bytes.length, TextFile.MAX_LOG_BYTES));
    }
    String start = new String(bytes, 0, Math.min(bytes.length, 8), StandardCharsets.ISO_8859_1);
    if (start.startsWith("PK") || start.startsWith("\u00d0\u00cf\u0011\u00e0")) {
      throw InputException.in(
          fileName,
          "this is a workbook or an archive, not text; save its table as CSV and give that.");
    }
    if (start.startsWith("%PDF")
        || start.startsWith("\u0089PNG")
        || start.startsWith("\u00ff\u00d8")) {
      throw InputException.in(
          fileName, "this is a picture or a PDF, not text; expected a table as text (CSV).");
    }
  }

  private static Decision recognised(byte[] bytes) {
    if (starts(bytes, 0xff, 0xfe)) {
      return sure("utf-16le", "The file begins with the mark of UTF-16.");
    }
    if (starts(bytes, 0xfe, 0xff)) {
      return sure("utf-16be", "The file begins with the mark of UTF-16.");
    }
    if (starts(bytes, 0xef, 0xbb, 0xbf)) {
      return sure("utf-8", "The file begins with the mark of UTF-8.");
    }
    int looked = Math.min(bytes.length, LOOKED_AT_BYTES) / 2 * 2;
    int even = 0;
    int odd = 0;
    for (int i = 0; i < looked; i += 2) {
      even += bytes[i] == 0 ? 1 : 0;
      odd += bytes[i + 1] == 0 ? 1 : 0;
    }
    if (looked > 0 && Math.max(even, odd) > looked / 5) {
      return new Decision(
          Topic.ENCODING,
          odd > even ? "utf-16le" : "utf-16be",
          Sureness.LIKELY,
          "Every other byte is zero, as in UTF-16; a mark that says so is missing.",
          List.of());
    }
    boolean plain = true;
    for (byte b : bytes) {
      plain &= b >= 0;
    }
    if (plain) {
      return sure("utf-8", "All letters are plain; every encoding says the same.");
    }
    return isUtf8(bytes)
        ? sure("utf-8", "All its bytes make sense as UTF-8.")
        : new Decision(
            Topic.ENCODING,
            "latin-1",
            Sureness.LIKELY,
            "The bytes make no sense as UTF-8; most other western files are Latin-1.",
            List.of());
  }

  private static Decision sure(String word, String why) {
    return new Decision(Topic.ENCODING, word, Sureness.SURE, why, List.of());
  }

  private static boolean starts(byte[] bytes, int... mark) {
    for (int i = 0; i < mark.length; i++) {
      if (i >= bytes.length || (bytes[i] & 0xff) != mark[i]) {
        return false;
      }
    }
    return true;
  }

  private static boolean isUtf8(byte[] bytes) {
    try {
      StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
      return true;
    } catch (CharacterCodingException e) {
      return false;
    }
  }

  private static Charset charset(String word) {
    return switch (word) {
      case "utf-16le" -> StandardCharsets.UTF_16LE;
      case "utf-16be" -> StandardCharsets.UTF_16BE;
      case "latin-1" -> Charset.forName("windows-1252");
      default -> StandardCharsets.UTF_8;
    };
  }

  private static String decode(byte[] bytes, Charset charset, String fileName, Decision decision) {
    if (decision.word().equals("latin-1")) {
      return new String(bytes, charset); // a few bytes mean nothing in it; they become marks
    }
    try {
      return charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw InputException.in(
          fileName,
          "the text is not whole in %s (%d bytes); copy the file again, or say encoding=latin-1."
              .formatted(decision.word(), bytes.length));
    }
  }
}
