package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.heatwright.app.api.ApiRoutes;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Store;
import org.heatwright.app.web.Bench;
import org.heatwright.app.web.BenchSettings;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What programs ask over HTTP is answered by the same commands with the same records. */
class ApiTest {

  private static final Path DESCRIPTION = Path.of("..", "docs", "openapi.json");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final HttpClient CLIENT = HttpClient.newHttpClient();
  private static final Clock CLOCK = Clock.fixed(Run.NOON, ZoneId.of("UTC"));

  private static Store store;
  private static Bench bench;

  @BeforeAll
  static void open() {
    store = Store.temporary(CLOCK);
    DemoStudio.fill(store);
    Surroundings surroundings =
        new Surroundings(System.out, System.err, CLOCK, Map.of(), Path.of("no-home"), () -> {});
    bench =
        Bench.start(
            new BenchSettings(store, CLOCK, OptionalInt.of(0))
                .withApi(
                    new ApiRoutes(
                        new AskedFromElsewhere(surroundings, store.file()), store, CLOCK)));
  }

  @AfterAll
  static void close() {
    bench.close();
    store.close();
  }

  // ---- the description

  /** {@code docs/openapi.json} is what the code says; on a difference the new one is beside it. */
  @Test
  void theDescriptionIsKept() throws Exception {
    String now = get("openapi.json").body();
    Files.writeString(Path.of("target", "openapi.json"), now);
    assertThat(now)
        .describedAs("copy app/target/openapi.json to docs/openapi.json if it is meant so")
        .isEqualTo(Files.readString(DESCRIPTION));
  }

  /** Outside check: the OpenAPI Initiative's own schema of 3.1 documents. */
  @Test
  void theDescriptionIsOpenApi() throws Exception {
    Schema schema =
        SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(
                Files.readString(
                    Path.of("src/test/resources/openapi/oas-3.1-schema-2026-08-03.json")));
    ObjectNode document = description();
    assertThat(schema.validate(document)).isEmpty();
    document.remove("info");
    assertThat(schema.validate(document)).isNotEmpty();
  }

  @Test
  void theDescriptionTellsEveryCommandThatAnswers() throws Exception {
    JsonNode paths = description().path("paths");
    assertThat(paths.properties()).hasSizeGreaterThan(30);
    for (String command :
        List.of("compose", "inspect", "forecast", "keying", "readback", "card", "cast/order")) {
      assertThat(paths.has("/api/v1/" + command)).describedAs(command).isTrue();
    }
    assertThat(paths.has("/api/v1/serve")).isFalse();
    Map<String, String> operations = new TreeMap<>();
    paths
        .findValues("operationId")
        .forEach(id -> assertThat(operations.put(id.asText(), "")).isNull());
  }

  /** Every reference in it leads somewhere. */
  @Test
  void theDescriptionHoldsTogether() throws Exception {
    ObjectNode document = description();
    document
        .findValuesAsText("$ref")
        .forEach(
            ref -> assertThat(document.at(ref.substring(1)).isObject()).describedAs(ref).isTrue());
  }

  // ---- the chain

