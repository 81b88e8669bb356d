package org.heatwright.app.files;

import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** A mapping of a YAML file. Keys are text; a key may stand once. */
public final class YamlMap {

  /** The one key whose content is a person's own business, allowed in every mapping. */
  public static final String NOTES = "notes";

  private final YamlValue place;
  private final Map<String, YamlValue> values = new LinkedHashMap<>();
  private final Map<String, Integer> lines = new LinkedHashMap<>();

  YamlMap(YamlValue place, MappingNode node) {
    this.place = place;
    for (NodeTuple tuple : node.getValue()) {
      int line = YamlFile.lineOf(tuple.getKeyNode().getStartMark());
      if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
        throw InputException.at(
            place.fileName(), line, "a key is a list or a mapping; expected a plain word.");
      }
      String path = place.childPath(key.getValue());
      if (lines.containsKey(key.getValue())) {
        throw InputException.at(
            place.fileName(),
            line,
            "%s is given twice (first on line %d); keep one."
                .formatted(path, lines.get(key.getValue())));
      }
      lines.put(key.getValue(), line);
      values.put(
          key.getValue(),
          new YamlValue(place.kind(), place.fileName(), path, tuple.getValueNode()));
    }
  }

  /**
   * Refuses every key but these (and {@code notes}).
   *
   * @return this
   */
  public YamlMap only(String... known) {
    return only(Arrays.asList(known));
  }

  /**
   * Refuses every key but these (and {@code notes}).
   *
   * @return this
   */
  public YamlMap only(List<String> known) {
    for (String key : values.keySet()) {
      if (!known.contains(key) && !key.equals(NOTES)) {
        throw InputException.at(
            place.fileName(),
            lines.getOrDefault(key, place.line()),
            "%s is not known; expected one of %s%s."
                .formatted(
                    place.childPath(key), String.join(", ", known), Nearest.hint(key, known)));
      }
    }
    return this;
  }

  /** The value of a key that must be there. */
  public YamlValue required(String key) {
    YamlValue value = values.get(key);
    if (value == null) {
      String path = place.childPath(key);
      String right =
          place
              .kind()
              .line(path)
              .map(line -> "; expected a line such as " + line)
              .orElse("; add it");
      throw InputException.at(
          place.fileName(), place.line(), "%s is missing%s.".formatted(path, right));
    }
    return value;
  }

  /** The value of a key, if it is there. */
  public Optional<YamlValue> optional(String key) {
    return Optional.ofNullable(values.get(key));
  }

  public boolean has(String key) {
    return values.containsKey(key);
  }

  /** The mapping as a value, for errors about the whole of it. */
  public YamlValue place() {
    return place;
  }

  /** All keys and values, in the file's order. */
  public Map<String, YamlValue> ordered() {
    return Collections.unmodifiableMap(values);
  }
}
