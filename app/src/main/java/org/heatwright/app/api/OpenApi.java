package org.heatwright.app.api;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;

/**
 * The API's description as OpenAPI 3.1, made of the commands' options and the records they answer
 * with. Standard: OpenAPI Specification 3.1.1; schemas are JSON Schema 2020-12.
 */
final class OpenApi {

  /** Under which all of the API stands. */
  static final String ROOT = "/api/v1";

  private static final ObjectMapper MAPPER = new ObjectMapper();
  private static final String JSON = "application/json";
  private static final String GIVEN = "GivenFile";

  private final Schemas schemas = new Schemas();
  private final ObjectNode own = MAPPER.createObjectNode();
  private final ObjectNode paths = MAPPER.createObjectNode();

  private OpenApi() {}

  /** The document. */
  static ObjectNode of(List<Endpoint> endpoints) {
    OpenApi api = new OpenApi();
    api.own.set(GIVEN, given());
    endpoints.forEach(api::add);
    api.addShelf();
    api.addBook();
    ObjectNode document = MAPPER.createObjectNode();
    document.put("openapi", "3.1.0");
    document
        .putObject("info")
        .put("title", "Heatwright")
        .put("version", "1")
        .put(
            "description",
            "What the commands do, asked over HTTP on this machine. Heatwright never starts heat: a"
                + " person at the kiln does.")
        .putObject("license")
        .put("name", "Apache-2.0")
        .put("identifier", "Apache-2.0");
    document.putArray("servers").addObject().put("url", "http://127.0.0.1:7070");
    document.putArray("security");
    document.putArray("tags").addAll(tags());
    document.set("paths", api.paths);
    ObjectNode all = api.schemas.all();
    api.own.properties().forEach(entry -> all.set(entry.getKey(), entry.getValue()));
    document.putObject("components").set("schemas", sorted(all));
    return document;
  }

  private static ArrayNode tags() {
    ArrayNode tags = MAPPER.createArrayNode();
    tags.addObject().put("name", "commands").put("description", "Everything a terminal can ask.");
    tags.addObject().put("name", "shelf").put("description", "Kilns, keypads, works, schedules.");
    tags.addObject().put("name", "book").put("description", "Firings planned, running and past.");
    return tags;
  }

  private static ObjectNode sorted(ObjectNode all) {
    ObjectNode sorted = MAPPER.createObjectNode();
    all.properties().stream()
        .sorted(java.util.Map.Entry.comparingByKey())
        .forEach(entry -> sorted.set(entry.getKey(), entry.getValue()));
    return sorted;
  }

  // ---- commands

  private void add(Endpoint endpoint) {
    String name = Endpoint.capital(endpoint.operation());
    own.set(name + "Request", object(endpoint.properties()));
    own.set(name + "Answer", answer(endpoint));
    ObjectNode operation =
        operation(
            "/" + endpoint.path(), "post", endpoint.operation(), endpoint.about(), "commands");
    body(operation, reference(name + "Request"));
    ObjectNode responses = operation.putObject("responses");
    response(responses, "200", "Done; exit 1 if a finding says stop.", reference(name + "Answer"));
    error(responses, "400", "The body is no JSON.");
    error(responses, "422", "Something in it is wrong; the sentence says what would be right.");
    error(responses, "503", "The store failed.");
  }

  private ObjectNode answer(Endpoint endpoint) {
    ObjectNode answer = MAPPER.createObjectNode().put("type", "object");
    ObjectNode properties = answer.putObject("properties");
    properties
        .putObject("exit")
        .put("type", "integer")
        .put("description", "0 done; 1 done, with a finding that says stop.")
        .putArray("enum")
        .add(0)
        .add(1);
    for (Class<? extends Record> record : endpoint.answers()) {
      properties.set(endpoint.answerName(record), schemas.reference(record));
    }
    properties
        .putObject("files")
        .put("type", "array")
        .put("description", "What was written, as asked.")
        .set("items", schemas.reference(WrittenFile.class));
    require(
        answer,
        endpoint.answers().size() == 1
            ? List.of("exit", "answer", "files")
            : List.of("exit", "files"));
    return answer;
  }

  private static ObjectNode object(List<Property> properties) {
    ObjectNode object = MAPPER.createObjectNode().put("type", "object");
    ObjectNode all = object.putObject("properties");
    properties.forEach(property -> all.set(property.name(), schema(property)));
    List<String> required =
        properties.stream().filter(Property::required).map(Property::name).toList();
    if (!required.isEmpty()) {
      require(object, required);
    }
    return object.put("additionalProperties", false);
  }

  private static void require(ObjectNode object, List<String> names) {
    ArrayNode required = object.putArray("required");
    names.forEach(required::add);
  }

