package org.heatwright.pocket;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** A map of JSON, read by name. What is missing or of another kind is told by its name. */
final class Fields {

  private final Map<?, ?> map;

  private Fields(Map<?, ?> map) {
    this.map = map;
  }

  static Fields read(String text) {
    return of(JsonText.read(text), "text");
  }

  private static Fields of(@Nullable Object value, String name) {
    if (value instanceof Map<?, ?> map) {
      return new Fields(map);
    }
    throw new IllegalArgumentException("The " + name + " must be a map.");
  }

  String text(String name) {
    return optional(name)
        .orElseThrow(() -> new IllegalArgumentException("The field " + name + " is missing."));
  }

  Optional<String> optional(String name) {
    return map.get(name) instanceof String text ? Optional.of(text) : Optional.empty();
  }

  BigDecimal decimal(String name) {
    return new BigDecimal(text(name));
  }

  Optional<BigDecimal> optionalDecimal(String name) {
    return optional(name).map(BigDecimal::new);
  }

  double number(String name) {
    return Double.parseDouble(text(name));
  }

  int whole(String name) {
    return Integer.parseInt(text(name));
  }

  boolean flag(String name) {
    return map.get(name) == Boolean.TRUE;
  }

  <E extends Enum<E>> E word(String name, E[] values) {
    return named(text(name), values);
  }

  static <E extends Enum<E>> E named(String word, E[] values) {
    for (E value : values) {
      if (value.name().equals(word)) {
        return value;
      }
    }
    throw new IllegalArgumentException("Nothing is called " + word + " here.");
  }

  Fields map(String name) {
    return of(map.get(name), name);
  }

  Optional<Fields> optionalMap(String name) {
    return map.get(name) instanceof Map<?, ?> inner
        ? Optional.of(new Fields(inner))
        : Optional.empty();
  }

  List<String> texts(String name) {
    return list(name, value -> (String) value);
  }

  List<Fields> maps(String name) {
    return list(name, value -> of(value, name));
  }

  private <T> List<T> list(String name, Function<Object, T> reader) {
    if (!(map.get(name) instanceof List<?> list)) {
      throw new IllegalArgumentException("The field " + name + " must be a list.");
    }
    List<T> items = new ArrayList<>();
    for (Object item : list) {
      items.add(reader.apply(item));
    }
    return items;
  }
}
