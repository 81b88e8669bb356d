package org.heatwright.app.files;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Text from disk: UTF-8 or a sentence that says why not. */
public final class TextFile {

  /** A hand-written file is far below this; what is above it was handed in by mistake. */
  public static final int MAX_YAML_BYTES = 1 << 20;

  /** A fortnight of a log at one row a second is below this. */
  public static final int MAX_LOG_BYTES = 64 << 20;

  private TextFile() {}

  /** The text of a YAML file. */
  public static String yaml(Path path) {
    return read(path, MAX_YAML_BYTES);
  }

  /** The text of a log. */
  public static String log(Path path) {
    return read(path, MAX_LOG_BYTES);
  }

  /** A log as it is, whatever its letters are stored as. */
  public static byte[] logBytes(Path path) {
    return bytes(path, MAX_LOG_BYTES);
  }

  private static String read(Path path, int maxBytes) {
    return decode(bytes(path, maxBytes), String.valueOf(path.getFileName()));
  }

  private static byte[] bytes(Path path, int maxBytes) {
    String name = String.valueOf(path.getFileName());
    if (!Files.exists(path)) {
      throw InputException.in(
          path.toString(), "there is no such file; give the path of a file that exists.");
    }
    if (!Files.isRegularFile(path)) {
      throw InputException.in(path.toString(), "this is not a file; give the path of a file.");
    }
    try {
      if (Files.size(path) > maxBytes) {
        throw InputException.in(
            name,
            "the file has %d bytes; expected at most %d, so this is probably the wrong file."
                .formatted(Files.size(path), maxBytes));
      }
      return Files.readAllBytes(path);
    } catch (IOException e) {
      throw InputException.in(
          path.toString(), "the file cannot be read (%s).".formatted(e.getClass().getSimpleName()));
    }
  }

  /** The text of those bytes, without a byte order mark. */
  public static String decode(byte[] bytes, String fileName) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw InputException.at(
          fileName,
          lineOfFirstBadByte(bytes),
          "the text is not UTF-8; save the file as UTF-8 and try again.");
    }
  }

  private static int lineOfFirstBadByte(byte[] bytes) {
    var decoder = StandardCharsets.UTF_8.newDecoder();
    ByteBuffer in = ByteBuffer.wrap(bytes);
    decoder.decode(in, java.nio.CharBuffer.allocate(bytes.length + 1), true);
    int line = 1;
    for (int i = 0; i < in.position(); i++) {
      line += bytes[i] == '\n' ? 1 : 0;
    }
    return line;
  }
}