  private static ObjectNode schema(Property property) {
    ObjectNode one =
        switch (property.holds()) {
          case FILE -> reference(GIVEN);
          case GROUP -> object(property.parts());
          case FLAG -> typed("boolean");
          case WHOLE_NUMBER -> typed("integer");
          case NUMBER -> typed("number");
          case TEXT, WRITTEN -> typed("string");
        };
    ObjectNode schema =
        property.many() ? MAPPER.createObjectNode().put("type", "array").set("items", one) : one;
    return property.about().isEmpty() ? schema : schema.put("description", property.about());
  }

  private static ObjectNode typed(String type) {
    return MAPPER.createObjectNode().put("type", type);
  }

  /** A file that is read. */
  private static ObjectNode given() {
    ObjectNode given = typed("object");
    given.put(
        "description",
        "A file: its text, or its bytes, or its name on the shelf (kiln, keypad, work, schedule).");
    ObjectNode properties = given.putObject("properties");
    properties.set("name", typed("string").put("description", "What sentences about it call it."));
    properties.set("text", typed("string"));
    properties.set("base64", typed("string").put("contentEncoding", "base64"));
    properties.set("shelf", typed("string"));
    return given.put("additionalProperties", false);
  }

  // ---- shelf and book

  private void addShelf() {
    ObjectNode list = operation("/shelf", "get", "shelf", "What is on the shelf.", "shelf");
    response(list.putObject("responses"), "200", "All of it.", schemas.reference(ShelfJson.class));
    String one = "/shelf/{kind}/{name}";
    ObjectNode read = operation(one, "get", "shelfText", "One text on the shelf.", "shelf");
    shelfParameters(read);
    ObjectNode found = read.putObject("responses");
    response(found, "200", "It is there.", schemas.reference(ShelfJson.TextJson.class));
    error(found, "404", "There is no such text.");
    ObjectNode keep =
        operation(
            one,
            "put",
            "keepOnShelf",
            "Keeps a text on the shelf; what stood there is kept as an earlier one.",
            "shelf");
    shelfParameters(keep);
    body(keep, schemas.reference(ShelfJson.KeepJson.class));
    ObjectNode kept = keep.putObject("responses");
    response(kept, "200", "It is kept.", schemas.reference(ShelfJson.TextJson.class));
    error(kept, "404", "There is no such kind.");
    error(kept, "422", "The text cannot be read; the sentence says why.");
  }

  private static void shelfParameters(ObjectNode operation) {
    ArrayNode parameters = operation.putArray("parameters");
    ObjectNode kind = parameter(parameters, "kind", "What the text describes.");
    ArrayNode kinds = ((ObjectNode) kind.get("schema")).putArray("enum");
    for (var known : org.heatwright.app.store.Kind.values()) {
      kinds.add(known.word());
    }
    parameter(parameters, "name", "Its name on the shelf.");
  }

  private void addBook() {
    ObjectNode list = operation("/firings", "get", "firings", "The book of firings.", "book");
    response(list.putObject("responses"), "200", "All of it.", schemas.reference(BookJson.class));
    ObjectNode one = operation("/firings/{id}", "get", "firing", "One firing.", "book");
    parameter(one.putArray("parameters"), "id", "As the book lists it.");
    ObjectNode found = one.putObject("responses");
    response(found, "200", "It is there.", schemas.reference(BookJson.FiringJson.class));
    error(found, "404", "There is no such firing.");
    ObjectNode shown =
        operation(
            "/firings/{id}/shown", "post", "displayShown", "Tells what the display said.", "book");
    parameter(shown.putArray("parameters"), "id", "As the book lists it.");
    body(shown, schemas.reference(BookJson.ShownJson.class));
    ObjectNode told = shown.putObject("responses");
    response(told, "200", "It is in the book.", schemas.reference(BookJson.FiringJson.class));
    error(told, "404", "There is no such firing.");
    error(told, "422", "It cannot be so; the sentence says why.");
  }

  // ---- pieces of the document

  private ObjectNode operation(String path, String method, String name, String about, String tag) {
    ObjectNode operation = paths.withObjectProperty(ROOT + path).putObject(method);
    operation.put("operationId", name).put("summary", about);
    operation.putArray("tags").add(tag);
    return operation;
  }

  private static ObjectNode parameter(ArrayNode parameters, String name, String about) {
    ObjectNode parameter =
        parameters
            .addObject()
            .put("name", name)
            .put("in", "path")
            .put("required", true)
            .put("description", about);
    parameter.putObject("schema").put("type", "string");
    return parameter;
  }

  private static void body(ObjectNode operation, ObjectNode schema) {
    operation
        .putObject("requestBody")
        .put("required", true)
        .putObject("content")
        .putObject(JSON)
        .set("schema", schema);
  }

  private static void response(ObjectNode responses, String status, String about, ObjectNode of) {
    responses
        .putObject(status)
        .put("description", about)
        .putObject("content")
        .putObject(JSON)
        .set("schema", of);
  }

  private void error(ObjectNode responses, String status, String about) {
    response(responses, status, about, schemas.reference(ErrorJson.class));
  }

  private static ObjectNode reference(String name) {
    return MAPPER.createObjectNode().put("$ref", "#/components/schemas/" + name);
  }
}
