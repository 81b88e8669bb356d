package org.heatwright.app.firings;

import java.util.Arrays;
import java.util.Optional;

/** Tells pictures by how they begin, whatever their name says. */
final class Pictures {

  private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
  private static final byte[] RIFF = {'R', 'I', 'F', 'F'};
  private static final byte[] WEBP = {'W', 'E', 'B', 'P'};

  private Pictures() {}

  /** "image/jpeg" and the like; empty if it is none that browsers show. */
  static Optional<String> mediaType(byte[] picture) {
    if (picture.length > 3
        && picture[0] == (byte) 0xff
        && picture[1] == (byte) 0xd8
        && picture[2] == (byte) 0xff) {
      return Optional.of("image/jpeg");
    }
    if (begins(picture, 0, PNG)) {
      return Optional.of("image/png");
    }
    return begins(picture, 0, RIFF) && begins(picture, 8, WEBP)
        ? Optional.of("image/webp")
        : Optional.empty();
  }

  private static boolean begins(byte[] picture, int from, byte[] sign) {
    return picture.length >= from + sign.length
        && Arrays.equals(picture, from, from + sign.length, sign, 0, sign.length);
  }
}
