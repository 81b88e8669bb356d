package org.heatwright.app.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A bench as a browser asks it, without one: pages, forms and files over HTTP, no script, redirects
 * not followed.
 */
record AskedBench(URI address) {

  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final String EDGE = "edge-of-the-parts";

  /** A file that goes with a form. */
  record SentFile(String field, String name, byte[] bytes) {}

  AskedBench(Bench bench) {
    this(bench.address());
  }

  /** A page; one that is still being worked out is waited for, as a person would. */
  HttpResponse<String> get(String path) throws IOException, InterruptedException {
    HttpResponse<String> answer = send(request(path));
    Optional<String> going = going(answer);
    for (int tries = 0; tries < 600 && going.isPresent(); tries++) {
      HttpResponse<String> looked = send(request(going.get()));
      if (looked.statusCode() == 302) {
        answer = send(request(path));
        going = going(answer);
      }
    }
    return answer;
  }

  /** Where to look again, if what was asked for is still being worked out. */
  static Optional<String> going(HttpResponse<String> answer) {
    return going(answer.headers().firstValue("Location"));
  }

  /** The same of where an answer leads to. */
  static Optional<String> going(Optional<String> leadsTo) {
    return leadsTo.filter(to -> to.contains("/going/"));
  }

  /** A page once nothing of it is still being worked out. */
  String settled(String path) throws IOException, InterruptedException {
    String page = get(path).body();
    for (int tries = 0; tries < 300 && page.contains("data-later"); tries++) {
      Thread.sleep(100);
      page = get(path).body();
    }
    return page;
  }

  HttpResponse<String> post(String path, Map<String, String> form)
      throws IOException, InterruptedException {
    return post(path, form(form));
  }

  /**
   * @param form as {@link #form} writes it
   */
  HttpResponse<String> post(String path, String form) throws IOException, InterruptedException {
    return send(
        request(path)
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(form)));
  }

  /** A form in parts, its fields and its files. */
  HttpResponse<String> post(String path, Map<String, String> fields, List<SentFile> files)
      throws IOException, InterruptedException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    for (SentFile file : files) {
      part(body, "name=\"%s\"; filename=\"%s\"".formatted(file.field(), file.name()), file.bytes());
    }
    fields.forEach(
        (name, value) ->
            part(body, "name=\"%s\"".formatted(name), value.getBytes(StandardCharsets.UTF_8)));
    body.writeBytes("--%s--\r\n".formatted(EDGE).getBytes(StandardCharsets.UTF_8));
    return send(
        request(path)
            .header("Content-Type", "multipart/form-data; boundary=" + EDGE)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray())));
  }

  private static void part(ByteArrayOutputStream body, String disposition, byte[] bytes) {
    body.writeBytes(
        "--%s\r\nContent-Disposition: form-data; %s\r\n\r\n"
            .formatted(EDGE, disposition)
            .getBytes(StandardCharsets.UTF_8));
    body.writeBytes(bytes);
    body.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
  }

  HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(address.resolve(path));
  }

  HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
    return CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  HttpResponse<byte[]> bytes(HttpRequest.Builder request) throws IOException, InterruptedException {
    return CLIENT.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
  }

  /** A form's fields as a browser sends them. */
  static String form(Map<String, String> fields) {
    return fields.entrySet().stream()
        .map(e -> encoded(e.getKey()) + "=" + encoded(e.getValue()))
        .collect(Collectors.joining("&"));
  }

  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
