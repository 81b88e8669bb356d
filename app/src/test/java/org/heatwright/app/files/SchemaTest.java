package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/** The published schemas and the readers say the same. */
class SchemaTest {

  private static final Path SCHEMAS = Path.of("..", "docs", "schema");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Pattern KNOWN_KEYS = Pattern.compile("expected one of ([^(;]*?)( \\(|\\.$)");

  private static final String KILN_WITH_FACES =
      """
      name: Capstan
      chamber: {diameter-mm: 330, height-mm: 350}
      element: {rated-w: 3600, rated-v: 230}
      door: top
      walls:
        walls: [{material: insulating-brick-23, thickness-mm: 64, joint-m2k-w: 0.02}]
        roof: [{material: insulating-brick-23, thickness-mm: 64, joint-m2k-w: 0.02}]
        floor: [{material: insulating-brick-26, thickness-mm: 64, joint-m2k-w: 0.02}]
        door:
          - material:
              name: board
              density-kg-m3: 300
              conductivity-w-mk: [[20, 0.05], [800, 0.2]]
              heat-capacity-j-kgk: 1000
              latent: [{from-celsius: 95, to-celsius: 115, j-kg: 50000, once: true}]
              source: maker's data sheet
            thickness-mm: 50.8
            joint-m2k-w: 0
      max-celsius: 1000
      control: {kind: on-off, hysteresis-k: 6, hold-waits-within-k: none}
      tariff: {currency: EUR, flat: 0.2}
      """;

  private static final String SCHEDULE =
      """
      name: f
      unit: F
      segments: [{rate: 200, target: 300, hold: "2:00"}, {rate: fastest, target: 1350}]
      start-delay: "0:30"
      at-end: off
      """;

  /** Kind of file, its reader, and texts that together use every key. */
  private static final Map<String, Kind> KINDS = kinds();

  private record Kind(BiFunction<String, String, ?> read, List<String> full) {}

  private static Map<String, Kind> kinds() {
    Map<String, Kind> kinds = new LinkedHashMap<>();
    kinds.put("schedule", new Kind(ScheduleFile::read, List.of(SCHEDULE)));
    kinds.put("kiln", new Kind(KilnFile::read, List.of(KilnFileTest.FULL, KILN_WITH_FACES)));
    kinds.put(
        "work",
        new Kind(
            WorkFile::read,
            List.of(
                WorkFileTest.BURNOUT,
                WorkFileTest.ENAMEL,
                WorkFileTest.ENAMEL_FULL,
                WorkFileTest.ENAMEL_BY_MOL,
                WorkFileTest.ENAMEL_BY_MASS,
                WorkFileTest.ENAMEL_BY_SHEET,
                HeatTreatWorkFileTest.FULL,
                SinterWorkFileTest.FULL,
                GlassWorkFileTest.FUSE,
                GlassWorkFileTest.BOWL)));
    kinds.put("firing", new Kind(FiringFile::read, List.of(FiringFileTest.FULL)));
    kinds.put("shown", new Kind(ShownFile::read, List.of(ShownFileTest.FULL)));
    kinds.put("body", new Kind(BodyFile::read, List.of(BodyFileTest.FULL)));
    kinds.put("material", new Kind(MaterialFile::read, List.of(BodyFileTest.MATERIAL)));
    kinds.put("values", new Kind(ValuesFile::read, ValuesFileTest.FULL));
    kinds.put("keypad", new Kind(KeypadFile::read, KeypadFileTest.FULL));
    return kinds;
  }

  static Set<String> kindNames() {
    return KINDS.keySet();
  }

  private static JsonNode schemaText(String kind) throws IOException {
    return JSON.readTree(SCHEMAS.resolve(kind + ".schema.json").toFile());
  }

  private static Schema schema(String kind) throws IOException {
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(schemaText(kind));
  }

  private static JsonNode asJson(String yaml) {
    Load load = new Load(LoadSettings.builder().setSchema(new CoreSchema()).build());
    return JSON.valueToTree(load.loadFromString(yaml));
  }

  // ---- every file we ship or test with is valid

