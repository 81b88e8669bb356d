package org.heatwright.app.cli;

import java.nio.file.Path;

/** Files of the demo studio. */
final class Studio {

  private static final Path DEMO = Path.of("src", "main", "resources", "demo");

  private Studio() {}

  static Path kiln(String name) {
    return DEMO.resolve("kilns").resolve(name + ".yaml");
  }

  static Path keypad(String name) {
    return DEMO.resolve("keypads").resolve(name + ".yaml");
  }

  static Path work(String name) {
    return DEMO.resolve("works").resolve(name + ".yaml");
  }

  static Path schedule(String name) {
    return DEMO.resolve("schedules").resolve(name + ".yaml");
  }
}
