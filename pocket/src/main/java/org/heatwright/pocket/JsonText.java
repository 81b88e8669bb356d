package org.heatwright.pocket;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * JSON (RFC 8259) as maps, lists, texts and flags. Numbers are read as the text they are written
 * with, so that none is rounded on the way. Small, because it travels in the page.
 */
final class JsonText {

  private static final int DEEPEST = 40;

  private final String text;
  private int at;

  private JsonText(String text) {
    this.text = text;
  }

  // ---- writing

  /**
   * @param value a map with text keys, a list, a text, a flag, a number, an optional one of these,
   *     or null; an empty optional in a map is left out
   */
  static String write(@Nullable Object value) {
    StringBuilder out = new StringBuilder();
    write(value, out);
    return out.toString();
  }

  private static void write(@Nullable Object value, StringBuilder out) {
    if (value instanceof Map<?, ?> map) {
      char before = '{';
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        if (entry.getValue() instanceof Optional<?> optional && optional.isEmpty()) {
          continue;
        }
        out.append(before);
        quoted((String) entry.getKey(), out);
        out.append(':');
        write(entry.getValue(), out);
        before = ',';
      }
      out.append(before == '{' ? "{}" : "}");
    } else if (value instanceof List<?> list) {
      char before = '[';
      for (Object item : list) {
        out.append(before);
        write(item, out);
        before = ',';
      }
      out.append(before == '[' ? "[]" : "]");
    } else if (value instanceof String words) {
      quoted(words, out);
    } else if (value instanceof Optional<?> optional) {
      write(optional.orElse(null), out);
    } else {
      out.append(value);
    }
  }

  /** Nothing in it can end the script element it may stand in. */
  private static void quoted(String words, StringBuilder out) {
    out.append('"');
    for (int i = 0; i < words.length(); i++) {
      char c = words.charAt(i);
      if (c < ' ' || c == '<' || c == '\u2028' || c == '\u2029') {
        String hex = Integer.toHexString(c);
        out.append("\\u").append("0000", 0, 4 - hex.length()).append(hex);
      } else {
        if (c == '"' || c == '\\') {
          out.append('\\');
        }
        out.append(c);
      }
    }
    out.append('"');
  }

  // ---- reading

  /**
   * @throws IllegalArgumentException if it is no JSON
   */
  static @Nullable Object read(String text) {
    JsonText reader = new JsonText(text);
    Object value = reader.value(0);
    reader.blanks();
    if (reader.at != text.length()) {
      throw reader.wrong();
    }
    return value;
  }

  private @Nullable Object value(int depth) {
    blanks();
    if (depth > DEEPEST) {
      throw wrong();
    }
    switch (peek()) {
      case '{' -> {
        Map<String, @Nullable Object> map = new LinkedHashMap<>();
        at++;
        blanks();
        while (peek() != '}') {
          String key = string();
          blanks();
          expect(':');
          map.put(key, value(depth + 1));
          comma('}');
        }
        at++;
        return map;
      }
      case '[' -> {
        List<@Nullable Object> list = new ArrayList<>();
        at++;
        blanks();
        while (peek() != ']') {
          list.add(value(depth + 1));
          comma(']');
        }
        at++;
        return list;
      }
      case '"' -> {
        return string();
      }
      default -> {
        int start = at;
        while (at < text.length() && ",]} \n\r\t".indexOf(text.charAt(at)) < 0) {
          at++;
        }
        String word = text.substring(start, at);
        return switch (word) {
          case "true" -> Boolean.TRUE;
          case "false" -> Boolean.FALSE;
          case "null" -> null;
          case "" -> throw wrong();
          default -> word;
        };
      }
    }
  }

  /** Past the comma before another one, or up to the end of the list or map. */
  private void comma(char end) {
    blanks();
    if (peek() != end) {
      expect(',');
      blanks();
      if (peek() == end) {
        throw wrong();
      }
    }
  }

  private String string() {
    expect('"');
    StringBuilder out = new StringBuilder();
    while (peek() != '"') {
      char c = text.charAt(at++);
      if (c == '\\') {
        c = peek();
        at++;
        if (c == 'u') {
          if (at + 4 > text.length()) {
            throw wrong();
          }
          c = (char) Integer.parseInt(text.substring(at, at + 4), 16);
          at += 4;
        } else {
          int place = "nrtbf".indexOf(c);
          c = place < 0 ? c : "\n\r\t\b\f".charAt(place);
        }
      }
      out.append(c);
    }
    at++;
    return out.toString();
  }

  private void expect(char c) {
    if (peek() != c) {
      throw wrong();
    }
    at++;
  }

  private char peek() {
    if (at >= text.length()) {
      throw wrong();
    }
    return text.charAt(at);
  }

  private void blanks() {
    while (at < text.length() && " \n\r\t".indexOf(text.charAt(at)) >= 0) {
      at++;
    }
  }

  private IllegalArgumentException wrong() {
    return new IllegalArgumentException("The text is no JSON at character " + at + ".");
  }
}