  static Stream<Path> shippedFiles() throws IOException {
    List<Path> files = new ArrayList<>();
    for (String root : List.of("src/main/resources/demo", "src/test/resources/scenarios")) {
      if (Files.isDirectory(Path.of(root))) {
        try (Stream<Path> walk = Files.walk(Path.of(root))) {
          files.addAll(walk.filter(p -> p.toString().endsWith(".yaml")).sorted().toList());
        }
      }
    }
    return files.stream();
  }

  /** "kiln" for {@code demo/kilns/anchor.yaml} and for {@code scenarios/x/kiln-a.yaml}. */
  private static String kindOf(Path file) {
    String path = file.toString().replace('\\', '/');
    if (path.contains("/logs/")) {
      return "schedule"; // beside each log stands what ran
    }
    for (String kind : List.of("schedule", "kiln", "work", "firing", "shown", "keypad", "value")) {
      if (path.contains("/" + kind + "s/") || file.getFileName().toString().startsWith(kind)) {
        return kind.equals("value") ? "values" : kind;
      }
    }
    throw new IllegalArgumentException("What kind of file is " + file + "?");
  }

  @ParameterizedTest
  @MethodSource("shippedFiles")
  void everyShippedFileIsValid(Path file) throws IOException {
    String text = Files.readString(file);
    String kind = kindOf(file);

    assertThat(schema(kind).validate(asJson(text))).isEmpty();
    if (KINDS.containsKey(kind)) {
      KINDS.get(kind).read().apply(text, file.toString());
    }
  }

  @ParameterizedTest
  @MethodSource("kindNames")
  void theFullExamplesAreValid(String kind) throws IOException {
    for (String text : KINDS.get(kind).full()) {
      assertThat(schema(kind).validate(asJson(text))).isEmpty();
      KINDS.get(kind).read().apply(text, kind);
    }
  }

  @Test
  void whatIsWrittenIsValidToo() throws IOException {
    var kiln = KilnFile.readContent(KilnFileTest.FULL, "k");
    assertThat(schema("kiln").validate(asJson(KilnFile.write(kiln)))).isEmpty();
    var work = WorkFile.read(WorkFileTest.BURNOUT, "w");
    assertThat(schema("work").validate(asJson(WorkFile.write(work)))).isEmpty();
    var firing = FiringFile.read(FiringFileTest.FULL, "f");
    assertThat(schema("firing").validate(asJson(FiringFile.write(firing)))).isEmpty();
    var shown = ShownFile.read(ShownFileTest.FULL, "s");
    assertThat(schema("shown").validate(asJson(ShownFile.write(shown)))).isEmpty();
    for (String text : KeypadFileTest.FULL) {
      String written = KeypadFile.write(KeypadFile.read(text, "p"));
      assertThat(schema("keypad").validate(asJson(written))).isEmpty();
    }
  }

  @Test
  void aLogsRowsAreValid() throws IOException {
    JsonNode rows =
        JSON.readTree(
            "[{\"time_s\":0,\"chamber_c\":20},{\"time\":\"2026-12-03T10:00Z\",\"chamber_f\":68}]");
    assertThat(schema("log").validate(rows)).isEmpty();
    assertThat(schema("log").validate(JSON.readTree("[{\"time_s\":0}]"))).isNotEmpty();
  }

  // ---- the schema refuses what the reader refuses

