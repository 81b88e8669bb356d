package org.heatwright.app.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import org.heatwright.app.files.InputException;
import org.heatwright.app.plot.Drawing;
import org.heatwright.app.plot.Figure;
import org.heatwright.app.plot.Png;
import org.heatwright.app.plot.Svg;

/** A file that a plot is written to; its ending says in which form. */
final class PlotFile {

  private PlotFile() {}

  /** Refuses, before anything is worked out, what could not be written. */
  static void require(Path path) {
    Output.requireReplaceable(path, kind(path));
  }

  /**
   * Writes a plot.
   *
   * @return one sentence that says so
   */
  static String write(Path path, Figure figure) {
    return write(path, figure.drawing());
  }

  /** The same of anything that is laid out. */
  static String write(Path path, Drawing drawing) {
    Output.Kind kind = kind(path);
    byte[] bytes =
        kind == Output.Kind.PNG
            ? Png.of(drawing)
            : Svg.file(drawing).getBytes(StandardCharsets.UTF_8);
    return Output.write(path, kind, bytes);
  }

  private static Output.Kind kind(Path path) {
    String name = path.toString().toLowerCase(Locale.ROOT);
    if (name.endsWith(".svg")) {
      return Output.Kind.SVG;
    }
    if (name.endsWith(".png")) {
      return Output.Kind.PNG;
    }
    throw InputException.in(
        path.toString(),
        "a plot is drawn as SVG or PNG; expected a name that ends in .svg or .png.");
  }
}
