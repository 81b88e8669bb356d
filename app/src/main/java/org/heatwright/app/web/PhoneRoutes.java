package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.json.Json;
import org.heatwright.pocket.PageScript;
import org.jspecify.annotations.Nullable;

/**
 * What makes a phone keep the bench: the manifest, the worker that keeps pages for when the network
 * drops, and the page that stands where nothing was kept. Safe for use from several threads.
 */
final class PhoneRoutes {

  /** What pages that are kept need, each once; the rest of the bench needs the network. */
  static final List<String> SHELL =
      List.of(
          "/colours.css",
          "/bench.css",
          "/places.css",
          "/curves.css",
          "/timer.css",
          "/pocket.css",
          "/keep.js",
          "/again.js",
          "/say.js",
          "/languages/words.js",
          "/bench.js",
          "/curves.js",
          "/now.js",
          "/timer.js",
          "/offline.js",
          "/pocket.js",
          "/pocket-core.js",
          "/icon.svg",
          "/icon-192.png",
          "/manifest.webmanifest",
          "/offline");

  private static final String CORE = "/pocket-core.js";

  private final Pages pages;
  private @Nullable String worker;

  PhoneRoutes(Pages pages) {
    this.pages = pages;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/worker.js", this::worker);
    routes.get("/manifest.webmanifest", PhoneRoutes::manifest);
    routes.get("/offline", ctx -> ctx.html(pages.offline(new OfflinePage(""))));
  }

  private static void manifest(Context ctx) {
    ctx.contentType("application/manifest+json")
        .result(new String(resource("/phone/manifest.json").orElseThrow(), StandardCharsets.UTF_8));
  }

  /** As the worker's script has it in its first line. */
  private record Bench(String version, List<String> shell) {}

  /** Worked out when it is first asked for: a bench without a browser does not need it. */
  private synchronized void worker(Context ctx) {
    if (worker == null) {
      String script =
          new String(resource("/phone/worker.js").orElseThrow(), StandardCharsets.UTF_8);
      worker = script.replace("\"__BENCH__\"", Json.inPage(new Bench(fingerprint(script), SHELL)));
    }
    ctx.contentType("text/javascript; charset=utf-8").result(worker);
  }

  /** Other files, another fingerprint: what an older build left is thrown away. */
  private static String fingerprint(String script) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      digest.update(script.getBytes(StandardCharsets.UTF_8));
      for (String name : SHELL) {
        if (name.equals(CORE)) {
          digest.update(PageScript.core().getBytes(StandardCharsets.UTF_8));
        } else {
          resource("/public" + name).ifPresent(digest::update);
        }
      }
      return HexFormat.of().formatHex(digest.digest(), 0, 8);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("This Java knows no SHA-256.", e);
    }
  }

  private static Optional<byte[]> resource(String name) {
    try (InputStream in = PhoneRoutes.class.getResourceAsStream(name)) {
      return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
