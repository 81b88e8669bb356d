package org.heatwright.app.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;

/** Puts the Quayside Bench on the shelf: three kilns, three keypads and the week's work. */
public final class DemoStudio {

  private static final List<String> KILNS = List.of("anchor", "buoy", "capstan");
  private static final List<String> KEYPADS = List.of("tern", "gull", "heron");

  private DemoStudio() {}

  /** Fills the store; what is there already under the same names becomes an earlier text. */
  public static void fill(Store store) {
    KILNS.forEach(name -> keep(store, Kind.KILN, "kilns/" + name));
    KEYPADS.forEach(name -> keep(store, Kind.KEYPAD, "keypads/" + name));
  }

  private static void keep(Store store, Kind kind, String path) {
    String name = path.substring(path.indexOf('/') + 1);
    String shelfName = Character.toUpperCase(name.charAt(0)) + name.substring(1);
    store.keep(kind, shelfName, text("/demo/" + path + ".yaml"));
  }

  private static String text(String resource) {
    try (InputStream in = DemoStudio.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("The demo studio lacks " + resource + ".");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
