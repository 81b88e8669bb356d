package org.heatwright.app.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.ShelfText;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.json.Json;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;

/** What the API answers to. Safe for use from several threads. */
public final class ApiRoutes {

  private static final ObjectMapper READER = new ObjectMapper();
  private static final String JSON = "application/json; charset=utf-8";

  private final Commands commands;
  private final Store store;
  private final FiringBook book;
  private final Supplier<Map<String, Endpoint>> endpoints;
  private final Supplier<String> description;

  /** Commands compute; more at once would only make each wait, and the pages with them. */
  private final Semaphore atOnce = new Semaphore(2, true);

  /**
   * @param commands that are asked
   * @param store the bench's own
   */
  public ApiRoutes(Commands commands, Store store, Clock clock) {
    this.commands = commands;
    this.store = store;
    this.book = new FiringBook(store, clock);
    this.endpoints = Once.of(() -> byPath(commands));
    this.description = Once.of(() -> described(endpoints.get().values()));
  }

  private static Map<String, Endpoint> byPath(Commands commands) {
    return Endpoint.all(commands.root()).stream()
        .collect(Collectors.toMap(Endpoint::path, Function.identity()));
  }

  /** Adds them to the server's. */
  public void addTo(RoutesConfig routes) {
    routes.get(
        OpenApi.ROOT + "/openapi.json", ctx -> ctx.contentType(JSON).result(description.get()));
    routes.get(OpenApi.ROOT + "/shelf", this::shelf);
    routes.get(OpenApi.ROOT + "/shelf/{kind}/{name}", this::text);
    routes.put(OpenApi.ROOT + "/shelf/{kind}/{name}", this::keep);
    routes.get(OpenApi.ROOT + "/firings", this::firings);
    routes.get(OpenApi.ROOT + "/firings/{id}", ctx -> give(ctx, firing(find(ctx))));
    routes.post(OpenApi.ROOT + "/firings/{id}/shown", this::shown);
    routes.post(OpenApi.ROOT + "/<command>", this::command);
    routes.exception(
        ApiException.class, (e, ctx) -> refuse(ctx, e.status(), String.valueOf(e.getMessage())));
  }

  private static String described(Collection<Endpoint> endpoints) {
    List<Endpoint> sorted =
        endpoints.stream().sorted(Comparator.comparing(Endpoint::path)).toList();
    return OpenApi.of(sorted).toPrettyString() + "\n";
  }

  // ---- commands

  private void command(Context ctx) throws IOException {
    String path = ctx.pathParam("command");
    Endpoint endpoint = endpoints.get().get(path);
    if (endpoint == null) {
      throw new ApiException(404, "There is no command '%s' here.".formatted(path));
    }
    JsonNode body = body(ctx);
    Path folder = Files.createTempDirectory("heatwright-asked-");
    atOnce.acquireUninterruptibly();
    try {
      List<String> arguments = AskedCommand.of(endpoint, body, store, folder);
      Set<Path> given = WrittenFiles.in(folder);
      Commands.Ran ran = commands.run(arguments);
      String complaint = inWords(ran.complaint(), folder);
      if (ran.exit() > 1) {
        throw new ApiException(ran.exit() == 2 ? 422 : 503, complaint);
      }
      JsonNode answer = READER.readTree(ran.out().replace(folder + "/", ""));
      String name = endpoint.answerName(endpoint.answered(answer));
      give(
          ctx,
          new AnsweredJson(ran.exit(), Map.of(name, answer), WrittenFiles.since(given, folder)));
    } finally {
      atOnce.release();
      WrittenFiles.remove(folder);
    }
  }

  /** Nothing of where the files lay, nor of a terminal. */
  private static String inWords(String complaint, Path folder) {
    return complaint
        .replace(folder + "/", "")
        .lines()
        .filter(line -> !line.startsWith("Try "))
        .collect(Collectors.joining(" "))
        .strip();
  }

  private static JsonNode body(Context ctx) {
    try {
      String body = ctx.body();
      return READER.readTree(body.isBlank() ? "{}" : body);
    } catch (JsonProcessingException e) {
      throw new ApiException(
          400, "The body is no JSON (line %d).".formatted(e.getLocation().getLineNr()));
    }
  }

  // ---- shelf

