package org.heatwright.app.web;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/**
 * Style sheets, scripts and pictures of the pages. They are few and small and are read once; the
 * web server's own way opens the whole program file anew and keeps its list of contents.
 */
final class PublicFiles {

  private static final Pattern NAME = Pattern.compile("[a-z0-9-]+\\.[a-z]+");
  private static final Map<String, String> TYPES =
      Map.of(
          "css", "text/css; charset=utf-8",
          "js", "text/javascript; charset=utf-8",
          "svg", "image/svg+xml; charset=utf-8",
          "png", "image/png");

  private final Map<String, byte[]> read = new ConcurrentHashMap<>();

  /** Answers with the file of the address. */
  void give(Context ctx) {
    String name = ctx.pathParam("file");
    String type = TYPES.get(name.substring(name.lastIndexOf('.') + 1));
    if (type == null || !NAME.matcher(name).matches()) {
      throw new NotFoundResponse("There is no such page here.");
    }
    ctx.contentType(type)
        .header("Cache-Control", "max-age=0")
        .result(read.computeIfAbsent(name, PublicFiles::bytes));
  }

  private static byte[] bytes(String name) {
    try (InputStream in = PublicFiles.class.getResourceAsStream("/public/" + name)) {
      if (in == null) {
        throw new NotFoundResponse("There is no such page here.");
      }
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException("A file of the bench's own cannot be read.", e);
    }
  }
}
