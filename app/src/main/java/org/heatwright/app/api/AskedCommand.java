package org.heatwright.app.api;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;

/**
 * A request's body as the words of a command: its files are put into a folder of its own, where
 * what it writes will be, too.
 */
final class AskedCommand {

  /** Plain letters, so that a name leads nowhere but into the folder. */
  private static final Pattern FILE_NAME =
      Pattern.compile("[A-Za-z0-9_-][A-Za-z0-9._-]{0,99}", Pattern.UNICODE_CHARACTER_CLASS);

  private static final Map<String, Kind> ON_SHELF =
      Map.of(
          "kiln", Kind.KILN,
          "keypad", Kind.KEYPAD,
          "work", Kind.WORK,
          "values", Kind.VALUES,
          "schedule", Kind.SCHEDULE,
          "held", Kind.SCHEDULE,
          "keyed", Kind.SCHEDULE,
          "first", Kind.SCHEDULE,
          "second", Kind.SCHEDULE);

  private final Path folder;
  private final Store store;
  private final List<String> arguments;
  private final List<String> last = new ArrayList<>();
  private final Set<String> taken = new HashSet<>();

  private AskedCommand(Endpoint endpoint, Store store, Path folder) {
    this.folder = folder;
    this.store = store;
    this.arguments = new ArrayList<>(endpoint.words());
  }

  /**
   * The words of the command.
   *
   * @param folder empty, to put files into
   * @throws ApiException if the body is not what the command takes
   */
  static List<String> of(Endpoint endpoint, JsonNode body, Store store, Path folder) {
    if (!body.isObject()) {
      throw new ApiException(400, "The body must be a JSON object.");
    }
    AskedCommand asked = new AskedCommand(endpoint, store, folder);
    asked.refuseUnknown(endpoint.properties(), body, "");
    for (Property property : endpoint.properties()) {
      asked.add(property, body.path(property.name()), property.name());
    }
    asked.arguments.add("--json");
    if (!asked.last.isEmpty()) {
      asked.arguments.add("--");
      asked.arguments.addAll(asked.last);
    }
    return List.copyOf(asked.arguments);
  }

  private void refuseUnknown(List<Property> properties, JsonNode object, String where) {
    List<String> known = properties.stream().map(Property::name).toList();
    object
        .fieldNames()
        .forEachRemaining(
            name -> {
              if (!known.contains(name)) {
                throw new ApiException(
                    422,
                    "%s%s: there is no such field; expected among %s."
                        .formatted(where, name, String.join(", ", known)));
              }
            });
  }

  private void add(Property property, JsonNode value, String where) {
    if (value.isMissingNode() || value.isNull()) {
      if (property.required()) {
        throw new ApiException(422, where + ": it is missing. " + property.about());
      }
      return;
    }
    if (!property.many()) {
      addOne(property, value, where);
      return;
    }
    if (!value.isArray()) {
      throw new ApiException(422, where + ": expected a list.");
    }
    int number = 0;
    for (JsonNode one : value) {
      addOne(property, one, "%s[%d]".formatted(where, number++));
    }
  }

  private void addOne(Property property, JsonNode value, String where) {
    switch (property.holds()) {
      case GROUP -> addGroup(property, value, where);
      case FLAG -> {
        require(value.isBoolean(), where, "true or false");
        if (value.booleanValue()) {
          arguments.add(property.option());
        }
      }
      case WHOLE_NUMBER -> {
        require(value.isIntegralNumber(), where, "a whole number");
        put(property, value.asText());
      }
      case NUMBER -> {
        require(value.isNumber(), where, "a number");
        put(property, value.decimalValue().toPlainString());
      }
      case TEXT -> {
        require(value.isTextual() || value.isNumber(), where, "a text");
        put(property, value.asText());
      }
      case FILE -> put(property, given(property, value, where).toString());
      case WRITTEN -> {
        require(value.isTextual(), where, "the name to give to the file, e.g. \"card.pdf\"");
        put(property, place(value.asText(), where).toString());
      }
    }
  }

  private void addGroup(Property group, JsonNode value, String where) {
    require(value.isObject(), where, "an object");
    refuseUnknown(group.parts(), value, where + ".");
    for (Property part : group.parts()) {
      add(part, value.path(part.name()), where + "." + part.name());
    }
  }

  private void put(Property property, String text) {
    if (property.option().isEmpty()) {
      last.add(text);
    } else {
      arguments.add(property.option() + "=" + text);
    }
  }

  private static void require(boolean right, String where, String expected) {
    if (!right) {
      throw new ApiException(422, "%s: expected %s.".formatted(where, expected));
    }
  }

  /** A file that is read: its text, its bytes, or its name on the shelf. */
  private Path given(Property property, JsonNode value, String where) {
    JsonNode text = value.path("text");
    JsonNode bytes = value.path("base64");
    JsonNode shelf = value.path("shelf");
    int told =
        (text.isTextual() ? 1 : 0) + (bytes.isTextual() ? 1 : 0) + (shelf.isTextual() ? 1 : 0);
    require(
        told == 1,
        where,
        "an object with its \"text\", its bytes as \"base64\", or its name on the \"shelf\"");
    String name = value.path("name").asText(property.name() + usualEnding(property));
    if (shelf.isTextual()) {
      return write(place(property.name() + ".yaml", where), onShelf(property, shelf, where));
    }
    if (text.isTextual()) {
      return write(place(name, where), text.asText().getBytes(StandardCharsets.UTF_8));
    }
    try {
      return write(place(name, where), Base64.getMimeDecoder().decode(bytes.asText()));
    } catch (IllegalArgumentException e) {
      throw new ApiException(422, where + ".base64: this is not base64.");
    }
  }

  private static String usualEnding(Property property) {
    return property.name().equals("log") ? ".csv" : ".yaml";
  }

  private byte[] onShelf(Property property, JsonNode shelf, String where) {
    Optional<Kind> kind = Optional.ofNullable(ON_SHELF.get(property.name()));
    Optional<Document> found = kind.flatMap(k -> store.find(k, shelf.asText()));
    return found
        .orElseThrow(
            () ->
                new ApiException(
                    422, "%s.shelf: there is no '%s' there.".formatted(where, shelf.asText())))
        .text()
        .getBytes(StandardCharsets.UTF_8);
  }

  /** Where a file of that name goes; a second of the same name goes into a folder of its own. */
  private Path place(String name, String where) {
    require(
        FILE_NAME.matcher(name).matches(), where, "a file name of letters, digits, - _ and dots");
    Path place = folder.resolve(name);
    for (int i = 2; !taken.add(place.toString()); i++) {
      place = folder.resolve(Integer.toString(i)).resolve(name);
    }
    return place;
  }

  private static Path write(Path place, byte[] bytes) {
    try {
      Files.createDirectories(place.getParent());
      return Files.write(place, bytes);
    } catch (IOException e) {
      throw new UncheckedIOException("A file that was sent cannot be put down.", e);
    }
  }
}
