package org.heatwright.app.web;

import io.javalin.http.Context;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** What a request asks, as the desks take it: the first value of each field, as typed. */
final class Asked {

  private Asked() {}

  /** A field of the address; empty text without it. */
  static String query(Context ctx, String name) {
    return Optional.ofNullable(ctx.queryParam(name)).orElse("");
  }

  /** The plan's choices that stand in the address. */
  static Choices choices(Context ctx) {
    Map<String, String> fields = new LinkedHashMap<>();
    ctx.queryParamMap().forEach((name, values) -> fields.put(name, values.get(0)));
    return Choices.of(fields);
  }

  /** Path and query, as they were asked for. */
  static String address(Context ctx) {
    return ctx.path() + Optional.ofNullable(ctx.queryString()).map(q -> "?" + q).orElse("");
  }

  /**
   * The page of this bench that led here; empty if none did, or only one that was shown meanwhile.
   */
  static Optional<String> cameFrom(Context ctx) {
    String own = "http://" + ctx.header("Host") + "/";
    return Optional.ofNullable(ctx.header("Referer"))
        .filter(page -> page.startsWith(own))
        .map(page -> page.substring(own.length() - 1))
        .filter(path -> !path.startsWith("/going/"));
  }

  /** The fields of a query, without the sign before it. */
  static Map<String, String> fields(String query) {
    Map<String, String> fields = new LinkedHashMap<>();
    for (String pair : query.split("&", -1)) {
      int equals = pair.indexOf('=');
      if (equals > 0) {
        fields.put(
            URLDecoder.decode(pair.substring(0, equals), StandardCharsets.UTF_8),
            URLDecoder.decode(pair.substring(equals + 1), StandardCharsets.UTF_8));
      }
    }
    return fields;
  }

  /** The fields of a form. */
  static Map<String, String> form(Context ctx) {
    Map<String, String> fields = new LinkedHashMap<>();
    ctx.formParamMap()
        .forEach((name, values) -> values.stream().findFirst().ifPresent(v -> fields.put(name, v)));
    return fields;
  }
}
