package org.heatwright.sensing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** Rows of the reference tables; where they come from stands in PROVENANCE.md beside them. */
public final class Reference {

  private Reference() {}

  public static List<String[]> rows(String file) {
    try (InputStream in = Reference.class.getResourceAsStream("/reference/" + file)) {
      return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(1)
          .map(line -> line.split(",", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