  private void shelf(Context ctx) {
    give(
        ctx,
        new ShelfJson(
            Arrays.stream(Kind.values())
                .flatMap(kind -> store.all(kind).stream())
                .map(
                    d -> new ShelfJson.EntryJson(d.kind().word(), d.name(), d.changed().toString()))
                .toList()));
  }

  private void text(Context ctx) {
    String name = ctx.pathParam("name");
    give(
        ctx,
        store
            .find(kind(ctx), name)
            .map(ApiRoutes::text)
            .orElseThrow(() -> new ApiException(404, "There is no '%s' there.".formatted(name))));
  }

  private void keep(Context ctx) {
    Kind kind = kind(ctx);
    String name = ctx.pathParam("name").strip();
    JsonNode text = body(ctx).path("text");
    if (!text.isTextual()) {
      throw new ApiException(422, "text: expected the file's text.");
    }
    if (name.isEmpty() || name.length() > 200) {
      throw new ApiException(422, "name: expected 1 to 200 characters.");
    }
    try {
      ShelfText.nameInside(kind, text.asText(), name);
    } catch (InputException e) {
      throw new ApiException(422, Objects.requireNonNull(e.getMessage()));
    }
    give(ctx, text(store.keep(kind, name, text.asText())));
  }

  private static Kind kind(Context ctx) {
    String word = ctx.pathParam("kind");
    return Arrays.stream(Kind.values())
        .filter(kind -> kind.word().equals(word))
        .findFirst()
        .orElseThrow(
            () ->
                new ApiException(
                    404,
                    "There is no kind '%s'; expected kiln, keypad, work, schedule or values."
                        .formatted(word)));
  }

  private static ShelfJson.TextJson text(Document document) {
    return new ShelfJson.TextJson(
        document.kind().word(), document.name(), document.changed().toString(), document.text());
  }

  // ---- book

  private void firings(Context ctx) {
    give(ctx, new BookJson(book.all().stream().map(ApiRoutes::entry).toList()));
  }

  private void shown(Context ctx) {
    FiringRecord firing = find(ctx);
    JsonNode body = body(ctx);
    JsonNode celsius = body.path("celsius");
    if (!celsius.isNumber()) {
      throw new ApiException(422, "celsius: expected the number that the display says, in °C.");
    }
    try {
      book.shown(firing, moment(body.path("at")).orElseGet(book::now), celsius.asDouble());
    } catch (InputException e) {
      throw new ApiException(422, Objects.requireNonNull(e.getMessage()));
    }
    give(ctx, firing(find(ctx)));
  }

  private static Optional<Instant> moment(JsonNode at) {
    if (at.isMissingNode() || at.isNull()) {
      return Optional.empty();
    }
    try {
      return Optional.of(Instant.parse(at.asText()));
    } catch (DateTimeParseException e) {
      throw new ApiException(
          422, "at: expected a moment in UTC like 2026-12-03T10:00:00Z, or nothing for now.");
    }
  }

  private FiringRecord find(Context ctx) {
    return book.find(ctx.pathParam("id"))
        .orElseThrow(() -> new ApiException(404, "There is no such firing in the book."));
  }

  private static BookJson.EntryJson entry(FiringRecord firing) {
    var entry = firing.entry();
    return new BookJson.EntryJson(
        firing.id(),
        entry.job(),
        entry.kind(),
        entry.kiln(),
        entry.keypad(),
        entry.slot(),
        firing.state().name().toLowerCase(Locale.ROOT),
        entry.press().toString(),
        firing.pressed().map(Instant::toString),
        firing.result().map(FiringRecord.Result::outcome));
  }

  private static BookJson.FiringJson firing(FiringRecord firing) {
    return new BookJson.FiringJson(
        entry(firing),
        firing.entry().planned(),
        firing.keyed().map(ScheduleFile::write),
        firing.entry().told().stream()
            .map(t -> new BookJson.ToldJson(t.kind(), t.at().toString(), t.celsius(), t.text()))
            .toList());
  }

  // ---- answering

  private static void give(Context ctx, Record record) {
    ctx.contentType(JSON).result(Json.text(record));
  }

  private static void refuse(Context ctx, int status, String sentence) {
    give(ctx.status(status), new ErrorJson(sentence));
  }
}