  @Test
  void theChainIsTheTerminals(@TempDir Path dir) throws Exception {
    ObjectNode asked = JSON.createObjectNode();
    asked.putObject("work").put("shelf", "Harbour burnout");
    asked.putObject("kiln").put("shelf", "Capstan");
    asked.putObject("keypad").put("shelf", "Tern");
    asked.put("output", "burnout.yaml");
    JsonNode composed = answered("compose", asked);
    Path schedule = dir.resolve("burnout.yaml");
    Run run =
        Run.of(
            "compose",
            Studio.work("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "--keypad",
            Studio.keypad("tern"),
            "-o",
            schedule,
            "--json");
    assertThat(composed.path("answer")).isEqualTo(JSON.readTree(run.out()));
    assertThat(composed.path("exit").asInt()).isEqualTo(run.code());
    String yaml = composed.at("/files/0/text").asText();
    assertThat(yaml).isEqualTo(Files.readString(schedule));

    ObjectNode firing = JSON.createObjectNode();
    firing.putObject("schedule").put("text", yaml);
    firing.putObject("kiln").put("shelf", "Capstan");
    firing.putObject("work").put("shelf", "Harbour burnout");
    firing.put("readyBy", "2026-12-03T10:00");
    JsonNode forecast = answered("forecast", firing);
    Run forecastRun =
        Run.of(
            "forecast",
            schedule,
            "--kiln",
            Studio.kiln("capstan"),
            "--work",
            Studio.work("harbour-burnout"),
            "--ready-by",
            "2026-12-03T10:00",
            "--json");
    assertThat(forecast.path("answer")).isEqualTo(JSON.readTree(forecastRun.out()));

    ObjectNode keying = JSON.createObjectNode();
    keying.putObject("schedule").put("text", yaml);
    keying.putObject("keypad").put("shelf", "Tern");
    keying.put("slot", 3);
    JsonNode keyed = answered("keying", keying);
    assertThat(keyed.at("/answer/steps").size()).isPositive();

    ObjectNode readback = JSON.createObjectNode();
    readback.putObject("schedule").put("text", yaml);
    readback.putObject("keypad").put("shelf", "Tern");
    readback.put("questions", true);
    assertThat(answered("readback", readback).at("/questions/questions").size()).isPositive();

    ObjectNode card = firing.deepCopy();
    card.putObject("keypad").put("shelf", "Tern");
    card.put("output", "card.pdf");
    byte[] pdf = Base64.getDecoder().decode(answered("card", card).at("/files/0/base64").asText());
    assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
  }

  @Test
  void optionsThatBelongTogetherAreAnObject() throws Exception {
    ObjectNode asked = JSON.createObjectNode();
    asked.putArray("wanted").addObject().put("mould", "lace").put("wants", 630).put("count", 3);
    asked.withArray("wanted").addObject().put("mould", "signet").put("wants", 450);
    asked.put("kilnNow", 730).put("fallPerHour", 150);
    JsonNode order = answered("cast/order", asked);
    assertThat(order.path("answer"))
        .isEqualTo(
            JSON.readTree(
                Run.of(
                        "cast",
                        "order",
                        "--mould",
                        "lace",
                        "--wants",
                        "630",
                        "--count",
                        "3",
                        "--mould",
                        "signet",
                        "--wants",
                        "450",
                        "--kiln-now",
                        "730",
                        "--fall-per-hour",
                        "150",
                        "--json")
                    .out()));
  }

  @Test
  void theStoreIsTheBenchs() throws Exception {
    ObjectNode asked = JSON.createObjectNode().put("kiln", "Capstan").put("keypad", "Tern");
    assertThat(answered("slots/list", asked).at("/answer/keypad").asText()).isEqualTo("Tern");
  }

  @Test
  void theShelfIsReadAndWritten() throws Exception {
    JsonNode entries = JSON.readTree(get("shelf").body()).path("entries");
    assertThat(entries.findValuesAsText("name")).contains("Capstan", "Tern", "Harbour burnout");
    String kiln = JSON.readTree(get("shelf/kiln/Capstan").body()).path("text").asText();
    String body = JSON.createObjectNode().put("text", kiln).toString();
    assertThat(send("PUT", "shelf/kiln/Second%20Capstan", body).statusCode()).isEqualTo(200);
    assertThat(get("shelf/kiln/Second%20Capstan").statusCode()).isEqualTo(200);
    HttpResponse<String> wrong =
        send("PUT", "shelf/kiln/Third", "{\"text\":\"kiln: {volts: many}\"}");
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("Third");
    assertThat(get("shelf/kiln/Third").statusCode()).isEqualTo(404);
    assertThat(get("shelf/oven/Third").statusCode()).isEqualTo(404);
  }

  @Test
  void theBookTakesWhatTheDisplaySays() throws Exception {
    JsonNode firings = JSON.readTree(get("firings").body()).path("firings");
    assertThat(firings.isArray()).isTrue();
    assertThat(send("POST", "firings/none/shown", "{\"celsius\":20}").statusCode()).isEqualTo(404);
  }

  // ---- what is wrong

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "compose | {\"kiln\":{\"shelf\":\"Capstan\"}} | 422 | work: it is missing.",
        "compose | {\"work\":1,\"kiln\":{\"shelf\":\"Capstan\"}} | 422 | work: expected an object",
        "compose | {\"wrok\":{}} | 422 | wrok: there is no such field; expected among work",
        "compose | {\"work\":{\"shelf\":\"Nothing\"},\"kiln\":{\"shelf\":\"Capstan\"}} | 422 | there is no 'Nothing' there",
        "compose | {\"work\":{\"text\":\"kind: burnout\\nmetal: [\"},\"kiln\":{\"shelf\":\"Capstan\"}} | 422 | work.yaml",
        "compose | {\"work\":{\"name\":\"../work\",\"text\":\"a\"},\"kiln\":{\"shelf\":\"Capstan\"}} | 422 | a file name of letters",
        "compose | [1] | 400 | The body must be a JSON object.",
        "compose | {\"work\": | 400 | The body is no JSON",
        "serve | {} | 404 | There is no command 'serve' here.",
        "couple | {\"type\":\"K\",\"celsius\":\"hot\"} | 422 | celsius",
        "couple | {\"type\":\"Q\",\"celsius\":800} | 422 | Q",
        "materials | {\"words\":[\"@/etc/hostname\"]} | 200 | @/etc/hostname",
      })
  void whatIsWrongIsToldInASentence(String command, String body, int status, String sentence)
      throws Exception {
    HttpResponse<String> response = send("POST", command.strip(), body.strip());
    assertThat(response.statusCode()).describedAs(response.body()).isEqualTo(status);
    if (status != 200) {
      assertThat(JSON.readTree(response.body()).path("error").asText()).contains(sentence.strip());
    }
    assertThat(response.body()).doesNotContain("heatwright-asked", "Exception", "--help");
  }

  /** A page from elsewhere that a browser shows cannot ask. */
  @Test
  void aForeignPageIsRefused() throws Exception {
    HttpRequest request =
        HttpRequest.newBuilder(address("shelf")).header("Origin", "http://elsewhere.test").build();
    assertThat(CLIENT.send(request, HttpResponse.BodyHandlers.ofString()).statusCode())
        .isEqualTo(403);
  }

  // ---- asking

  /** Asks a command, and holds the answer against its own description. */
  private static JsonNode answered(String command, ObjectNode body) throws Exception {
    HttpResponse<String> response = send("POST", command, body.toString());
    assertThat(response.statusCode()).describedAs(response.body()).isEqualTo(200);
    JsonNode answer = JSON.readTree(response.body());
    ObjectNode document = description();
    JsonNode operation = document.path("paths").path("/api/v1/" + command).path("post");
    assertMeets(document, operation.at("/requestBody/content/application~1json/schema"), body);
    assertMeets(document, operation.at("/responses/200/content/application~1json/schema"), answer);
    return answer;
  }

  private static void assertMeets(ObjectNode document, JsonNode reference, JsonNode value) {
    ObjectNode schema = JSON.createObjectNode();
    schema.set("components", document.get("components"));
    schema.put("$ref", reference.path("$ref").asText());
    assertThat(
            SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(schema)
                .validate(value))
        .isEmpty();
  }

  private static ObjectNode description() throws Exception {
    return (ObjectNode) JSON.readTree(get("openapi.json").body());
  }

  private static HttpResponse<String> get(String path) throws IOException, InterruptedException {
    return CLIENT.send(
        HttpRequest.newBuilder(address(path)).build(), HttpResponse.BodyHandlers.ofString());
  }

  private static HttpResponse<String> send(String method, String path, String body)
      throws IOException, InterruptedException {
    return CLIENT.send(
        HttpRequest.newBuilder(address(path))
            .method(method, HttpRequest.BodyPublishers.ofString(body))
            .build(),
        HttpResponse.BodyHandlers.ofString());
  }

  private static URI address(String path) {
    return bench.address().resolve("/api/v1/" + path);
  }
}