  @Test
  void aSchemaRefusesWhatItsReaderRefuses() throws IOException {
    assertBothRefuse("kiln", KilnFileTest.FULL, "kind: pid", "kind: pdi");
    assertBothRefuse("kiln", KilnFileTest.FULL, "cycle-s: 2", "hysteresis-k: 2");
    assertBothRefuse("kiln", KilnFileTest.FULL, "kind: pid", "kind: on-off");
    assertBothRefuse("kiln", KilnFileTest.FULL, "width-mm: 200", "diameter-mm: 200");
    assertBothRefuse("kiln", KilnFileTest.FULL, "rated-w: 2200", "rated-w: \"2200\"");
    assertBothRefuse("kiln", KilnFileTest.FULL, "name: Anchor", "name: 7");
    assertBothRefuse("schedule", SCHEDULE, "hold: \"2:00\"", "hold: 2");
    assertBothRefuse("schedule", SCHEDULE, "unit: F", "unit: C, x: 1");
    assertBothRefuse("schedule", SCHEDULE, "target: 300", "target: 30");
    assertBothRefuse("work", WorkFileTest.BURNOUT, "kind: burnout", "kind: enamel");
    assertBothRefuse("work", WorkFileTest.BURNOUT, "count: 3", "count: 2.5");
    assertBothRefuse("work", HeatTreatWorkFileTest.FULL, "phase: age", "phase: second");
    assertBothRefuse("work", HeatTreatWorkFileTest.FULL, "mass-g: 7.2", "mass-g: 0");
    assertBothRefuse("firing", FiringFileTest.FULL, "material: copper", "material: coper");
    assertBothRefuse(
        "firing", FiringFileTest.FULL, "door-open-s: 10", "door-open-s: 1, mains-off-s: 1");
    assertBothRefuse("shown", ShownFileTest.FULL, "[r1, \"216\"]", "[r1]");
    assertBothRefuse("body", BodyFileTest.FULL, "bottom: insulated", "bottom: open");
    assertBothRefuse("body", BodyFileTest.FULL, "emissivity: 0.9", "emissivity: 1.9");
    assertBothRefuse("body", BodyFileTest.FULL, "stainless-steel", "stainles-steel");
    assertBothRefuse("body", BodyFileTest.FULL, "[3600, 150]", "[3600]");
    assertBothRefuse("material", BodyFileTest.MATERIAL, "density-kg-m3: 1200", "density-kg-m3: 0");
    assertBothRefuse("values", ValuesFileTest.ENAMEL, "enamel: medium", "enamel: mild");
    assertBothRefuse("values", ValuesFileTest.ENAMEL, "source: \"tiles of 3 November\"\n", "");
    assertBothRefuse("values", ValuesFileTest.GLASS, "values-for: glass", "values-for: clay");
    String keypad = KeypadFileTest.STEPS;
    assertBothRefuse("keypad", keypad, "kind: steps", "kind: step");
    assertBothRefuse("keypad", keypad, "ranges-in: C, ", "");
    assertBothRefuse("keypad", keypad, "setting: switchable", "setting: F");
    assertBothRefuse("keypad", keypad, "by: mark", "by: count");
    assertBothRefuse("keypad", keypad, "position: first", "position: hidden");
    assertBothRefuse("keypad", keypad, "label: r#", "label: \"1\"");
    assertBothRefuse("keypad", keypad, "slots: 4", "slots: 0");
    assertBothRefuse("keypad", keypad, "[{hold: next, s: 2}]", "[{hold: nxt, s: 2}]");
    assertBothRefuse("keypad", keypad, "form: h.mm", "form: hmm");
  }

  private static void assertBothRefuse(String kind, String good, String part, String bad)
      throws IOException {
    String text = good.replaceFirst(Pattern.quote(part), Matcher.quoteReplacement(bad));
    assertThat(text).isNotEqualTo(good);
    assertThat(
            catchThrowableOfType(
                InputException.class, () -> KINDS.get(kind).read().apply(text, kind)))
        .as("reader of %s with %s", kind, bad)
        .isNotNull();
    JsonNode json;
    try {
      json = asJson(text);
    } catch (RuntimeException notYaml) {
      return;
    }
    assertThat(schema(kind).validate(json)).as("schema of %s with %s", kind, bad).isNotEmpty();
  }

  // ---- the keys are the same

  /**
   * A key nobody knows is put into every mapping of the full examples; the reader then lists the
   * keys it knows there, and they must be the schema's.
   */
  @ParameterizedTest
  @MethodSource("kindNames")
  void schemaAndReaderKnowTheSameKeys(String kind) throws IOException {
    JsonNode root = schemaText(kind);
    for (String text : KINDS.get(kind).full()) {
      for (List<String> path : mappings(asJson(text), List.of())) {
        if (path.contains("notes") || path.contains("learned")) {
          continue;
        }
        JsonNode copy = asJson(text);
        ((ObjectNode) at(copy, path)).put("no-such-key", 1);
        InputException refused =
            catchThrowableOfType(
                InputException.class, () -> KINDS.get(kind).read().apply(copy.toString(), kind));
        assertThat(refused).as("%s at %s", kind, path).isNotNull();
        assertThat(keysIn(refused.getMessage()))
            .as("%s at %s", kind, path)
            .isEqualTo(schemaKeys(root, path, copy));
      }
    }
  }

  /** The examples above use every key of the schema, so that no key escapes the comparison. */
  @ParameterizedTest
  @MethodSource("kindNames")
  void theFullExamplesUseEveryKey(String kind) throws IOException {
    Map<String, Set<String>> used = new LinkedHashMap<>();
    Map<String, Set<String>> known = new LinkedHashMap<>();
    for (String text : KINDS.get(kind).full()) {
      JsonNode json = asJson(text);
      for (List<String> path : mappings(json, List.of())) {
        if (path.contains("notes") || path.contains("learned")) {
          continue;
        }
        String place = String.join(".", path).replaceAll("\\b\\d+\\b", "*");
        String key = path.isEmpty() ? which(json) : place;
        at(json, path)
            .fieldNames()
            .forEachRemaining(f -> used.computeIfAbsent(key, k -> new TreeSet<>()).add(f));
        known
            .computeIfAbsent(key, k -> new TreeSet<>())
            .addAll(schemaKeys(schemaText(kind), path, json));
      }
    }
    used.values().forEach(keys -> keys.remove("notes"));
    assertThat(used).isEqualTo(known);
  }

  /** What says which of a schema's alternatives a file is; empty where there is one only. */
  private static String which(JsonNode file) {
    return file.path("kind").asText() + file.path("values-for").asText();
  }

  private static Set<String> keysIn(String message) {
    Matcher matcher = KNOWN_KEYS.matcher(message);
    assertThat(matcher.find()).as(message).isTrue();
    return new TreeSet<>(List.of(matcher.group(1).split(", ")));
  }

  private static List<List<String>> mappings(JsonNode node, List<String> path) {
    List<List<String>> found = new ArrayList<>();
    if (node instanceof ObjectNode object) {
      found.add(path);
      object
          .fields()
          .forEachRemaining(e -> found.addAll(mappings(e.getValue(), longer(path, e.getKey()))));
    } else if (node instanceof ArrayNode array) {
      for (int i = 0; i < array.size(); i++) {
        found.addAll(mappings(array.get(i), longer(path, String.valueOf(i))));
      }
    }
    return found;
  }

  private static List<String> longer(List<String> path, String step) {
    List<String> longer = new ArrayList<>(path);
    longer.add(step);
    return longer;
  }

  private static JsonNode at(JsonNode root, List<String> path) {
    JsonNode node = root;
    for (String step : path) {
      node = node.isArray() ? node.get(Integer.parseInt(step)) : node.get(step);
    }
    return node;
  }

  private static Set<String> schemaKeys(JsonNode root, List<String> path, JsonNode instance) {
    List<JsonNode> here = expand(root, List.of(root), instance);
    JsonNode node = instance;
    for (String step : path) {
      List<JsonNode> next = new ArrayList<>();
      for (JsonNode schema : here) {
        if (node.isArray() && schema.has("items")) {
          next.add(schema.get("items"));
        } else if (schema.path("properties").has(step)) {
          next.add(schema.get("properties").get(step));
        }
      }
      node = node.isArray() ? node.get(Integer.parseInt(step)) : node.get(step);
      here = expand(root, next, node);
    }
    Set<String> keys = new TreeSet<>();
    here.forEach(s -> s.path("properties").fieldNames().forEachRemaining(keys::add));
    keys.remove("notes");
    return keys;
  }

  private static boolean isOther(JsonNode schema, String key, JsonNode instance) {
    JsonNode wanted = schema.path("properties").path(key).path("const");
    return !wanted.isMissingNode() && !wanted.equals(instance.path(key));
  }

  /** The schemas that apply: references followed, alternatives opened, other kinds left out. */
  private static List<JsonNode> expand(JsonNode root, List<JsonNode> schemas, JsonNode instance) {
    List<JsonNode> expanded = new ArrayList<>();
    for (JsonNode schema : schemas) {
      if (isOther(schema, "kind", instance) || isOther(schema, "values-for", instance)) {
        continue;
      }
      expanded.add(schema);
      if (schema.has("$ref")) {
        JsonNode target = root.at(schema.get("$ref").asText().substring(1));
        expanded.addAll(expand(root, List.of(target), instance));
      }
      for (String word : List.of("anyOf", "oneOf", "allOf")) {
        for (JsonNode alternative : schema.path(word)) {
          expanded.addAll(expand(root, List.of(alternative), instance));
        }
      }
    }
    return expanded;
  }
}
